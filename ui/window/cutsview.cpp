#include "ui/window/cutsview.h"

#include "core/bench/trail.h"
#include "core/timber/timberwords.h"
#include "ui/document/text.h"
#include "ui/paint/painter.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"

#include <QApplication>
#include <QEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr double widestPlank = 40;    // mm that a plank takes down the page at most
constexpr std::size_t mostIdle = 40;  // planks shown that nothing is cut from

}  // namespace

CutsView::CutsView(QWidget* parent)
    : QAbstractScrollArea(parent) {
    setObjectName(QStringLiteral("plankCuts"));
    setLayoutDirection(Qt::LeftToRight);
    setAccessibleName(tr("Planks with their cuts"));
    setFrameShape(NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    viewport()->setBackgroundRole(QPalette::Window);
    viewport()->setMouseTracking(true);
    verticalScrollBar()->setSingleStep(24);
}

const Plank& CutsView::plankOf(const Shown& shown) const {
    return sawn_->project->timber.rack.planks[static_cast<std::size_t>(shown.rack)];
}

QString CutsView::plankLabel(int plank) const {
    return toQt(plankOf(planks_[static_cast<std::size_t>(plank)]).label);
}

void CutsView::setSawn(const SawnPtr& sawn) {
    if (sawn == sawn_) {
        return;
    }
    if (plank_ >= 0 && strip_ >= 0) {
        chosenName_ = stripName(plank_, strip_);
    }
    // A layout in the making may not have it yet.
    const QString strip = chosenName_;
    const QString plank =
        picked_ && plank_ >= 0 && plank_ < plankCount() ? plankLabel(plank_) : QString();
    sawn_ = sawn;
    plank_ = strip_ = -1;
    layOut();
    setFocusPolicy(plankCount() > 0 ? Qt::StrongFocus : Qt::NoFocus);
    for (int i = 0; i < plankCount(); ++i) {
        const auto& strips = planks_[static_cast<std::size_t>(i)].view.places.strips;
        for (int s = 0; s < static_cast<int>(strips.size()) && !strip.isEmpty(); ++s) {
            if (stripName(i, s) == strip) {
                plank_ = i;
                strip_ = s;
            }
        }
        if (strip.isEmpty() && plankLabel(i) == plank) {
            plank_ = i;
        }
    }
    if (plank_ < 0 && plankCount() > 0) {
        plank_ = 0;
    }
    place();
    report();
}

void CutsView::setStale(bool stale) {
    if (stale_ != stale) {
        stale_ = stale;
        viewport()->update();
    }
}

void CutsView::setFoot(QWidget* foot) {
    foot_ = foot;
    foot_->setParent(viewport());
    foot_->installEventFilter(this);
    foot_->show();
    connect(qApp, &QApplication::focusChanged, this,
            [this](const QWidget*, const QWidget* now) { showInFoot(now); });
    place();
}

/// Draws every plank anew: for another layout, or another width.
void CutsView::layOut() {
    planks_.clear();
    names_.clear();
    if (!sawn_) {
        place();
        return;
    }
    const Project& project = *sawn_->project;
    const TimberPlan& plan = sawn_->plan;
    names_ = stripLabels(plan.layout, plan.demand);
    PlankLook look;
    look.dimensions = false;
    const double room = (viewport()->width() - 2 * cutsSide) / cutsScale;
    if (room < 10) {
        return;
    }
    Rack all = project.timber.rack;
    look.scale = scaleOf(all, plan.layout, plan.demand, room, look.type, widestPlank);
    std::vector<bool> used(all.planks.size(), false);
    for (const int number : cuttingOrder(plan.layout, plan.cuts)) {
        const auto i = static_cast<std::size_t>(number);
        const PlankCuts& cuts = plan.layout.planks[i];
        const auto index = static_cast<std::size_t>(cuts.plank);
        used[index] = true;
        Shown shown;
        shown.cut = static_cast<int>(i);
        shown.rack = cuts.plank;
        const PlankMatter matter{all.planks[index],   project.woods,
                                 project.notation,    &cuts,
                                 &plan.demand,        &names_[i],
                                 static_cast<int>(i), sawn_->isFinal ? &plan.cuts : nullptr};
        shown.view = drawPlank(matter, look);
        if (sawn_->isFinal) {
            shown.rows = cutRows(plan.layout, plan.cuts, names_, static_cast<int>(i));
        }
        planks_.push_back(std::move(shown));
    }
    std::size_t idle = 0;
    for (std::size_t i = 0; i < used.size() && idle < mostIdle; ++i) {
        const bool wanted = std::any_of(
            plan.demand.strips.begin(), plan.demand.strips.end(),
            [&](const WantedStrips& strips) { return strips.wood == all.planks[i].wood; });
        if (used[i] || !wanted) {
            continue;
        }
        ++idle;
        Shown shown;
        shown.rack = static_cast<int>(i);
        PlankLook own = look;
        own.scale.along = std::min(own.scale.along, room / all.planks[i].length.toMm());
        if (plan.layout.planks.empty()) {
            own.scale = scaleOf(all.planks, room, look.type, widestPlank);
        }
        shown.view = drawPlank({all.planks[i], project.woods, project.notation}, own);
        planks_.push_back(std::move(shown));
    }
    place();
}

int CutsView::listHeight(const Shown& shown) const {
    return static_cast<int>(shown.rows.size()) * (QFontMetrics(smallFont(font())).height() + 5);
}

/// Puts the planks one below the other; the list of cuts stands below the chosen one.
void CutsView::place() {
    const int line = fontMetrics().height();
    int y = 8;
    for (std::size_t i = 0; i < planks_.size(); ++i) {
        Shown& shown = planks_[i];
        if (shown.cut < 0 && (i == 0 || planks_[i - 1].cut >= 0)) {
            y += line + 10;  // heading over the planks that stay whole
        }
        shown.top = y;
        shown.corner = QPointF(cutsSide, y + line + 6);
        y = static_cast<int>(shown.corner.y() + shown.view.drawing.extent.height * cutsScale);
        if (static_cast<int>(i) == plank_ && !shown.rows.empty()) {
            y += 8 + listHeight(shown);
        }
        shown.bottom = y;
        y += cutsGap;
    }
    if (foot_ != nullptr) {
        const int wide = viewport()->width();
        footHeight_ =
            foot_->hasHeightForWidth() ? foot_->heightForWidth(wide) : foot_->sizeHint().height();
        y += footHeight_;
    }
    height_ = y;
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setRange(0, std::max(0, height_ - viewport()->height()));
    placeFoot();
    viewport()->update();
}

void CutsView::placeFoot() {
    if (foot_ != nullptr) {
        foot_->setGeometry(0, height_ - footHeight_ - verticalScrollBar()->value(),
                           viewport()->width(), footHeight_);
    }
}

void CutsView::scrollContentsBy(int dx, int dy) {
    QAbstractScrollArea::scrollContentsBy(dx, dy);
    placeFoot();
}

bool CutsView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == foot_ && event->type() == QEvent::LayoutRequest) {
        place();
    }
    return QAbstractScrollArea::eventFilter(watched, event);
}

