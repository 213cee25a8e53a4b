#include "ui/window/glueform.h"

#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/degrees.h"
#include "ui/window/faultnote.h"
#include "ui/window/formsection.h"
#include "ui/window/numberfield.h"

#include <QLabel>

namespace kerfwright {

namespace {

constexpr int labelWidth = 158;

}  // namespace

GlueForm::GlueForm(Document& document, FormSection* section)
    : QObject(section)
    , document_(document)
    , section_(section) {
    connect(section, &FormSection::firstOpened, this, &GlueForm::fill);
}

void GlueForm::fill() {
    section_->setLabelWidth(labelWidth);
    int which = 0;
    for (const GlueSetting& info : glueSettings()) {
        const QString name = toQt(say(info.name));
        const bool degrees = std::string_view(info.unit) == "°C";
        auto* field = new NumberField(
            name, toQt(info.unit), info.least, info.greatest,
            [this, &info, name, degrees, which](double value) {
                const auto fault = document_.edit(
                    tr("change %1").arg(inSentence(name)), entry::glue + which,
                    [&](Project& project) {
                        project.glue.*info.value =
                            degrees ? celsiusFrom(value, project.notation.unit) : value;
                    });
                return fault ? toQt(fault->text()) : QString();
            },
            section_->body());
        field->setObjectName(QStringLiteral("setting-") + toQt(info.key));
        field->line()->setObjectName(field->objectName() + QStringLiteral("-entry"));
        field->setToolTip(tr("Source: %1.").arg(toQt(say(info.source))));
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        rows_.push_back({&info, field, section_->addRow(name, field), degrees});
        ++which;
    }
    auto* note = new FaultNote(section_->body());
    note->rest(tr("Where a value is from stands beside its entry when you point at it."));
    section_->add(note);
    refresh();
}

void GlueForm::focusSetting(std::string_view key) {
    section_->setOpen(true);
    for (const Row& row : rows_) {
        if (row.info->key == key) {
            row.field->focusEntry();
        }
    }
}

void GlueForm::refresh() {
    const Project& project = document_.project();
    const Unit unit = project.notation.unit;
    for (const Row& row : rows_) {
        const double value = project.glue.*row.info->value;
        if (row.degrees) {
            row.field->setRange(degreeName(unit), shownDegrees(row.info->least, unit),
                                shownDegrees(row.info->greatest, unit));
        }
        const QString measure = row.degrees ? degreeName(unit) : toQt(row.info->unit);
        const QString name = toQt(say(row.info->name));
        row.label->setText(measure.isEmpty() ? name : tr("%1, %2").arg(name, measure));
        row.field->setValue(row.degrees ? shownDegrees(value, unit) : value);
    }
}

}  // namespace kerfwright
