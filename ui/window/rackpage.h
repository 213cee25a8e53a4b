// The rack: planks added, edited, copied and removed; taken from and written to files that several
// projects can share.
#pragma once

#include "ui/document/sawyer.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QAction;
class QLabel;
class QPushButton;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;
class PlankEditor;
class RackList;

class RackPage : public QWidget {
    Q_OBJECT

public:
    RackPage(Document& document, Sawyer& sawyer, Dialogs& dialogs, QWidget* parent = nullptr);

    RackList* list() const { return list_; }
    void addPlank();
    void edit(int row);
    void duplicate();
    void remove();
    /// Adds the planks of a table; all of them or none.
    void takeFromFile();
    void writeFile();
    /// The planks that the layout cuts leave the rack, and what it keeps of them comes in.
    void putOffcutsBack();

Q_SIGNALS:
    void told(const QString& words);
    /// Without planks: what there is to buy.
    void shoppingAsked();

private:
    void refresh();
    bool change(const QString& what, const std::function<void(Rack&)>& how);
    QWidget* emptyPlace();
    PlankEditor* openEditor(const Plank& plank, int row);

    Document& document_;
    Sawyer& sawyer_;
    Dialogs& dialogs_;
    QPushButton* add_;
    QToolButton* more_;
    QLabel* count_;
    RackList* list_;
    QWidget* empty_;
    QAction* edit_ = nullptr;
    QAction* duplicate_ = nullptr;
    QAction* remove_ = nullptr;
    QAction* write_ = nullptr;
    QAction* putBack_ = nullptr;
};

}  // namespace kerfwright
