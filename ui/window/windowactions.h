// The menus and the tool bar.
#pragma once

#include <QAction>
#include <QObject>

#include <array>
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
    /// Draws the pictures of the tool bar before there is one: that needs no font.
    static void drawBarAhead();

    explicit WindowActions(MainWindow& window);

    /// Leaves out of the tool bar what menus and keys do as well, until the rest fits `width`.
    void fitBar(int width);

private:
    static constexpr int greatestRank = 3;

    /// Buttons of the tool bar that come and go together.
    struct BarGroup {
        std::vector<QAction*> actions;
        QAction* separator;
        int rank;  ///< the highest goes first; 0 stays
    };

    QAction* add(QMenu* menu, const QString& text, const char* name, const QString& icon,
                 const QKeySequence& keys);
    void buildFile();
    void buildEdit();
    void buildBoard();
    void buildView();
    void buildHelp();
    void buildPanels(QMenu* menu);
    void buildLanguages(QMenu* menu);
    void buildFilm(QMenu* menu);
    void buildBar();
    void fillBar(int rank);
    void equip(QAction* action) const;
    void refreshSymmetries();
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
    QAction* zoomIn_ = nullptr;
    QAction* zoomOut_ = nullptr;
    QAction* fit_ = nullptr;
    QAction* letters_ = nullptr;
    QAction* stageRow_ = nullptr;
    QAction* stagesMove_ = nullptr;
    QAction* wishPanel_ = nullptr;
    QAction* benchPanel_ = nullptr;
    QToolBar* bar_ = nullptr;
    QAction* barEnd_ = nullptr;  ///< what the groups stand before
    std::vector<BarGroup> groups_;
    int shownRank_ = -1;
    std::array<int, greatestRank + 1> barWidths_{};  ///< as measured, 0: not yet
    Segmented* units_ = nullptr;
};

}  // namespace kerfwright
