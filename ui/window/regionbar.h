// Buttons for the marked region: as many as there is room for, and the rest in a menu at the end.
#pragma once

#include <QWidget>

#include <vector>

QT_BEGIN_NAMESPACE
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class RegionActions;

class RegionBar : public QWidget {
    Q_OBJECT

public:
    RegionBar(const RegionActions& actions, QWidget* parent);

    /// Room for the menu, which has all of them.
    static int leastWidth();
    QSize minimumSizeHint() const override { return QSize(leastWidth(), 1); }
    QSize sizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    std::vector<QToolButton*> buttons_;
    QToolButton* more_;
};

}  // namespace kerfwright
