// The board as a picture of its own, for a file or the clipboard: looked at as the View menu says.
#pragma once

#include "core/drawing/drawing.h"
#include "ui/document/planner.h"
#include "ui/paint/figure.h"

#include <QByteArray>
#include <QImage>

namespace kerfwright {

/// What is made of it touches no widget, so it may be made on any thread.
class BoardPicture {
public:
    /// `planned`: null where there is no plan of the project as it stands; pieces then have figure
    /// of their own.
    BoardPicture(ProjectPtr project, PlannedPtr planned, const FigureStyle& style);

    /// Plain: not every program that reads SVG shows pictures in it, and as a drawing it is sharp
    /// at every size.
    QByteArray svg(const QString& title) const;
    /// Without figure.
    QImage plain() const;
    /// With figure, where the style has it; takes some tenths of a second then.
    QImage image() const;
    QByteArray png() const;
    bool isFigured() const { return style_.on; }

private:
    double scale() const;  ///< pixels per mm

    ProjectPtr project_;
    PlannedPtr planned_;
    FigureStyle style_;
    Surround surround_;
    Drawing drawing_;
};

}  // namespace kerfwright
