// One stage of the build, large, in the place of the board. Its dimensions open their workings; the
// arrow keys step on, which is the build as a film.
#pragma once

#include "core/sheets/filmpicture.h"
#include "ui/window/filmmaker.h"

#include <QVariantAnimation>
#include <QWidget>

QT_BEGIN_NAMESPACE
class QHBoxLayout;
class QLabel;
class QToolButton;
class QVBoxLayout;
QT_END_NAMESPACE

namespace kerfwright {

class WorkingPopup;

/// The picture itself.
class StageCanvas : public QWidget {
    Q_OBJECT

public:
    explicit StageCanvas(QWidget* parent);

    void show(const FilmPtr& film, int stage);
    /// 0 to 1; at 1 the stage is at rest.
    void setProgress(double progress);
    double progress() const { return progress_; }
    void setLetters(bool on);
    /// Where the number of the stage can be pressed, in pixels; null where it is not drawn.
    QRect spot(int number);

Q_SIGNALS:
    void numberPressed(int number, const QRect& at);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;

private:
    const FilmPicture& picture();
    int numberAt(QPoint at);
    QRect boxOf(const FilmSpot& spot) const;

    FilmPtr film_;
    int stage_ = 0;
    double progress_ = 1;
    bool letters_ = false;
    FilmPicture picture_;
    bool drawn_ = false;
};

class StageView : public QWidget {
    Q_OBJECT

public:
    explicit StageView(QWidget* parent = nullptr);

    /// The same stage, or the nearest, of another film.
    void setFilm(const FilmPtr& film, bool current);
    const FilmPtr& film() const { return film_; }
    int stage() const { return stage_; }
    /// `moving`: how it comes about is shown first, where that is the next stage, or how the one
    /// before goes back, where it is the previous.
    void showStage(int stage, bool moving);
    bool isMoving() const { return motion_.state() == QAbstractAnimation::Running; }
    void setLetters(bool on) { canvas_->setLetters(on); }
    StageCanvas& canvas() { return *canvas_; }

    /// Whether system and style want movement at all.
    bool systemMoves() const;

Q_SIGNALS:
    /// By key or button; one past the last stage or before the first is not asked for.
    void stepAsked(int stage);
    void leaveAsked();
    /// The entry that a term of a working comes from.
    void termAsked(TermKind kind);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void refresh();
    void step(int by);
    /// All numbers of the stage, or one.
    void openWorking(int number, const QRect& anchor);

    FilmPtr film_;
    int stage_ = 0;
    QHBoxLayout* head_;
    QVBoxLayout* column_;
    QLabel* title_;
    QLabel* words_;
    QToolButton* back_;
    QToolButton* on_;
    QToolButton* working_;
    QToolButton* leave_;
    StageCanvas* canvas_;
    QVariantAnimation motion_;
    int resting_ = 0;  ///< what is shown once the motion is over
};

}  // namespace kerfwright
