#include "core/sheets/amounts.h"
#include "core/sheets/methods.h"
#include "core/sheets/planjson.h"

#include <cstdio>

namespace kerfwright {
namespace {

std::string counted(int count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string fixed(double value, int decimals) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    return text;
}

std::string laid(const Laid& part) {
    std::string turns;
    const auto add = [&turns](bool is, const char* word) {
        if (is) {
            turns += turns.empty() ? " (" : ", ";
            turns += word;
        }
    };
    add(part.lay.turnedOver, "turned over");
    add(part.lay.flipped, "flipped");
    add(part.lay.turned, "turned a quarter");
    return part.part + turns + (turns.empty() ? "" : ")");
}

std::string joined(const std::vector<std::string>& list) {
    std::string all;
    for (const std::string& one : list) {
        all += (all.empty() ? "" : ", ") + one;
    }
    return all;
}

/// Writes the steps as short paragraphs: what to do, then each setting with its working.
class Teller {
public:
    Teller(const Project& project, const Job& job, const Record& record)
        : project_(project)
        , job_(job)
        , record_(record) {}

    /// `number` counts from 1.
    std::string told(const Step& step, int number) {
        number_ = number;
        out_.clear();
        std::visit([this](const auto& work) { tell(work); }, step.work);
        return out_;
    }

private:
    std::string text(Length length) const { return format(length, project_.notation); }
    const std::string& wood(int index) const {
        return project_.woods.at(static_cast<std::size_t>(index)).name;
    }
    /// Thickness × width × length, length along the grain.
    std::string size(const Figure& thickness, const Figure& width, const Figure& length) const {
        const Notation& in = project_.notation;
        return formatBare(thickness.value, in) + " × " + formatBare(width.value, in) + " × " +
               text(length.value);
    }

    void line(const std::string& words) { out_ += "      " + words + "\n"; }
    void setting(const char* name, const Figure& figure) {
        const std::string how =
            figure.terms.size() > 1 ? working(figure, project_.notation) : text(figure.value);
        line(std::string(name) + ": " + how);
    }

    void tell(const Mill& work) {
        for (const MillLine& strips : work.lines) {
            line(joined(strips.strips) + ": " + wood(strips.wood));
            line("  rough  " + size(strips.roughThickness, strips.roughWidth, strips.roughLength));
            line("  milled " + size(strips.thickness, strips.width, strips.length));
        }
    }
    void tell(const Glue& work) {
        std::string order;
        for (const Laid& part : work.parts) {
            order += (order.empty() ? "" : " | ") + laid(part);
        }
        line(order);
        line("glued: " + text(work.thickness.value) + " thick, " + text(work.width.value) +
             (work.final ? " across, " : " wide, ") + text(work.length.value) +
             (work.final ? " down" : " long"));
        line("glue on " + formatArea(work.glueFace, project_.notation.unit) + " of joints");
    }
    void tell(const Take& work) {
        line(laid(work.part) + ": " + text(work.thickness.value) + " thick, " +
             text(work.width.value) + " across, " + text(work.length.value) + " down");
    }
    void tell(const Flatten& work) {
        const FlatWork flat = flatWork(record_, work, number_);
        const std::string why = whyNoPlaner(flat, project_.shop);
        line(flatteningTools(flat, project_.shop) + (why.empty() ? "" : ". " + why));
        setting("from", work.from);
        setting("to", work.to);
    }
    void tell(const SquareEnd& work) {
        setting("waste", work.waste);
        line("left: " + text(work.left));
    }
    void tell(const Crosscut& work) {
        setting("stop", work.stop);
        line((work.forPanels
                  ? counted(static_cast<int>(work.slices.size()), "length: ", "lengths: ")
                  : counted(static_cast<int>(work.slices.size()), "slice: ", "slices: ")) +
             joined(work.slices));
        if (!work.spares.empty()) {
            line("spare: " + joined(work.spares));
        }
        line("left: " + text(work.left));
    }
    void tell(const BringToSize& work) {
        line(joined(work.parts) + ": " + sizingWords(work.sizing, project_.notation));
        setting("from", work.sizing.from);
        setting("to", work.sizing.to);
    }
    void tell(const TrimField& work) {
        setting("each side", work.margin);
        setting("across", work.width);
        setting("down", work.height);
    }
    void tell(const CutChannel& work) {
        line(joined(work.parts) +
             (work.edges > 1 ? ", " + std::to_string(work.edges) + " edges" : ""));
        setting("deep", work.depth);
        setting("wide", work.width);
        if (work.fromFace.value > Length()) {
            setting("below the top face", work.fromFace);
        }
    }
    void tell(const GlueIn& work) {
        for (const Inset& inset : work.insets) {
            line(inset.stick + " into " + inset.rail);
        }
        setting(work.purpose == ChannelFor::Inlay ? "stands over, to be levelled" : "stands out",
                work.proud);
        line("glue on " + formatArea(work.glueFace, project_.notation.unit) + " of joints");
    }
    void tell(const CutRails& work) {
        for (const Rail& rail : work.rails) {
            setting((rail.label + (work.mitred ? ", long point to long point" : "")).c_str(),
                    rail.longPoint);
        }
    }
    void tell(const KeyCorners& work) {
        line("four keys from " + work.stick);
        setting("slot deep", work.depth);
        setting("slot wide", work.thickness);
        setting("below the top face", work.fromFace);
    }
    void tell(const FitBorder& work) {
        setting("rail width", work.width);
        for (const Rail& rail : work.rails) {
            setting((rail.label +
                     (project_.board.border.isFrame() ? ", long point to long point" : ", length"))
                        .c_str(),
                    rail.longPoint);
        }
        if (work.design == BorderDesign::FloatingFrame) {
            line("Glue the mitres and nothing else: the field lies loose in the frame.");
            setting("gap left and right", work.gapX);
            setting("gap above and below", work.gapY);
        } else if (work.design == BorderDesign::BreadboardEnds) {
            line("No glue between the ends and the field: pins hold them, the one in the middle "
                 "tight.");
            setting("pin diameter", work.pinDiameter);
            setting("pins in from the edge of the field", work.pinFromEdge);
            for (const Pin& pin : work.pins) {
                setting("pin at", pin.at);
                setting("  slot away from the middle", pin.outward);
                setting("  slot towards the middle", pin.inward);
            }
        } else if (work.mustNotBeGlued) {
            line("Do not glue this border to the field: it will move by up to " +
                 travelWords(job_.movement, project_.notation.unit) + " through the year and " +
                 (work.design == BorderDesign::EdgeBand ? "the strips along it do not."
                                                        : "burst the mitres."));
        } else {
            line("glue on " + formatArea(work.glueFace, project_.notation.unit) + " of joints");
        }
    }

