// What the maker does to the marked region: copying, carrying a copy about until it is laid down,
// mirroring, turning and repeating, and rows and columns put in and taken out. Each change is one
// named step of the document's history; what cannot be done is said in words.
#pragma once

#include "core/board/regions.h"
#include "ui/document/document.h"

#include <QObject>
#include <QPoint>
#include <QRect>

#include <optional>
#include <vector>

namespace kerfwright {

class BoardEditor;

/// Pieces in the hand, to be laid on the board.
struct Carried {
    Field part;                 ///< woods are those of the open project
    QPoint at;                  ///< the cell under its top left corner; may lie outside the field
    std::optional<QRect> from;  ///< cells that it is moved away from; empty: it is a copy
    QRect cells() const {
        return QRect(
            at, QSize(static_cast<int>(part.columns.size()), static_cast<int>(part.rows.size())));
    }
};

enum class Edge { Left, Right, Top, Bottom };

class RegionEditor : public QObject {
    Q_OBJECT

public:
    RegionEditor(Document& document, BoardEditor& editor);

    bool hasCopy() const { return copy_.has_value(); }
    /// Null where nothing is carried.
    const Carried* carried() const { return carried_ ? &*carried_ : nullptr; }

    void copy();
    /// Copies, and leaves cells of the wood that paints.
    void cut();
    /// Takes the copy in the hand, over what is marked or else over `place`.
    void paste(QPoint place = QPoint(0, 0));
    /// Takes what is marked in the hand, to lay it down elsewhere; `keep` leaves it there as well.
    void lift(bool keep = false);
    void carryTo(QPoint topLeft);
    void carryBy(int right, int down);
    /// Ends carrying with a change of the board; `again` keeps a copy in the hand.
    void layDown(bool again = false);
    /// Ends carrying without one.
    void letGo();

    /// Of what is carried, else of what is marked.
    void mirror(Mirror mirror);
    void turn();
    /// What is marked, over and over: over the whole board, or over `cells`.
    void repeatOverBoard();
    void repeatOver(const QRect& cells);
    /// What was copied, over and over on what is marked.
    void coverWithCopy();

    /// As many lines as are marked, copies of them, beside them.
    void insertLines(Edge edge);
    void removeColumns();
    void removeRows();
    void markAll();

    /// What `repeatOver` would lay, as carried pieces.
    Carried repeatedOver(const QRect& cells) const;

Q_SIGNALS:
    void carriedChanged();
    void copyChanged();
    /// Why something was not done.
    void refused(const QString& why);

private:
    /// What was copied, with what its woods are called: another project may be open by now.
    struct Copy {
        Field part;
        std::vector<std::string> keys, names;  ///< of the woods that `part` names
    };

    const Field& field() const { return document_.project().board.field; }
    Cells marked() const;
    /// The copy in the woods of the open project; empty, and said, where one is missing.
    std::optional<Field> copyHere();
    bool change(const QString& what, const Result<Field>& changed);
    void removeLines(bool columns);
    void setCarried(std::optional<Carried> carried);

    Document& document_;
    BoardEditor& editor_;
    std::optional<Copy> copy_;
    std::optional<Carried> carried_;
};

}  // namespace kerfwright
