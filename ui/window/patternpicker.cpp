#include "ui/window/patternpicker.h"

#include "ui/document/text.h"
#include "ui/window/boardpainter.h"
#include "ui/window/tones.h"

#include <QGridLayout>
#include <QPainter>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int perRow = 4;

/// How many squares of the board one brick or tile stands for.
struct Tile {
    int across = 1;
    int down = 1;
};

Tile tileOf(Pattern pattern) {
    switch (pattern) {
    case Pattern::Basket:
        return {3, 3};
    case Pattern::Bricks:
        return {2, 1};
    case Pattern::MortarBricks:
        return {3, 1};
    default:
        return {1, 1};
    }
}

/// `whole` in `parts` equal lengths, on a grid that can be measured.
Length partOf(Length whole, int parts, Length grid) {
    const Length part = Length::nm(whole.nm() / parts);
    return part * parts == whole ? part : Length::nm(part.nm() - part.nm() % grid.nm());
}

PatternRequest sample(Pattern pattern, const std::vector<int>& woods) {
    PatternRequest request;
    request.pattern = pattern;
    request.woods = woods;
    request.cellWidth = Length::mm(20);
    request.cellHeight = Length::mm(20);
    request.across = 6;
    request.down = 6;
    switch (pattern) {
    case Pattern::Bricks:
        request.across = 3;
        request.down = 6;
        request.cellWidth = Length::mm(40);
        break;
    case Pattern::MortarBricks:
        request.across = 3;
        request.down = 5;
        request.cellWidth = Length::mm(40);
        request.cellHeight = Length::mm(24);
        break;
    case Pattern::Basket:
        request.across = 3;
        request.down = 3;
        request.cellWidth = Length::mm(42);
        request.cellHeight = Length::mm(42);
        break;
    case Pattern::NestedSquares:
        request.across = 7;
        request.down = 7;
        break;
    default:
        break;
    }
    return request;
}

}  // namespace

PatternButton::PatternButton(const PatternInfo& info, QWidget* parent)
    : QAbstractButton(parent) {
    const QString name = toQt(info.name);
    setText(name);
    setObjectName(QStringLiteral("pattern-") + toQt(info.key));
    setAccessibleName(name);
    setAccessibleDescription(toQt(info.about));
    setToolTip(name + QStringLiteral(" – ") + toQt(info.about));
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void PatternButton::show(const Field& field, const std::vector<Wood>& woods, bool inForce) {
    board_ = Board();
    board_.field = field;
    woods_ = woods;
    inForce_ = inForce;
    update();
}

void PatternButton::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF frame = QRectF(rect()).adjusted(1, 1, -1, -1);
    if (inForce_ || hasFocus() || underMouse()) {
        painter.setPen(inForce_ || hasFocus() ? QPen(tones.accent, hasFocus() ? 2.4 : 1.6)
                                              : QPen(tones.edge, 1));
        painter.setBrush(inForce_ ? tones.soft : tones.entry);
        painter.drawRoundedRect(frame, 6, 6);
    }
    if (board_.field.pieces.empty()) {
        return;
    }
    const QRectF room = frame.adjusted(5, 5, -5, -5);
    const double w = board_.field.width().toMm();
    const double h = board_.field.height().toMm();
    const double scale = std::min(room.width() / w, room.height() / h);
    const QPointF origin = room.center() - QPointF(w, h) * scale / 2;
    paintBoard(painter, board_, woods_,
               BoardGeometry(board_, {}, scale, origin, devicePixelRatioF()));
}

PatternPicker::PatternPicker(Document& document, QWidget* parent)
    : QWidget(parent)
    , document_(document) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(6);
    int place = 0;
    for (const PatternInfo& info : patterns()) {
        auto* button = new PatternButton(info, this);
        grid->addWidget(button, place / perRow, place % perRow);
        buttons_.push_back(button);
        connect(button, &QAbstractButton::clicked, this, [this, &info, place] {
            chosen_ = place;
            lay(info);
        });
        ++place;
    }
    connect(&document, &Document::projectChanged, this, &PatternPicker::refresh);
    connect(&document, &Document::replaced, this, [this] { chosen_ = -1; });
    refresh();
}

std::vector<int> PatternPicker::woodsFor(const PatternInfo& info) const {
    const Project& project = document_.project();
    std::vector<int> order;
    const bool border = project.board.border.width > Length();
    for (int i = 0; i < static_cast<int>(project.woods.size()); ++i) {
        if (!border || i != project.board.border.wood) {
            order.push_back(i);
        }
    }
    if (border) {
        order.push_back(project.board.border.wood);
    }
    if (order.size() > static_cast<std::size_t>(info.woods)) {
        order.resize(static_cast<std::size_t>(info.woods));
    }
    return order;
}

void PatternPicker::refresh() {
    const Project& project = document_.project();
    const bool inForce = chosen_ >= 0 && isLaid(project.board.field);
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        const PatternInfo& info = patterns()[i];
        const Result<Field> field = layOut(sample(info.pattern, woodsFor(info)));
        if (field.ok()) {
            buttons_[i]->show(*field, project.woods, inForce && static_cast<int>(i) == chosen_);
        }
    }
}

bool PatternPicker::isLaid(const Field& field) const {
    return field.pieces == laid_.pieces && field.columns.size() == laid_.columns.size() &&
           field.rows.size() == laid_.rows.size();
}

void PatternPicker::lay(const PatternInfo& info) {
    const Project& project = document_.project();
    const Field& field = project.board.field;
    // Trying one pattern after another starts from the same squares each time.
    if (isLaid(field) && field != laid_) {  // made larger or smaller since
        base_.width = field.width();
        base_.height = field.height();
    } else if (field != laid_) {
        base_.columns = static_cast<int>(field.columns.size());
        base_.rows = static_cast<int>(field.rows.size());
        base_.width = field.width();
        base_.height = field.height();
        if (base_.rows == 1 || base_.columns == 1) {
            // Stripes have no squares: take them as wide as they are high.
            Length square = std::min(field.columns.front(), field.rows.front());
            square = std::max(square, BoardLimits::leastCell);
            const auto count = [square](Length side) {
                return std::clamp(static_cast<int>((side + half(square)).nm() / square.nm()), 1,
                                  BoardLimits::cellsAcross);
            };
            base_.columns = std::max(base_.columns, count(base_.width));
            base_.rows = std::max(base_.rows, count(base_.height));
        }
    }
    const Tile tile = tileOf(info.pattern);
    const Length grid =
        project.notation.unit == Unit::Inches ? Length::inch(1, 64) : Length::um(100);
    PatternRequest request;
    request.pattern = info.pattern;
    request.woods = woodsFor(info);
    request.across = std::max(1, (base_.columns + tile.across / 2) / tile.across);
    request.down = std::max(1, (base_.rows + tile.down / 2) / tile.down);
    Result<Field> laid = Fault();
    // Bricks and tiles take several cells each: where the grid would be too fine, there are fewer.
    while (!laid.ok()) {
        request.cellWidth = partOf(base_.width, request.across, grid);
        request.cellHeight = partOf(base_.height, request.down, grid);
        laid = layOut(request);
        if (request.across == 1 && request.down == 1) {
            break;
        }
        request.across = std::max(1, request.across - 1);
        request.down = std::max(1, request.down - (request.down > request.across ? 1 : 0));
    }
    if (!laid.ok()) {
        return;
    }
    laid_ = *laid;
    document_.edit(tr("pattern %1").arg(toQt(info.name).toLower()), entry::none,
                   [&](Project& changed) { changed.board.field = *laid; });
    refresh();
}

}  // namespace kerfwright
