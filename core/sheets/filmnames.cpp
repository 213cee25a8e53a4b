#include "core/sheets/filmnames.h"

#include "core/words/say.h"

#include <algorithm>
#include <set>

namespace kerfwright {
namespace {

class Namer {
public:
    explicit Namer(const StepList& list)
        : list_(list) {}

    /// `lettered`: of several panels each is called by its letter.
    void name(FilmStage& stage, bool lettered) const {
        const std::size_t count = stage.parts.size();
        switch (stage.kind) {
        case StageKind::Timber:
            stage.key = "timber";
            stage.name = say("Timber");
            stage.title = say("Rough timber");
            stage.words =
                sayCount(count, "{1} blank at its rough size, thickness × width × length.",
                         "{1} blanks at their rough sizes, thickness × width × length.");
            return;
        case StageKind::Strips:
            nameStrips(stage, lettered);
            return;
        case StageKind::Panel:
            namePanel(stage, lettered);
            return;
        case StageKind::Cut:
            nameCut(stage, lettered);
            return;
        case StageKind::Laid:
            nameLaid(stage);
            return;
        case StageKind::Field:
            stage.key = "field";
            stage.name = say("Field");
            stage.title =
                stage.steps.size() > 1 ? say("Field, glued and flattened") : say("Field, glued");
            stage.words = say("The pattern is there, with its trim margin all round.");
            return;
        case StageKind::Trimmed:
            stage.key = "trimmed";
            stage.name = sayIn("the field", "Trimmed");
            stage.title = say("Field, trimmed");
            stage.words = say("The trim margin is sawn off on all four sides.");
            return;
        case StageKind::Rails:
            stage.key = "rails";
            stage.name = say("Rails");
            stage.title = say("Parts of the border");
            stage.words = say("Rails cut to length, and what goes into them.");
            return;
        case StageKind::Border:
            stage.key = "border";
            stage.name = say("Border");
            stage.title = title(list_.steps[static_cast<std::size_t>(stage.steps.front())]);
            stage.words = say("The rails as they go round the field.");
            return;
        case StageKind::Finished:
            break;
        }
        stage.key = "finished";
        stage.name = sayIn("the board", "Finished");
        stage.title = say("Finished board");
        stage.words = say("As it leaves the bench, before sanding and oil.");
    }

private:
    static void nameStrips(FilmStage& stage, bool lettered) {
        const std::size_t count = stage.parts.size();
        stage.key = "strips-" + stage.part;
        if (count == 1) {
            stage.name = lettered ? say("Strip {1}", stage.part) : say("Strip");
            stage.title = say("Strip {1}, milled", stage.part);
        } else {
            stage.name = lettered ? say("Strips {1}", stage.part) : say("Strips");
            stage.title = say("Strips of panel {1}, milled", stage.part);
        }
        stage.words = sayCount(count, "{1} strip.",
                               "{1} strips in the order of the glue-up, first strip left.");
    }

    void namePanel(FilmStage& stage, bool lettered) const {
        const std::string& part = stage.part;
        bool glued = false;
        bool flattened = false;
        bool squared = false;
        std::size_t sticks = 0;
        for (const int index : stage.steps) {
            const Work& work = list_.steps[static_cast<std::size_t>(index)].work;
            if (const auto* glue = std::get_if<Glue>(&work)) {
                glued = true;
                sticks = glue->parts.size();
            }
            flattened = flattened || std::holds_alternative<Flatten>(work);
            squared = squared || std::holds_alternative<SquareEnd>(work);
        }
        stage.key = "panel-" + part;
        if (glued) {
            stage.name = lettered ? say("Panel {1}", part) : say("Panel");
            stage.title = flattened ? say("Panel {1}, glued and flattened", part)
                                    : say("Panel {1}, glued", part);
            stage.words =
                squared
                    ? sayCount(sticks, "{1} stick is one panel; one end is squared for the saw.",
                               "{1} sticks are one panel; one end is squared for the saw.")
                    : sayCount(sticks, "{1} stick is one panel.", "{1} sticks are one panel.");
            return;
        }
        stage.name = lettered ? say("Strip {1}", part) : say("Strip");
        stage.title =
            squared ? say("Strip {1}, its end squared", part) : say("Strip {1}, to size", part);
        stage.words =
            squared ? say("One end is squared for the saw.") : say("Ready for the next cut.");
    }