/// Where the keys come to something in the foot, it is in sight.
void CutsView::showInFoot(const QWidget* focus) {
    if (focus == nullptr || !foot_->isAncestorOf(focus)) {
        return;
    }
    constexpr int around = 8;
    QScrollBar* bar = verticalScrollBar();
    const int top = focus->mapTo(viewport(), QPoint()).y() - around;
    const int bottom = top + focus->height() + 2 * around;
    if (top < 0) {
        bar->setValue(bar->value() + top);
    } else if (bottom > viewport()->height()) {
        bar->setValue(bar->value() + bottom - viewport()->height());
    }
}

QRectF CutsView::plankRect(int plank) const {
    const Shown& shown = planks_[static_cast<std::size_t>(plank)];
    const kerfwright::Box& box = shown.view.places.plank;
    return QRectF(shown.corner + QPointF(box.x, box.y) * cutsScale,
                  QSizeF(box.width, box.height) * cutsScale)
        .translated(0, -verticalScrollBar()->value());
}

QRectF CutsView::stripRect(int plank, int strip) const {
    const Shown& shown = planks_[static_cast<std::size_t>(plank)];
    const kerfwright::Box& box = shown.view.places.strips[static_cast<std::size_t>(strip)].box;
    return QRectF(shown.corner + QPointF(box.x, box.y) * cutsScale,
                  QSizeF(box.width, box.height) * cutsScale)
        .translated(0, -verticalScrollBar()->value());
}

QString CutsView::stripName(int plank, int strip) const {
    const Shown& shown = planks_[static_cast<std::size_t>(plank)];
    const PlankSpot at = shown.view.places.strips[static_cast<std::size_t>(strip)].place;
    return toQt(names_[static_cast<std::size_t>(shown.cut)][static_cast<std::size_t>(at.first)]
                      [static_cast<std::size_t>(at.second)]);
}

