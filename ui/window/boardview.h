// The board from above, true to scale: looking, painting, marking pieces and moving joints.
#pragma once

#include "core/drawing/drawing.h"
#include "ui/document/planner.h"
#include "ui/window/boardeditor.h"
#include "ui/window/boardgeometry.h"
#include "ui/window/boardpainter.h"
#include "ui/window/figurelayer.h"
#include "ui/window/seasonpicture.h"

#include <QWidget>

#include <functional>
#include <memory>
#include <optional>

namespace kerfwright {

struct Hand;

enum class Tool { Paint, Line, Rectangle, Fill, Select, Joints };

class BoardView : public QWidget {
    Q_OBJECT

public:
    BoardView(Document& document, Planner& planner, BoardEditor& editor, QWidget* parent = nullptr);

    Tool tool() const { return tool_; }
    void setTool(Tool tool);
    /// Whether a line or a rectangle has its beginning and waits for its end.
    bool isDrawing() const { return drawFrom_.x() >= 0; }
    /// The cell under the pointer; the first where there is none.
    QPoint pointedCell() const { return hovered_.x() < 0 ? QPoint(0, 0) : hovered_; }
    /// Letters and hatch on the woods, for eyes and printers that do not see colour.
    void setLetters(bool on);
    /// Wood figure on the pieces, raw or oiled.
    FigureLayer& figure() { return figure_; }
    void setHighlight(const Highlight& highlight);
    /// Shows another project for as long as it is looked at; null: the document's own again.
    void setPreview(const ProjectPtr& project);
    /// Paints `picture` where the board lies, in the same scale; null: the board as it is built.
    void setSeason(const std::shared_ptr<const SeasonPicture>& picture);

    void zoomBy(double factor);
    void zoomToFit();
    bool isFitted() const { return fitted_; }
    const BoardGeometry& geometry() const { return geometry_; }
    const Project& shownProject() const { return shown(); }
    /// The board of the document, row by row.
    QString words() const;

    QSize minimumSizeHint() const override { return QSize(200, 140); }
    QSize sizeHint() const override { return QSize(760, 640); }

Q_SIGNALS:
    void toolChanged();
    void viewChanged();
    /// A line or a rectangle was begun or ended.
    void gestureChanged();
    /// The maker is about to work on the board: it must be shown as it is built.
    void touched();
    /// A piece was clicked or marked by key; (-1, -1): none any more.
    void pieceChosen(const QPoint& cell);
    void borderChosen();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    enum class Drag { None, Paint, Draw, Select, Lines, Carry, Repeat, Joint, Pan };

    const Project& shown() const { return preview_ ? *preview_ : document_.project(); }
    /// Nothing but the board as it is built is shown.
    bool isStill() const { return !season_ || preview_; }
    const Board& shownBoard() const { return isStill() ? shown().board : season_->board; }
    const Job* currentJob() const;
    /// The last plan of a board that is glued alike, also while the next one is made: where its
    /// way was free, the border stays on the side where it was. Null: there is none.
    const Job* likeJob(const Project& project) const;
    void layOut();
    void fit();
    void rescale(double scale, QPointF about);
    void pan(QPointF by);
    void showPointer(QPointF at);
    void updateCursor();
    void paintOverlays(QPainter& painter);
    QStringList bubbleWords() const;
    void describe();

    // The tools in the hand: boardtools.cpp.
    QPoint cellUnder(QPointF at) const;
    QPoint nearestCell(QPointF at) const;
    QRectF repeatHandle() const;
    bool isOverMoveable(QPoint cell) const;
    GridJoint jointInHand() const;
    Hand hand() const;
    void pressTool(QPointF at, Qt::KeyboardModifiers keys);
    void moveTool(QPointF at, Qt::KeyboardModifiers keys);
    void releaseTool(Qt::KeyboardModifiers keys);
    void strokeTo(QPointF at);
    void dragJoint(QPointF at, bool fine);
    void markLines(QPointF at);
    void beginDrawing(QPoint cell);
    void endDrawing(bool draw, bool straight);
    void paintByKey();
    bool handKey(int key, Qt::KeyboardModifiers keys, int right, int down);
    void moveJointByKey(const GridJoint& joint, const std::function<void()>& move);
    GridJoint jointBesideMark(bool vertical) const;
    void paintTools(QPainter& painter);
    void chooseMark();

    Document& document_;
    Planner& planner_;
    BoardEditor& editor_;
    ProjectPtr preview_;
    std::shared_ptr<const SeasonPicture> season_;
    BoardGeometry geometry_;
    FigureLayer figure_;
    Tool tool_ = Tool::Paint;
    bool letters_ = false;
    bool letteredOnFigure_ = false;
    std::optional<Drawing> lettered_;  ///< kept until the project or the plan changes
    Highlight highlight_;
    double scale_ = 1;
    QPointF origin_;
    bool fitted_ = true;

    Drag drag_ = Drag::None;
    QPointF last_;  ///< of the drag, in pixels
    QPointF pointer_{-1e6, -1e6};
    QPoint hovered_{-1, -1};
    QPoint markFrom_;
    QPoint drawFrom_{-1, -1};  ///< where a line or a rectangle begins
    QPoint drawTo_;
    bool straight_ = false;
    QPoint grip_;         ///< of the cells that are dragged, the one held
    QRect repeat_;        ///< what a drag of the corner would cover
    GridJoint joint_;     ///< under the pointer or dragged
    GridJoint keyJoint_;  ///< moved by key last
    Length jointSize_;    ///< of the line before it when the drag began
    QPointF dragFrom_;
    bool spaceDown_ = false;
    bool spacePanned_ = false;
};

}  // namespace kerfwright
