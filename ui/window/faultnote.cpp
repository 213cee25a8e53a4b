#include "ui/window/faultnote.h"

#include "ui/window/tones.h"

#include <QPainter>

#include <algorithm>

namespace kerfwright {

FaultNote::FaultNote(QWidget* parent)
    : WrappedLabel(parent) {
    setAlignment(Qt::AlignTop | Qt::AlignLeft);
    setTextFormat(Qt::PlainText);
    refresh();
}

void FaultNote::rest(const QString& text) {
    if (text != rest_) {
        rest_ = text;
        refresh();
    }
}

void FaultNote::keepLines(int lines) {
    lines_ = lines;
    updateGeometry();
}

void FaultNote::say(const QObject* entry, const QString& words) {
    std::erase_if(said_, [entry](const auto& one) { return one.first == entry; });
    said_.emplace_back(entry, words);
    refresh();
}

void FaultNote::unsay(const QObject* entry) {
    std::erase_if(said_, [entry](const auto& one) { return one.first == entry; });
    refresh();
}

QSize FaultNote::minimumSizeHint() const {
    // The width is the form's to give; words wrap.
    return QSize(40, std::max(QLabel::minimumSizeHint().height(), keptHeight()));
}

QSize FaultNote::sizeHint() const {
    return QLabel::sizeHint().expandedTo(QSize(0, keptHeight()));
}

int FaultNote::heightForWidth(int width) const {
    return std::max(WrappedLabel::heightForWidth(width), keptHeight());
}

int FaultNote::keptHeight() const {
    return lines_ * fontMetrics().lineSpacing();
}

void FaultNote::paintEvent(QPaintEvent*) {
    // The palette has no colour for what is wrong.
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setPen(isSaying() ? tones.danger : tones.quiet);
    painter.drawText(contentsRect(), Qt::TextWordWrap | Qt::AlignTop | Qt::AlignLeft, text());
}

void FaultNote::refresh() {
    const QString text = isSaying() ? said_.back().second : rest_;
    setText(text);
    setVisible(!text.isEmpty());
}

}  // namespace kerfwright
