// Which bits of timber a job falls into, and where each of them is.
#include "core/bench/trailbits.h"

#include "core/bench/origin.h"
#include "core/bench/trail.h"
#include "core/glueup/rows.h"
#include "core/replay/trace.h"

#include <algorithm>
#include <utility>

namespace kerfwright {
namespace {

using bits::append;
using bits::tidy;

/// A rectangle of the field as glued.
struct Patch {
    Length left, right, top, bottom;
    bool isEmpty() const { return left >= right || top >= bottom; }
};

/// The wished pieces on the field as glued, one patch each; behind them the four sides of an
/// end-grain band, of which those that are empty mean nothing.
std::vector<Patch> patchesOf(const Job& job, const Field& wished) {
    const Field& glued = job.board.field;
    const auto ring = at(bandOf(job, wished));
    const std::vector<Length> columns = rows::edges(glued.columns);
    const std::vector<Length> lines = rows::edges(glued.rows);
    std::vector<Patch> patches;
    for (const Piece& piece : wished.pieces) {
        const std::size_t column = at(piece.column) + ring;
        const std::size_t row = at(piece.row) + ring;
        patches.push_back({columns[column], columns[column + at(piece.across)], lines[row],
                           lines[row + at(piece.down)]});
    }
    const Length right = columns.back();
    const Length bottom = lines.back();
    const Length left = columns[ring];
    const Length top = lines[ring];
    const Length inRight = columns[columns.size() - 1 - ring];
    const Length inBottom = lines[lines.size() - 1 - ring];
    patches.push_back({{}, right, {}, top});
    patches.push_back({{}, right, inBottom, bottom});
    patches.push_back({{}, left, top, inBottom});
    patches.push_back({inRight, right, top, inBottom});
    return patches;
}

/// The middles between the edges that lie inside.
std::vector<Length> middles(Length from, Length to, const std::vector<Length>& edges) {
    std::vector<Length> found;
    Length last = from;
    for (const Length edge : edges) {
        if (edge > from && edge < to) {
            found.push_back(half(last + edge));
            last = edge;
        }
    }
    found.push_back(half(last + to));
    return found;
}

/// What a step works on, by label.
struct Worked {
    std::vector<std::string> parts;

    void operator()(const Mill& work) {
        for (const MillLine& line : work.lines) {
            parts.insert(parts.end(), line.strips.begin(), line.strips.end());
        }
    }
    void operator()(const Glue& work) { parts = {work.result}; }
    void operator()(const Take& work) { parts = {work.result}; }
    void operator()(const Flatten& work) { parts = {work.part}; }
    void operator()(const SquareEnd& work) { parts = {work.part}; }
    void operator()(const Crosscut& work) {
        parts = work.slices;
        parts.insert(parts.end(), work.spares.begin(), work.spares.end());
    }
    void operator()(const BringToSize& work) { parts = work.parts; }
    void operator()(const TrimField& work) { parts = {work.part}; }
    void operator()(const CutChannel& work) { parts = work.parts; }
    void operator()(const GlueIn& work) {
        for (const Inset& inset : work.insets) {
            parts.push_back(inset.stick);
            parts.push_back(inset.rail);
        }
    }
    void operator()(const CutRails& work) { take(work.rails); }
    // The field goes in as it is: the work is on the rails.
    void operator()(const FitBorder& work) { take(work.rails); }
    void operator()(const KeyCorners& work) { parts = {work.stick}; }

