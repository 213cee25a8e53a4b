// The commands for the marked region, once for the menu, the bar below the board and the keys of
// the board.
#pragma once

#include <QAction>
#include <QObject>

#include <functional>
#include <vector>

QT_BEGIN_NAMESPACE
class QMenu;
QT_END_NAMESPACE

namespace kerfwright {

class BoardEditor;
class BoardView;

class RegionActions : public QObject {
    Q_OBJECT

public:
    RegionActions(BoardView& board, BoardEditor& editor, QObject* parent);

    /// All of them in groups, with separators.
    void fill(QMenu& menu) const;
    /// Those that have a picture, the most wanted first.
    std::vector<QAction*> pictured() const;
    /// Enables what is of use now.
    void refresh();

private:
    /// What an action needs to be of use.
    enum class Needs { Nothing, Marked, Copied, MarkedOrHeld, MarkedAndCopied, Merging, Splitting };

    struct Entry {
        QAction* action;
        Needs needs;
        int group;
        int rank;  ///< in the bar; 0: not there
    };

    QAction* add(const QString& text, const char* name, const QString& tip,
                 const QKeySequence& keys, Needs needs, int group,
                 const std::function<void()>& run);
    void picture(QAction* action, const QString& icon, int rank);

    BoardView& board_;
    BoardEditor& editor_;
    std::vector<Entry> entries_;
};

}  // namespace kerfwright
