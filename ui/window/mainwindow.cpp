#include "ui/window/mainwindow.h"

#include "ui/document/recovery.h"
#include "ui/window/batchdialog.h"
#include "ui/window/benchtabs.h"
#include "ui/window/boardfoot.h"
#include "ui/window/boardview.h"
#include "ui/window/buildfilm.h"
#include "ui/window/dialogs.h"
#include "ui/window/filework.h"
#include "ui/window/gallery.h"
#include "ui/window/icons.h"
#include "ui/window/panels.h"
#include "ui/window/spotlightnote.h"
#include "ui/window/stepspanel.h"
#include "ui/window/theme.h"
#include "ui/window/totalsbar.h"
#include "ui/window/tour.h"
#include "ui/window/windowactions.h"
#include "ui/window/windowplace.h"
#include "ui/window/wishform.h"
#include "ui/window/woodlist.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QLabel>
#include <QMimeData>
#include <QSplitter>
#include <QStackedWidget>
#include <QUrl>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

constexpr int noticeTime = 4000;  // milliseconds
constexpr int lowHeight = 600;    // below it, what stands round the board makes itself small

/// The one project that is dragged, empty where it is anything else or more.
QString projectIn(const QDropEvent& event) {
    const QList<QUrl> urls = event.mimeData()->urls();
    const QString path = urls.size() == 1 ? urls.front().toLocalFile() : QString();
    return FileWork::isProject(path) ? path : QString();
}

}  // namespace

MainWindow::MainWindow(const WindowOptions& options, const QString& file)
    : ownDialogs_(options.dialogs == nullptr ? std::make_unique<WindowDialogs>() : nullptr)
    , dialogs_(options.dialogs == nullptr ? *ownDialogs_ : *options.dialogs)
    , document_(file)
    , planner_(document_, options.planDelay)
    , sawyer_(document_, planner_, options.planDelay)
    , spotlight_(planner_, sawyer_)
    , editor_(document_)
    , recovery_(std::make_unique<Recovery>(
          document_,
          options.recoveryFolder.isEmpty() ? Recovery::usualFolder() : options.recoveryFolder,
          options.recoveryDelay))
    , files_(new FileWork(document_, *recovery_, dialogs_, this)) {
    setObjectName(QStringLiteral("mainWindow"));
    setWindowIcon(applicationIcon());
    setAcceptDrops(true);
    setContextMenuPolicy(Qt::NoContextMenu);
    build();
    connectParts();
    refreshTitle();
    resize(1440, 900);
    board_->setFocus(Qt::OtherFocusReason);
}

MainWindow::~MainWindow() {
    // The parts hold references to the members below them, and the history says a last word when it
    // is emptied.
    document_.history().blockSignals(true);
    document_.blockSignals(true);
    delete takeCentralWidget();
}

void MainWindow::build() {
    // Explicit, since the panels would otherwise hold the window open instead of folding away.
    setMinimumSize(600, 400);
    // First what asks for no font: those are still being found, and the wait would be idle. Each
    // part brings its own order of focus, so that the window's is that of the splitter.
    auto* middle = new QWidget;
    middle->setBackgroundRole(QPalette::AlternateBase);
    middle->setAutoFillBackground(true);
    auto* place = new QStackedWidget(middle);  // the board, or a stage of its build
    board_ = new BoardView(document_, planner_, editor_, place);
    place->addWidget(board_);
    WindowActions::drawBarAhead();
    WoodList::drawButtonsAhead();

    bench_ = new BenchTabs(document_, planner_, sawyer_, spotlight_, dialogs_, nullptr);
    foot_ = new BoardFoot(document_, planner_, editor_, *board_, middle);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 4);
    column->setSpacing(4);
    auto* below = new QVBoxLayout;
    below->setContentsMargins(24, 0, 8, 0);
    below->addWidget(foot_);
    auto* stageRoom = new QWidget(middle);
    film_ = new BuildFilm(planner_, *place, *board_, *stageRoom);
    below->addWidget(stageRoom);
    column->addWidget(place, 1);
    column->addLayout(below);
    wish_ = new WishForm(document_, planner_, editor_, nullptr);

    auto* splitter = new QSplitter(this);
    splitter->setChildrenCollapsible(false);
    splitter->addWidget(wish_);
    splitter->addWidget(middle);
    splitter->addWidget(bench_);
    panels_ = new Panels(*splitter, *wish_, *board_, *bench_);
    panels_->setPlaceOfBoard(*place);
    panels_->setRoomOfBench(bench_->snugWidth(), bench_->easyWidth());

    auto* work = new QWidget(this);
    auto* all = new QVBoxLayout(work);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    all->addWidget(splitter, 1);
    totals_ = new TotalsBar(document_, planner_, work);
    all->addWidget(totals_);
    pages_ = new QStackedWidget(this);
    pages_->addWidget(work);
    setCentralWidget(pages_);
    actions_ = new WindowActions(*this);
}

