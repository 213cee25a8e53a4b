#include "ui/window/regionactions.h"

#include "ui/window/boardeditor.h"
#include "ui/window/boardview.h"
#include "ui/window/icons.h"
#include "ui/window/regioneditor.h"

#include <QMenu>

#include <algorithm>

namespace kerfwright {

RegionActions::RegionActions(BoardView& board, BoardEditor& editor, QObject* parent)
    : QObject(parent)
    , board_(board)
    , editor_(editor) {
    RegionEditor& region = editor.region();
    const auto ctrl = [](Qt::Key key) { return QKeySequence(Qt::CTRL | key); };
    const auto ctrlShift = [](Qt::Key key) { return QKeySequence(Qt::CTRL | Qt::SHIFT | key); };
    using enum Needs;

    picture(add(tr("&Merge marked pieces"), "actionMerge", tr("One piece of all that is marked"),
                Qt::Key_M, Merging, 0, [&editor] { editor.merge(); }),
            QStringLiteral("merge"), 1);
    picture(add(tr("&Split marked pieces"), "actionSplit", tr("One piece a square again"),
                Qt::Key_S, Splitting, 0, [&editor] { editor.split(); }),
            QStringLiteral("split"), 2);

    add(tr("Mark &all"), "actionMarkAll", tr("Mark the whole field"), ctrl(Qt::Key_A), Nothing, 1,
        [&region] { region.markAll(); });
    picture(add(tr("&Copy pieces"), "actionCopyPieces", tr("Copy what is marked"), ctrl(Qt::Key_C),
                Marked, 1, [&region] { region.copy(); }),
            QStringLiteral("copy"), 3);
    add(tr("C&ut pieces"), "actionCutPieces",
        tr("Copy what is marked and leave the wood that paints"), ctrl(Qt::Key_X), Marked, 1,
        [&region] { region.cut(); });
    picture(add(tr("&Paste pieces"), "actionPastePieces",
                tr("Take the copy in the hand: move it, then click or press Enter"),
                ctrl(Qt::Key_V), Copied, 1,
                [this, &region] { region.paste(board_.pointedCell()); }),
            QStringLiteral("paste"), 4);
    picture(add(tr("Mo&ve pieces"), "actionMovePieces",
                tr("Take what is marked in the hand: move it, then click or press Enter"),
                Qt::Key_G, Marked, 1, [&region] { region.lift(); }),
            QStringLiteral("move"), 8);

    picture(add(tr("Mirror &across"), "actionMirrorAcross", tr("Mirror the marked region across"),
                Qt::Key_H, MarkedOrHeld, 2, [&region] { region.mirror(Mirror::Across); }),
            QStringLiteral("flip-across"), 5);
    picture(add(tr("Mirror &down"), "actionMirrorDown", tr("Mirror the marked region down"),
                Qt::Key_V, MarkedOrHeld, 2, [&region] { region.mirror(Mirror::Down); }),
            QStringLiteral("flip-down"), 6);
    picture(add(tr("&Turn by a quarter"), "actionTurn",
                tr("Turn the marked region by a quarter to the right"), Qt::Key_T, MarkedOrHeld, 2,
                [&region] { region.turn(); }),
            QStringLiteral("turn"), 7);
    picture(add(tr("&Repeat over the board"), "actionRepeat",
                tr("Repeat the marked region over the whole board; its lower right corner can be "
                   "dragged as well"),
                ctrl(Qt::Key_D), Marked, 2, [&region] { region.repeatOverBoard(); }),
            QStringLiteral("repeat"), 9);
    add(tr("C&over with the copy"), "actionCover", tr("Repeat the copy over what is marked"),
        ctrlShift(Qt::Key_V), MarkedAndCopied, 2, [&region] { region.coverWithCopy(); });

    add(tr("Insert columns to the &left"), "actionInsertLeft",
        tr("As many columns as are marked, copies of them, to the left"), ctrlShift(Qt::Key_Left),
        Marked, 3, [&region] { region.insertLines(Edge::Left); });
    picture(add(tr("Insert columns to the r&ight"), "actionInsertRight",
                tr("As many columns as are marked, copies of them, to the right"),
                ctrlShift(Qt::Key_Right), Marked, 3,
                [&region] { region.insertLines(Edge::Right); }),
            QStringLiteral("insert-column"), 10);
    add(tr("Insert rows a&bove"), "actionInsertAbove",
        tr("As many rows as are marked, copies of them, above"), ctrlShift(Qt::Key_Up), Marked, 3,
        [&region] { region.insertLines(Edge::Top); });
    picture(add(tr("Insert rows b&elow"), "actionInsertBelow",
                tr("As many rows as are marked, copies of them, below"), ctrlShift(Qt::Key_Down),
                Marked, 3, [&region] { region.insertLines(Edge::Bottom); }),
            QStringLiteral("insert-row"), 11);
    picture(add(tr("Remove marked colum&ns"), "actionRemoveColumns",
                tr("Take the marked columns out of the board"), Qt::Key_Delete, Marked, 3,
                [&region] { region.removeColumns(); }),
            QStringLiteral("remove-column"), 12);
    picture(add(tr("Remove mar&ked rows"), "actionRemoveRows",
                tr("Take the marked rows out of the board"),
                QKeySequence(Qt::SHIFT | Qt::Key_Delete), Marked, 3,
                [&region] { region.removeRows(); }),
            QStringLiteral("remove-row"), 13);

    connect(&editor, &BoardEditor::markChanged, this, &RegionActions::refresh);
    connect(&region, &RegionEditor::carriedChanged, this, &RegionActions::refresh);
    connect(&region, &RegionEditor::copyChanged, this, &RegionActions::refresh);
    refresh();
}

QAction* RegionActions::add(const QString& text, const char* name, const QString& tip,
                            const QKeySequence& keys, Needs needs, int group,
                            const std::function<void()>& run) {
    auto* action = new QAction(text, this);
    action->setObjectName(QString::fromLatin1(name));
    action->setToolTip(QStringLiteral("%1 (%2)").arg(tip, keys.toString(QKeySequence::NativeText)));
    // A key of the board alone: elsewhere it may be typed, or mean something else.
    action->setShortcut(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    board_.addAction(action);
    connect(action, &QAction::triggered, this, [this, run] {
        run();
        // A command by button is followed by more work on the board.
        board_.setFocus(Qt::OtherFocusReason);
    });
    entries_.push_back({action, needs, group, 0});
    return action;
}

void RegionActions::picture(QAction* action, const QString& icon, int rank) {
    action->setIcon(lineIcon(icon));
    action->setIconVisibleInMenu(false);
    entries_.back().rank = rank;
}

void RegionActions::fill(QMenu& menu) const {
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        if (i > 0 && entries_[i].group != entries_[i - 1].group) {
            menu.addSeparator();
        }
        menu.addAction(entries_[i].action);
    }
}

std::vector<QAction*> RegionActions::pictured() const {
    std::vector<Entry> ranked;
    std::copy_if(entries_.begin(), entries_.end(), std::back_inserter(ranked),
                 [](const Entry& entry) { return entry.rank > 0; });
    std::sort(ranked.begin(), ranked.end(),
              [](const Entry& a, const Entry& b) { return a.rank < b.rank; });
    std::vector<QAction*> actions;
    for (const Entry& entry : ranked) {
        actions.push_back(entry.action);
    }
    return actions;
}

void RegionActions::refresh() {
    const bool mark = !editor_.mark().isNull();
    const bool hand = editor_.region().carried() != nullptr;
    const bool copy = editor_.region().hasCopy();
    for (const Entry& entry : entries_) {
        bool useful = true;
        switch (entry.needs) {
        case Needs::Nothing:
            break;
        case Needs::Marked:
            useful = mark && !hand;
            break;
        case Needs::Copied:
            useful = copy;
            break;
        case Needs::MarkedOrHeld:
            useful = mark || hand;
            break;
        case Needs::MarkedAndCopied:
            useful = mark && copy && !hand;
            break;
        case Needs::Merging:
            useful = editor_.canMerge() && !hand;
            break;
        case Needs::Splitting:
            useful = editor_.canSplit() && !hand;
            break;
        }
        entry.action->setEnabled(useful);
    }
}

}  // namespace kerfwright
