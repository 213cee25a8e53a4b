#include "ui/window/ratesform.h"

#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/faultnote.h"
#include "ui/window/formsection.h"
#include "ui/window/numberfield.h"

namespace kerfwright {

namespace {

constexpr int labelWidth = 190;

}  // namespace

RatesForm::RatesForm(Document& document, FormSection* section)
    : QObject(section)
    , document_(document)
    , section_(section) {
    connect(section, &FormSection::firstOpened, this, &RatesForm::fill);
}

void RatesForm::fill() {
    section_->setLabelWidth(labelWidth);
    int which = 0;
    for (const RateSetting& info : rateSettings()) {
        const QString name = toQt(say(info.name));
        const QString unit = toQt(info.unit);
        auto* field = new NumberField(
            name, unit, info.least, info.greatest,
            [this, &info, name, which](double value) {
                const auto fault =
                    document_.edit(tr("change %1").arg(inSentence(name)), entry::rate + which,
                                   [&](Project& project) { project.rates.*info.value = value; });
                return fault ? toQt(fault->text()) : QString();
            },
            section_->body());
        field->setObjectName(QStringLiteral("setting-") + toQt(info.key));
        field->line()->setObjectName(field->objectName() + QStringLiteral("-entry"));
        field->setToolTip(tr("Source: %1.").arg(toQt(say(info.source))));
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        section_->addRow(unit.isEmpty() ? name : tr("%1, %2").arg(name, unit), field);
        rows_.push_back({&info, field});
        ++which;
    }
    auto* note = new FaultNote(section_->body());
    note->rest(tr("Nobody publishes such times: put in what you measure. The sheet “Time at the "
                  "bench” has room to write it down."));
    section_->add(note);
    refresh();
}

void RatesForm::refresh() {
    for (const Row& row : rows_) {
        row.field->setValue(document_.project().rates.*row.info->value);
    }
}

bool RatesForm::focusRate(std::string_view key) {
    for (const RateSetting& info : rateSettings()) {
        if (info.key != key) {
            continue;
        }
        section_->setOpen(true);
        for (const Row& row : rows_) {
            if (row.info == &info) {
                row.field->focusEntry();
            }
        }
        return true;
    }
    return false;
}

}  // namespace kerfwright
