#include "ui/window/shopform.h"

#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/countfield.h"
#include "ui/window/formsection.h"
#include "ui/window/lengthfield.h"

namespace kerfwright {

namespace {

constexpr int mostSpares = 20;

bool isMachineLimit(Setting setting) {
    switch (setting) {
    case Setting::PlanerWidth:
    case Setting::PlanerShortest:
    case Setting::SanderWidth:
    case Setting::SanderShortest:
    case Setting::SawDepth:
    case Setting::LeastHeld:
    case Setting::LongestStrip:
    case Setting::SliceShortest:
        return true;
    default:
        return false;
    }
}

}  // namespace

ShopForm::ShopForm(Document& document, FormSection* allowances, FormSection* machines)
    : QObject(allowances)
    , document_(document)
    , allowances_(allowances)
    , machines_(machines) {
    connect(allowances, &FormSection::firstOpened, this, [this] { fill(allowances_, false); });
    connect(machines, &FormSection::firstOpened, this, [this] { fill(machines_, true); });
}

void ShopForm::fill(FormSection* section, bool machines) {
    for (const SettingInfo& info : shopSettings()) {
        if (isMachineLimit(info.setting) != machines) {
            continue;
        }
        const QString name = toQt(say(info.name));
        auto* field = new LengthField(
            name,
            [this, &info, name](Length length) {
                const auto fault =
                    document_.edit(tr("change %1").arg(inSentence(name)),
                                   entry::setting + static_cast<int>(info.setting),
                                   [&](Project& project) { project.shop.*info.value = length; });
                return fault ? toQt(fault->text()) : QString();
            },
            section->body());
        field->setObjectName(QStringLiteral("setting-") + toQt(info.key));
        field->line()->setObjectName(field->objectName() + QStringLiteral("-entry"));
        field->setToolTip(toQt(say(info.about)));
        field->setRange(info.least, info.greatest);
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        section->addRow(name, field);
        rows_.push_back({&info, field});
    }
    if (!machines) {
        spares_ = new CountField(
            tr("Spare slices"), 0, mostSpares,
            [this](int count) {
                const auto fault =
                    document_.edit(tr("change spare slices"), entry::spareSlices,
                                   [count](Project& project) { project.shop.spareSlices = count; });
                return fault ? toQt(fault->text()) : QString();
            },
            section->body());
        spares_->setObjectName(QStringLiteral("spareSlices"));
        spares_->line()->setObjectName(QStringLiteral("spareSlicesEntry"));
        spares_->setToolTip(tr("Extra slices cut from each panel, in case one goes wrong"));
        connect(spares_, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        section->addRow(tr("Spare slices"), spares_);
    }
    refresh();
}

void ShopForm::refresh() {
    const Project& project = document_.project();
    for (const Row& row : rows_) {
        row.field->setNotation(project.notation);
        row.field->setValue(project.shop.*row.info->value);
    }
    if (spares_ != nullptr) {
        spares_->setValue(project.shop.spareSlices);
    }
}

void ShopForm::focusSetting(Setting setting) {
    (isMachineLimit(setting) ? machines_ : allowances_)->setOpen(true);
    for (const Row& row : rows_) {
        if (row.info->setting == setting) {
            row.field->focusEntry();
        }
    }
}

void ShopForm::focusSpareSlices() {
    allowances_->setOpen(true);
    spares_->focusEntry();
}

}  // namespace kerfwright
