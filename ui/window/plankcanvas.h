// A plank from above, on which knots, cracks and stains are marked: dragging over bare wood draws
// one, dragging one moves it. By keys: Insert adds one in the middle, Tab and Shift+Tab go from one
// to the next, arrows move it, with Shift they change its size, Delete takes it away.
#pragma once

#include "core/measure/notation.h"
#include "core/sheets/plankview.h"
#include "core/timber/rack.h"

#include <QWidget>

namespace kerfwright {

class PlankCanvas : public QWidget {
    Q_OBJECT

public:
    explicit PlankCanvas(QWidget* parent = nullptr);

    void show(const Plank& plank, const std::vector<Wood>& woods, const Notation& notation);
    int chosen() const { return chosen_; }
    void choose(int defect);
    /// Where a place of the plank is seen.
    QPointF seenAt(Length x, Length y) const;
    QSize sizeHint() const override { return QSize(640, 190); }
    QSize minimumSizeHint() const override { return QSize(300, 130); }

Q_SIGNALS:
    void added(const Defect& defect);
    void moved(int defect, const Defect& to);
    void removed(int defect);
    void chosenChanged(int defect);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    void changeEvent(QEvent* event) override;

private:
    void layOut();
    Length step() const;
    QRectF seen(const Defect& defect) const;
    /// The place of the plank that is seen there, on the step and inside the plank.
    std::pair<Length, Length> placeAt(QPointF at) const;
    Defect between(QPointF a, QPointF b) const;
    int defectAt(QPointF at) const;
    void report();

    Plank plank_;
    std::vector<Wood> woods_;
    Notation notation_;
    PlankView view_;
    PlankLook look_;
    double pixels_ = 1;  ///< for a mm of the drawing
    QPointF corner_;
    int chosen_ = -1;
    bool pressed_ = false;
    bool drawing_ = false;
    int dragged_ = -1;
    QPointF from_, to_;
    Defect before_;
};

}  // namespace kerfwright
