// Three steps through the window for a first start: draw, read, print. Each is a small bubble
// beside the part that it is about. It takes no focus of its own accord, lies beside what it speaks
// of, and all that is beneath goes on working.
#pragma once

#include <QFrame>
#include <QPointer>

#include <vector>

QT_BEGIN_NAMESPACE
class QLabel;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class MainWindow;

class TourBubble : public QFrame {
    Q_OBJECT

public:
    explicit TourBubble(MainWindow& window);

    static constexpr int count = 3;
    /// From 0.
    void showStep(int step);
    int step() const { return step_; }
    /// By whom it was asked for: then it takes the keys.
    void takeFocus();
    /// What the step is about, in the window.
    QRect anchor() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void go(int by);
    void place();
    /// What is spoken of besides, and is not to be covered.
    std::vector<QRect> others() const;

    MainWindow& window_;
    QLabel* title_;
    QLabel* words_;
    QLabel* number_;
    QPushButton* back_;
    QPushButton* next_;
    QPushButton* close_;
    int step_ = 0;
    QPoint tip_;  ///< where it points to, in its own coordinates
};

/// Begins the tour, or begins it again.
void beginTour(MainWindow& window, bool takesFocus);

}  // namespace kerfwright
