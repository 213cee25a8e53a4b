// The woods of the project: what each is called and where it is used; replaced, added and removed
// here.
#pragma once

#include "ui/document/document.h"
#include "ui/window/boardeditor.h"

#include <QAbstractButton>

QT_BEGIN_NAMESPACE
class QToolButton;
class QVBoxLayout;
QT_END_NAMESPACE

namespace kerfwright {

class WoodForm;

/// One wood. Clicking it makes it the one that paints.
class WoodRow : public QAbstractButton {
    Q_OBJECT

public:
    explicit WoodRow(QWidget* parent);
    void show(const Wood& wood, const QString& use, bool paints, bool removable);
    QToolButton* timberButton() const { return timber_; }
    QToolButton* replaceButton() const { return replace_; }
    QToolButton* removeButton() const { return remove_; }
    QSize sizeHint() const override { return QSize(200, 34); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Wood wood_;
    QString use_;
    bool paints_ = false;
    QToolButton* timber_;
    QToolButton* replace_;
    QToolButton* remove_;
};

class WoodList : public QWidget {
    Q_OBJECT

public:
    /// Draws the pictures of its buttons before there are any: that needs no font.
    static void drawButtonsAhead();

    WoodList(Document& document, BoardEditor& editor, QWidget* parent = nullptr);

    /// Opens the timber of the first wood that is in use.
    void showTimber();
    /// Opens the form of the wood with that name, at its price; does nothing where there is none.
    void showPrice(const QString& wood);

Q_SIGNALS:
    /// What the board would look like; null: the preview is over.
    void previewed(const ProjectPtr& project);

private:
    void refresh();
    void openChooser(QWidget* button, int replacing);
    /// Adds a wood of the maker's own, or puts it in the place of one, and opens its form.
    void addOwn(int replacing);
    WoodForm* openTimber(int wood);
    void remove(int wood);

    Document& document_;
    BoardEditor& editor_;
    QVBoxLayout* column_;
    std::vector<WoodRow*> rows_;
    QToolButton* add_;
};

}  // namespace kerfwright