const WantedStrips* CutsView::wantedOf(int plank, int strip) const {
    const Shown& shown = planks_[static_cast<std::size_t>(plank)];
    const PlankSpot at = shown.view.places.strips[static_cast<std::size_t>(strip)].place;
    const PlankCuts& cuts = sawn_->plan.layout.planks[static_cast<std::size_t>(shown.cut)];
    const LaidStrip& laid = cuts.sections[static_cast<std::size_t>(at.first)]
                                .strips[static_cast<std::size_t>(at.second)];
    return &sawn_->plan.demand.strips[static_cast<std::size_t>(laid.wanted)];
}

bool CutsView::takes(const Shown& shown, const WantedStrips& wanted) const {
    const Plank& plank = plankOf(shown);
    const CutRules rules = sawn_->plan.rules;
    if (wanted.length > plank.length) {
        return false;
    }
    for (const bool onEdge : {false, true}) {
        if (suits(wanted, plank, onEdge, rules) && acrossPlank(wanted, onEdge) <= plank.width) {
            return true;
        }
    }
    return false;
}

void CutsView::setMarked(const std::set<std::string>& parts) {
    if (parts == marked_) {
        return;
    }
    marked_ = parts;
    viewport()->update();
    int first = -1;
    for (int plank = 0; plank < plankCount() && !marked_.empty(); ++plank) {
        for (int strip = 0; strip < stripCount(plank); ++strip) {
            if (isMarked(plank, strip)) {
                first = first < 0 ? plank : first;
                if (stripRect(plank, strip).intersects(QRectF(viewport()->rect()))) {
                    return;
                }
            }
        }
    }
    if (first >= 0) {
        verticalScrollBar()->setValue(planks_[static_cast<std::size_t>(first)].top - 8);
    }
}

bool CutsView::isMarked(int plank, int strip) const {
    for (const std::string& part : partsNamed(fromQt(stripName(plank, strip)))) {
        if (marked_.contains(part)) {
            return true;
        }
    }
    return false;
}

void CutsView::letGo() {
    if (strip_ >= 0) {
        choose(plank_, -1);
    }
}

void CutsView::tellChosen() {
    if (plank_ >= 0 && strip_ >= 0) {
        Q_EMIT stripChosen(stripName(plank_, strip_));
    } else if (plank_ >= 0) {
        Q_EMIT plankChosen(plankLabel(plank_));
    }
}

void CutsView::resizeEvent(QResizeEvent*) {
    layOut();
}

void CutsView::changeEvent(QEvent* event) {
    QAbstractScrollArea::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) {
        place();
    }
}

void CutsView::choose(int plank, int strip) {
    picked_ = true;
    chosenName_.clear();
    if (plank == plank_ && strip == strip_) {
        return;
    }
    // The list of cuts goes from one plank to the other; what is looked at stays where it is.
    const int before =
        plank >= 0 && plank < plankCount() ? planks_[static_cast<std::size_t>(plank)].top : 0;
    plank_ = plank;
    strip_ = strip;
    place();
    if (plank >= 0 && plank < plankCount()) {
        QScrollBar* bar = verticalScrollBar();
        bar->setValue(bar->value() + planks_[static_cast<std::size_t>(plank)].top - before);
    }
    report();
}

/// Tells screen readers what is chosen.
void CutsView::report() {
    if (!sawn_ || plank_ < 0 || plank_ >= plankCount()) {
        setAccessibleDescription(QString());
        return;
    }
    const Shown& shown = planks_[static_cast<std::size_t>(plank_)];
    QString words = toQt(plankWords(plankOf(shown), sawn_->project->woods));
    if (strip_ >= 0) {
        const WantedStrips* wanted = wantedOf(plank_, strip_);
        words = tr("Strip %1, %2, on plank %3")
                    .arg(stripName(plank_, strip_),
                         toQt(sizeWords(*wanted, sawn_->project->notation)), words);
    } else {
        words += QStringLiteral(". ") + counted(static_cast<qsizetype>(shown.rows.size()),
                                                tr("%1 line of cuts"), tr("%1 lines of cuts"));
        for (const CutRow& row : shown.rows) {
            words += QStringLiteral(". ") +
                     toQt(numberWords(row) + " " + cutName(row.kind) + ", " +
                          settingWords(row, sawn_->project->notation) + ": " + row.what);
        }
    }
    setAccessibleDescription(words);
}

void CutsView::showChosen() {
    if (plank_ < 0) {
        return;
    }
    const Shown& shown = planks_[static_cast<std::size_t>(plank_)];
    QScrollBar* bar = verticalScrollBar();
    if (shown.top < bar->value()) {
        bar->setValue(shown.top - 8);
    } else if (shown.bottom > bar->value() + viewport()->height()) {
        bar->setValue(std::min(shown.top - 8, shown.bottom - viewport()->height() + 8));
    }
}

}  // namespace kerfwright
