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

/// What is drawn from one cell to another.
enum class Stroke { Line, Rectangle };

/// The cells that it reaches. Held straight, a line is level, upright or at half a right angle, and
/// a rectangle its edge alone.
std::vector<QPoint> strokeCells(Stroke stroke, QPoint from, QPoint to, bool straight);

class RegionEditor;

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
    /// Paints a line or a rectangle, as a step of its own.
    void draw(Stroke stroke, QPoint from, QPoint to, bool straight);
    /// Paints all of one wood that hangs together with the piece at `cell`, as a step of its own.
    void fill(QPoint cell);
    /// The pieces that painting these cells, or filling from one, reaches with the symmetry.
    std::vector<int> reachedBy(const std::vector<QPoint>& cells) const;
    std::vector<int> filledFrom(QPoint cell) const;
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
    /// Moves a joint to where it likes to stop near `wanted`: see `jointPlace`.
    void dragJoint(const GridJoint& joint, Length wanted, Length reach);
    /// Moves a joint to the next place that is more than a round number.
    void jumpJoint(const GridJoint& joint);

    /// What is done to the marked region as a whole.
    RegionEditor& region() { return *region_; }

Q_SIGNALS:
    void woodChanged();
    void symmetryChanged();
    void markChanged();

private:
    void projectChanged();
    const std::vector<Length>* sizesAt(const GridJoint& joint) const;
    void paintPieces(const QString& what, int entry, const std::vector<int>& pieces);
    QString woodName() const;

    Document& document_;
    int wood_ = 0;
    Symmetry symmetry_;
    QRect mark_;
    RegionEditor* region_;
};

}  // namespace kerfwright
