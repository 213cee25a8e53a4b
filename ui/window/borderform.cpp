#include "ui/window/borderform.h"

#include "ui/document/text.h"
#include "ui/window/faultnote.h"
#include "ui/window/figurenotice.h"
#include "ui/window/fitlist.h"
#include "ui/window/formsection.h"
#include "ui/window/lengthfield.h"
#include "ui/window/quietcombo.h"
#include "ui/window/segmented.h"
#include "ui/window/woodchip.h"

#include <QAbstractButton>
#include <QCheckBox>
#include <QPushButton>

#include <algorithm>

namespace kerfwright {

namespace {

Length usualIn(const Project& project, Length inches, Length millimetres) {
    return project.notation.unit == Unit::Inches ? inches : millimetres;
}

QString words(const std::optional<Fault>& fault) {
    return fault ? toQt(fault->text()) : QString();
}

void fillWoods(QComboBox& list, const std::vector<Wood>& woods, int current) {
    list.clear();
    for (const Wood& wood : woods) {
        list.addItem(woodChip(wood, list), toQt(wood.name));
    }
    list.setCurrentIndex(current);
}

/// A wood that the field does not use sets the border off.
int unusedWood(const Project& project, int otherwise) {
    const auto uses = woodUse(project.board.field, static_cast<int>(project.woods.size()));
    for (std::size_t i = uses.size(); i > 0; --i) {
        if (uses[i - 1].pieces == 0) {
            return static_cast<int>(i) - 1;
        }
    }
    return otherwise;
}

}  // namespace

BorderForm::BorderForm(Document& document, Planner& planner, FormSection* section)
    : QObject(section)
    , document_(document)
    , planner_(planner)
    , section_(section)
    , designs_(new DesignPicker(section->body()))
    , hindrance_(new FaultNote(section->body())) {
    designs_->setObjectName(QStringLiteral("borderKind"));
    section->add(designs_);
    section->add(hindrance_);
    details_ = rowsIn(section);
    width_ = addLength(details_, tr("Visible rail"), tr("Border width"), "borderWidth",
                       entry::borderWidth, &Border::width);
    width_->setRange(Length::mm(1), BoardLimits::greatestBorder);
    wood_ = addWood(details_, tr("Border wood"), "borderWood", &Border::wood);
    buildFloating();
    inlay_ = addExtra({tr("Inlay line"), tr("Width"), tr("Inlay width"), tr("Inlay wood")}, "inlay",
                      entry::inlayWidth, &Border::inlayWidth, &Border::inlayWood);
    splines_ =
        addExtra({tr("Splines across the mitres"), tr("Thickness"), tr("Spline thickness"),
                  tr("Spline wood")},
                 "spline", entry::splineThickness, &Border::splineThickness, &Border::splineWood);
    buildCaution();
    fit_ = new FitList(details_->body());
    fit_->setObjectName(QStringLiteral("borderFit"));
    details_->add(fit_);
    connect(fit_, &FitList::termAsked, this, &BorderForm::termAsked);
    connect(&document, &Document::replaced, this, [this] { lastWidth_ = Length(); });
    connect(designs_, &DesignPicker::chosen, this, &BorderForm::choose);
    connect(&FigureNotice::instance(), &FigureNotice::changed, this, &BorderForm::refresh);
    connect(&planner, &Planner::changed, this, [this] {
        refreshCaution();
        refreshFit();
    });
}

FormSection* BorderForm::rowsIn(FormSection* section) {
    auto* rows = new FormSection(QString(), false, section->body());
    rows->head()->hide();
    section->add(rows);
    return rows;
}

LengthField* BorderForm::addLength(FormSection* rows, const QString& label, const QString& name,
                                   const char* object, int entry, Length Border::*member) {
    auto* field = new LengthField(
        name,
        [this, name, entry, member](Length length) {
            return words(
                document_.edit(tr("change %1").arg(inSentence(name)), entry,
                               [&](Project& project) { project.board.border.*member = length; }));
        },
        rows->body());
    field->setObjectName(QString::fromLatin1(object));
    field->line()->setObjectName(QString::fromLatin1(object) + QStringLiteral("Entry"));
    connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    rows->addRow(label, field);
    return field;
}

QComboBox* BorderForm::addWood(FormSection* rows, const QString& name, const char* object,
                               int Border::*member) {
    auto* list = new QuietCombo(name, rows->body());
    list->setObjectName(QString::fromLatin1(object));
    rows->addRow(tr("Wood"), list);
    connect(list, &QComboBox::activated, this, [this, name, member](int index) {
        change(tr("change %1").arg(inSentence(name)),
               [&](Border& border) { border.*member = index; });
    });
    return list;
}

void BorderForm::change(const QString& what, const std::function<void(Border&)>& how) {
    document_.edit(what, entry::none, [&](Project& project) { how(project.board.border); });
    refresh();
}

void BorderForm::buildFloating() {
    floating_ = rowsIn(details_);
    housing_ =
        new Segmented(tr("Held by"), {tr("Tongue and groove"), tr("Rebate")}, floating_->body());
    housing_->setObjectName(QStringLiteral("housing"));
    housing_->setToolTip(tr("A loose tongue holds the field in grooves; or it lies on a ledge and "
                            "can be lifted out"));
    floating_->add(housing_);
    connect(housing_, &Segmented::chosen, this, [this](int index) {
        change(tr("change housing"), [index](Border& border) {
            border.housing = index == 0 ? Housing::Groove : Housing::Rebate;
        });
    });
    gapFrom_ =
        new Segmented(tr("Gap"), {tr("Gap from the season"), tr("Own gap")}, floating_->body());
    gapFrom_->setObjectName(QStringLiteral("gapFrom"));
    floating_->add(gapFrom_);
    connect(gapFrom_, &Segmented::chosen, this, [this](int index) {
        // One's own begins with what the season asks for.
        Length gap = usualIn(document_.project(), Length::inch(1, 8), Length::mm(3));
        if (const PlannedPtr planned = planner_.last()) {
            const BorderFit& fit = planned->job.plan.border;
            const Length greater = std::max(fit.gapX.value, fit.gapY.value);
            gap = greater > Length() ? greater : gap;
        }
        change(tr("change gap"), [&](Border& border) {
            border.gap = index == 0 ? std::nullopt : std::optional<Length>(gap);
        });
    });
    gapRow_ = rowsIn(floating_);
    gap_ = new LengthField(
        tr("Gap"),
        [this](Length length) {
            return words(
                document_.edit(tr("change gap"), entry::borderGap,
                               [length](Project& project) { project.board.border.gap = length; }));
        },
        gapRow_->body());
    gap_->setObjectName(QStringLiteral("borderGap"));
    gap_->line()->setObjectName(QStringLiteral("borderGapEntry"));
    gap_->setRange(Length(), BoardLimits::greatestGap);
    connect(gap_, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    gapRow_->addRow(tr("On each side"), gap_);
}

BorderForm::Extra BorderForm::addExtra(const ExtraNames& names, const char* object, int entry,
                                       Length Border::*length, int Border::*wood) {
    Extra extra{};
    const QByteArray name(object);
    extra.wanted = new QCheckBox(names.wanted, details_->body());
    extra.wanted->setObjectName(QString::fromLatin1(name));
    details_->add(extra.wanted);
    extra.rows = rowsIn(details_);
    extra.size =
        addLength(extra.rows, names.label, names.size, (name + "Size").constData(), entry, length);
    extra.wood = addWood(extra.rows, names.wood, (name + "Wood").constData(), wood);
    connect(extra.wanted, &QCheckBox::clicked, this,
            [this, label = names.wanted, length, wood](bool on) {
                const Project& project = document_.project();
                const Length thin = usualIn(project, Length::inch(1, 8), Length::mm(3));
                const int contrast = unusedWood(project, project.board.border.*wood);
                change(on ? tr("add %1").arg(inSentence(label))
                          : tr("remove %1").arg(inSentence(label)),
                       [&](Border& border) {
                           border.*length = on ? thin : Length();
                           if (on && border.*wood == border.wood) {
                               border.*wood = contrast;
                           }
                       });
            });
    return extra;
}

void BorderForm::buildCaution() {
    caution_ = new FaultNote(details_->body());
    caution_->setObjectName(QStringLiteral("borderCaution"));
    details_->add(caution_);
    read_ = new QCheckBox(tr("I have read this and glue it so"), details_->body());
    read_->setObjectName(QStringLiteral("cautionRead"));
    details_->add(read_);
    connect(read_, &QCheckBox::clicked, this, [this](bool on) {
        change(on ? tr("caution read") : tr("caution not read"),
               [on](Border& border) { border.cautionRead = on; });
    });
    float_ = new QPushButton(tr("Let the field float"), details_->body());
    float_->setObjectName(QStringLiteral("letFloat"));
    details_->add(float_);
    connect(float_, &QPushButton::clicked, this, [this] { choose(BorderDesign::FloatingFrame); });
}

void BorderForm::choose(DesignChoice design) {
    const Project& project = document_.project();
    Border border = project.board.border;
    if (design) {
        if (!border.isThere()) {
            border.width = lastWidth_ > Length()
                               ? lastWidth_
                               : usualIn(project, Length::inch(3, 2), Length::mm(40));
            border.wood = lastWidth_ > Length() ? border.wood : unusedWood(project, border.wood);
        }
        border.design = *design;
    } else {
        lastWidth_ = border.isThere() ? border.width : lastWidth_;
        border.width = Length();
    }
    border.cautionRead = false;  // it was about the design of before
    const QString what =
        design ? tr("border %1").arg(inSentence(designName(design))) : tr("remove border");
    const auto fault =
        document_.edit(what, entry::none, [&](Project& changed) { changed.board.border = border; });
    refresh();
    if (fault) {
        hindrance_->say(this, QStringLiteral("▲ ") + toQt(fault->text()));
    }
}

void BorderForm::refresh() {
    const Project& project = document_.project();
    const Border& border = project.board.border;
    designs_->refresh(project);
    hindrance_->unsay(this);
    const QString hindrance =
        border.isThere() ? designHindrance(border.design, project.board) : QString();
    if (!hindrance.isEmpty()) {
        hindrance_->say(this, tr("▲ %1. Choose another design.").arg(hindrance));
    }
    details_->setVisible(border.isThere());
    if (!border.isThere()) {
        return;
    }
    for (LengthField* field : {width_, gap_}) {
        field->setNotation(project.notation);
    }
    width_->setValue(border.width);
    fillWoods(*wood_, project.woods, border.wood);
    floating_->setVisible(border.has(BorderDesign::FloatingFrame));
    housing_->setCurrent(border.housing == Housing::Groove ? 0 : 1);
    gapFrom_->setCurrent(border.gap ? 1 : 0);
    gapRow_->setVisible(border.gap.has_value());
    if (border.gap) {
        gap_->setValue(*border.gap);
    }
    refreshExtra(inlay_, border.inlayWidth, border.inlayWood, border.width);
    refreshExtra(splines_, border.splineThickness, border.splineWood, BoardLimits::greatestSpline);
    refreshCaution();
    refreshFit();
}

void BorderForm::refreshExtra(const Extra& extra, Length size, int wood, Length greatest) {
    const Project& project = document_.project();
    const bool frame = project.board.border.isFrame();
    extra.wanted->setVisible(frame);
    extra.wanted->setChecked(size > Length());
    extra.rows->setVisible(frame && size > Length());
    extra.size->setNotation(project.notation);
    extra.size->setRange(Length::um(500), greatest);
    if (size > Length()) {
        extra.size->setValue(size);
        fillWoods(*extra.wood, project.woods, wood);
    }
}

void BorderForm::refreshCaution() {
    const Project& project = document_.project();
    const bool binds = bindsTheField(project.board);
    caution_->unsay(this);
    read_->setVisible(binds);
    read_->setChecked(project.board.border.cautionRead);
    float_->setVisible(binds);
    if (!binds) {
        return;
    }
    QString moves = tr("The field moves with the seasons");
    const PlannedPtr planned = planner_.last();
    if (planned && planner_.state() == Planner::State::Current) {
        const FieldSeason& season = planned->job.season;
        // Nothing is cut to these: the nearest step of the notation is fine enough.
        const auto inWords = [&](Length length) {
            const Length step = project.notation.step();
            const Length up = roundedUp(length, step);
            return toQt(format(up - length > half(step) ? up - step : up, project.notation));
        };
        moves = tr("From the driest season to the dampest the field may move by %1 from left to "
                   "right and %2 from top to bottom")
                    .arg(inWords(season.growthX + season.shrinkageX),
                         inWords(season.growthY + season.shrinkageY));
    }
    caution_->say(this, tr("▲ %1, and long grain does not. Rails that are glued to it burst their "
                           "joints, or crack the field.")
                            .arg(moves));
}

void BorderForm::focusGap() {
    if (gapRow_->isVisible()) {
        gap_->focusEntry();
        return;
    }
    for (auto* choice : gapFrom_->findChildren<QAbstractButton*>()) {
        if (choice->isChecked()) {
            choice->setFocus(Qt::OtherFocusReason);
        }
    }
}

void BorderForm::refreshFit() {
    const bool current = planner_.state() == Planner::State::Current && planner_.last();
    fit_->show(current ? planner_.last() : PlannedPtr());
}

}  // namespace kerfwright
