#include "ui/window/windowactions.h"

#include "ui/document/language.h"
#include "ui/document/recent.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/boardview.h"
#include "ui/window/buildfilm.h"
#include "ui/window/filework.h"
#include "ui/window/help.h"
#include "ui/window/helpwindow.h"
#include "ui/window/icons.h"
#include "ui/window/mainwindow.h"
#include "ui/window/panels.h"
#include "ui/window/samples.h"
#include "ui/window/segmented.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/theme.h"
#include "ui/window/tour.h"
#include "ui/window/woodlist.h"

#include <QActionGroup>
#include <QApplication>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>
#include <QToolButton>

#include <algorithm>
#include <array>

namespace kerfwright {

namespace {

constexpr double zoomStep = 1.25;
constexpr int barIcon = 20;
constexpr int panelStep = 24;  // pixels

}  // namespace

void WindowActions::drawBarAhead() {
    drawAhead({QStringLiteral("new"), QStringLiteral("open"), QStringLiteral("line"),
               QStringLiteral("rectangle"), QStringLiteral("fill"), QStringLiteral("mark"),
               QStringLiteral("joints"), QStringLiteral("mirror-across"),
               QStringLiteral("mirror-down"), QStringLiteral("half-turn"),
               QStringLiteral("alternate-rows"), QStringLiteral("zoom-out"),
               QStringLiteral("zoom-in"), QStringLiteral("fit"), QStringLiteral("letters")},
              barIcon);
    // As they are at a start: what is chosen, and what there is nothing to do with yet.
    drawAhead(
        {QStringLiteral("panel-left"), QStringLiteral("paint"), QStringLiteral("panel-right")},
        barIcon, QIcon::Normal, QIcon::On);
    drawAhead({QStringLiteral("save"), QStringLiteral("undo"), QStringLiteral("redo")}, barIcon,
              QIcon::Disabled);
}

WindowActions::WindowActions(MainWindow& window)
    : QObject(&window)
    , window_(window) {
    buildFile();
    buildEdit();
    buildBoard();
    buildView();
    buildHelp();
    buildBar();
    connect(&window.document(), &Document::projectChanged, this, &WindowActions::refresh);
    connect(&window.document(), &Document::stateChanged, this, &WindowActions::refresh);
    connect(&window.editor(), &BoardEditor::symmetryChanged, this, &WindowActions::refresh);
    connect(&window.board(), &BoardView::toolChanged, this, &WindowActions::refresh);
    if (auto* woods = window.findChild<WoodList*>()) {
        connect(&window.bench(), &BenchTabs::timberAsked, woods, &WoodList::showTimber);
    }
    refresh();
}

QAction* WindowActions::add(QMenu* menu, const QString& text, const char* name, const QString& icon,
                            const QKeySequence& keys) {
    auto* action = new QAction(text, this);
    action->setObjectName(QString::fromLatin1(name));
    if (!icon.isEmpty()) {
        action->setIcon(lineIcon(icon));
        action->setIconVisibleInMenu(false);
    }
    if (!keys.isEmpty()) {
        action->setShortcut(keys);
    }
    menu->addAction(action);
    return action;
}

void WindowActions::buildFile() {
    FileWork& files = window_.files();
    QMenu* menu = window_.menuBar()->addMenu(tr("&File"));
    new_ = add(menu, tr("&New board"), "actionNew", QStringLiteral("new"), QKeySequence::New);
    connect(new_, &QAction::triggered, this,
            [this] { window_.files().startNew(window_.document().project().notation.unit); });
    connect(add(menu, tr("New board in &millimetres"), "actionNewMm", QString(), {}),
            &QAction::triggered, &files, [&files] { files.startNew(Unit::Millimetres); });
    connect(add(menu, tr("New board in &inches"), "actionNewInch", QString(), {}),
            &QAction::triggered, &files, [&files] { files.startNew(Unit::Inches); });
    menu->addSeparator();
    open_ = add(menu, tr("&Open…"), "actionOpen", QStringLiteral("open"), QKeySequence::Open);
    connect(open_, &QAction::triggered, &files, &FileWork::open);
    recent_ = menu->addMenu(tr("Open &recent"));
    connect(recent_, &QMenu::aboutToShow, this, &WindowActions::fillRecent);
    samples_ = menu->addMenu(tr("&Samples"));
    connect(samples_, &QMenu::aboutToShow, this, &WindowActions::fillSamples);
    menu->addSeparator();
    save_ = add(menu, tr("&Save"), "actionSave", QStringLiteral("save"), QKeySequence::Save);
    connect(save_, &QAction::triggered, &files, &FileWork::save);
    connect(add(menu, tr("Save &as…"), "actionSaveAs", QString(), QKeySequence::SaveAs),
            &QAction::triggered, &files, &FileWork::saveAs);
    menu->addSeparator();
    BenchTabs& bench = window_.bench();
    connect(add(menu, tr("Save cut sheets as &PDF…"), "actionPdf", QString(),
                QKeySequence(Qt::CTRL | Qt::Key_E)),
            &QAction::triggered, &bench, [&bench] { bench.sheets()->savePdf(); });
    connect(add(menu, tr("Save cut sheets as S&VG…"), "actionSvg", QString(), {}),
            &QAction::triggered, &bench, [&bench] { bench.sheets()->saveSvg(); });
    connect(add(menu, tr("Save pi&cture of the board…"), "actionPicture", QString(), {}),
            &QAction::triggered, &bench, [&bench] { bench.sheets()->savePicture(); });
    connect(add(menu, tr("Prin&t cut sheets…"), "actionPrint", QString(), QKeySequence::Print),
            &QAction::triggered, &bench, [&bench] { bench.sheets()->print(); });
    menu->addSeparator();
    connect(add(menu, tr("Several &boards at once…"), "actionBatch", QString(),
                QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_B)),
            &QAction::triggered, &window_, &MainWindow::showBatch);
    menu->addSeparator();
    connect(add(menu, tr("&Quit"), "actionQuit", QString(), QKeySequence::Quit),
            &QAction::triggered, &window_, &QWidget::close);
}

