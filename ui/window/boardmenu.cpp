// The menu of the board: tools, symmetry and what is done to the marked region.
#include "ui/window/boardfoot.h"
#include "ui/window/boardtext.h"
#include "ui/window/boardview.h"
#include "ui/window/mainwindow.h"
#include "ui/window/regionactions.h"
#include "ui/window/windowactions.h"

#include <QActionGroup>
#include <QMenu>
#include <QMenuBar>

#include <array>

namespace kerfwright {

void WindowActions::buildBoard() {
    QMenu* menu = window_.menuBar()->addMenu(tr("&Board"));
    auto* group = new QActionGroup(this);
    // A letter is a key of the board alone: elsewhere it may be typed.
    const auto boardKey = [this](QAction* action, Qt::Key key) {
        action->setShortcut(key);
        action->setShortcutContext(Qt::WidgetShortcut);
        window_.board().addAction(action);
    };
    const auto tool = [&](const QString& text, const char* name, const QString& icon, Tool value,
                          Qt::Key key, const QString& tip) {
        QAction* action = add(menu, text, name, icon, {});
        boardKey(action, key);
        action->setCheckable(true);
        action->setToolTip(tip);
        group->addAction(action);
        tools_.push_back(action);
        connect(action, &QAction::triggered, this, [this, value] {
            window_.board().setTool(value);
            window_.board().setFocus(Qt::OtherFocusReason);
        });
    };
    tool(tr("&Paint pieces"), "toolPaint", QStringLiteral("paint"), Tool::Paint, Qt::Key_P,
         tr("Paint pieces: click or drag (P)"));
    tool(tr("Draw &lines"), "toolLine", QStringLiteral("line"), Tool::Line, Qt::Key_L,
         tr("Draw a line of pieces; Shift keeps it straight (L)"));
    tool(tr("Draw r&ectangles"), "toolRectangle", QStringLiteral("rectangle"), Tool::Rectangle,
         Qt::Key_R, tr("Draw a rectangle of pieces; Shift draws its edge only (R)"));
    tool(tr("&Fill with a wood"), "toolFill", QStringLiteral("fill"), Tool::Fill, Qt::Key_F,
         tr("Fill all of one wood that hangs together (F)"));
    tool(tr("Mar&k pieces"), "toolMark", QStringLiteral("mark"), Tool::Select, Qt::Key_K,
         tr("Mark pieces, to copy, move, mirror, merge or measure them (K)"));
    tool(tr("Move &joints"), "toolJoints", QStringLiteral("joints"), Tool::Joints, Qt::Key_J,
         tr("Drag joints; Shift for finer steps (J)"));
    menu->addSeparator();
    const auto symmetry = [&](const QString& text, const char* name, const QString& icon,
                              bool Symmetry::*flag, const QString& tip) {
        QAction* action = add(menu, text, name, icon, {});
        action->setCheckable(true);
        action->setProperty("tip", tip);
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
    connect(add(menu, tr("The board in &words…"), "actionReadBoard", QString(),
                QKeySequence(Qt::CTRL | Qt::Key_R)),
            &QAction::triggered, &window_,
            [this] { (new BoardText(window_.board().words(), &window_))->open(); });
    window_.foot().regionActions().fill(*menu->addMenu(tr("Marked re&gion")));
}

void WindowActions::refreshSymmetries() {
    const Field& field = window_.document().project().board.field;
    const bool wide = field.columns.size() > 1;
    const bool high = field.rows.size() > 1;
    const std::array<bool, 4> useful{wide, high, wide || high, field.rows.size() > 2};
    const bool joints = window_.board().tool() == Tool::Joints;
    for (std::size_t i = 0; i < symmetries_.size(); ++i) {
        QAction* action = symmetries_[i];
        const bool rowsOnly = joints && i == 3;
        action->setEnabled(useful[i] && !rowsOnly);
        const QString tip = action->property("tip").toString();
        action->setToolTip(
            rowsOnly
                ? tr("%1. Joints run through all rows: paint or mark pieces to use it").arg(tip)
            : useful[i] ? tip
                        : tr("%1. This board has too few rows or columns for it").arg(tip));
    }
}

}  // namespace kerfwright
