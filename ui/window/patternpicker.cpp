#include "ui/window/patternpicker.h"

#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/boardpainter.h"
#include "ui/window/faultnote.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

constexpr int perRow = 6;
constexpr int side = 46;

/// The numbers of a picture that is read at a glance, in a room of 120 mm.
struct Sketch {
    std::vector<int> counts;
    std::vector<Length> lengths;
};

Sketch sketchOf(Pattern pattern) {
    switch (pattern) {
    case Pattern::Stripes:
        return {{6}, {}};
    case Pattern::Pinstripes:
        return {{3, 1}, {Length::mm(8)}};
    case Pattern::Graduated:
    case Pattern::Pinched:
        return {{7, 7, 80}, {}};
    case Pattern::Bricks:
        return {{2, 5, 2}, {}};
    case Pattern::MortarBricks:
        return {{2, 5}, {Length::mm(6)}};
    case Pattern::Plaid:
        return {{3, 3}, {Length::mm(12)}};
    case Pattern::Steps:
        return {{6, 6, 3}, {}};
    case Pattern::DiagonalSteps:
        return {{6, 6, 1}, {}};
    case Pattern::Basket:
        return {{3, 3, 3}, {}};
    case Pattern::LogCabin:
        return {{1, 1, 3}, {}};
    case Pattern::NestedSquares:
        return {{7, 7}, {}};
    case Pattern::BorderBands:
        return {{2}, {Length::mm(7), Length::mm(12)}};
    case Pattern::Rosettes:
        return {{1, 1, 3}, {}};
    case Pattern::GreekKey:
        return {{2, 2}, {}};
    case Pattern::Windmill:
        return {{2, 2}, {Length::mm(16)}};
    case Pattern::Plain:
        return {{4, 4}, {}};
    case Pattern::Chequer:
        break;
    }
    return {{6, 6}, {}};
}

Result<Field> sketched(const PatternInfo& info, std::vector<int> woods) {
    const Sketch sketch = sketchOf(info.pattern);
    Recipe recipe = usualRecipe(info.pattern, Length::mm(120), Length::mm(120), Length::um(1),
                                std::move(woods));
    recipe.counts = sketch.counts;
    recipe.lengths = sketch.lengths;
    return layOut(recipe);
}

/// Joints would blur what is so small. Where pieces of one wood make the pattern, they are it.
bool showsJoints(Pattern pattern, const Field& field) {
    return pattern == Pattern::LogCabin ||
           std::all_of(field.pieces.begin(), field.pieces.end(),
                       [&](const Piece& piece) { return piece.wood == field.pieces.front().wood; });
}

/// On whole device pixels, and an even number of pixels wide: buttons differ by a pixel, and their
/// pictures should not.
void paintSketch(QPainter& painter, const QRectF& room, const Board& board,
                 const std::vector<Wood>& woods, bool joints, const Tones& tones, double ratio) {
    const double extent = 2 * std::floor(std::min(room.width(), room.height()) / 2);
    const QPointF corner = room.center() - QPointF(extent, extent) / 2;
    const QPointF origin(std::round(corner.x() * ratio) / ratio,
                         std::round(corner.y() * ratio) / ratio);
    const BoardGeometry geometry(board, {}, extent / board.field.width().toMm(), origin, ratio);
    painter.setRenderHint(QPainter::Antialiasing, false);
    for (const Piece& piece : board.field.pieces) {
        const QColor wood = toQColor(woods[static_cast<std::size_t>(piece.wood)].colour);
        const QRectF cells =
            geometry.cells(QRect(piece.column, piece.row, piece.across, piece.down));
        painter.fillRect(cells, joints ? mixed(wood, readableOn(wood), 0.35) : wood);
        if (joints) {
            painter.fillRect(cells.adjusted(0, 0, -1 / ratio, -1 / ratio), wood);
        }
    }
    painter.setRenderHint(QPainter::Antialiasing);
    paintOutline(painter, geometry, tones);
}

Length equal(Length whole, int parts) {
    return std::max(Length::nm(whole.nm() / parts), Length::nm(1));
}

