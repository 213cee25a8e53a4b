#include "ui/window/panels.h"

#include <QApplication>
#include <QSettings>
#include <QSplitter>
#include <QStackedWidget>
#include <QWidget>

#include <algorithm>
#include <vector>

namespace kerfwright {

namespace {

constexpr int wishWidth = 316;
constexpr int leastWish = 288;
constexpr int leastBench = 300;
constexpr int narrowBench = 352;
constexpr int wideBench = 400;
constexpr int widestSnug = 432;
constexpr int roomyBench = 480;
constexpr int leastBoard = 400;  // a board beside which a panel is worth having

QString settingsKey() {
    return QStringLiteral("panels");
}

/// The first widget in `panel` that takes the focus by key.
QWidget* firstStop(QWidget& panel) {
    for (QWidget* next = panel.nextInFocusChain(); next != &panel;
         next = next->nextInFocusChain()) {
        if (panel.isAncestorOf(next) && next->isVisible() && next->isEnabled() &&
            (next->focusPolicy() & Qt::TabFocus) == Qt::TabFocus && next->focusProxy() == nullptr) {
            return next;
        }
    }
    return nullptr;
}

}  // namespace

Panels::Panels(QSplitter& splitter, QWidget& wish, QWidget& board, QWidget& bench)
    : QObject(&splitter)
    , splitter_(splitter)
    , board_(board)
    , panels_{Panel{&wish, true, wishWidth}, Panel{&bench, true, 0}} {
    connect(&splitter, &QSplitter::splitterMoved, this,
            [this](int, int handle) { panels_[handle == 1 ? Wish : Bench].own = true; });
    wish.setMinimumWidth(leastWish);
    bench.setMinimumWidth(leastBench);
    const int benchWidth = usualWidth(Bench, width_);
    panels_[Bench].width = benchWidth;
    splitter_.setSizes({wishWidth, width_ - wishWidth - benchWidth, benchWidth});
    for (int i = 0; i < splitter_.count(); ++i) {
        splitter_.setStretchFactor(i, i == 1 ? 1 : 0);
    }
}

int Panels::usualWidth(Side side, int window) const {
    constexpr int roomy = 1280;
    if (side == Wish) {
        return window >= roomy ? wishWidth : leastWish;
    }
    // Wide enough for planks where the window has the room; and for the tabs in any language, as
    // far as that leaves room for the board.
    return window >= roomy ? std::clamp(easyBench_, wideBench, roomyBench)
                           : std::clamp(snugBench_, narrowBench, widestSnug);
}

void Panels::setRoomOfBench(int least, int comfortable) {
    snugBench_ = least;
    easyBench_ = comfortable;
    Panel& bench = panels_[Bench];
    bench.width = usualWidth(Bench, width_);
    splitter_.setSizes({wishWidth, width_ - wishWidth - bench.width, bench.width});
}

bool Panels::isOpen(Side side) const {
    return !panels_[side].widget->isHidden();
}

QWidget& Panels::middle() const {
    return place_ != nullptr ? *place_->currentWidget() : board_;
}

int Panels::room() const {
    if (width_ >= leastWish + leastBoard + leastBench) {
        return 2;
    }
    return width_ >= leastBench + leastBoard ? 1 : 0;
}

void Panels::setOpen(Side side, bool open) {
    panels_[side].wanted = open;
    if (open) {
        latest_ = side;
    }
    apply();
    // In a window that is too narrow for board and panel, the board makes way when it is asked to.
    if (open && !isOpen(side)) {
        panels_[side].widget->show();
        Q_EMIT changed();
    }
}

void Panels::fitInto(int width) {
    const int before = room();
    bool moves = false;
    for (const Side side : {Wish, Bench}) {
        Panel& panel = panels_[side];
        if (!panel.own) {
            panel.width = usualWidth(side, width);
            moves = moves || (isOpen(side) && panel.widget->width() != panel.width);
        } else if (isOpen(side)) {
            panel.width = panel.widget->width();
        }
    }
    width_ = width;
    if (room() != before) {
        apply();
    } else if (moves) {
        const int wish = isOpen(Wish) ? panels_[Wish].width : 0;
        const int bench = isOpen(Bench) ? panels_[Bench].width : 0;
        splitter_.setSizes({wish, std::max(0, width_ - wish - bench), bench});
    }
}

void Panels::apply() {
    int left = room();
    std::array<bool, 2> open{};
    for (const Side side : {latest_, latest_ == Wish ? Bench : Wish}) {
        open[side] = panels_[side].wanted && left > 0;
        left -= open[side] ? 1 : 0;
    }
    const QList<int> sizes = splitter_.sizes();
    bool moved = false;
    for (const Side side : {Wish, Bench}) {
        Panel& panel = panels_[side];
        if (open[side] == isOpen(side)) {
            continue;
        }
        moved = true;
        if (!open[side]) {
            // In a window that is not shown yet nothing has got its width.
            if (panel.widget->isVisible()) {
                panel.width = std::max(panel.widget->minimumWidth(), panel.widget->width());
            }
            // What is folded away cannot keep the focus.
            if (panel.widget->isAncestorOf(QApplication::focusWidget())) {
                middle().setFocus(Qt::OtherFocusReason);
            }
        }
        panel.widget->setVisible(open[side]);
    }
    if (moved) {
        const int wish = open[Wish] ? panels_[Wish].width : 0;
        const int bench = open[Bench] ? panels_[Bench].width : 0;
        splitter_.setSizes({wish, std::max(0, width_ - wish - bench), bench});
        Q_EMIT changed();
    }
}

void Panels::goOn(bool forward) {
    std::vector<QWidget*> stops;
    QWidget* const board = &middle();
    for (QWidget* stop : {panels_[Wish].widget, board, panels_[Bench].widget}) {
        if (stop->isVisible()) {
            stops.push_back(stop);
        }
    }
    if (stops.empty()) {
        return;
    }
    const QWidget* focus = QApplication::focusWidget();
    const auto here = std::find_if(stops.begin(), stops.end(), [focus](const QWidget* stop) {
        return stop == focus || stop->isAncestorOf(focus);
    });
    const auto count = std::ssize(stops);
    // From elsewhere, the tool bar or what is below the board, the way leads to the board first.
    auto next = std::find(stops.begin(), stops.end(), board) - stops.begin();
    if (here != stops.end()) {
        next = (here - stops.begin() + (forward ? 1 : count - 1)) % count;
    }
    QWidget* panel = stops[static_cast<std::size_t>(next)];
    QWidget* stop = panel;
    if (panel != board) {
        // Back to where one was in it.
        QWidget* last = panel->focusWidget();
        stop = last != nullptr && last->isVisible() && last->isEnabled() ? last : firstStop(*panel);
    }
    if (stop != nullptr) {
        stop->setFocus(Qt::TabFocusReason);
    }
}

void Panels::widen(int by) {
    QList<int> sizes = splitter_.sizes();
    for (const Side side : {Wish, Bench}) {
        if (panels_[side].widget->isAncestorOf(QApplication::focusWidget())) {
            const int at = splitter_.indexOf(panels_[side].widget);
            const int least = panels_[side].widget->minimumWidth();
            const int change = std::max(by, least - sizes[at]);
            panels_[side].own = true;
            sizes[at] += change;
            sizes[1] -= change;
            splitter_.setSizes(sizes);
        }
    }
}

void Panels::save() const {
    QStringList kept;
    for (const Panel& panel : panels_) {
        kept << (panel.wanted ? QStringLiteral("open") : QStringLiteral("folded"))
             << QString::number(panel.widget->isVisible() ? panel.widget->width() : panel.width);
    }
    QSettings().setValue(settingsKey(), kept);
}

void Panels::restore() {
    const QStringList kept = QSettings().value(settingsKey()).toStringList();
    if (kept.size() != 4) {
        return;
    }
    for (const Side side : {Wish, Bench}) {
        Panel& panel = panels_[side];
        panel.wanted = kept[side * 2] == QStringLiteral("open");
        panel.width =
            std::clamp(kept[side * 2 + 1].toInt(), panel.widget->minimumWidth(), width_ / 2);
        // What a splitter shares out is a pixel or two off.
        constexpr int off = 3;
        panel.own = std::abs(panel.width - usualWidth(side, width_)) > off;
    }
    splitter_.setSizes({panels_[Wish].width, width_ - panels_[Wish].width - panels_[Bench].width,
                        panels_[Bench].width});
    apply();
}

}  // namespace kerfwright