void MainWindow::connectParts() {
    connect(&document_, &Document::stateChanged, this, &MainWindow::refreshTitle);
    connect(wish_, &WishForm::previewed, board_, &BoardView::setPreview);
    connect(&spotlight_, &Spotlight::changed, board_,
            [this] { board_->setHighlight(spotlight_.place()); });
    new SpotlightNote(spotlight_, *board_);
    connect(bench_->steps(), &StepsPanel::termAsked, this, &MainWindow::showTerm);
    connect(bench_->steps(), &StepsPanel::rateAsked, this, [this](const QString& key) {
        panels_->setOpen(Panels::Wish, true);
        wish_->focusRate(key);
    });
    connect(board_, &BoardView::pieceChosen, this, [this](QPoint cell) {
        if (cell.x() < 0) {
            spotlight_.letGo();
        } else {
            spotlight_.choosePiece(cell);
        }
    });
    connect(board_, &BoardView::borderChosen, this,
            [this] { spotlight_.choose({Subject::Kind::Border}); });
    connect(film_, &BuildFilm::termAsked, this, &MainWindow::showTerm);
    // What is below the board works on the board.
    connect(film_, &BuildFilm::changed, this,
            [this] { foot_->setVisible(!film_->isStageShown()); });
    connect(bench_, &BenchTabs::termAsked, this, &MainWindow::showTerm);
    connect(totals_, &TotalsBar::termAsked, this, &MainWindow::showTerm);
    connect(bench_, &BenchTabs::woodPriceAsked, this, [this](const QString& wood) {
        panels_->setOpen(Panels::Wish, true);
        wish_->showPrice(wood);
    });
    connect(bench_, &BenchTabs::told, this, &MainWindow::tell);
    connect(bench_, &BenchTabs::sampleAsked, this, [this](const QString& sample) {
        const Timber timber = document_.project().timber;
        const ProjectPtr open = document_.snapshot();
        files_->openSample(sample);
        if (document_.snapshot() != open) {
            document_.edit(tr("take the rack along"), entry::none,
                           [&timber](Project& project) { project.timber = timber; });
        }
    });
    connect(files_, &FileWork::opened, this, &MainWindow::hideGallery);
    connect(files_, &FileWork::saved, this,
            [this](const QString& name) { tell(tr("Saved %1").arg(name)); });
    noticeTime_.setSingleShot(true);
    noticeTime_.setInterval(noticeTime);
    connect(&noticeTime_, &QTimer::timeout, this, [this] { notice_->hide(); });
}

void MainWindow::showTerm(TermKind kind) {
    // Its entry may be in a panel that is folded away.
    panels_->setOpen(Panels::Wish, true);
    wish_->focusTerm(kind);
}

void MainWindow::refreshTitle() {
    setWindowTitle(document_.displayName() + QStringLiteral("[*] — Kerfwright"));
    setWindowModified(document_.isModified());
}

void MainWindow::finishStart(const QString& file) {
    if (!file.isEmpty()) {
        files_->noteOpened(file, document_.openFault());
    }
}

void MainWindow::showBatch() {
    if (batch_ == nullptr) {
        batch_ = new BatchDialog(document_, dialogs_, this);
        connect(batch_, &BatchDialog::told, this, &MainWindow::tell);
    }
    batch_->begin();
}

