#include "ui/window/sheetspreview.h"

#include "ui/document/text.h"
#include "ui/paint/painter.h"
#include "ui/window/boardpainter.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScopeGuard>
#include <QScrollBar>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr double margin = 16;   // pixels
constexpr double caption = 24;  // below a page

}  // namespace

SheetsPreview::SheetsPreview(QWidget* parent)
    : QAbstractScrollArea(parent)
    , emptyText_(tr("The sheets appear here once the board can be planned; what is in the way "
                    "stands above the steps.")) {
    setObjectName(QStringLiteral("sheets"));
    setLayoutDirection(Qt::LeftToRight);
    setAccessibleName(tr("Cut sheets"));
    setFrameShape(NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
}

void SheetsPreview::setEmptyText(const QString& text) {
    emptyText_ = text;
    viewport()->update();
}

void SheetsPreview::setPages(std::vector<Page> pages, Paper paper) {
    pages_ = std::move(pages);
    paper_ = paper;
    QStringList titles;
    for (const Page& page : pages_) {
        titles << toQt(page.title);
    }
    setAccessibleDescription(titles.join(QStringLiteral(", ")));
    layOut();
}

void SheetsPreview::layOut() {
    const double width = paperSize(paper_).width.toMm();
    scale_ = std::max(0.2, (viewport()->width() - 2 * margin) / width);
    const QRectF last = pages_.empty() ? QRectF() : pageRect(static_cast<int>(pages_.size()) - 1);
    const int content =
        static_cast<int>(last.bottom() + verticalScrollBar()->value() + caption + margin);
    verticalScrollBar()->setRange(0, std::max(0, content - viewport()->height()));
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(40);
    viewport()->update();
}

QRectF SheetsPreview::pageRect(int index) const {
    const PaperSize size = paperSize(paper_);
    const double height = size.height.toMm() * scale_;
    return QRectF(margin,
                  margin + index * (height + caption + margin) - verticalScrollBar()->value(),
                  size.width.toMm() * scale_, height);
}

void SheetsPreview::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    const Theme theme = paperTheme();
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), tones.surround);
    const QScopeGuard ring([&] {
        if (hasFocus()) {
            paintFocusRing(painter, viewport()->rect(), tones);
        }
    });
    if (pages_.empty()) {
        painter.setPen(tones.quiet);
        painter.drawText(viewport()->rect().adjusted(24, 32, -24, -24),
                         Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, emptyText_);
        return;
    }
    QFont small = font();
    small.setPixelSize(11);
    for (int i = 0; i < static_cast<int>(pages_.size()); ++i) {
        const QRectF rect = pageRect(i);
        if (!rect.adjusted(0, 0, 0, caption).intersects(QRectF(viewport()->rect()))) {
            continue;
        }
        const Page& page = pages_[static_cast<std::size_t>(i)];
        paintShadow(painter, rect, tones.dark);
        painter.fillRect(rect, theme.paper);
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.translate(rect.topLeft());
        painter.scale(scale_, scale_);
        paint(painter, page.drawing, theme);
        painter.restore();
        painter.setFont(small);
        painter.setPen(tones.quiet);
        painter.drawText(QRectF(rect.left(), rect.bottom() + 6, rect.width(), caption),
                         Qt::AlignHCenter | Qt::AlignTop,
                         tr("%1 of %2 · %3").arg(i + 1).arg(pages_.size()).arg(toQt(page.title)));
    }
}

void SheetsPreview::resizeEvent(QResizeEvent*) {
    layOut();
}

void SheetsPreview::focusInEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
}

void SheetsPreview::focusOutEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

void SheetsPreview::scrollContentsBy(int, int) {
    viewport()->update();
}

void SheetsPreview::keyPressEvent(QKeyEvent* event) {
    QScrollBar* bar = verticalScrollBar();
    switch (event->key()) {
    case Qt::Key_Down:
        bar->triggerAction(QScrollBar::SliderSingleStepAdd);
        break;
    case Qt::Key_Up:
        bar->triggerAction(QScrollBar::SliderSingleStepSub);
        break;
    case Qt::Key_PageDown:
    case Qt::Key_Space:
        bar->triggerAction(QScrollBar::SliderPageStepAdd);
        break;
    case Qt::Key_PageUp:
        bar->triggerAction(QScrollBar::SliderPageStepSub);
        break;
    case Qt::Key_Home:
        bar->setValue(0);
        break;
    case Qt::Key_End:
        bar->setValue(bar->maximum());
        break;
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

}  // namespace kerfwright
