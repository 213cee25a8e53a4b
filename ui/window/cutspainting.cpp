// How planks with their cuts are painted.
#include "core/timber/timberwords.h"
#include "ui/document/text.h"
#include "ui/paint/painter.h"
#include "ui/window/cutsview.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"

#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace kerfwright {

void CutsView::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(viewport());
    painter.setLayoutDirection(layoutDirection());
    painter.setRenderHint(QPainter::Antialiasing);
    if (stale_) {
        painter.setOpacity(0.6);
    }
    painter.translate(0, -verticalScrollBar()->value());
    const int from = verticalScrollBar()->value();
    const int to = from + viewport()->height();
    for (std::size_t i = 0; i < planks_.size(); ++i) {
        const Shown& shown = planks_[i];
        if (shown.bottom + cutsGap >= from && shown.top - 40 <= to) {
            paintPlank(painter, shown, static_cast<int>(i));
        }
    }
    if (dragging_ && plank_ >= 0 && strip_ >= 0) {
        painter.setOpacity(1);
        QRectF ghost = stripRect(plank_, strip_).translated(0, verticalScrollBar()->value());
        ghost.translate(at_ - from_);
        ghost.translate(0, verticalScrollBar()->value() - pressedScroll_);
        painter.setPen(QPen(tones.accent, 1.5));
        QColor ground = tones.accent;
        ground.setAlpha(90);
        painter.setBrush(ground);
        painter.drawRect(ghost);
        painter.setPen(tones.text);
        painter.drawText(ghost.adjusted(4, -30, 200, 30), Qt::AlignVCenter,
                         stripName(plank_, strip_));
    }
}

void CutsView::paintPlank(QPainter& painter, const Shown& shown, int number) const {
    const Tones tones = tonesOf(palette());
    const Project& project = *sawn_->project;
    const Plank& plank = plankOf(shown);
    const int line = fontMetrics().height();
    const int right = viewport()->width() - cutsSide;
    const QFont small = smallFont(font());
    if (shown.cut < 0 && (number == 0 || planks_[static_cast<std::size_t>(number) - 1].cut >= 0)) {
        painter.setFont(small);
        painter.setPen(tones.quiet);
        painter.drawText(QRect(cutsSide, shown.top - line - 10, right - cutsSide, line),
                         Qt::AlignVCenter, tr("Nothing is cut from these"));
    }
    const QString size = toQt(sizeWords(plank, project.notation));
    const int sizeWidth = QFontMetrics(small).horizontalAdvance(size);
    painter.setFont(small);
    painter.setPen(tones.quiet);
    painter.drawText(QRect(right - sizeWidth, shown.top, sizeWidth + 1, line), Qt::AlignVCenter,
                     size);
    QFont bold = font();
    bold.setBold(true);
    painter.setFont(bold);
    painter.setPen(tones.text);
    const int room = right - cutsSide - sizeWidth - 10;
    painter.drawText(QRect(cutsSide, shown.top, room, line), Qt::AlignVCenter,
                     QFontMetrics(bold).elidedText(toQt(plankWords(plank, project.woods)),
                                                   Qt::ElideRight, room));
    painter.save();
    painter.translate(shown.corner);
    painter.scale(cutsScale, cutsScale);
    paint(painter, shown.view.drawing, windowTheme(tones.dark));
    painter.restore();
    const int scrolled = verticalScrollBar()->value();
    paintMarks(painter, shown, number);
    painter.setBrush(Qt::NoBrush);
    if (number == plank_ && strip_ >= 0) {
        painter.setPen(QPen(tones.accent, 2.5));
        painter.drawRect(stripRect(number, strip_).translated(0, scrolled));
    } else if (number == plank_ && hasFocus()) {
        painter.setPen(QPen(tones.accent, 2));
        painter.drawRect(plankRect(number).translated(0, scrolled).adjusted(-3.5, -3.5, 3.5, 3.5));
    }
    if (dragging_ && number != plank_) {
        const bool good = takes(shown, *wantedOf(plank_, strip_));
        if (plankAt(at_) == number) {
            painter.setPen(
                QPen(good ? tones.accent : tones.danger, 2.5, good ? Qt::SolidLine : Qt::DashLine));
            painter.drawRect(plankRect(number).translated(0, scrolled).adjusted(-3, -3, 3, 3));
        }
    }
    if (number != plank_ || shown.rows.empty()) {
        return;
    }
    // The cuts in words: number, what the saw is set to, what comes off.
    painter.setFont(small);
    const QFontMetrics metrics(small);
    const int pitch = metrics.height() + 5;
    int y = shown.bottom - listHeight(shown);
    const auto what = [&](const CutRow& row) {
        return row.set > Length()
                   ? tr("%1 at %2")
                         .arg(toQt(cutName(row.kind)), toQt(format(row.set, project.notation)))
                   : tr("%1, trim").arg(toQt(cutName(row.kind)));
    };
    int numbers = 0;
    int settings = 0;
    for (const CutRow& row : shown.rows) {
        numbers = std::max(numbers, metrics.horizontalAdvance(toQt(numberWords(row))));
        settings = std::max(settings, metrics.horizontalAdvance(what(row)));
    }
    QFont strong = small;
    strong.setBold(true);
    const int first = cutsSide + numbers + 14;
    const int second = first + settings + 14;
    for (const CutRow& row : shown.rows) {
        painter.setFont(strong);
        painter.setPen(tones.text);
        painter.drawText(QRect(cutsSide, y, numbers + 8, pitch), Qt::AlignVCenter,
                         toQt(numberWords(row)));
        painter.setFont(small);
        painter.drawText(QRect(first, y, settings + 2, pitch), Qt::AlignVCenter, what(row));
        painter.setPen(tones.quiet);
        painter.drawText(QRect(second, y, right - second, pitch), Qt::AlignVCenter,
                         metrics.elidedText(toQt(row.what), Qt::ElideRight, right - second));
        y += pitch;
    }
}

void CutsView::paintMarks(QPainter& painter, const Shown& shown, int number) const {
    if (marked_.empty()) {
        return;
    }
    const Tones tones = tonesOf(palette());
    QColor veil = tones.surface;
    veil.setAlpha(150);
    const int scrolled = verticalScrollBar()->value();
    const int strips = static_cast<int>(shown.view.places.strips.size());
    for (int strip = 0; strip < strips; ++strip) {
        const QRectF box = stripRect(number, strip).translated(0, scrolled);
        if (!isMarked(number, strip)) {
            painter.fillRect(box, veil);
            continue;
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(tones.accent, 2));
        painter.drawRect(box.adjusted(1, 1, -1, -1));
        painter.fillRect(QRectF(box.left(), box.top(), 5, box.height()), tones.accent);
    }
}

}  // namespace kerfwright
