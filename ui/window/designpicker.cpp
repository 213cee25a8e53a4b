#include "ui/window/designpicker.h"

#include "ui/window/boardpainter.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"

#include <QGridLayout>
#include <QPainter>

#include <algorithm>
#include <array>

namespace kerfwright {

namespace {

constexpr int perRow = 3;
constexpr int nameHeight = 26;
constexpr std::array<DesignChoice, 6> designs{std::nullopt,
                                              BorderDesign::FloatingFrame,
                                              BorderDesign::FixedFrame,
                                              BorderDesign::EndGrainBand,
                                              BorderDesign::BreadboardEnds,
                                              BorderDesign::EdgeBand};

QString designAbout(DesignChoice design) {
    if (!design) {
        return DesignPicker::tr("The field alone");
    }
    switch (*design) {
    case BorderDesign::FloatingFrame:
        return DesignPicker::tr("Mitred rails with a gap: the field lies loose in them and moves");
    case BorderDesign::FixedFrame:
        return DesignPicker::tr("Mitred rails glued to the field, for a field that hardly moves");
    case BorderDesign::EndGrainBand:
        return DesignPicker::tr("A ring of end-grain pieces, glued with the field: they move "
                                "together");
    case BorderDesign::BreadboardEnds:
        return DesignPicker::tr("Two ends across the grain, pinned so that the field can move");
    case BorderDesign::EdgeBand:
        return DesignPicker::tr("Straight strips glued to edges, butted at the corners");
    }
    return QString();
}

/// Two by two squares, or stripes where the grain lies in the face.
void paintField(QPainter& painter, const QRectF& field, bool endGrain, const QColor& light,
                const QColor& dark) {
    painter.fillRect(field, light);
    const double w = field.width() / 2;
    const double h = field.height() / 2;
    if (endGrain) {
        painter.fillRect(QRectF(field.left(), field.top(), w, h), dark);
        painter.fillRect(QRectF(field.left() + w, field.top() + h, w, h), dark);
    } else {
        painter.fillRect(QRectF(field.left(), field.top() + h / 2, field.width(), h / 2), dark);
        painter.fillRect(QRectF(field.left(), field.top() + h * 1.5, field.width(), h / 2), dark);
    }
}

void paintRails(QPainter& painter, const QRectF& board, double rail, const QColor& wood,
                bool leftAndRight, bool topAndBottom) {
    painter.setPen(QPen(mixed(wood, readableOn(wood), 0.4), 1));
    painter.setBrush(wood);
    if (topAndBottom) {
        painter.drawRect(QRectF(board.left(), board.top(), board.width(), rail));
        painter.drawRect(QRectF(board.left(), board.bottom() - rail, board.width(), rail));
    }
    if (leftAndRight) {
        const double inset = topAndBottom ? rail : 0;
        const double height = board.height() - 2 * inset;
        painter.drawRect(QRectF(board.left(), board.top() + inset, rail, height));
        painter.drawRect(QRectF(board.right() - rail, board.top() + inset, rail, height));
    }
}

void paintMitred(QPainter& painter, const QRectF& board, double rail, const QColor& wood) {
    const QRectF inner = board.adjusted(rail, rail, -rail, -rail);
    painter.setPen(QPen(mixed(wood, readableOn(wood), 0.4), 1));
    painter.setBrush(wood);
    painter.drawPolygon(
        QPolygonF{board.topLeft(), board.topRight(), inner.topRight(), inner.topLeft()});
    painter.drawPolygon(
        QPolygonF{board.topRight(), board.bottomRight(), inner.bottomRight(), inner.topRight()});
    painter.drawPolygon(QPolygonF{board.bottomRight(), board.bottomLeft(), inner.bottomLeft(),
                                  inner.bottomRight()});
    painter.drawPolygon(
        QPolygonF{board.bottomLeft(), board.topLeft(), inner.topLeft(), inner.bottomLeft()});
}

/// A ring of pieces, four a side.
void paintBand(QPainter& painter, const QRectF& board, double rail, const QColor& wood) {
    paintRails(painter, board, rail, wood, true, true);
    const double step = (board.width() - 2 * rail) / 2;
    for (int i = 0; i <= 2; ++i) {
        const double x = board.left() + rail + i * step;
        painter.drawLine(QPointF(x, board.top()), QPointF(x, board.top() + rail));
        painter.drawLine(QPointF(x, board.bottom() - rail), QPointF(x, board.bottom()));
        const double y = board.top() + rail + i * step;
        painter.drawLine(QPointF(board.left(), y), QPointF(board.left() + rail, y));
        painter.drawLine(QPointF(board.right() - rail, y), QPointF(board.right(), y));
    }
}

}  // namespace

QString designName(DesignChoice design) {
    if (!design) {
        return DesignPicker::tr("None");
    }
    switch (*design) {
    case BorderDesign::FloatingFrame:
        return DesignPicker::tr("Floating");
    case BorderDesign::FixedFrame:
        return DesignPicker::tr("Fixed");
    case BorderDesign::EndGrainBand:
        return DesignPicker::tr("Band");
    case BorderDesign::BreadboardEnds:
        return DesignPicker::tr("Breadboard");
    case BorderDesign::EdgeBand:
        return DesignPicker::tr("Edge band");
    }
    return QString();
}

QString designHindrance(DesignChoice design, const Board& board) {
    if (design == BorderDesign::EndGrainBand && board.build == Build::LongGrain) {
        return DesignPicker::tr("A band of end grain goes round an end-grain field only");
    }
    if (design == BorderDesign::BreadboardEnds && board.build == Build::EndGrain) {
        return DesignPicker::tr("Breadboard ends go on a long-grain field only");
    }
    return QString();
}

DesignButton::DesignButton(DesignChoice design, QWidget* parent)
    : QAbstractButton(parent)
    , design_(design) {
    setText(designName(design));
    setAccessibleName(DesignPicker::tr("Border: %1").arg(text()));
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize DesignButton::minimumSizeHint() const {
    return QSize(fontMetrics().horizontalAdvance(text()) + 2, sizeHint().height());
}

void DesignButton::show(const Project& project, bool inForce) {
    const auto colour = [&](int wood) {
        return toQColor(project.woods[static_cast<std::size_t>(wood)].colour);
    };
    const int other = project.woods.size() > 1 ? 1 : 0;
    light_ = colour(0);
    dark_ = colour(other);
    rail_ = colour(project.board.border.wood);
    endGrain_ = project.board.build == Build::EndGrain;
    inForce_ = inForce;
    setAccessibleDescription(inForce ? DesignPicker::tr("In force. %1").arg(designAbout(design_))
                                     : designAbout(design_));
    const QString hindrance = designHindrance(design_, project.board);
    // What is in force stays within reach, whatever the build became since.
    setEnabled(hindrance.isEmpty() || inForce);
    setToolTip(hindrance.isEmpty() ? designAbout(design_) : hindrance);
    update();
}

void DesignButton::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF frame = QRectF(rect()).adjusted(1, 1, -1, -1);
    if (inForce_ || (underMouse() && isEnabled())) {
        painter.setPen(inForce_ ? QPen(tones.accent, 1.6) : QPen(tones.edge, 1));
        painter.setBrush(inForce_ ? tones.soft : tones.entry);
        painter.drawRoundedRect(frame.adjusted(2, 2, -2, -2), 5, 5);
    }
    if (hasFocus()) {
        paintFocusRing(painter, rect(), tones, 6);
    }
    painter.setPen(isEnabled() ? tones.text
                               : palette().color(QPalette::Disabled, QPalette::WindowText));
    painter.drawText(QRectF(0, height() - nameHeight, width(), nameHeight - 4), Qt::AlignCenter,
                     text());
    painter.setOpacity(isEnabled() ? 1 : 0.35);
    const double side = height() - nameHeight - 8.0;
    const QRectF board(std::round((width() - side) / 2) + 0.5, 6.5, side, side);
    const double rail = std::round(side * 0.17);
    const double gap = 3;
    if (!design_) {
        paintField(painter, board, endGrain_, light_, dark_);
        return;
    }
    const QRectF inner = board.adjusted(rail, rail, -rail, -rail);
    switch (*design_) {
    case BorderDesign::FloatingFrame:
        paintField(painter, inner.adjusted(gap, gap, -gap, -gap), endGrain_, light_, dark_);
        paintMitred(painter, board, rail, rail_);
        break;
    case BorderDesign::FixedFrame:
        paintField(painter, inner, endGrain_, light_, dark_);
        paintMitred(painter, board, rail, rail_);
        break;
    case BorderDesign::EndGrainBand:
        paintField(painter, inner, endGrain_, light_, dark_);
        paintBand(painter, board, rail, rail_);
        break;
    case BorderDesign::BreadboardEnds:
        paintField(painter, board.adjusted(rail, rail / 2, -rail, -rail / 2), endGrain_, light_,
                   dark_);
        paintRails(painter, board.adjusted(0, rail / 2, 0, -rail / 2), rail, rail_, true, false);
        break;
    case BorderDesign::EdgeBand:
        paintField(painter, endGrain_ ? inner : board.adjusted(0, rail, 0, -rail), endGrain_,
                   light_, dark_);
        paintRails(painter, board, rail, rail_, endGrain_, true);
        break;
    }
}

DesignPicker::DesignPicker(QWidget* parent)
    : QWidget(parent) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(2);
    int place = 0;
    for (const DesignChoice& design : designs) {
        auto* button = new DesignButton(design, this);
        button->setObjectName(QStringLiteral("design%1").arg(place));
        grid->addWidget(button, place / perRow, place % perRow);
        connect(button, &QAbstractButton::clicked, this, [this, design] { Q_EMIT chosen(design); });
        buttons_.push_back(button);
        ++place;
    }
}

void DesignPicker::refresh(const Project& project) {
    const Border& border = project.board.border;
    for (DesignButton* button : buttons_) {
        const DesignChoice design = button->design();
        button->show(project, design ? border.has(*design) : !border.isThere());
    }
}

}  // namespace kerfwright
