#include "ui/window/boardview.h"

#include "core/sheets/boardview.h"
#include "ui/document/surround.h"
#include "ui/document/text.h"
#include "ui/paint/painter.h"
#include "ui/window/boardreading.h"
#include "ui/window/boardtext.h"
#include "ui/window/focusring.h"
#include "ui/window/regioneditor.h"

#include <QPaintEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

constexpr double leastScale = 0.05;  // pixels per mm
constexpr double greatestScale = 60;
constexpr double leastAir = 8;  // pixels round a board that is fitted
constexpr double greatestAir = 28;

}  // namespace

BoardView::BoardView(Document& document, Planner& planner, BoardEditor& editor, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , planner_(planner)
    , editor_(editor)
    , figure_(document, planner) {
    static const bool readAloud = (readBoardsAloud(), true);
    Q_UNUSED(readAloud)
    setObjectName(QStringLiteral("board"));
    setAccessibleName(tr("Board"));
    setFocusPolicy(Qt::StrongFocus);
    // Its left is the maker's left, whichever way the words run.
    setLayoutDirection(Qt::LeftToRight);
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    connect(&document, &Document::projectChanged, this, [this] {
        // What was begun on the board as it was has no end on another.
        if (drag_ == Drag::Draw || drag_ == Drag::Repeat || drag_ == Drag::Carry) {
            drag_ = Drag::None;
        }
        endDrawing(false, false);
        lettered_.reset();
        layOut();
        describe();
    });
    connect(&document, &Document::replaced, this, [this] {
        preview_.reset();
        fitted_ = true;
        highlight_ = Highlight();
    });
    connect(&planner, &Planner::changed, this, [this] {
        lettered_.reset();
        layOut();  // which way it was planned says where some borders lie
    });
    connect(&figure_, &FigureLayer::changed, this, qOverload<>(&QWidget::update));
    connect(&editor, &BoardEditor::markChanged, this, [this] {
        keyJoint_ = GridJoint();
        if (isDrawing() && drag_ == Drag::None && !editor_.mark().isNull()) {
            drawTo_ = editor_.mark().topLeft();
        }
        update();
        describe();
    });
    connect(&editor.region(), &RegionEditor::carriedChanged, this, [this] {
        updateCursor();
        update();
        describe();
    });
    describe();
}

void BoardView::describe() {
    const Project& project = document_.project();
    const BoardSize size = sizeOf(project.board, surroundOf(project, likeJob(project)));
    QString words = tr("%1 by %2 cells, %3 × %4")
                        .arg(project.board.field.columns.size())
                        .arg(project.board.field.rows.size())
                        .arg(toQt(format(size.width, project.notation)),
                             toQt(format(size.height, project.notation)));
    const QString marked = handReading(project, hand());
    if (!marked.isEmpty()) {
        words += QStringLiteral(". ") + marked;
    }
    setAccessibleDescription(words);
}

QString BoardView::words() const {
    const Project& project = document_.project();
    return boardWords(project, sizeOf(project.board, surroundOf(project, likeJob(project))));
}

const Job* BoardView::currentJob() const {
    return planner_.state() == Planner::State::Current && planner_.last() ? &planner_.last()->job
                                                                          : nullptr;
}

const Job* BoardView::likeJob(const Project& project) const {
    const PlannedPtr& last = planner_.last();
    return last && last->project->board.build == project.board.build &&
                   last->project->board.grain == project.board.grain
               ? &last->job
               : nullptr;
}

void BoardView::setTool(Tool tool) {
    if (tool != tool_) {
        tool_ = tool;
        joint_ = GridJoint();
        endDrawing(false, false);
        editor_.region().letGo();
        updateCursor();
        update();
        describe();
        Q_EMIT toolChanged();
    }
}

void BoardView::setLetters(bool on) {
    letters_ = on;
    update();
}

void BoardView::setHighlight(const Highlight& highlight) {
    if (!(highlight == highlight_)) {
        highlight_ = highlight;
        update();
    }
}

void BoardView::setPreview(const ProjectPtr& project) {
    if (preview_ != project) {
        preview_ = project;
        lettered_.reset();
        layOut();
    }
}

void BoardView::setSeason(const std::shared_ptr<const SeasonPicture>& picture) {
    if (season_ != picture) {
        season_ = picture;
        lettered_.reset();
        layOut();
    }
}

void BoardView::fit() {
    const Board& board = shown().board;
    const double air = std::clamp(std::min(width(), height()) / 20.0, leastAir, greatestAir);
    const double roomX = std::max(40.0, width() - Rulers::left - 2 * air);
    const double roomY = std::max(40.0, height() - Rulers::top - 2 * air);
    const BoardSize size = sizeOf(board, surroundOf(shown(), likeJob(shown())));
    const double w = size.width.toMm();
    const double h = size.height.toMm();
    scale_ = std::clamp(std::min(roomX / w, roomY / h), leastScale, greatestScale);
    origin_ = QPointF(Rulers::left + air + (roomX - w * scale_) / 2,
                      Rulers::top + air + (roomY - h * scale_) / 2);
}

void BoardView::layOut() {
    // What is held by the mouse does not slip away under it.
    if (fitted_ && drag_ == Drag::None) {
        fit();
    }
    // What moves with the seasons moves about the middle.
    const Surround surround = surroundOf(shown(), likeJob(shown()));
    const BoardSize built = sizeOf(shown().board, surround);
    const bool still = isStill();
    const Surround& room = still ? surround : season_->surround;
    const BoardSize now = sizeOf(shownBoard(), room);
    const QPointF shift((built.width - now.width).toMm() / 2,
                        (built.height - now.height).toMm() / 2);
    geometry_ =
        BoardGeometry(shownBoard(), room, scale_, origin_ + shift * scale_, devicePixelRatioF());
    update();
    Q_EMIT viewChanged();
}

void BoardView::resizeEvent(QResizeEvent*) {
    layOut();
}

void BoardView::rescale(double scale, QPointF about) {
    const double wanted = std::clamp(scale, leastScale, greatestScale);
    origin_ = about - (about - origin_) * (wanted / scale_);
    scale_ = wanted;
    fitted_ = false;
    layOut();
}

void BoardView::zoomBy(double factor) {
    const QPointF middle((width() + Rulers::left) / 2.0, (height() + Rulers::top) / 2.0);
    rescale(scale_ * factor, middle);
}

void BoardView::zoomToFit() {
    fitted_ = true;
    layOut();
}

void BoardView::pan(QPointF by) {
    // A corner of the board always stays in sight.
    const QRectF room = QRectF(rect()).adjusted(Rulers::left + 40, Rulers::top + 40, -40, -40);
    const QSizeF size = geometry_.board().size();
    origin_ += by;
    origin_.setX(
        std::clamp(origin_.x(), room.left() - size.width(), std::max(room.left(), room.right())));
    origin_.setY(
        std::clamp(origin_.y(), room.top() - size.height(), std::max(room.top(), room.bottom())));
    fitted_ = false;
    layOut();
}

void BoardView::paintEvent(QPaintEvent* event) {
    const Tones tones = tonesOf(palette());
    const Project& project = shown();
    QPainter painter(this);
    painter.setLayoutDirection(layoutDirection());
    painter.fillRect(event->rect(), tones.surround);
    paintShadow(painter, geometry_.board(), tones.dark);
    paintOutline(painter, geometry_, tones);
    const Board& board = shownBoard();
    const Job* planned = preview_ ? nullptr : currentJob();
    const Job* job = isStill() ? planned : nullptr;
    const Job* like = likeJob(project);
    const std::vector<Wood>& woods = figure_.finished(project.woods);
    const bool figured = figure_.paint(
        painter,
        {board, project.woods, geometry_, rect(),
         like != nullptr ? like->plan.grainDown : board.grain != GrainDirection::Across, letters_});
    if (letters_) {
        if (!lettered_ || letteredOnFigure_ != figured) {
            letteredOnFigure_ = figured;
            BoardViewOptions options;
            options.letters = true;
            options.hatch = true;
            options.fills = !figured;
            options.surround = geometry_.surround();
            lettered_ = drawBoard(board, woods, job ? job->plan.extraJoints : std::vector<Joint>(),
                                  options);
        }
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.translate(geometry_.board().topLeft());
        painter.scale(geometry_.scale(), geometry_.scale());
        kerfwright::paint(painter, *lettered_, windowTheme(tones.dark));
        painter.restore();
    } else {
        if (!figured) {
            paintBoard(painter, board, woods, geometry_);
        }
        if (job != nullptr) {
            paintExtraJoints(painter, job->plan.extraJoints, board, geometry_);
        }
        if (planned != nullptr) {
            paintBorderFit(painter, board.border, planned->plan.border, woods, geometry_);
        }
    }
    paintOverlays(painter);
}

void BoardView::paintOverlays(QPainter& painter) {
    const Tones tones = tonesOf(palette());
    const Project& project = shown();
    paintHighlight(painter, highlight_, project.board, geometry_, tones);
    paintTools(painter);
    paintRulers(painter, QRectF(rect()), geometry_, project.notation.unit, pointer_, tones,
                isStill() ? 1 : season_->times);
    paintBubble(painter, pointer_, QRectF(rect()), bubbleWords());
    // It has the focus most of the time: only who goes about by key looks for it.
    if (hasFocus() && focusIsByKeys()) {
        paintFocusRing(painter, rect(), tones);
    }
}

}  // namespace kerfwright