int squaresIn(Length length, Length square) {
    return std::clamp(static_cast<int>((length + half(square)).nm() / square.nm()), 1,
                      BoardLimits::cellsAcross);
}

}  // namespace

PatternButton::PatternButton(const PatternInfo& info, QWidget* parent)
    : QAbstractButton(parent)
    , pattern_(info.pattern) {
    const QString name = toQt(say(info.name));
    setText(name);
    setObjectName(QStringLiteral("pattern-") + toQt(info.key));
    setAccessibleName(name);
    setAccessibleDescription(toQt(say(info.about)));
    setToolTip(name + QStringLiteral(" – ") + toQt(say(info.about)));
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize PatternButton::sizeHint() const {
    return QSize(side, side);
}

void PatternButton::show(const Field& field, const std::vector<Wood>& woods, bool inForce) {
    board_ = Board();
    board_.field = field;
    woods_ = woods;
    inForce_ = inForce;
    const QString about = toQt(say(patternInfo(pattern_).about));
    setAccessibleDescription(inForce ? tr("In force. %1").arg(about) : about);
    update();
}

void PatternButton::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Left:
        return Q_EMIT stepped(-1, 0);
    case Qt::Key_Right:
        return Q_EMIT stepped(1, 0);
    case Qt::Key_Up:
        return Q_EMIT stepped(0, -1);
    case Qt::Key_Down:
        return Q_EMIT stepped(0, 1);
    default:
        QAbstractButton::keyPressEvent(event);
    }
}

void PatternButton::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF frame = QRectF(rect()).adjusted(1, 1, -1, -1);
    if (inForce_ || underMouse()) {
        painter.setPen(inForce_ ? QPen(tones.accent, 1.6) : QPen(tones.edge, 1));
        painter.setBrush(inForce_ ? tones.soft : tones.entry);
        painter.drawRoundedRect(frame.adjusted(2, 2, -2, -2), 4, 4);
    }
    if (hasFocus()) {
        paintFocusRing(painter, rect(), tones, 5);
    }
    if (board_.field.pieces.empty()) {
        return;
    }
    paintSketch(painter, frame.adjusted(4, 4, -4, -4), board_, woods_,
                showsJoints(pattern_, board_.field), tones, devicePixelRatioF());
}

