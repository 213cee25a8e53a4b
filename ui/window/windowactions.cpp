#include "ui/window/windowactions.h"

#include "ui/document/recent.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/boardview.h"
#include "ui/window/filework.h"
#include "ui/window/help.h"
#include "ui/window/icons.h"
#include "ui/window/mainwindow.h"
#include "ui/window/samples.h"
#include "ui/window/segmented.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/theme.h"
#include "ui/window/woodlist.h"

#include <QActionGroup>
#include <QApplication>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>
#include <QToolButton>

#include <array>

namespace kerfwright {

namespace {

constexpr double zoomStep = 1.25;

}  // namespace

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
    connect(&window.editor(), &BoardEditor::markChanged, this, &WindowActions::refresh);
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
}

void WindowActions::buildBoard() {
    QMenu* menu = window_.menuBar()->addMenu(tr("&Board"));
    auto* group = new QActionGroup(this);
    const auto tool = [&](const QString& text, const char* name, const QString& icon, Tool value,
                          const QString& tip) {
        QAction* action = add(menu, text, name, icon, {});
        action->setCheckable(true);
        action->setToolTip(tip);
        group->addAction(action);
        tools_.push_back(action);
        connect(action, &QAction::triggered, this,
                [this, value] { window_.board().setTool(value); });
    };
    tool(tr("&Paint pieces"), "toolPaint", QStringLiteral("paint"), Tool::Paint,
         tr("Paint pieces: click or drag (P)"));
    tool(tr("Mar&k pieces"), "toolMark", QStringLiteral("mark"), Tool::Select,
         tr("Mark pieces, to merge or measure them (K)"));
    tool(tr("Move &joints"), "toolJoints", QStringLiteral("joints"), Tool::Joints,
         tr("Drag joints; Shift for finer steps (J)"));
    menu->addSeparator();
    const auto symmetry = [&](const QString& text, const char* name, const QString& icon,
                              bool Symmetry::*flag, const QString& tip) {
        QAction* action = add(menu, text, name, icon, {});
        action->setCheckable(true);
        action->setToolTip(tip);
        symmetries_.push_back(action);
        connect(action, &QAction::triggered, this, [this, flag](bool on) {
            Symmetry changed = window_.editor().symmetry();
            changed.*flag = on;
            window_.editor().setSymmetry(changed);
        });
    };
    symmetry(tr("Mirror &across"), "symmetryAcross", QStringLiteral("mirror-across"),
             &Symmetry::across,
             tr("Mirror across: what you paint on the left is painted on the right too"));
    symmetry(tr("Mirror &down"), "symmetryDown", QStringLiteral("mirror-down"), &Symmetry::down,
             tr("Mirror down: what you paint at the top is painted at the bottom too"));
    symmetry(tr("&Half turn"), "symmetryHalfTurn", QStringLiteral("half-turn"), &Symmetry::halfTurn,
             tr("Half turn: what you paint is painted again with the board turned half round"));
    symmetry(tr("Alternate &rows"), "symmetryRows", QStringLiteral("alternate-rows"),
             &Symmetry::alternateRows,
             tr("Alternate rows: what you paint in one row is painted in every other row too"));
    menu->addSeparator();
    merge_ = add(menu, tr("&Merge marked pieces"), "actionMerge", QString(), {});
    connect(merge_, &QAction::triggered, &window_.editor(), &BoardEditor::merge);
    split_ = add(menu, tr("&Split marked piece"), "actionSplit", QString(), {});
    connect(split_, &QAction::triggered, &window_.editor(), &BoardEditor::split);
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
    menu->addSeparator();
    BenchTabs& bench = window_.bench();
    for (int tab = 0; tab < bench.count(); ++tab) {
        connect(add(menu, bench.tabText(tab), "", QString(),
                    QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + tab))),
                &QAction::triggered, &bench, [&bench, tab] { bench.setCurrentIndex(tab); });
    }
    menu->addSeparator();
    auto* themes = new QActionGroup(this);
    const std::array<std::pair<QString, ThemeChoice>, 3> choices{
        {{tr("As the &system"), ThemeChoice::System},
         {tr("Li&ght"), ThemeChoice::Light},
         {tr("&Dark"), ThemeChoice::Dark}}};
    for (const auto& [text, choice] : choices) {
        QAction* action = add(menu, text, "", QString(), {});
        action->setCheckable(true);
        action->setChecked(choice == themeChoice());
        themes->addAction(action);
        connect(action, &QAction::triggered, this, [choice = choice] {
            setThemeChoice(choice);
            applyTheme(*qApp);
        });
    }
}

