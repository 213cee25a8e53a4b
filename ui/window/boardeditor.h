// What the maker does to the board by hand: painting with symmetry, picking up, merging and
// splitting pieces, moving joints. Every change goes through the document.
#pragma once

#include "ui/document/document.h"
#include "ui/window/boardgeometry.h"

#include <QObject>
#include <QPoint>
#include <QRect>

#include <vector>

namespace kerfwright {

/// Where a stroke is repeated.
struct Symmetry {
    bool across = false;         ///< mirrored left to right
    bool down = false;           ///< mirrored top to bottom
    bool halfTurn = false;       ///< turned by half about the middle
    bool alternateRows = false;  ///< in every other row
    friend bool operator==(const Symmetry&, const Symmetry&) = default;
};

/// The cells that a stroke at `cell` reaches, itself among them, each once.
std::vector<QPoint> images(QPoint cell, const Symmetry& symmetry, int columns, int rows);

class BoardEditor : public QObject {
    Q_OBJECT

public:
    explicit BoardEditor(Document& document, QObject* parent = nullptr);

    /// The wood that paints, an index into the project's woods.
    int wood() const { return wood_; }
    void setWood(int wood);
    Symmetry symmetry() const { return symmetry_; }
    void setSymmetry(const Symmetry& symmetry);

    /// The marked cells; empty where nothing is marked.
    QRect mark() const { return mark_; }
    void setMark(const QRect& cells);
    void clearMark() { setMark(QRect()); }
    /// The cells of the piece that covers `cell`.
    QRect pieceCells(QPoint cell) const;
    /// Marks the piece next to the marked one, or the first.
    void stepMark(int right, int down);
    /// Makes the marked rectangle larger or smaller.
    void growMark(int right, int down);

    /// All painting until `endStroke` is one undo step.
    void paint(const std::vector<QPoint>& cells);
    void endStroke();
    void paintMark();
    void pickUp(QPoint cell);
    void merge();
    void split();
    bool canMerge() const;
    bool canSplit() const;

    /// Makes the column or row before the joint `size` wide, as far as its neighbour allows.
    void placeJoint(const GridJoint& joint, Length size);
    /// Moves a joint by whole steps: 1 mm or 1/16 in, fine 0.1 mm or 1/64 in.
    void nudgeJoint(const GridJoint& joint, int steps, bool fine);
    Length jointStep(bool fine) const;

Q_SIGNALS:
    void woodChanged();
    void symmetryChanged();
    void markChanged();

private:
    void projectChanged();

    Document& document_;
    int wood_ = 0;
    Symmetry symmetry_;
    QRect mark_;
};

}  // namespace kerfwright