void WindowActions::buildEdit() {
    QMenu* menu = window_.menuBar()->addMenu(tr("&Edit"));
    QUndoStack& history = window_.document().history();
    undo_ = history.createUndoAction(this, tr("Undo"));
    undo_->setObjectName(QStringLiteral("actionUndo"));
    undo_->setShortcut(QKeySequence::Undo);
    undo_->setIcon(lineIcon(QStringLiteral("undo")));
    redo_ = history.createRedoAction(this, tr("Redo"));
    redo_->setObjectName(QStringLiteral("actionRedo"));
    redo_->setShortcuts(
        {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
    redo_->setIcon(lineIcon(QStringLiteral("redo")));
    for (QAction* action : {undo_, redo_}) {
        action->setIconVisibleInMenu(false);
        menu->addAction(action);
    }
    menu->addSeparator();
    connect(add(menu, tr("&Copy the board as a picture"), "actionCopyPicture", QString(),
                QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C)),
            &QAction::triggered, &window_, [this] { window_.bench().sheets()->copyPicture(); });
}

void WindowActions::buildView() {
    QMenu* menu = window_.menuBar()->addMenu(tr("&View"));
    BoardView& board = window_.board();
    zoomIn_ = add(menu, tr("Zoom &in"), "actionZoomIn", QStringLiteral("zoom-in"), {});
    zoomIn_->setShortcuts({QKeySequence::ZoomIn, QKeySequence(Qt::CTRL | Qt::Key_Equal)});
    connect(zoomIn_, &QAction::triggered, &board, [&board] { board.zoomBy(zoomStep); });
    zoomOut_ = add(menu, tr("Zoom &out"), "actionZoomOut", QStringLiteral("zoom-out"),
                   QKeySequence::ZoomOut);
    connect(zoomOut_, &QAction::triggered, &board, [&board] { board.zoomBy(1 / zoomStep); });
    fit_ = add(menu, tr("&Whole board"), "actionFit", QStringLiteral("fit"),
               QKeySequence(Qt::CTRL | Qt::Key_0));
    connect(fit_, &QAction::triggered, &board, &BoardView::zoomToFit);
    menu->addSeparator();
    letters_ = add(menu, tr("&Letters and hatch"), "actionLetters", QStringLiteral("letters"),
                   QKeySequence(Qt::CTRL | Qt::Key_L));
    letters_->setCheckable(true);
    letters_->setToolTip(tr("Letters and hatch on the woods"));
    connect(letters_, &QAction::toggled, &board, &BoardView::setLetters);
    const auto look = [&](const QString& text, const char* name, const QKeySequence& keys,
                          bool isOn, auto change) {
        QAction* action = add(menu, text, name, QString(), keys);
        action->setCheckable(true);
        action->setChecked(isOn);
        connect(action, &QAction::toggled, &board, [&board, change](bool on) {
            FigureStyle style = board.figure().style();
            change(style, on);
            board.figure().setStyle(style);
            keepFigureStyle(style);
        });
    };
    const FigureStyle style = board.figure().style();
    look(tr("Wood &figure"), "actionFigure", QKeySequence(Qt::CTRL | Qt::Key_G), style.on,
         [](FigureStyle& changed, bool on) { changed.on = on; });
    look(tr("&Oiled"), "actionOiled", {}, style.finish == Finish::Oiled,
         [](FigureStyle& changed, bool on) { changed.finish = on ? Finish::Oiled : Finish::Raw; });
    connect(letters_, &QAction::toggled, &window_.film(), &BuildFilm::setLetters);
    menu->addSeparator();
    buildFilm(menu);
    menu->addSeparator();
    buildPanels(menu);
    menu->addSeparator();
    BenchTabs& bench = window_.bench();
    for (int tab = 0; tab < bench.count(); ++tab) {
        connect(add(menu, bench.tabText(tab), "", QString(),
                    QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + tab))),
                &QAction::triggered, &bench, [this, &bench, tab] {
                    window_.panels().setOpen(Panels::Bench, true);
                    bench.setCurrentIndex(tab);
                    bench.focusPage();
                });
    }
    menu->addSeparator();
    QMenu* colours = menu->addMenu(tr("Light or dar&k"));
    auto* themes = new QActionGroup(this);
    const std::array<std::pair<QString, ThemeChoice>, 3> choices{
        {{tr("As the &system"), ThemeChoice::System},
         {tr("Li&ght"), ThemeChoice::Light},
         {tr("&Dark"), ThemeChoice::Dark}}};
    for (const auto& [text, choice] : choices) {
        QAction* action = add(colours, text, "", QString(), {});
        action->setCheckable(true);
        action->setChecked(choice == themeChoice());
        themes->addAction(action);
        connect(action, &QAction::triggered, this, [choice = choice] {
            setThemeChoice(choice);
            applyTheme(*qApp);
        });
    }
    buildLanguages(menu->addMenu(tr("Lan&guage")));
}

