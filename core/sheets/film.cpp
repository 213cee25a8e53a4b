#include "core/sheets/film.h"

#include "core/sheets/record.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <utility>

namespace kerfwright {
namespace {

std::string inWords(int count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

/// Goes through the list once and opens a stage wherever the work turns to something else.
class Cutter {
public:
    explicit Cutter(Film& film)
        : film_(film) {}

    void operator()() {
        turnTo(StageKind::Timber, {});
        const auto count = static_cast<int>(film_.list.steps.size());
        for (step_ = 0; step_ < count; ++step_) {
            std::visit([this](const auto& work) { take(work); },
                       film_.list.steps[static_cast<std::size_t>(step_)].work);
        }
        --step_;
        finish();
        name();
    }

private:
    /// Parts that have a size in common, with its working.
    struct Sort {
        const char* name;
        std::vector<std::pair<Figure, std::vector<std::string>>> alike;

        /// One of the part's own figures is that size, or it has no working.
        void add(const std::string& part, const std::vector<Figure>& figures, Length size) {
            const auto own = std::find_if(figures.begin(), figures.end(),
                                          [&](const Figure& one) { return one.value == size; });
            if (own == figures.end()) {
                return;
            }
            const auto known = std::find_if(alike.begin(), alike.end(),
                                            [&](const auto& one) { return one.first == *own; });
            if (known == alike.end()) {
                alike.push_back({*own, {part}});
            } else {
                known->second.push_back(part);
            }
        }
    };

    FilmStage& now() { return film_.stages.back(); }

    FilmStage& turnTo(StageKind kind, const std::string& part) {
        FilmStage& stage = film_.stages.emplace_back();
        stage.kind = kind;
        stage.part = part;
        return stage;
    }
    /// Goes on with the stage at hand where it is of that kind and about that part.
    FilmStage& reach(StageKind kind, const std::string& part) {
        if (now().kind != kind || now().part != part) {
            turnTo(kind, part);
        }
        note(now());
        return now();
    }
    void note(FilmStage& stage) const { stage.steps.push_back(step_); }

    static void add(FilmStage& stage, std::string label, const Figure& figure) {
        if (!figure.terms.empty()) {
            stage.numbers.push_back({std::move(label), figure});
        }
    }
    static void add(FilmStage& stage, const std::vector<std::string>& parts) {
        stage.parts.insert(stage.parts.end(), parts.begin(), parts.end());
    }

    void take(const Mill& mill) {
        FilmStage& timber = film_.stages.front();
        note(timber);
        for (const MillLine& line : mill.lines) {
            const std::string strips = ", " + labelList(line.strips);
            add(timber, "Rough thickness" + strips, line.roughThickness);
            add(timber, "Rough width" + strips, line.roughWidth);
            add(timber, "Rough length" + strips, line.roughLength);
            add(timber, line.strips);
        }
        FilmStage& stage =
            reach(mill.panel.empty() ? StageKind::Rails : StageKind::Strips, mill.panel);
        for (const MillLine& line : mill.lines) {
            const std::string strips = ", " + labelList(line.strips);
            add(stage, "Thickness" + strips, line.thickness);
            add(stage, "Width" + strips, line.width);
            add(stage, (mill.panel.empty() ? "Length of the blank" : "Length") + strips,
                line.length);
            add(stage, line.strips);
            for (const std::string& label : line.strips) {
                figures_[label] = {line.width, line.length, line.thickness};
            }
        }
    }

    void take(const Glue& glue) {
        if (glue.final) {
            lay(glue.parts, glue.result, glue.width, glue.length, glue.thickness);
            return;
        }
        FilmStage& stage = reach(StageKind::Panel, glue.result);
        add(stage, {glue.result});
        add(stage, "Width as glued", glue.width);
        add(stage, "Length as glued", glue.length);
        add(stage, "Thickness as glued", glue.thickness);
        figures_[glue.result] = {glue.width, glue.length, glue.thickness};
    }

    void take(const Take& work) {
        lay({work.part}, work.result, work.width, work.length, work.thickness);
    }

    void lay(const std::vector<Laid>& parts, const std::string& result, const Figure& width,
             const Figure& length, const Figure& thickness) {
        const auto* glue =
            std::get_if<Glue>(&film_.list.steps[static_cast<std::size_t>(step_)].work);
        const bool rows = glue == nullptr || glue->along == GlueAlong::Down;
        FilmStage& laid = reach(StageKind::Laid, result);
        Sort lines{rows ? "Row, " : "Column, ", {}};
        Sort thick{"Thickness, ", {}};
        for (const Laid& part : parts) {
            laid.parts.push_back(part.part);
            const auto traced = film_.solids.find(part.part);
            if (traced != film_.solids.end()) {
                const Corner size = kerfwright::laid(traced->second.ready, part.lay).size;
                lines.add(part.part, figures_[part.part], size[rows ? Y : X]);
                thick.add(part.part, figures_[part.part], size[Z]);
            }
        }
        for (const Sort* sort : {&lines, &thick}) {
            for (const auto& [figure, labels] : sort->alike) {
                add(laid, sort->name + labelList(labels), figure);
            }
        }
        FilmStage& field = reach(StageKind::Field, result);
        add(field, {result});
        add(field, "Width as glued", width);
        add(field, "Height as glued", length);
        add(field, "Thickness as glued", thickness);
    }

    /// Work on a panel as a whole, or on what was cut off it.
    FilmStage& atPanel(const std::string& part) {
        const std::string panel = panelOf(part);
        if (now().kind == StageKind::Strips && now().part == panel) {
            FilmStage& stage = reach(StageKind::Panel, panel);  // one strip is a panel by itself
            add(stage, {panel});
            return stage;
        }
        note(now());
        return now();
    }

    void take(const Flatten& flatten) {
        FilmStage& stage = atPanel(flatten.part);
        add(stage, "Thickness", flatten.to);
        newest(flatten.part, flatten.to);
    }
    /// What was measured last is looked at first.
    void newest(const std::string& part, const Figure& figure) {
        figures_[part].insert(figures_[part].begin(), figure);
    }
    void take(const BringToSize& work) {
        FilmStage& stage = atPanel(work.parts.front());
        const char* in = work.sizing.in == SizedIn::Width    ? "Width"
                         : work.sizing.in == SizedIn::Length ? "Length"
                                                             : "Thickness";
        add(stage, std::string(in) + ", " + labelList(work.parts), work.sizing.to);
        for (const std::string& part : work.parts) {
            newest(part, work.sizing.to);
        }
    }
    void take(const SquareEnd& square) {
        FilmStage& stage = atPanel(square.part);
        add(stage, "Waste of the squaring cut", square.waste);
        add(stage, "Kerf", square.kerf);
    }
    void take(const Crosscut& cut) {
        FilmStage& stage = reach(StageKind::Cut, cut.part);
        add(stage, cut.slices);
        add(stage, cut.spares);
        std::vector<std::string> all = cut.slices;
        all.insert(all.end(), cut.spares.begin(), cut.spares.end());
        add(stage, "Stop, " + labelList(all), cut.stop);
        for (const std::string& slice : cut.slices) {
            figures_[slice] = figures_[cut.part];
            newest(slice, cut.stop);
        }
        add(stage, "Kerf", cut.kerf);
    }
    void take(const TrimField& trim) {
        FilmStage& stage = reach(StageKind::Trimmed, trim.part);
        add(stage, {trim.part});
        add(stage, "Width", trim.width);
        add(stage, "Height", trim.height);
        add(stage, "Margin, each side", trim.margin);
    }
    void take(const CutChannel& cut) {
        FilmStage& stage = reach(StageKind::Rails, {});
        const std::string which = cut.purpose == ChannelFor::Inlay   ? " for the inlay"
                                  : cut.purpose == ChannelFor::Ledge ? " of the rebate"
                                  : cut.edges > 1                    ? " of the field’s groove"
                                                                     : " of the groove";
        add(stage, "Depth" + which, cut.depth);
        add(stage, "Width" + which, cut.width);
        add(stage, "Below the top face," + which, cut.fromFace);
    }
    void take(const GlueIn& glue) {
        FilmStage& stage = reach(StageKind::Rails, {});
        add(stage, glue.purpose == ChannelFor::Inlay ? "Inlay stands over" : "Tongue stands out",
            glue.proud);
    }
    void take(const CutRails& cut) {
        FilmStage& stage = reach(StageKind::Rails, {});
        for (const Rail& rail : cut.rails) {
            add(stage, (cut.mitred ? "Long point to long point, " : "Length, ") + rail.label,
                rail.longPoint);
        }
    }
    void take(const FitBorder& fit) {
        FilmStage& stage = reach(StageKind::Border, fit.part);
        add(stage, {fit.part});
        for (const Rail& rail : fit.rails) {
            stage.parts.push_back(rail.label);
            add(stage, "Length, " + rail.label, rail.longPoint);
        }
        add(stage, "Rail width", fit.width);
        add(stage, "Gap left and right", fit.gapX);
        add(stage, "Gap above and below", fit.gapY);
        add(stage, "Pin", fit.pinDiameter);
        add(stage, "Pin from the edge", fit.pinFromEdge);
        for (std::size_t i = 0; i < fit.pins.size(); ++i) {
            add(stage, "Place of pin " + std::to_string(i + 1), fit.pins[i].at);
        }
    }
    void take(const KeyCorners& keys) {
        FilmStage& stage = reach(StageKind::Border, keys.part);
        add(stage, "Slot depth", keys.depth);
        add(stage, "Slot width", keys.thickness);
        add(stage, "Slot below the top face", keys.fromFace);
    }

    void finish() {
        const std::vector<std::string> parts =
            now().kind == StageKind::Border ? now().parts : std::vector<std::string>{now().part};
        FilmStage& stage = turnTo(StageKind::Finished, now().part);
        note(stage);
        stage.parts = parts;
        stage.numbers = finishedNumbers(film_.board, film_.list);
    }

    // ---- Words ----

    void name() {
        const auto panels =
            std::count_if(film_.stages.begin(), film_.stages.end(),
                          [](const FilmStage& stage) { return stage.kind == StageKind::Strips; });
        for (FilmStage& stage : film_.stages) {
            // A single panel needs no letter to be told apart.
            name(stage, panels > 1 ? " " + stage.part : std::string());
        }
    }

    void name(FilmStage& stage, const std::string& letter) const {
        const auto count = static_cast<int>(stage.parts.size());
        switch (stage.kind) {
        case StageKind::Timber:
            stage.key = "timber";
            stage.name = "Timber";
            stage.title = "Rough timber";
            stage.words = inWords(count, "blank", "blanks") +
                          " at their rough sizes, thickness × width × length.";
            return;
        case StageKind::Strips:
            stage.key = "strips-" + stage.part;
            stage.name = (count == 1 ? "Strip" : "Strips") + letter;
            stage.title = count == 1 ? "Strip " + stage.part + ", milled"
                                     : "Strips of panel " + stage.part + ", milled";
            stage.words = inWords(count, "strip", "strips") +
                          (count == 1 ? "." : " in the order of the glue-up, first strip left.");
            return;
        case StageKind::Panel:
            namePanel(stage, letter);
            return;
        case StageKind::Cut:
            nameCut(stage, letter);
            return;
        case StageKind::Laid:
            nameLaid(stage);
            return;
        case StageKind::Field:
            stage.key = "field";
            stage.name = "Field";
            stage.title = stage.steps.size() > 1 ? "Field, glued and flattened" : "Field, glued";
            stage.words = "The pattern is there, with its trim margin all round.";
            return;
        case StageKind::Trimmed:
            stage.key = "trimmed";
            stage.name = "Trimmed";
            stage.title = "Field, trimmed";
            stage.words = "The trim margin is sawn off on all four sides.";
            return;
        case StageKind::Rails:
            stage.key = "rails";
            stage.name = "Rails";
            stage.title = "Parts of the border";
            stage.words = "Rails cut to length, and what goes into them.";
            return;
        case StageKind::Border:
            stage.key = "border";
            stage.name = "Border";
            stage.title = title(film_.list.steps[static_cast<std::size_t>(stage.steps.front())]);
            stage.words = "The rails as they go round the field.";
            return;
        case StageKind::Finished:
            break;
        }
        stage.key = "finished";
        stage.name = "Finished";
        stage.title = "Finished board";
        stage.words = "As it leaves the bench, before sanding and oil.";
    }

    void namePanel(FilmStage& stage, const std::string& letter) const {
        bool glued = false;
        bool flattened = false;
        bool squared = false;
        std::size_t sticks = 0;
        for (const int index : stage.steps) {
            const Work& work = film_.list.steps[static_cast<std::size_t>(index)].work;
            if (const auto* glue = std::get_if<Glue>(&work)) {
                glued = true;
                sticks = glue->parts.size();
            }
            flattened = flattened || std::holds_alternative<Flatten>(work);
            squared = squared || std::holds_alternative<SquareEnd>(work);
        }
        stage.key = "panel-" + stage.part;
        stage.name = (glued ? "Panel" : "Strip") + letter;
        stage.title = (glued ? "Panel " : "Strip ") + stage.part;
        const std::string done = glued && flattened ? ", glued and flattened"
                                 : glued            ? ", glued"
                                 : squared          ? ", its end squared"
                                                    : ", to size";
        stage.title += done;
        stage.words =
            glued ? inWords(static_cast<int>(sticks), "stick", "sticks") + " are one panel" : "";
        if (squared) {
            stage.words += glued ? "; " : "";
            stage.words += "one end is squared for the saw";
        }
        if (stage.words.empty()) {
            stage.words = "ready for the next cut";
        }
        stage.words.front() =
            static_cast<char>(std::toupper(static_cast<unsigned char>(stage.words.front())));
        stage.words += ".";
    }

    void nameCut(FilmStage& stage, const std::string& letter) const {
        int slices = 0;
        int lengths = 0;
        int spares = 0;
        for (const int index : stage.steps) {
            const Work& work = film_.list.steps[static_cast<std::size_t>(index)].work;
            if (const auto* cut = std::get_if<Crosscut>(&work)) {
                (cut->forPanels ? lengths : slices) += static_cast<int>(cut->slices.size());
                spares += static_cast<int>(cut->spares.size());
            }
        }
        const char* what = slices == 0 ? "Lengths" : "Slices";
        stage.key = "cut-" + stage.part;
        stage.name = what + letter;
        stage.title = std::string(what) + " of " + stage.part + ", off the saw";
        stage.words = slices > 0 ? inWords(slices, "slice", "slices") : std::string();
        if (lengths > 0) {
            stage.words += (slices > 0 ? ", " : "") + inWords(lengths, "length", "lengths") +
                           " for other panels";
        }
        if (spares > 0) {
            stage.words += ", " + inWords(spares, "spare", "spares");
        }
        stage.words += ", in the order of the cuts.";
    }

    void nameLaid(FilmStage& stage) const {
        int stoodUp = 0;
        int flipped = 0;
        int over = 0;
        const Work& work = film_.list.steps[static_cast<std::size_t>(stage.steps.front())].work;
        const auto count = [&](const Laid& laid) {
            stoodUp += laid.lay.stoodUp ? 1 : 0;
            flipped += laid.lay.flipped ? 1 : 0;
            over += laid.lay.turnedOver ? 1 : 0;
        };
        if (const auto* glue = std::get_if<Glue>(&work)) {
            std::for_each(glue->parts.begin(), glue->parts.end(), count);
        } else if (const auto* take = std::get_if<Take>(&work)) {
            count(take->part);
        }
        stage.key = "laid";
        stage.name = stoodUp > 0 ? "Stood up" : flipped > 0 ? "Flipped" : "Laid out";
        stage.title = stoodUp > 0 && flipped > 0 ? "Slices stood up and flipped"
                      : stoodUp > 0              ? "Slices stood up"
                      : flipped > 0              ? "Slices flipped"
                                                 : "Slices laid out";
        const auto all = static_cast<int>(stage.parts.size());
        stage.words = inWords(all, "part", "parts") + " in the order of the field";
        if (stoodUp > 0) {
            stage.words += stoodUp == all
                               ? "; a quarter turn stands them up, end grain to the top"
                               : "; " + std::to_string(stoodUp) + " stood up by a quarter turn";
        }
        if (flipped > 0) {
            stage.words += "; " + std::to_string(flipped) + " flipped end for end";
        }
        if (over > 0) {
            stage.words += "; " + std::to_string(over) + " turned over";
        }
        stage.words += ".";
    }

    Film& film_;
    int step_ = 0;
    std::map<std::string, std::vector<Figure>> figures_;  ///< of each workpiece, latest first
};

}  // namespace

Film makeFilm(const Project& project, const Job& job) {
    Film film{project, job.board, job.steps, trace(job.steps, job.board, job.season), {}};
    Cutter cutter(film);
    cutter();
    return film;
}

std::vector<StageNumber> finishedNumbers(const Board& board, const StepList& list) {
    Figure width{{TermKind::FieldSide, board.field.width()}};
    Figure height{{TermKind::FieldSide, board.field.height()}};
    for (const Step& step : list.steps) {
        if (const auto* fit = std::get_if<FitBorder>(&step.work)) {
            width = fit->boardWidth;
            height = fit->boardHeight;
        }
    }
    return {{"Width", width},
            {"Height", height},
            {"Thickness", {{TermKind::BoardThickness, board.thickness}}}};
}

int stageOf(const Film& film, int step) {
    for (std::size_t i = 1; i < film.stages.size(); ++i) {
        const std::vector<int>& steps = film.stages[i].steps;
        if (std::find(steps.begin(), steps.end(), step) != steps.end()) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

int stageOf(const Film& film, const std::string& key) {
    const auto found = std::find_if(film.stages.begin(), film.stages.end(),
                                    [&](const FilmStage& stage) { return stage.key == key; });
    return found == film.stages.end() ? -1 : static_cast<int>(found - film.stages.begin());
}

std::string stepWords(const FilmStage& stage) {
    if (stage.kind == StageKind::Timber || stage.steps.empty()) {
        return "Before step 1";
    }
    const int first = stage.steps.front() + 1;
    const int last = stage.steps.back() + 1;
    return first == last ? "Step " + std::to_string(first)
                         : "Steps " + std::to_string(first) + " to " + std::to_string(last);
}

}  // namespace kerfwright
