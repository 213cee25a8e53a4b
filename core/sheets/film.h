// The build as a film: what lies on the bench after each stretch of work, from the rough timber to
// the finished board. Read from the step list and the virtual bench, never from the plan's parts.
#pragma once

#include "core/bench/job.h"
#include "core/project/project.h"
#include "core/replay/trace.h"

#include <string>
#include <vector>

namespace kerfwright {

enum class StageKind {
    Timber,    ///< every rough strip of the job, before the first step
    Strips,    ///< milled for one panel
    Panel,     ///< glued, flattened, its end squared
    Cut,       ///< slices, or lengths for other panels, with spares and the offcut
    Laid,      ///< slices as they will lie in the field, apart: stood up, flipped
    Field,     ///< glued and flattened
    Trimmed,   ///< the trim margin sawn off
    Rails,     ///< the parts of the border
    Border,    ///< about to be closed round the field
    Finished,  ///< the board
};

/// What a number of a stage measures, as far as a dimension of its picture can be it.
enum class Measured {
    Width,
    Length,
    Height,
    Thickness,
    RoughWidth,
    RoughLength,
    LongPoint,  ///< from the long point of one mitre to that of the other
    RailWidth,
    Row,
    Column,
    Stop,
    Margin,
    Other,
};

/// A number of a stage with its working.
struct StageNumber {
    Measured what = Measured::Other;
    std::string label;  ///< "Width", "Stop, A-1 to A-4"
    Figure figure;
};

struct FilmStage {
    StageKind kind = StageKind::Timber;
    std::string key;    ///< stays while the same panel is there: "timber", "cut-A"
    std::string name;   ///< short, below a small picture: "Panel A"
    std::string title;  ///< "Panel A, glued and flattened"
    std::string words;  ///< what is to be seen, in a sentence
    std::string part;   ///< the workpiece it is about: a panel's or the field's label; may be empty
    /// Indices into the step list, ascending. After the timber, which names the steps that mill it,
    /// they follow each other without a gap from the first step to the last; where one step makes
    /// two pictures (laying out and gluing the field), both have it.
    std::vector<int> steps;
    std::vector<std::string> parts;  ///< labels of the workpieces that are shown
    std::vector<StageNumber> numbers;
};

/// Keeps what its pictures are drawn from; the job it was made from may go.
struct Film {
    Project project;
    Board board;  ///< as glued: an end-grain band is part of the field
    StepList list;
    Trace solids;
    std::vector<FilmStage> stages;
};

/// For a job that was proven. Costs about as much as its replay.
Film makeFilm(const Project& project, const Job& job);

/// Width, height and thickness of the finished board. `board` as glued.
std::vector<StageNumber> finishedNumbers(const Board& board, const StepList& list);

/// The stage that a step leads to; -1 where the list has no such step.
int stageOf(const Film& film, int step);
/// The stage of that key; -1: none.
int stageOf(const Film& film, const std::string& key);

/// "Steps 3 to 6", "Step 3", "Before step 1".
std::string stepWords(const FilmStage& stage);

}  // namespace kerfwright