void WindowActions::buildLanguages(QMenu* menu) {
    auto* group = new QActionGroup(this);
    QList<SpokenLanguage> choices = languages();
    choices.prepend({QString(), tr("As the &system")});
    for (const SpokenLanguage& choice : choices) {
        QAction* action = add(menu, choice.name, "", QString(), {});
        action->setCheckable(true);
        action->setChecked(choice.code == languageChoice());
        group->addAction(action);
        connect(action, &QAction::triggered, &window_, [this, code = choice.code] {
            setLanguageChoice(code);
            window_.tell(tr("The new language is spoken from the next start on."));
        });
    }
}

void WindowActions::buildPanels(QMenu* menu) {
    Panels& panels = window_.panels();
    const auto panel = [&](const QString& text, const char* name, const QString& icon, Qt::Key key,
                           const QString& tip, Panels::Side side) {
        QAction* action = add(menu, text, name, icon, key);
        action->setCheckable(true);
        action->setToolTip(tip);
        connect(action, &QAction::triggered, &panels,
                [&panels, side](bool open) { panels.setOpen(side, open); });
        return action;
    };
    wishPanel_ = panel(tr("&Wish beside the board"), "panelWish", QStringLiteral("panel-left"),
                       Qt::Key_F7, tr("Wish: size, pattern, woods"), Panels::Wish);
    benchPanel_ = panel(tr("&Bench beside the board"), "panelBench", QStringLiteral("panel-right"),
                        Qt::Key_F8, tr("Bench: steps, cautions, cut list, sheets"), Panels::Bench);
    connect(&panels, &Panels::changed, this, &WindowActions::refresh);
    connect(add(menu, tr("&Next part of the window"), "actionNextPart", QString(), Qt::Key_F6),
            &QAction::triggered, &panels, [&panels] { panels.goOn(true); });
    connect(add(menu, tr("&Previous part of the window"), "actionPreviousPart", QString(),
                QKeySequence(Qt::SHIFT | Qt::Key_F6)),
            &QAction::triggered, &panels, [&panels] { panels.goOn(false); });
    connect(add(menu, tr("This part wi&der"), "actionWider", QString(),
                QKeySequence(Qt::CTRL | Qt::Key_F7)),
            &QAction::triggered, &panels, [&panels] { panels.widen(panelStep); });
    connect(add(menu, tr("This part na&rrower"), "actionNarrower", QString(),
                QKeySequence(Qt::CTRL | Qt::Key_F8)),
            &QAction::triggered, &panels, [&panels] { panels.widen(-panelStep); });
}

