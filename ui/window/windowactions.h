// The menus and the tool bar.
#pragma once

#include <QAction>
#include <QObject>

#include <vector>

QT_BEGIN_NAMESPACE
class QMenu;
class QToolBar;
QT_END_NAMESPACE

namespace kerfwright {

class MainWindow;
class Segmented;

class WindowActions : public QObject {
    Q_OBJECT

public:
    explicit WindowActions(MainWindow& window);

private:
    QAction* add(QMenu* menu, const QString& text, const char* name, const QString& icon,
                 const QKeySequence& keys);
    void buildFile();
    void buildEdit();
    void buildBoard();
    void buildView();
    void buildHelp();
    void buildBar();
    void fillRecent();
    void fillSamples();
    void refresh();

    MainWindow& window_;
    QMenu* recent_ = nullptr;
    QMenu* samples_ = nullptr;
    QAction* new_ = nullptr;
    QAction* open_ = nullptr;
    QAction* save_ = nullptr;
    QAction* undo_ = nullptr;
    QAction* redo_ = nullptr;
    std::vector<QAction*> tools_;
    std::vector<QAction*> symmetries_;
    QAction* merge_ = nullptr;
    QAction* split_ = nullptr;
    QAction* zoomIn_ = nullptr;
    QAction* zoomOut_ = nullptr;
    QAction* fit_ = nullptr;
    QAction* letters_ = nullptr;
    Segmented* units_ = nullptr;
};

}  // namespace kerfwright
