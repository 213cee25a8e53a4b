#include "core/sheets/film.h"

#include "core/sheets/filmnames.h"
#include "core/sheets/record.h"
#include "core/words/say.h"

#include <algorithm>
#include <map>
#include <utility>

namespace kerfwright {
namespace {

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
        nameStages(film_);
    }

private:
    /// Parts that have a size in common, with its working.
    struct Sort {
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

    /// `part` may be that of a stage, which moves when there is one more.
    FilmStage& turnTo(StageKind kind, std::string part) {
        FilmStage& stage = film_.stages.emplace_back();
        stage.kind = kind;
        stage.part = std::move(part);
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

    static void add(FilmStage& stage, Measured what, std::string label, const Figure& figure) {
        if (!figure.terms.empty()) {
            stage.numbers.push_back({what, std::move(label), figure});
        }
    }
    static void add(FilmStage& stage, const std::vector<std::string>& parts) {
        stage.parts.insert(stage.parts.end(), parts.begin(), parts.end());
    }

    void take(const Mill& mill) {
        FilmStage& timber = film_.stages.front();
        note(timber);
        for (const MillLine& line : mill.lines) {
            const std::string strips = labelList(line.strips);
            add(timber, Measured::Other, say("Rough thickness, {1}", strips), line.roughThickness);
            add(timber, Measured::RoughWidth, say("Rough width, {1}", strips), line.roughWidth);
            add(timber, Measured::RoughLength, say("Rough length, {1}", strips), line.roughLength);
            add(timber, line.strips);
        }
        FilmStage& stage =
            reach(mill.panel.empty() ? StageKind::Rails : StageKind::Strips, mill.panel);
        for (const MillLine& line : mill.lines) {
            const std::string strips = labelList(line.strips);
            add(stage, Measured::Thickness, say("Thickness, {1}", strips), line.thickness);
            add(stage, Measured::Width, say("Width, {1}", strips), line.width);
            if (mill.panel.empty()) {
                add(stage, Measured::Other, say("Length of the blank, {1}", strips), line.length);
            } else {
                add(stage, Measured::Length, say("Length, {1}", strips), line.length);
            }
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
        add(stage, Measured::Width, say("Width as glued"), glue.width);
        add(stage, Measured::Length, say("Length as glued"), glue.length);
        add(stage, Measured::Thickness, say("Thickness as glued"), glue.thickness);
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
        Sort lines;
        Sort thick;
        for (const Laid& part : parts) {
            laid.parts.push_back(part.part);
            const auto traced = film_.solids.find(part.part);
            if (traced != film_.solids.end()) {
                const Corner size = kerfwright::laid(traced->second.ready, part.lay).size;
                lines.add(part.part, figures_[part.part], size[rows ? Y : X]);
                thick.add(part.part, figures_[part.part], size[Z]);
            }
        }
        for (const auto& [figure, labels] : lines.alike) {
            if (rows) {
                add(laid, Measured::Row, say("Row, {1}", labelList(labels)), figure);
            } else {
                add(laid, Measured::Column, say("Column, {1}", labelList(labels)), figure);
            }
        }
        for (const auto& [figure, labels] : thick.alike) {
            add(laid, Measured::Thickness, say("Thickness, {1}", labelList(labels)), figure);
        }
        FilmStage& field = reach(StageKind::Field, result);
        add(field, {result});
        add(field, Measured::Width, say("Width as glued"), width);
        add(field, Measured::Height, say("Height as glued"), length);
        add(field, Measured::Thickness, say("Thickness as glued"), thickness);
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
        add(stage, Measured::Thickness, say("Thickness"), flatten.to);
        newest(flatten.part, flatten.to);
    }
    /// What was measured last is looked at first.
    void newest(const std::string& part, const Figure& figure) {
        figures_[part].insert(figures_[part].begin(), figure);
    }
    void take(const BringToSize& work) {
        FilmStage& stage = atPanel(work.parts.front());
        const std::string parts = labelList(work.parts);
        switch (work.sizing.in) {
        case SizedIn::Width:
            add(stage, Measured::Width, say("Width, {1}", parts), work.sizing.to);
            break;
        case SizedIn::Length:
            add(stage, Measured::Length, say("Length, {1}", parts), work.sizing.to);
            break;
        case SizedIn::Thickness:
            add(stage, Measured::Thickness, say("Thickness, {1}", parts), work.sizing.to);
            break;
        }
        for (const std::string& part : work.parts) {
            newest(part, work.sizing.to);
        }
    }
    void take(const SquareEnd& square) {
        FilmStage& stage = atPanel(square.part);
        add(stage, Measured::Other, say("Waste of the squaring cut"), square.waste);
        add(stage, Measured::Other, say("Kerf"), square.kerf);
    }
    void take(const Crosscut& cut) {
        FilmStage& stage = reach(StageKind::Cut, cut.part);
        add(stage, cut.slices);
        add(stage, cut.spares);
        std::vector<std::string> all = cut.slices;
        all.insert(all.end(), cut.spares.begin(), cut.spares.end());
        add(stage, Measured::Stop, say("Stop, {1}", labelList(all)), cut.stop);
        for (const std::string& slice : cut.slices) {
            figures_[slice] = figures_[cut.part];
            newest(slice, cut.stop);
        }
        add(stage, Measured::Other, say("Kerf"), cut.kerf);
    }
    void take(const TrimField& trim) {
        FilmStage& stage = reach(StageKind::Trimmed, trim.part);
        add(stage, {trim.part});
        add(stage, Measured::Width, say("Width"), trim.width);
        add(stage, Measured::Height, say("Height"), trim.height);
        add(stage, Measured::Margin, say("Margin, each side"), trim.margin);
    }
    void take(const CutChannel& cut) {
        FilmStage& stage = reach(StageKind::Rails, {});
        const auto three = [&](std::string depth, std::string width, std::string below) {
            add(stage, Measured::Other, std::move(depth), cut.depth);
            add(stage, Measured::Width, std::move(width), cut.width);
            add(stage, Measured::Other, std::move(below), cut.fromFace);
        };
        if (cut.purpose == ChannelFor::Inlay) {
            three(say("Depth for the inlay"), say("Width for the inlay"),
                  say("Below the top face, for the inlay"));
        } else if (cut.purpose == ChannelFor::Ledge) {
            three(say("Depth of the rebate"), say("Width of the rebate"),
                  say("Below the top face, of the rebate"));
        } else if (cut.edges > 1) {
            three(say("Depth of the field’s groove"), say("Width of the field’s groove"),
                  say("Below the top face, of the field’s groove"));
        } else {
            three(say("Depth of the groove"), say("Width of the groove"),
                  say("Below the top face, of the groove"));
        }
    }
    void take(const GlueIn& glue) {
        FilmStage& stage = reach(StageKind::Rails, {});
        add(stage, Measured::Other,
            glue.purpose == ChannelFor::Inlay ? say("Inlay stands over") : say("Tongue stands out"),
            glue.proud);
    }
    void take(const CutRails& cut) {
        FilmStage& stage = reach(StageKind::Rails, {});
        for (const Rail& rail : cut.rails) {
            const std::string label = shownLabel(rail.label);
            if (cut.mitred) {
                add(stage, Measured::LongPoint, say("Long point to long point, {1}", label),
                    rail.longPoint);
            } else {
                add(stage, Measured::Length, say("Length, {1}", label), rail.longPoint);
            }
        }
    }
    void take(const FitBorder& fit) {
        FilmStage& stage = reach(StageKind::Border, fit.part);
        add(stage, {fit.part});
        for (const Rail& rail : fit.rails) {
            stage.parts.push_back(rail.label);
            add(stage, Measured::Length, say("Length, {1}", shownLabel(rail.label)),
                rail.longPoint);
        }
        add(stage, Measured::RailWidth, say("Rail width"), fit.width);
        add(stage, Measured::Other, say("Gap left and right"), fit.gapX);
        add(stage, Measured::Other, say("Gap above and below"), fit.gapY);
        add(stage, Measured::Other, say("Pin"), fit.pinDiameter);
        add(stage, Measured::Other, say("Pin from the edge"), fit.pinFromEdge);
        for (std::size_t i = 0; i < fit.pins.size(); ++i) {
            add(stage, Measured::Other, say("Place of pin {1}", i + 1), fit.pins[i].at);
        }
    }
    void take(const KeyCorners& keys) {
        FilmStage& stage = reach(StageKind::Border, keys.part);
        add(stage, Measured::Other, say("Slot depth"), keys.depth);
        add(stage, Measured::Other, say("Slot width"), keys.thickness);
        add(stage, Measured::Other, say("Slot below the top face"), keys.fromFace);
    }

    void finish() {
        const std::vector<std::string> parts =
            now().kind == StageKind::Border ? now().parts : std::vector<std::string>{now().part};
        FilmStage& stage = turnTo(StageKind::Finished, now().part);
        note(stage);
        stage.parts = parts;
        stage.numbers = finishedNumbers(film_.board, film_.list);
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
    return {{Measured::Width, say("Width"), width},
            {Measured::Height, say("Height"), height},
            {Measured::Thickness, say("Thickness"), {{TermKind::BoardThickness, board.thickness}}}};
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
        return say("Before step 1");
    }
    const int first = stage.steps.front() + 1;
    const int last = stage.steps.back() + 1;
    return first == last ? say("Step {1}", first) : say("Steps {1} to {2}", first, last);
}

}  // namespace kerfwright