void WindowActions::buildFilm(QMenu* menu) {
    BuildFilm& film = window_.film();
    connect(add(menu, tr("Build, stage by &stage"), "actionFilm", QString(), Qt::Key_F9),
            &QAction::triggered, &film, &BuildFilm::play);
    const auto option = [&](const QString& text, const char* name) {
        QAction* action = add(menu, text, name, QString(), {});
        action->setCheckable(true);
        return action;
    };
    stageRow_ = option(tr("Sta&ges below the board"), "stageRowShown");
    connect(stageRow_, &QAction::triggered, &film, &BuildFilm::setRowWanted);
    stagesMove_ = option(tr("Stages come about in &motion"), "stagesMove");
    connect(stagesMove_, &QAction::triggered, &film, &BuildFilm::setMoving);
    connect(&film, &BuildFilm::changed, this, &WindowActions::refresh);
}

void WindowActions::buildHelp() {
    QMenu* menu = window_.menuBar()->addMenu(tr("&Help"));
    connect(add(menu, tr("&Help"), "actionHelp", QString(), QKeySequence(Qt::Key_F1)),
            &QAction::triggered, &window_, [this] {
                QWidget* focus = QApplication::focusWidget();
                showHelp(focus != nullptr && focus->window() == &window_ ? *focus : window_);
            });
    QAction* keys = add(menu, tr("&Commands and keys…"), "actionKeys", QString(),
                        QKeySequence(Qt::CTRL | Qt::Key_Question));
    connect(keys, &QAction::triggered, &window_,
            [this] { showKeys(*window_.menuBar(), &window_); });
    connect(add(menu, tr("Show the &tour"), "actionTour", QString(), {}), &QAction::triggered,
            &window_, [this] {
                window_.hideGallery();
                beginTour(window_, true);
            });
    menu->addSeparator();
    connect(add(menu, tr("&About Kerfwright"), "actionAbout", QString(), {}), &QAction::triggered,
            &window_, [this] { showAbout(&window_); });
}

void WindowActions::buildBar() {
    bar_ = new QToolBar(tr("Tools"), &window_);
    bar_->setObjectName(QStringLiteral("toolBar"));
    bar_->setMovable(false);
    bar_->setFloatable(false);
    bar_->setIconSize(QSize(barIcon, barIcon));
    window_.addToolBar(bar_);
    const auto group = [this](std::vector<QAction*> actions, int rank) {
        auto* separator = new QAction(this);
        separator->setSeparator(true);
        groups_.push_back({std::move(actions), separator, rank});
    };
    group({wishPanel_}, 0);
    group({new_, open_, save_}, 2);
    group({undo_, redo_}, 0);
    group(tools_, 0);
    group(symmetries_, 0);
    group({zoomOut_, zoomIn_, fit_}, 3);
    group({letters_}, 1);
    auto* spacer = new QWidget(bar_);
    spacer->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    barEnd_ = bar_->addWidget(spacer);
    units_ = new Segmented(tr("Units"), {tr("inches"), tr("mm")}, bar_);
    units_->setObjectName(QStringLiteral("units"));
    units_->setFixedWidth(136);
    bar_->addWidget(units_);
    auto* edge = new QWidget(bar_);
    edge->setFixedWidth(8);
    bar_->addWidget(edge);
    bar_->addAction(benchPanel_);
    equip(benchPanel_);
    connect(units_, &Segmented::chosen, this, [this](int index) {
        window_.document().edit(tr("change units"), entry::none, [index](Project& project) {
            setUnit(project, index == 0 ? Unit::Inches : Unit::Millimetres);
        });
    });
    fillBar(greatestRank);
}