void WindowActions::buildHelp() {
    QMenu* menu = window_.menuBar()->addMenu(tr("&Help"));
    connect(add(menu, tr("&Keys"), "actionKeys", QString(), QKeySequence(Qt::Key_F1)),
            &QAction::triggered, &window_, [this] { showKeys(&window_); });
    connect(add(menu, tr("&About Kerfwright"), "actionAbout", QString(), {}), &QAction::triggered,
            &window_, [this] { showAbout(&window_); });
}

void WindowActions::buildBar() {
    auto* bar = new QToolBar(tr("Tools"), &window_);
    bar->setObjectName(QStringLiteral("toolBar"));
    bar->setMovable(false);
    bar->setFloatable(false);
    bar->setIconSize(QSize(20, 20));
    window_.addToolBar(bar);
    const auto addAll = [bar](std::initializer_list<QAction*> actions) {
        for (QAction* action : actions) {
            bar->addAction(action);
        }
        bar->addSeparator();
    };
    addAll({new_, open_, save_});
    addAll({undo_, redo_});
    addAll({tools_[0], tools_[1], tools_[2]});
    addAll({symmetries_[0], symmetries_[1], symmetries_[2], symmetries_[3]});
    addAll({zoomOut_, zoomIn_, fit_});
    bar->addAction(letters_);
    auto* spacer = new QWidget(bar);
    spacer->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    bar->addWidget(spacer);
    units_ = new Segmented(tr("Units"), {tr("inches"), tr("mm")}, bar);
    units_->setObjectName(QStringLiteral("units"));
    units_->setFixedWidth(136);
    bar->addWidget(units_);
    auto* edge = new QWidget(bar);
    edge->setFixedWidth(8);
    bar->addWidget(edge);
    connect(units_, &Segmented::chosen, this, [this](int index) {
        window_.document().edit(tr("change units"), entry::none, [index](Project& project) {
            setUnit(project, index == 0 ? Unit::Inches : Unit::Millimetres);
        });
    });
    for (QAction* action : bar->actions()) {
        QString tip = action->toolTip();
        if (QWidget* button = bar->widgetForAction(action); qobject_cast<QToolButton*>(button)) {
            button->setAccessibleName(action->text().remove(QLatin1Char('&')));
            button->setFocusPolicy(Qt::TabFocus);
            button->setFixedSize(32, 32);
            if (!action->shortcut().isEmpty() && !tip.contains(QLatin1Char('('))) {
                action->setToolTip(QStringLiteral("%1 (%2)").arg(
                    tip, action->shortcut().toString(QKeySequence::NativeText)));
            }
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
    const Symmetry symmetry = window_.editor().symmetry();
    symmetries_[0]->setChecked(symmetry.across);
    symmetries_[1]->setChecked(symmetry.down);
    symmetries_[2]->setChecked(symmetry.halfTurn);
    symmetries_[3]->setChecked(symmetry.alternateRows);
    tools_[static_cast<std::size_t>(window_.board().tool())]->setChecked(true);
    merge_->setEnabled(window_.editor().canMerge());
    split_->setEnabled(window_.editor().canSplit());
    save_->setEnabled(window_.document().isModified() || window_.document().path().isEmpty());
    units_->setCurrent(window_.document().project().notation.unit == Unit::Inches ? 0 : 1);
}

}  // namespace kerfwright
