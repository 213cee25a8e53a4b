#include "ui/window/spotlightnote.h"

#include "ui/window/boardpainter.h"
#include "ui/window/spotlight.h"
#include "ui/window/tones.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QToolButton>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int fromEdge = 10;
constexpr int widestNote = 420;

}  // namespace

SpotlightNote::SpotlightNote(Spotlight& spotlight, QWidget& board)
    : QFrame(&board)
    , spotlight_(spotlight)
    , board_(board) {
    setObjectName(QStringLiteral("spotlightNote"));
    hide();
    board.installEventFilter(this);
    connect(&spotlight, &Spotlight::changed, this, &SpotlightNote::refresh);
}

QString SpotlightNote::text() const {
    return isHidden() ? QString() : whole_;
}

void SpotlightNote::refresh() {
    const Subject::Kind kind = spotlight_.subject().kind;
    const bool wanted = kind != Subject::Kind::None && kind != Subject::Kind::Piece;
    if (wanted && words_ == nullptr) {
        setCursor(Qt::ArrowCursor);
        auto* row = new QHBoxLayout(this);
        row->setContentsMargins(10, 4, 4, 4);
        row->setSpacing(6);
        words_ = new QLabel(this);
        words_->setTextFormat(Qt::PlainText);
        letGo_ = new QToolButton(this);
        letGo_->setObjectName(QStringLiteral("letGo"));
        letGo_->setText(QStringLiteral("×"));
        letGo_->setAutoRaise(true);
        letGo_->setFocusPolicy(Qt::NoFocus);  // Esc does it from everywhere
        letGo_->setAccessibleName(tr("Let go"));
        letGo_->setToolTip(tr("Let go (Esc)"));
        connect(letGo_, &QToolButton::clicked, &spotlight_, &Spotlight::letGo);
        row->addWidget(words_);
        row->addWidget(letGo_);
    }
    setVisible(wanted);
    if (wanted) {
        whole_ = spotlight_.words();
        place();
        raise();
    }
}

void SpotlightNote::place() {
    const int room = std::min(widestNote, board_.width() - Rulers::left - 2 * fromEdge - 60);
    words_->setText(words_->fontMetrics().elidedText(whole_, Qt::ElideRight, std::max(40, room)));
    words_->setToolTip(words_->text() == whole_ ? QString() : whole_);
    setAccessibleName(whole_);
    resize(sizeHint());
    move(Rulers::left + fromEdge, board_.height() - height() - fromEdge);
}

void SpotlightNote::paintEvent(QPaintEvent*) {
    // With an edge of its own: in the dark it lies on wood as dark as the window.
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(tones.rim, 1));
    painter.setBrush(tones.entry);
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
}

bool SpotlightNote::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Resize && !isHidden()) {
        place();
    }
    return QFrame::eventFilter(watched, event);
}

}  // namespace kerfwright