void WindowActions::fillBar(int rank) {
    if (rank == shownRank_) {
        return;
    }
    shownRank_ = rank;
    for (const BarGroup& group : groups_) {
        for (QAction* action : group.actions) {
            bar_->removeAction(action);
        }
        bar_->removeAction(group.separator);
    }
    for (const BarGroup& group : groups_) {
        if (group.rank > rank) {
            continue;
        }
        for (QAction* action : group.actions) {
            bar_->insertAction(barEnd_, action);
            equip(action);
        }
        bar_->insertAction(barEnd_, group.separator);
    }
}

void WindowActions::equip(QAction* action) const {
    QWidget* button = bar_->widgetForAction(action);
    button->setAccessibleName(action->text().remove(QLatin1Char('&')));
    button->setFocusPolicy(Qt::TabFocus);
    button->setFixedSize(32, 32);
    const QString tip = action->toolTip();
    if (!action->shortcut().isEmpty() && !tip.contains(QLatin1Char('('))) {
        action->setToolTip(QStringLiteral("%1 (%2)").arg(
            tip, action->shortcut().toString(QKeySequence::NativeText)));
    }
}

void WindowActions::fitBar(int width) {
    for (int rank = greatestRank; rank >= 0; --rank) {
        int& needed = barWidths_[static_cast<std::size_t>(rank)];
        if (needed == 0) {
            fillBar(rank);
            needed = bar_->sizeHint().width();
        }
        if (needed <= width || rank == 0) {
            fillBar(rank);
            return;
        }
    }
}

void WindowActions::fillRecent() {
    recent_->clear();
    const QStringList files = recentFiles();
    for (const QString& path : files) {
        QAction* action = recent_->addAction(QFileInfo(path).fileName());
        action->setToolTip(path);
        connect(action, &QAction::triggered, this, [this, path] {
            if (window_.files().mayLeave()) {
                window_.files().openPath(path);
            }
        });
    }
    if (files.isEmpty()) {
        recent_->addAction(tr("Nothing yet"))->setEnabled(false);
        return;
    }
    recent_->addSeparator();
    connect(recent_->addAction(tr("Forget these")), &QAction::triggered, this,
            [] { clearRecentFiles(); });
}

void WindowActions::fillSamples() {
    samples_->clear();
    connect(samples_->addAction(tr("Show as pictures")), &QAction::triggered, &window_,
            &MainWindow::showGallery);
    samples_->addSeparator();
    for (const QString& path : samplePaths()) {
        const Result<Project> sample = readSample(path);
        if (sample.ok()) {
            connect(samples_->addAction(toQt(sample->titles.name)), &QAction::triggered, this,
                    [this, path] { window_.files().openSample(path); });
        }
    }
}

void WindowActions::refresh() {
    refreshSymmetries();
    wishPanel_->setChecked(window_.panels().isOpen(Panels::Wish));
    benchPanel_->setChecked(window_.panels().isOpen(Panels::Bench));
    stageRow_->setChecked(window_.film().isRowWanted());
    stagesMove_->setChecked(window_.film().isMoving());
    const Symmetry symmetry = window_.editor().symmetry();
    symmetries_[0]->setChecked(symmetry.across);
    symmetries_[1]->setChecked(symmetry.down);
    symmetries_[2]->setChecked(symmetry.halfTurn);
    symmetries_[3]->setChecked(symmetry.alternateRows);
    tools_[static_cast<std::size_t>(window_.board().tool())]->setChecked(true);
    save_->setEnabled(window_.document().isModified() || window_.document().path().isEmpty());
    units_->setCurrent(window_.document().project().notation.unit == Unit::Inches ? 0 : 1);
}

}  // namespace kerfwright