void MainWindow::showGallery() {
    if (gallery_ == nullptr) {
        gallery_ = new Gallery(document_.project().notation.unit, this);
        pages_->addWidget(gallery_);
        connect(gallery_, &Gallery::sampleChosen, files_, &FileWork::openSample);
        connect(gallery_, &Gallery::patternChosen, files_, &FileWork::startPattern);
        connect(gallery_, &Gallery::newChosen, files_, &FileWork::startNew);
        connect(gallery_, &Gallery::openChosen, files_, &FileWork::open);
        connect(gallery_, &Gallery::closed, this, &MainWindow::hideGallery);
    }
    gallery_->setBack(!document_.path().isEmpty() || document_.isModified());
    pages_->setCurrentWidget(gallery_);
    gallery_->widget()->setFocus();
}

void MainWindow::offerTour() {
    if (!isGalleryShown()) {
        beginTour(*this, false);
        return;
    }
    connect(
        pages_, &QStackedWidget::currentChanged, this, [this] { beginTour(*this, false); },
        static_cast<Qt::ConnectionType>(Qt::QueuedConnection | Qt::SingleShotConnection));
}

void MainWindow::hideGallery() {
    if (isGalleryShown()) {
        pages_->setCurrentIndex(0);
        board_->setFocus(Qt::OtherFocusReason);
    }
}

bool MainWindow::isGalleryShown() const {
    return pages_->currentIndex() != 0;
}

void MainWindow::tell(const QString& words) {
    if (notice_ == nullptr) {
        notice_ = new QLabel(this);
        notice_->setObjectName(QStringLiteral("notice"));
        notice_->setAutoFillBackground(true);
        notice_->setBackgroundRole(QPalette::Highlight);
        notice_->setForegroundRole(QPalette::HighlightedText);
        notice_->setContentsMargins(16, 8, 16, 8);
        notice_->setAttribute(Qt::WA_TransparentForMouseEvents);
    }
    notice_->setText(words);
    placeNotice();
    notice_->show();
    notice_->raise();
    noticeTime_.start();
}

void MainWindow::placeNotice() {
    if (notice_ != nullptr) {
        notice_->adjustSize();
        // Over the lower edge of the board: what stands below it is to be read and worked with.
        const QWidget& place = *board_->parentWidget();
        const int bottom = place.isVisible() ? place.mapTo(this, QPoint(0, place.height())).y() - 8
                                             : height() - 56;
        notice_->move((width() - notice_->width()) / 2, bottom - notice_->height());
    }
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (files_->mayLeave()) {
        keepPlace(*this);
        recovery_->discard();
        event->accept();
    } else {
        event->ignore();
    }
}

void MainWindow::changeEvent(QEvent* event) {
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::ThemeChange && themeChoice() == ThemeChoice::System) {
        applyTheme(*qApp);
    }
}

bool MainWindow::event(QEvent* event) {
    if (event->type() == QEvent::Paint && !painted_) {
        painted_ = true;
        QMetaObject::invokeMethod(
            this, [this] { film_->begin(*bench_->steps()->list()); }, Qt::QueuedConnection);
    }
    return QMainWindow::event(event);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    panels_->fitInto(width());
    foot_->setLow(height() < lowHeight);
    film_->fitInto(height());
    actions_->fitBar(width());
    placeNotice();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!projectIn(*event).isEmpty()) {
        // The file is read, never moved.
        event->setDropAction(Qt::CopyAction);
        event->accept();
    }
}

void MainWindow::dropEvent(QDropEvent* event) {
    const QString path = projectIn(*event);
    if (path.isEmpty()) {
        return;
    }
    event->setDropAction(Qt::CopyAction);
    event->accept();
    // Later, since who let it go waits for this to return, and a question may have to be answered.
    QMetaObject::invokeMethod(
        this,
        [this, path] {
            activateWindow();
            if (files_->mayLeave()) {
                files_->openPath(path);
            }
        },
        Qt::QueuedConnection);
}

}  // namespace kerfwright
