// Pictures of panels: as they are glued, and as they are sliced.
#pragma once

#include "core/sheets/flow.h"
#include "core/sheets/record.h"

namespace kerfwright {

/// A text that belongs to a place along an edge.
struct EdgeLabel {
    double x = 0;
    std::string words;
    Tone tone = smallText;
};

/// Sets the labels along an edge at height `edge`, in as few rows as keep them apart, with thin
/// leaders from the further rows. Those that find no room in `mostRows` rows are left out.
struct EdgeLabels {
    double height = 0;  ///< that the rows take
    bool complete = true;
};
EdgeLabels addEdgeLabels(Drawing& drawing, const std::vector<EdgeLabel>& labels, double edge,
                         bool above, double least, double most, int mostRows);

/// The panel from above as it is glued, strips to scale, with numbers, letters and widths, at the
/// cursor, which moves below it. False where not every strip could be labelled.
bool drawPanelToGlue(Flow& flow, const Matter& matter, const PanelRecord& panel);

/// The panel lying with its squared end left, its length to scale, cuts and slices numbered.
void drawPanelToSlice(Flow& flow, const Matter& matter, const Record& record,
                      const PanelRecord& panel);

/// Which face of a workpiece is looked at: from above (x right, y down), or the near end of a stick
/// that lies on the bench (x right, top face up).
enum class Seen { FromAbove, FromTheNearEnd };

/// A face of a workpiece, to scale in either direction by itself, filling the box. `diagonally`
/// mirrors it about the diagonal: a column lying down.
void drawFace(Drawing& drawing, const Matter& matter, const Solid& solid, Seen seen, const Box& box,
              bool letters, bool diagonally = false);

/// Bands of one wood, from left to right, on the top face of a workpiece that is alike from end to
/// end.
std::vector<std::pair<int, Length>> topBands(const Solid& solid);

/// A stick of strips lying along x in a box, to scale in x, with letters where there is room.
void drawRow(Drawing& drawing, const Matter& matter, const std::vector<StripRecord>& strips,
             const Box& box, bool letters);

}  // namespace kerfwright
