// All commands with their keys, to search in and to carry out.
#pragma once

#include <QDialog>
#include <QPointer>

#include <array>
#include <vector>

QT_BEGIN_NAMESPACE
class QAction;
class QLabel;
class QLineEdit;
class QMenu;
class QTreeWidget;
QT_END_NAMESPACE

namespace kerfwright {

class KeyFinder : public QDialog {
    Q_OBJECT

public:
    /// The commands of `menus` with what is in them, under their menus' names; below them what keys
    /// and buttons of the mouse do without a command: `byHand`, each a key and what it does.
    KeyFinder(const std::vector<QMenu*>& menus, const std::vector<std::array<QString, 2>>& byHand,
              QWidget* parent);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void add(const QString& what, const QString& keys, const QString& where, QAction* action);
    void addMenu(QMenu& menu, const QString& where);
    void filter(const QString& text);
    void run();

    QLineEdit* search_;
    QTreeWidget* list_;
    QLabel* found_;
    std::vector<QPointer<QAction>> actions_;  ///< of the lines, in their order
};

}  // namespace kerfwright
