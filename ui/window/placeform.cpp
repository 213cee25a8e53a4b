#include "ui/window/placeform.h"

#include "core/bench/glue.h"
#include "core/measure/number.h"
#include "core/wood/air.h"
#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/degrees.h"
#include "ui/window/faultnote.h"
#include "ui/window/formsection.h"
#include "ui/window/lengthfield.h"
#include "ui/window/numberfield.h"
#include "ui/window/quietcombo.h"
#include "ui/window/segmented.h"

#include <QHBoxLayout>

#include <algorithm>
#include <array>
#include <cmath>

namespace kerfwright {

namespace {

constexpr double usualCelsius = 20;

/// The fit behind it is good to about a tenth of a percent.
double tenths(double moisture) {
    return std::round(moisture * 10) / 10;
}

QString lowered(const QString& sentence) {
    return inSentence(sentence.left(1)) + sentence.mid(1);
}

QString words(const std::optional<Fault>& fault) {
    return fault ? toQt(fault->text()) : QString();
}

}  // namespace

PlaceForm::PlaceForm(Document& document, FormSection* section)
    : QObject(section)
    , document_(document)
    , section_(section) {
    connect(section, &FormSection::firstOpened, this, &PlaceForm::fill);
}

void PlaceForm::fill() {
    buildUse();
    buildPlace();
    int which = 0;
    for (const ClimateSetting& info : climateSettings()) {
        seasons_.push_back(buildSeason(info, which++));
    }
    refresh();
}

void PlaceForm::buildUse() {
    use_ = new QuietCombo(tr("Used as"), section_->body());
    use_->setObjectName(QStringLiteral("boardUse"));
    for (const BoardUseInfo& one : boardUses) {
        use_->addItem(toQt(say(one.name)));
    }
    section_->addRow(tr("Used as"), use_);
    connect(use_, &QComboBox::activated, this, [this](int index) {
        document_.edit(tr("change use"), entry::none, [index](Project& project) {
            project.purpose.use = boardUses[static_cast<std::size_t>(index)].use;
        });
    });
    foot_ = new LengthField(
        tr("Widest foot"),
        [this](Length length) {
            return words(
                document_.edit(tr("change widest foot"), entry::foot,
                               [length](Project& project) { project.purpose.foot = length; }));
        },
        section_->body());
    foot_->setObjectName(QStringLiteral("foot"));
    foot_->line()->setObjectName(QStringLiteral("footEntry"));
    foot_->setRange(Length(), greatestFoot);
    foot_->setToolTip(tr("Of the pieces that stand on the squares; 0 where you have none yet"));
    connect(foot_, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    auto* row = new FormSection(QString(), false, section_->body());
    row->head()->hide();
    row->addRow(tr("Widest foot"), foot_);
    footRow_ = row;
    section_->add(row);
    useNote_ = new FaultNote(section_->body());
    useNote_->setObjectName(QStringLiteral("useNote"));
    section_->add(useNote_);
}

void PlaceForm::buildPlace() {
    place_ = new QuietCombo(tr("Place"), section_->body());
    place_->setObjectName(QStringLiteral("place"));
    for (const ClimatePreset& preset : climatePresets()) {
        place_->addItem(toQt(say(preset.name)));
    }
    place_->addItem(tr("Your own"));
    section_->addRow(tr("Place"), place_);
    connect(place_, &QComboBox::activated, this, [this](int index) {
        const auto& presets = climatePresets();
        if (const auto at = static_cast<std::size_t>(index); at < presets.size()) {
            document_.edit(tr("change place"), entry::none,
                           [&](Project& project) { project.climate = presets[at].climate; });
        }
        refresh();
    });
    typed_ =
        new Segmented(tr("Typed as"), {tr("Moisture of the wood, %"), tr("Air")}, section_->body());
    typed_->setObjectName(QStringLiteral("typedAs"));
    typed_->setToolTip(tr("Moisture of the wood, or temperature and humidity of the air it "
                          "settles in"));
    section_->add(typed_);
    connect(typed_, &Segmented::chosen, this, &PlaceForm::refresh);
}

PlaceForm::Season PlaceForm::buildSeason(const ClimateSetting& info, int which) {
    const QString name = toQt(say(info.name));
    const QString key = QString::fromLatin1(info.key);
    auto* both = new QWidget(section_->body());
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    Season season{};
    season.info = &info;
    season.moisture = new NumberField(
        name, tr("%"), 0, fibreSaturation,
        [this, which](double moisture) { return setMoisture(which, moisture); }, both);
    season.air = new QWidget(both);
    season.degrees = new NumberField(
        tr("%1: temperature").arg(name), QString(), AirLimits::leastCelsius,
        AirLimits::greatestCelsius, [this, which](double) { return setFromAir(which); },
        season.air);
    season.humidity = new NumberField(
        tr("%1: humidity").arg(name), tr("%"), AirLimits::leastHumidity,
        AirLimits::greatestHumidity, [this, which](double) { return setFromAir(which); },
        season.air);
    auto* air = new QHBoxLayout(season.air);
    air->setContentsMargins(0, 0, 0, 0);
    air->setSpacing(6);
    air->addWidget(season.degrees);
    air->addWidget(season.humidity);
    row->addWidget(season.moisture);
    row->addWidget(season.air);
    both->setFocusProxy(season.moisture);
    both->setToolTip(toQt(say(info.about)));
    season.note = new FaultNote(section_->body());
    const auto wire = [&](NumberField* field, const QString& object) {
        field->setObjectName(object);
        field->line()->setObjectName(object + QStringLiteral("-entry"));
        field->setFaultNote(season.note);
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    };
    wire(season.moisture, QStringLiteral("climate-") + key);
    wire(season.degrees, QStringLiteral("climate-degrees-") + key);
    wire(season.humidity, QStringLiteral("climate-humidity-") + key);
    const std::array<QString, 3> labels{tr("When built"), tr("Dry season"), tr("Damp season")};
    section_->addRow(labels[static_cast<std::size_t>(which)], both);
    section_->add(season.note);
    season.degrees->setValue(shownDegrees(usualCelsius, document_.project().notation.unit));
    return season;
}

void PlaceForm::focusSeason() {
    section_->setOpen(true);
    typed_->setCurrent(0);
    refresh();
    seasons_.front().moisture->focusEntry();
}

bool PlaceForm::byAir() const {
    return typed_->current() == 1;
}

QString PlaceForm::setMoisture(int which, double moisture) {
    const ClimateSetting& info = climateSettings()[static_cast<std::size_t>(which)];
    return words(document_.edit(tr("change %1").arg(inSentence(toQt(say(info.name)))),
                                entry::climate + which,
                                [&](Project& project) { project.climate.*info.value = moisture; }));
}

QString PlaceForm::setFromAir(int which) {
    const Season& season = seasons_[static_cast<std::size_t>(which)];
    const Unit unit = document_.project().notation.unit;
    return setMoisture(which, tenths(equilibriumMoisture(celsiusFrom(season.degrees->value(), unit),
                                                         season.humidity->value())));
}

void PlaceForm::refresh() {
    if (use_ == nullptr) {
        return;
    }
    refreshUse();
    const auto& presets = climatePresets();
    const ClimatePreset* preset = presetOf(document_.project().climate);
    place_->setCurrentIndex(preset == nullptr ? static_cast<int>(presets.size())
                                              : static_cast<int>(preset - presets.data()));
    place_->setToolTip(preset == nullptr ? QString()
                                         : tr("Source: %1.").arg(toQt(say(preset->source))));
    for (const Season& season : seasons_) {
        refreshSeason(season);
    }
}

void PlaceForm::refreshUse() {
    const Project& project = document_.project();
    const BoardUseInfo& use = info(project.purpose.use);
    use_->setCurrentIndex(static_cast<int>(project.purpose.use));
    QString about = toQt(say(use.about));
    if (use.use != BoardUse::Unsaid) {
        const GlueAdvice glue = glueFor(use.use);
        const auto grade =
            std::find_if(waterClasses().begin(), waterClasses().end(),
                         [&](const WaterClassInfo& water) { return water.grade == glue.grade; });
        about +=
            QLatin1Char('\n') + tr("Glue of class %1 or better: %2")
                                    .arg(QString::fromUtf8(grade->name), lowered(toQt(glue.why)));
    }
    useNote_->rest(about);
    footRow_->setVisible(use.game);
    foot_->setNotation(project.notation);
    foot_->setValue(project.purpose.foot);
}

void PlaceForm::refreshSeason(const Season& season) {
    const Project& project = document_.project();
    const Unit unit = project.notation.unit;
    const double moisture = project.climate.*season.info->value;
    const bool air = byAir();
    season.moisture->setVisible(!air);
    season.air->setVisible(air);
    season.moisture->setValue(moisture);
    season.degrees->setRange(degreeName(unit), shownDegrees(AirLimits::leastCelsius, unit),
                             shownDegrees(AirLimits::greatestCelsius, unit));
    // The air is not kept with the project: it is any that gives the moisture which is.
    const double celsius = celsiusFrom(season.degrees->value(), unit);
    const double settled = tenths(equilibriumMoisture(celsius, season.humidity->value()));
    if (settled < moisture || settled > moisture) {
        season.humidity->setValue(std::round(humidityAt(celsius, moisture)));
    }
    season.note->rest(air ? tr("%1 and % of humidity; in that air wood settles at %2 %.")
                                .arg(degreeName(unit), toQt(formatNumber(moisture)))
                          : QString());
}

}  // namespace kerfwright