    void nameCut(FilmStage& stage, bool lettered) const {
        std::size_t slices = 0;
        std::size_t lengths = 0;
        std::size_t spares = 0;
        for (const int index : stage.steps) {
            const Work& work = list_.steps[static_cast<std::size_t>(index)].work;
            if (const auto* cut = std::get_if<Crosscut>(&work)) {
                (cut->forPanels ? lengths : slices) += cut->slices.size();
                spares += cut->spares.size();
            }
        }
        stage.key = "cut-" + stage.part;
        if (slices == 0) {
            stage.name = lettered ? say("Lengths {1}", stage.part) : say("Lengths");
            stage.title = say("Lengths of {1}, off the saw", stage.part);
        } else {
            stage.name = lettered ? say("Slices {1}", stage.part) : say("Slices");
            stage.title = say("Slices of {1}, off the saw", stage.part);
        }
        std::string parts;
        const auto add = [&parts](std::size_t count, const std::string& words) {
            if (count > 0) {
                parts += (parts.empty() ? "" : ", ") + words;
            }
        };
        add(slices, sayCount(slices, "{1} slice", "{1} slices"));
        add(lengths,
            sayCount(lengths, "{1} length for other panels", "{1} lengths for other panels"));
        add(spares, sayCount(spares, "{1} spare", "{1} spares"));
        stage.words = say("{1}, in the order of the cuts.", parts);
    }

    void nameLaid(FilmStage& stage) const {
        std::size_t stoodUp = 0;
        std::size_t flipped = 0;
        std::size_t over = 0;
        const Work& work = list_.steps[static_cast<std::size_t>(stage.steps.front())].work;
        const auto count = [&](const Laid& laid) {
            stoodUp += laid.lay.stoodUp ? 1U : 0U;
            flipped += laid.lay.flipped ? 1U : 0U;
            over += laid.lay.turnedOver ? 1U : 0U;
        };
        if (const auto* glue = std::get_if<Glue>(&work)) {
            std::for_each(glue->parts.begin(), glue->parts.end(), count);
        } else if (const auto* take = std::get_if<Take>(&work)) {
            count(take->part);
        }
        stage.key = "laid";
        if (stoodUp > 0) {
            stage.name = sayIn("slices", "Stood up");
            stage.title = flipped > 0 ? say("Slices stood up and flipped") : say("Slices stood up");
        } else if (flipped > 0) {
            stage.name = sayIn("slices", "Flipped");
            stage.title = say("Slices flipped");
        } else {
            stage.name = sayIn("slices", "Laid out");
            stage.title = say("Slices laid out");
        }
        const std::size_t all = stage.parts.size();
        std::string words = sayCount(all, "{1} part in the order of the field",
                                     "{1} parts in the order of the field");
        const auto add = [&words](std::size_t some, const std::string& how) {
            words += some > 0 ? "; " + how : "";
        };
        add(stoodUp, stoodUp == all ? say("a quarter turn stands them up, end grain to the top")
                                    : sayCount(stoodUp, "{1} stood up by a quarter turn",
                                               "{1} stood up by a quarter turn"));
        add(flipped, sayCount(flipped, "{1} flipped end for end", "{1} flipped end for end"));
        add(over, sayCount(over, "{1} turned over", "{1} turned over"));
        stage.words = words + ".";
    }

    const StepList& list_;
};

}  // namespace

void nameStages(Film& film) {
    std::set<std::string> panels;
    for (const FilmStage& stage : film.stages) {
        if (stage.kind == StageKind::Strips || stage.kind == StageKind::Panel) {
            panels.insert(stage.part);
        }
    }
    const Namer namer(film.list);
    for (FilmStage& stage : film.stages) {
        // A single panel needs no letter to be told apart.
        namer.name(stage, panels.size() > 1);
    }
}

}  // namespace kerfwright
