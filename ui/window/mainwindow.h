// The window: the wish on the left, the board in the middle, the bench on the right, the totals
// along the foot.
#pragma once

#include "ui/document/sawyer.h"
#include "ui/window/boardeditor.h"
#include "ui/window/spotlight.h"
#include "ui/window/window.h"

#include <QMainWindow>
#include <QTimer>

#include <memory>

QT_BEGIN_NAMESPACE
class QLabel;
class QStackedWidget;
QT_END_NAMESPACE

namespace kerfwright {

class BatchDialog;
class BenchTabs;
class BoardFoot;
class BoardView;
class BuildFilm;
class FileWork;
class Gallery;
class Panels;
class Recovery;
class TotalsBar;
class WindowActions;
class WishForm;

class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    /// Begins with `file` where it is not empty and can be read.
    MainWindow(const WindowOptions& options, const QString& file);
    ~MainWindow() override;

    Document& document() { return document_; }
    Planner& planner() { return planner_; }
    Sawyer& sawyer() { return sawyer_; }
    Spotlight& spotlight() { return spotlight_; }
    BoardEditor& editor() { return editor_; }
    BoardView& board() { return *board_; }
    BoardFoot& foot() { return *foot_; }
    BenchTabs& bench() { return *bench_; }
    FileWork& files() { return *files_; }
    Panels& panels() { return *panels_; }
    BuildFilm& film() { return *film_; }

    /// Tells of a file that could not be opened at the start, and remembers one that was.
    void finishStart(const QString& file);
    void showBatch();
    void showGallery();
    void hideGallery();
    bool isGalleryShown() const;
    /// The tour, without taking the keys, once the gallery is out of the way.
    void offerTour();
    /// A few words that go away by themselves.
    void tell(const QString& words);

protected:
    void closeEvent(QCloseEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool event(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void build();
    void connectParts();
    void refreshTitle();
    void showTerm(TermKind kind);
    void placeNotice();

    std::unique_ptr<Dialogs> ownDialogs_;
    Dialogs& dialogs_;
    Document document_;
    Planner planner_;
    Sawyer sawyer_;
    Spotlight spotlight_;
    BoardEditor editor_;
    std::unique_ptr<Recovery> recovery_;
    FileWork* files_;
    QStackedWidget* pages_ = nullptr;
    WishForm* wish_ = nullptr;
    BoardView* board_ = nullptr;
    BoardFoot* foot_ = nullptr;
    BuildFilm* film_ = nullptr;
    BenchTabs* bench_ = nullptr;
    Gallery* gallery_ = nullptr;
    BatchDialog* batch_ = nullptr;
    TotalsBar* totals_ = nullptr;
    Panels* panels_ = nullptr;
    WindowActions* actions_ = nullptr;
    QLabel* notice_ = nullptr;
    QTimer noticeTime_;
    bool painted_ = false;
};

}  // namespace kerfwright
