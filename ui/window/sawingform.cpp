#include "ui/window/sawingform.h"

#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/countfield.h"
#include "ui/window/lengthfield.h"
#include "ui/window/timberentries.h"

#include <QCheckBox>
#include <QSignalBlocker>

namespace kerfwright {

namespace {

constexpr int sawingLabels = 168;

}  // namespace

SawingForm::SawingForm(Document& document, QWidget* parent)
    : FormSection(tr("How planks are sawn"), true, parent)
    , document_(document) {
    setObjectName(QStringLiteral("sawing"));
    head()->setObjectName(QStringLiteral("sawingHead"));
    connect(this, &FormSection::firstOpened, this, &SawingForm::fill);
    connect(&document, &Document::projectChanged, this, &SawingForm::refresh);
}

void SawingForm::fill() {
    setLabelWidth(sawingLabels);
    int which = 0;
    const auto name = [](EntryField* field, const char* key) {
        field->setObjectName(QStringLiteral("sawing-") + QString::fromLatin1(key));
        field->line()->setObjectName(field->objectName() + QStringLiteral("-entry"));
    };
    const auto what = [](const char* setting) {
        return tr("change %1").arg(inSentence(toQt(say(setting))));
    };
    for (const SawingLength& setting : sawingLengths()) {
        auto* field = new LengthField(
            toQt(say(setting.name)),
            [this, &setting, what, entry = entry::sawing + which](Length length) {
                const auto fault = document_.edit(what(setting.name), entry, [&](Project& project) {
                    project.timber.sawing.*setting.value = length;
                });
                return fault ? toQt(fault->text()) : QString();
            },
            body());
        name(field, setting.key);
        field->setRange(Length(), setting.greatest);
        field->setToolTip(toQt(say(setting.about)));
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        addRow(toQt(say(setting.name)), field);
        lengths_.emplace_back(field, &setting);
        ++which;
    }
    for (const SawingCount& setting : sawingCounts()) {
        auto* field = new CountField(
            toQt(say(setting.name)), static_cast<int>(setting.least),
            static_cast<int>(setting.greatest),
            [this, &setting, what, entry = entry::sawing + which](int count) {
                const auto fault = document_.edit(what(setting.name), entry, [&](Project& project) {
                    project.timber.sawing.*setting.value = count;
                });
                return fault ? toQt(fault->text()) : QString();
            },
            body());
        name(field, setting.key);
        field->setToolTip(toQt(say(setting.about)));
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        addRow(tr("%1, %2").arg(toQt(say(setting.name)), toQt(say(setting.unit))), field);
        counts_.emplace_back(field, &setting);
        ++which;
    }
    rails_ = new QCheckBox(tr("Rails of a border in one length"), body());
    rails_->setObjectName(QStringLiteral("railsInOneLength"));
    rails_->setToolTip(tr("Where a plank gives it: then the grain runs round the board"));
    add(rails_);
    connect(rails_, &QCheckBox::toggled, this, [this](bool on) {
        document_.endSession();
        document_.edit(tr("change how rails are sawn"), entry::none,
                       [on](Project& project) { project.timber.railsInOneLength = on; });
    });
    refresh();
}

void SawingForm::refresh() {
    const Project& project = document_.project();
    for (const auto& [field, setting] : lengths_) {
        field->setNotation(project.notation);
        field->setValue(project.timber.sawing.*setting->value);
    }
    for (const auto& [field, setting] : counts_) {
        field->setValue(static_cast<int>(project.timber.sawing.*setting->value));
    }
    if (rails_ != nullptr) {
        const QSignalBlocker quiet(rails_);
        rails_->setChecked(project.timber.railsInOneLength);
    }
}

}  // namespace kerfwright