PatternPicker::PatternPicker(Document& document, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , words_(new FaultNote(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* grid = new QGridLayout;
    grid->setSpacing(3);
    column->addLayout(grid);
    column->addWidget(words_);
    words_->setObjectName(QStringLiteral("patternNote"));
    int place = 0;
    for (const PatternInfo& info : patterns()) {
        auto* button = new PatternButton(info, this);
        grid->addWidget(button, place / perRow, place % perRow);
        buttons_.push_back(button);
        connect(button, &QAbstractButton::clicked, this, [this, &info] { lay(info); });
        connect(button, &PatternButton::stepped, this,
                [this, from = static_cast<std::size_t>(place)](int right, int down) {
                    step(from, right, down);
                });
        ++place;
    }
    connect(&document, &Document::projectChanged, this, &PatternPicker::refresh);
    connect(&document, &Document::replaced, this, [this] { laid_.reset(); });
    refresh();
}

void PatternPicker::step(std::size_t from, int right, int down) {
    const int to = static_cast<int>(from) + right + down * perRow;
    if (to >= 0 && to < static_cast<int>(buttons_.size())) {
        buttons_[static_cast<std::size_t>(to)]->setFocus(Qt::OtherFocusReason);
    }
}

std::vector<int> PatternPicker::woodsFor(const PatternInfo& info) const {
    const Project& project = document_.project();
    std::vector<int> order;
    const auto add = [&order](int wood) {
        if (std::find(order.begin(), order.end(), wood) == order.end()) {
            order.push_back(wood);
        }
    };
    if (project.recipe) {
        std::for_each(project.recipe->woods.begin(), project.recipe->woods.end(), add);
    }
    const bool border = project.board.border.width > Length();
    for (int i = 0; i < static_cast<int>(project.woods.size()); ++i) {
        if (!border || i != project.board.border.wood) {
            add(i);
        }
    }
    if (border) {
        add(project.board.border.wood);
    }
    if (order.size() > static_cast<std::size_t>(info.woods)) {
        order.resize(static_cast<std::size_t>(info.woods));
    }
    return order;
}

void PatternPicker::refresh() {
    const Project& project = document_.project();
    words_->unsay(this);
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        const PatternInfo& info = patterns()[i];
        const bool inForce = project.recipe && project.recipe->pattern == info.pattern;
        // In force it shows the woods as they are, also where one has two roles.
        const Result<Field> field =
            sketched(info, inForce ? project.recipe->woods : woodsFor(info));
        if (field) {
            buttons_[i]->show(*field, project.woods, inForce);
        }
        // One stop for the tab key; the arrows go on from there.
        const bool stop = project.recipe ? inForce : i == 0;
        buttons_[i]->setFocusPolicy(stop ? Qt::StrongFocus : Qt::ClickFocus);
    }
}

PatternPicker::Ground PatternPicker::groundOf(const Project& project) const {
    const Field& field = project.board.field;
    Ground ground;
    ground.width = project.recipe ? project.recipe->width : field.width();
    ground.height = project.recipe ? project.recipe->height : field.height();
    ground.columns = 0;
    ground.rows = 0;
    if (project.recipe) {
        const std::vector<PatternCount>& counts = patternInfo(project.recipe->pattern).counts;
        for (std::size_t i = 0; i < counts.size(); ++i) {
            const int squares = project.recipe->counts[i] * counts[i].squares;
            if (counts[i].along == CountedAlong::Width) {
                ground.columns = squares;
            } else if (counts[i].along == CountedAlong::Height) {
                ground.rows = squares;
            }
        }
    } else if (field.columns.size() > 1 && field.rows.size() > 1) {
        ground.columns = static_cast<int>(field.columns.size());
        ground.rows = static_cast<int>(field.rows.size());
    } else {
        // Stripes have no squares: take them as wide as they are high.
        const Length square =
            std::max(std::min(field.columns.front(), field.rows.front()), BoardLimits::leastCell);
        ground.columns =
            std::max(static_cast<int>(field.columns.size()), squaresIn(ground.width, square));
        ground.rows =
            std::max(static_cast<int>(field.rows.size()), squaresIn(ground.height, square));
    }
    // A pattern that counts one way only, or neither, leaves the others to squares.
    constexpr int usual = 8;
    if (ground.columns == 0 && ground.rows == 0) {
        const Length square = equal(std::min(ground.width, ground.height), usual);
        ground.columns = squaresIn(ground.width, square);
        ground.rows = squaresIn(ground.height, square);
    } else if (ground.rows == 0) {
        ground.rows = squaresIn(ground.height, equal(ground.width, ground.columns));
    } else if (ground.columns == 0) {
        ground.columns = squaresIn(ground.width, equal(ground.height, ground.rows));
    }
    return ground;
}

void PatternPicker::lay(const PatternInfo& info) {
    const Project& project = document_.project();
    if (!project.recipe || project.recipe != laid_) {
        ground_ = groundOf(project);
    }
    const Result<Recipe> recipe =
        recipeOfSquares(info.pattern, ground_.columns, ground_.rows, ground_.width, ground_.height,
                        ruleStep(project.notation.unit), woodsFor(info));
    const Result<Field> laid =
        recipe ? layOut(*recipe, project.notation) : Result<Field>(recipe.fault());
    std::optional<Fault> fault;
    if (laid) {
        laid_ = *recipe;
        fault = document_.edit(tr("pattern %1").arg(inSentence(toQt(say(info.name)))), entry::none,
                               [&](Project& changed) {
                                   changed.board.field = *laid;
                                   changed.recipe = *recipe;
                               });
    } else {
        fault = laid.fault();
    }
    if (fault) {
        words_->say(
            this,
            tr("▲ No room for %1. %2").arg(inSentence(toQt(say(info.name))), toQt(fault->text())));
    }
}

}  // namespace kerfwright
