// The mouse and the keys of the planks with their cuts, and what can be done with a strip.
#include "core/timber/timberwords.h"
#include "ui/document/text.h"
#include "ui/window/cutsview.h"

#include <QApplication>
#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QScrollBar>
#include <QToolTip>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int edgeReach = 36;  // pixels from the edge at which dragging scrolls

}  // namespace

std::pair<int, int> CutsView::stripAt(QPointF at) const {
    for (int i = 0; i < plankCount(); ++i) {
        const auto& strips = planks_[static_cast<std::size_t>(i)].view.places.strips;
        for (int s = 0; s < static_cast<int>(strips.size()); ++s) {
            if (stripRect(i, s).contains(at)) {
                return {i, s};
            }
        }
    }
    return {-1, -1};
}

int CutsView::plankAt(QPointF at) const {
    const double y = at.y() + verticalScrollBar()->value();
    for (int i = 0; i < plankCount(); ++i) {
        const Shown& shown = planks_[static_cast<std::size_t>(i)];
        if (y >= shown.top - 4 && y <= shown.bottom + 4) {
            return i;
        }
    }
    return -1;
}

void CutsView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        return;
    }
    const auto [plank, strip] = stripAt(event->position());
    from_ = at_ = event->position();
    if (plank >= 0) {
        pressed_ = true;
        choose(plank, strip);
        pressedScroll_ = verticalScrollBar()->value();
        // At the very top and bottom there is no room to scroll.
        const QRectF now = stripRect(plank, strip);
        if (!now.contains(from_)) {
            from_ = at_ = now.center();
        }
        tellChosen();
    } else if (plankAt(event->position()) >= 0) {
        choose(plankAt(event->position()), -1);
        tellChosen();
    }
}

void CutsView::mouseMoveEvent(QMouseEvent* event) {
    if (!pressed_) {
        viewport()->setCursor(stripAt(event->position()).first >= 0 ? Qt::OpenHandCursor
                                                                    : Qt::ArrowCursor);
        return;
    }
    at_ = event->position();
    dragging_ = dragging_ || (at_ - from_).manhattanLength() >= QApplication::startDragDistance();
    if (dragging_) {
        viewport()->setCursor(Qt::ClosedHandCursor);
        QScrollBar* bar = verticalScrollBar();
        if (at_.y() < edgeReach) {
            bar->setValue(bar->value() - 12);
        } else if (at_.y() > viewport()->height() - edgeReach) {
            bar->setValue(bar->value() + 12);
        }
        viewport()->update();
    }
}

void CutsView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !pressed_) {
        return;
    }
    pressed_ = false;
    const bool dropped = dragging_;
    dragging_ = false;
    viewport()->update();
    const int target = dropped ? plankAt(event->position()) : -1;
    if (target >= 0) {
        // Dropped on its own plank it stays there for good.
        Q_EMIT pinAsked(stripName(plank_, strip_), plankLabel(target));
    }
}

void CutsView::keyPressEvent(QKeyEvent* event) {
    // Keys that an entry of the foot has no use for are not meant for the planks.
    const bool inFoot = foot_ != nullptr && foot_->isAncestorOf(QApplication::focusWidget());
    if (plankCount() == 0 || inFoot) {
        event->ignore();
        return;
    }
    const auto strips = [this](int plank) {
        return static_cast<int>(planks_[static_cast<std::size_t>(plank)].view.places.strips.size());
    };
    int plank = std::max(plank_, 0);
    int strip = strip_;
    switch (event->key()) {
    case Qt::Key_Down:
        plank = plank_ < 0 ? 0 : std::min(plank + 1, plankCount() - 1);
        strip = -1;
        break;
    case Qt::Key_Up:
        plank = std::max(plank - 1, 0);
        strip = -1;
        break;
    case Qt::Key_Right:
        if (strip + 1 < strips(plank)) {
            ++strip;
        } else if (plank + 1 < plankCount() && strips(plank + 1) > 0) {
            ++plank;
            strip = 0;
        }
        break;
    case Qt::Key_Left:
        if (strip > 0) {
            --strip;
        } else if (plank > 0 && strips(plank - 1) > 0) {
            --plank;
            strip = strips(plank) - 1;
        }
        break;
    case Qt::Key_Escape:
        strip = -1;
        if (dragging_) {
            dragging_ = pressed_ = false;
            viewport()->update();
            return;
        }
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (QMenu* menu = stripMenu()) {
            menu->popup(viewport()->mapToGlobal(stripRect(plank_, strip_).center().toPoint()));
        }
        return;
    case Qt::Key_Delete:
        if (strip_ >= 0) {
            Q_EMIT unpinAsked(stripName(plank_, strip_));
        }
        return;
    default:
        QAbstractScrollArea::keyPressEvent(event);
        return;
    }
    choose(plank, strip);
    showChosen();
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
    } else {
        tellChosen();
    }
}

QMenu* CutsView::stripMenu() {
    if (!sawn_ || plank_ < 0 || strip_ < 0) {
        return nullptr;
    }
    constexpr int mostPlanks = 24;
    const QString strip = stripName(plank_, strip_);
    auto* menu = new QMenu(this);
    menu->setObjectName(QStringLiteral("stripMenu"));
    menu->setAttribute(Qt::WA_DeleteOnClose);
    if (!wantedOf(plank_, strip_)->plank.empty()) {
        connect(menu->addAction(tr("Unpin %1").arg(strip)), &QAction::triggered, this,
                [this, strip] { Q_EMIT unpinAsked(strip); });
        menu->addSeparator();
    }
    const auto offer = [&](const QString& words, const QString& plank) {
        connect(menu->addAction(words), &QAction::triggered, this,
                [this, strip, plank] { Q_EMIT pinAsked(strip, plank); });
    };
    offer(tr("Pin here, to %1").arg(plankLabel(plank_)), plankLabel(plank_));
    int offered = 0;
    for (int i = 0; i < plankCount() && offered < mostPlanks; ++i) {
        if (i != plank_ && takes(planks_[static_cast<std::size_t>(i)], *wantedOf(plank_, strip_))) {
            offer(tr("Pin to %1").arg(plankLabel(i)), plankLabel(i));
            ++offered;
        }
    }
    return menu;
}

void CutsView::contextMenuEvent(QContextMenuEvent* event) {
    if (event->reason() == QContextMenuEvent::Mouse) {
        const auto [plank, strip] = stripAt(viewport()->mapFrom(this, event->pos()));
        if (plank < 0) {
            return;
        }
        choose(plank, strip);
    }
    if (QMenu* menu = stripMenu()) {
        menu->popup(event->reason() == QContextMenuEvent::Mouse
                        ? event->globalPos()
                        : viewport()->mapToGlobal(stripRect(plank_, strip_).center().toPoint()));
    }
}

bool CutsView::viewportEvent(QEvent* event) {
    if (event->type() == QEvent::ToolTip && sawn_) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const auto [plank, strip] = stripAt(help->pos());
        if (plank >= 0) {
            const WantedStrips* wanted = wantedOf(plank, strip);
            QToolTip::showText(help->globalPos(),
                               tr("%1: %2. Drag it to another plank to pin it there.")
                                   .arg(stripName(plank, strip),
                                        toQt(sizeWords(*wanted, sawn_->project->notation))),
                               viewport());
        } else {
            QToolTip::hideText();
        }
        return true;
    }
    return QAbstractScrollArea::viewportEvent(event);
}

}  // namespace kerfwright