    void take(const std::vector<Rail>& rails) {
        for (const Rail& rail : rails) {
            parts.push_back(rail.label);
        }
    }
};

}  // namespace

Trails::Trails(const Job& job, const Field& wished, const TimberPlan* timber)
    : byColumns_(job.plan.byColumns)
    , hasBand_(bandOf(job, wished) > 0) {
    if (job.plan.parts.empty()) {
        return;
    }
    nameParts(job);
    const std::size_t uses = job.plan.field().uses.size();
    ofUse_.resize(uses);
    for (std::size_t use = 0; use < uses; ++use) {
        std::vector<bool> one(uses);
        one[use] = true;
        std::vector<int> lines = linesOf(job.plan, job.board.field, one);
        for (int& line : lines) {
            line -= bandOf(job, wished);
        }
        linesOfUse_.push_back(std::move(lines));
    }
    ofPiece_.resize(wished.pieces.size());
    if (job.plan.construction.empty()) {
        followRows(job, wished);
    } else {
        followDeep(job, wished);
    }
    for (Bits& bits : ofPiece_) {
        tidy(bits);
    }
    addSpares(job);
    for (const auto& [label, id] : ids_) {
        if (sorts_[at(id)] == PartSort::Rail) {
            addBit({label}, -1);
            ofBorder_.push_back(static_cast<int>(useOf_.size()) - 1);
        }
    }
    tidy(ofBorder_);
    addSteps(job);
    for (const CutListLine& line : cutListOf(job.steps)) {
        ofCutLine_.push_back(bitsOfParts(line.strips.strips));
    }
    addCautions(job, wished);
    if (timber != nullptr) {
        addPlanks(*timber);
    }
}

int Trails::idOf(const std::string& label) {
    const auto [known, isNew] = ids_.try_emplace(label, static_cast<int>(labels_.size()));
    if (isNew) {
        labels_.push_back(label);
        sorts_.push_back(PartSort::None);
        ofPart_.emplace_back();
    }
    return known->second;
}

void Trails::nameParts(const Job& job) {
    const auto name = [this](const std::string& label, PartSort sort) {
        sorts_[at(idOf(label))] = sort;
    };
    for (const Step& step : job.steps.steps) {
        if (const auto* mill = std::get_if<Mill>(&step.work)) {
            for (const MillLine& line : mill->lines) {
                for (const std::string& strip : line.strips) {
                    name(strip, mill->panel.empty() ? PartSort::Rail : PartSort::Strip);
                }
            }
        } else if (const auto* glue = std::get_if<Glue>(&step.work)) {
            name(glue->result, glue->final ? PartSort::Field : PartSort::Panel);
            field_ = glue->final ? glue->result : field_;
        } else if (const auto* take = std::get_if<Take>(&step.work)) {
            name(take->result, PartSort::Field);
            field_ = take->result;
        } else if (const auto* cut = std::get_if<Crosscut>(&step.work)) {
            for (const auto* labels : {&cut->slices, &cut->spares}) {
                for (const std::string& slice : *labels) {
                    name(slice, PartSort::Slice);
                    cutFrom_[slice] = cut->part;
                }
            }
        }
    }
}

void Trails::addBit(const std::vector<std::string>& labels, int use) {
    const int number = static_cast<int>(useOf_.size());
    useOf_.push_back(use);
    const auto add = [&](const std::string& label) {
        Bits& bits = ofPart_[at(idOf(label))];
        if (bits.empty() || bits.back() != number) {
            bits.push_back(number);
        }
    };
    for (const std::string& label : labels) {
        add(label);
        const auto panel = cutFrom_.find(label);
        if (panel != cutFrom_.end()) {
            add(panel->second);
        }
    }
    if (use >= 0) {
        ofUse_[at(use)].push_back(number);
        add(field_);
    }
}

void Trails::followRows(const Job& job, const Field& wished) {
    const Plan& plan = job.plan;
    const Field& glued = job.board.field;
    const std::vector<std::string> order = sliceOrder(job.steps);
    const Length side = byColumns_ ? glued.height() : glued.width();
    const std::vector<Patch> patches = patchesOf(job, wished);
    Length begin;
    for (std::size_t use = 0; use < plan.field().uses.size() && use < order.size(); ++use) {
        const Use& laid = plan.field().uses[use];
        const Length end = begin + laid.finished;
        const Part& panel = plan.parts[at(laid.part)];
        const std::vector<StripSpan> spans =
            panel.role == Role::Strip ? std::vector<StripSpan>{{laid.part, Length(), side}}
                                      : stripSpans(plan, panel, laid.lay, side);
        const int first = static_cast<int>(useOf_.size());
        for (const StripSpan& span : spans) {
            addBit({order[use], plan.parts[at(span.strip)].label}, static_cast<int>(use));
        }
        for (std::size_t i = 0; i < patches.size(); ++i) {
            const Patch& patch = patches[i];
            const auto [from, to] = byColumns_ ? std::pair(patch.left, patch.right)
                                               : std::pair(patch.top, patch.bottom);
            const auto [near, far] = byColumns_ ? std::pair(patch.top, patch.bottom)
                                                : std::pair(patch.left, patch.right);
            if (patch.isEmpty() || from >= end || to <= begin) {
                continue;
            }
            for (std::size_t s = 0; s < spans.size(); ++s) {
                if (spans[s].from < far && near < spans[s].to) {
                    (i < ofPiece_.size() ? ofPiece_[i] : ofBorder_)
                        .push_back(first + static_cast<int>(s));
                }
            }
        }
        begin = end;
    }
}

void Trails::followDeep(const Job& job, const Field& wished) {
    const Plan& plan = job.plan;
    const Field& glued = job.board.field;
    std::vector<Length> across = rows::edges(glued.columns);
    std::vector<Length> down = rows::edges(glued.rows);
    std::vector<Length>& along = byColumns_ ? across : down;
    Length end;
    for (const Use& use : plan.field().uses) {
        end += use.finished;
        along.push_back(end);
    }
    for (const Joint& joint : plan.extraJoints) {
        (joint.vertical ? across : down).push_back(joint.at);
    }
    std::sort(across.begin(), across.end());
    std::sort(down.begin(), down.end());
    const std::vector<Patch> patches = patchesOf(job, wished);
    std::vector<FieldPoint> points;
    std::vector<std::size_t> patchOf;
    for (std::size_t i = 0; i < patches.size(); ++i) {
        if (patches[i].isEmpty()) {
            continue;
        }
        for (const Length x : middles(patches[i].left, patches[i].right, across)) {
            for (const Length y : middles(patches[i].top, patches[i].bottom, down)) {
                points.push_back({x, y});
                patchOf.push_back(i);
            }
        }
    }
    const Trace solids = trace(job.steps, job.board, job.season);
    const std::vector<std::vector<std::string>> chains = originsAt(job.steps, solids, points);
    std::unordered_map<std::string, int> known;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (chains[i].empty()) {
            continue;
        }
        std::string name;
        for (const std::string& label : chains[i]) {
            name += label + '\n';
        }
        const auto [bit, isNew] = known.try_emplace(name, static_cast<int>(useOf_.size()));
        if (isNew) {
            addBit(chains[i], useAt(plan, byColumns_ ? points[i].x : points[i].y));
        }
        (patchOf[i] < ofPiece_.size() ? ofPiece_[patchOf[i]] : ofBorder_).push_back(bit->second);
    }
}

