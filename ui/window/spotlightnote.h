// Says over the board what is followed through the window, and lets go of it. It is there only
// while something is, and never over a piece that was marked on the board itself.
#pragma once

#include <QFrame>

QT_BEGIN_NAMESPACE
class QLabel;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class Spotlight;

class SpotlightNote : public QFrame {
    Q_OBJECT

public:
    SpotlightNote(Spotlight& spotlight, QWidget& board);

    QString text() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void refresh();
    void place();

    Spotlight& spotlight_;
    QWidget& board_;
    QLabel* words_ = nullptr;
    QToolButton* letGo_ = nullptr;
    QString whole_;
};

}  // namespace kerfwright
