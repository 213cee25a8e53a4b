// The catalogue of woods, opened beside a button. The wood that is pointed at is shown on the board
// before it is chosen.
#pragma once

#include "core/wood/wood.h"

#include <QFrame>

QT_BEGIN_NAMESPACE
class QLineEdit;
class QListWidget;
QT_END_NAMESPACE

namespace kerfwright {

class WoodChooser : public QFrame {
    Q_OBJECT

public:
    /// Offers the catalogue without the woods in `taken`. Deletes itself when it is closed.
    WoodChooser(const std::vector<Wood>& taken, QWidget* parent);
    void openBeside(QWidget* button);

Q_SIGNALS:
    /// Null where nothing is pointed at any more.
    void previewed(const Wood* wood);
    void chosen(const Wood& wood);
    /// None of the catalogue, but one that the maker describes.
    void ownAsked();

protected:
    void paintEvent(QPaintEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void filter(const QString& text);
    const Wood* woodOf(int row) const;
    void accept(int row);

    QLineEdit* search_;
    QListWidget* list_;
};

}  // namespace kerfwright