/// A spare slice is in no piece, but of the same strips as the slices beside it.
void Trails::addSpares(const Job& job) {
    std::unordered_map<int, std::vector<int>> stripsOf;  // of a panel, by its number
    std::vector<std::vector<int>> partsOf(useOf_.size());
    for (std::size_t part = 0; part < ofPart_.size(); ++part) {
        for (const int bit : ofPart_[part]) {
            partsOf[at(bit)].push_back(static_cast<int>(part));
        }
    }
    for (const Step& step : job.steps.steps) {
        const auto* cut = std::get_if<Crosscut>(&step.work);
        if (cut == nullptr || cut->spares.empty()) {
            continue;
        }
        std::vector<int> strips;
        for (const int bit : ofPart_[at(idOf(cut->part))]) {
            if (at(bit) < partsOf.size()) {
                for (const int part : partsOf[at(bit)]) {
                    if (sorts_[at(part)] == PartSort::Strip) {
                        strips.push_back(part);
                    }
                }
            }
        }
        tidy(strips);
        for (const std::string& spare : cut->spares) {
            for (const int strip : strips) {
                addBit({spare, labels_[at(strip)]}, -1);
            }
        }
    }
}

void Trails::addSteps(const Job& job) {
    for (const Step& step : job.steps.steps) {
        Worked worked;
        std::visit(worked, step.work);
        ofStep_.push_back(bitsOfParts(worked.parts));
        wholeField_.push_back(std::find(worked.parts.begin(), worked.parts.end(), field_) !=
                              worked.parts.end());
    }
}

void Trails::addCautions(const Job& job, const Field& wished) {
    for (const Caution& caution : job.cautions) {
        const CautionPlace& place = caution.place;
        Bits bits;
        for (std::size_t i = 0; i < wished.pieces.size(); ++i) {
            const Piece& piece = wished.pieces[i];
            const auto within = [](const std::vector<int>& lines, int first, int count) {
                return std::any_of(lines.begin(), lines.end(),
                                   [&](int line) { return line >= first && line < first + count; });
            };
            if (std::find(place.pieces.begin(), place.pieces.end(), static_cast<int>(i)) !=
                    place.pieces.end() ||
                within(place.rows, piece.row, piece.down) ||
                within(place.columns, piece.column, piece.across)) {
                append(bits, ofPiece_[i]);
            }
        }
        if (place.border) {
            append(bits, ofBorder_);
        }
        const bool hasPlace = !(place == CautionPlace());
        std::vector<int> about;
        for (const int step : caution.steps) {
            if (step >= 0 && at(step) < ofStep_.size()) {
                about.push_back(step);
                if (!hasPlace) {
                    append(bits, ofStep_[at(step)]);
                }
            }
        }
        tidy(bits);
        ofCaution_.push_back(std::move(bits));
        stepsOfCaution_.push_back(std::move(about));
        placeOfCaution_.push_back(highlightOf(place));
    }
}

void Trails::addPlanks(const TimberPlan& timber) {
    const auto names = stripLabels(timber.layout, timber.demand);
    for (std::size_t i = 0; i < timber.layout.planks.size(); ++i) {
        std::vector<std::string> parts;
        for (const auto& section : names[i]) {
            for (const std::string& name : section) {
                const std::vector<std::string> single = partsNamed(name);
                parts.insert(parts.end(), single.begin(), single.end());
            }
        }
        planks_.push_back(timber.rack.planks[at(timber.layout.planks[i].plank)].label);
        ofPlank_.push_back(bitsOfParts(parts));
    }
}

}  // namespace kerfwright