    const Project& project_;
    const Job& job_;
    const Record& record_;
    int number_ = 0;
    std::string out_;
};

const char* word(Severity severity) {
    switch (severity) {
    case Severity::Note:
        return "Note";
    case Severity::Caution:
        return "Caution";
    case Severity::Danger:
        return "Danger";
    }
    return "";
}

}  // namespace

std::string planText(const Project& project, const Job& job) {
    const auto text = [&project](Length length) { return format(length, project.notation); };
    const Totals& totals = job.totals;
    const Plan& plan = job.plan;

    std::string out = project.titles.name.empty() ? "A board" : project.titles.name;
    out += "\n\n";
    out += "Finished   " + text(totals.width) + " × " + text(totals.height) + ", " +
           text(totals.thickness) + " thick, " +
           (project.board.build == Build::EndGrain ? "end grain up" : "long grain up") + "\n";
    out += "Glue-ups   " + std::to_string(plan.glueUps) +
           (plan.assemblies == plan.glueUps
                ? std::string()
                : " kinds, " + std::to_string(plan.assemblies) + " to clamp") +
           "; " + counted(plan.panels, "panel", "panels") + ", " +
           counted(plan.strips, "strip", "strips") + "\n";
    out += "Timber in  " + formatVolume(totals.timberIn, project.notation.unit) + ", " +
           fixed(totals.yieldPercent, 0) + " % of it in the board\n";
    if (totals.weightKg > 0) {
        const bool pounds = project.notation.unit == Unit::Inches;
        // 0.45359237 kg: the international pound.
        out += "Weight     ≈ " + fixed(pounds ? totals.weightKg / 0.45359237 : totals.weightKg, 1) +
               (pounds ? " lb\n" : " kg\n");
    }
    if (!plan.decidedBy.empty()) {
        out += "Plan       " + plan.decidedBy + "\n";
    }

    out += "\nSteps\n";
    const Record record(job.steps);
    Teller teller(project, job, record);
    int number = 0;
    for (const Step& step : job.steps.steps) {
        const std::string count = std::to_string(++number);
        out += std::string(count.size() < 4 ? 4 - count.size() : 0, ' ') + count + ". " +
               title(step) + "\n" + teller.told(step, number);
    }

    if (!job.cautions.empty()) {
        out += "\nCautions\n";
        for (const Caution& caution : job.cautions) {
            out += "  " + std::string(word(caution.severity)) +
                   (caution.steps.empty() ? "" : ", " + whichSteps(caution)) + ": " +
                   caution.title + ". " + caution.reason + " " + caution.remedy + "\n";
        }
    }
    return out;
}

}  // namespace kerfwright
