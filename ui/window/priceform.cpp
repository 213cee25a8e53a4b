#include "ui/window/priceform.h"

#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/faultnote.h"
#include "ui/window/formsection.h"
#include "ui/window/quietcombo.h"
#include "ui/window/textfield.h"

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int labelWidth = 168;

QString shownOf(const PriceSetting& info, const Pricing& pricing) {
    const std::optional<std::int64_t> value = info.of(pricing);
    return value ? toQt(amountText(*value, info.kind)) : QString();
}

}  // namespace

PriceForm::PriceForm(Document& document, FormSection* section)
    : QObject(section)
    , document_(document)
    , section_(section) {
    connect(section, &FormSection::firstOpened, this, &PriceForm::fill);
}

void PriceForm::addSetting(const PriceSetting& info, int which) {
    const QString name = toQt(say(info.name));
    const QString unit = toQt(say(info.unit));
    const QString label = unit.isEmpty() ? name : tr("%1, %2").arg(name, unit);
    auto* field = new TextField(
        name,
        [this, &info, name, which](const QString& text) {
            std::optional<std::int64_t> amount;
            if (info.price == nullptr || !text.trimmed().isEmpty()) {
                const Result<std::int64_t> read = readAmount(fromQt(text), info);
                if (!read) {
                    return toQt(read.fault().text());
                }
                amount = *read;
            }
            const auto fault =
                document_.edit(tr("change price: %1").arg(inSentence(name)), entry::price + which,
                               [&](Project& project) { info.set(project.pricing, amount); });
            return fault ? toQt(fault->text()) : QString();
        },
        section_->body());
    field->setObjectName(QStringLiteral("price-") + toQt(info.key));
    field->line()->setObjectName(field->objectName() + QStringLiteral("-entry"));
    field->line()->setAccessibleName(label);
    if (info.price != nullptr) {
        field->line()->setPlaceholderText(tr("not known"));
    }
    field->setToolTip(tr("Source: %1.").arg(toQt(say(info.source))));
    connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    section_->addRow(label, field);
    rows_.push_back({&info, field});
}

void PriceForm::addRounding() {
    rounding_ = new QuietCombo(tr("Price asked is"), section_->body());
    rounding_->setObjectName(QStringLiteral("price-rounding"));
    for (const FinalRoundingInfo& info : finalRoundings) {
        rounding_->addItem(toQt(say(info.name)));
    }
    connect(rounding_, &QComboBox::activated, this, [this](int index) {
        document_.endSession();
        document_.edit(tr("change rounding of the price"), entry::none, [index](Project& project) {
            project.pricing.rounding = finalRoundings[static_cast<std::size_t>(index)].rounding;
        });
    });
    section_->addRow(tr("Price asked is"), rounding_);
}

TextField* PriceForm::addText(const QString& label, const char* name, int which,
                              std::string Pricing::*text) {
    auto* field = new TextField(
        label,
        [this, label, which, text](const QString& words) {
            const auto fault =
                document_.edit(tr("change %1").arg(inSentence(label)), entry::price + which,
                               [&](Project& project) { project.pricing.*text = fromQt(words); });
            return fault ? toQt(fault->text()) : QString();
        },
        section_->body());
    field->setObjectName(QString::fromLatin1(name));
    field->line()->setObjectName(field->objectName() + QStringLiteral("-entry"));
    connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    section_->addRow(label, field);
    return field;
}

void PriceForm::fill() {
    section_->setLabelWidth(labelWidth);
    int which = 0;
    for (const PriceSetting& info : priceSettings()) {
        addSetting(info, which++);
    }
    addRounding();
    customer_ = addText(tr("Quote for"), "price-customer", which++, &Pricing::customer);
    validUntil_ = addText(tr("Valid until"), "price-valid-until", which++, &Pricing::validUntil);
    auto* note = new FaultNote(section_->body());
    note->rest(tr("Overhead is on materials and bench work, profit on all that the board costs to "
                  "make, selling on the price itself, tax on the price asked. Prices of woods are "
                  "said with each wood, the currency under Units."));
    section_->add(note);
    refresh();
}

void PriceForm::refresh() {
    if (rounding_ == nullptr) {
        return;
    }
    const Pricing& pricing = document_.project().pricing;
    for (const Row& row : rows_) {
        row.field->setValue(shownOf(*row.info, pricing));
    }
    for (std::size_t i = 0; i < finalRoundings.size(); ++i) {
        if (finalRoundings[i].rounding == pricing.rounding) {
            rounding_->setCurrentIndex(static_cast<int>(i));
        }
    }
    customer_->setValue(toQt(pricing.customer));
    validUntil_->setValue(toQt(pricing.validUntil));
}

bool PriceForm::focusSetting(std::string_view key) {
    const auto& all = priceSettings();
    const bool known =
        key == "rounding" ||
        std::any_of(all.begin(), all.end(), [&](const auto& info) { return info.key == key; });
    if (!known) {
        return false;
    }
    section_->setOpen(true);
    if (key == "rounding") {
        rounding_->setFocus(Qt::OtherFocusReason);
    }
    for (const Row& row : rows_) {
        if (row.info->key == key) {
            row.field->focusEntry();
        }
    }
    return true;
}

}  // namespace kerfwright
