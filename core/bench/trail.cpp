#include "core/bench/trail.h"

#include "core/bench/trailbits.h"

#include <algorithm>

namespace kerfwright {
namespace {

using bits::append;
using bits::tidy;

bool sameSize(const MillLine& a, const MillLine& b) {
    return a.thickness.value == b.thickness.value && a.width.value == b.width.value &&
           a.length.value == b.length.value && a.roughThickness.value == b.roughThickness.value &&
           a.roughWidth.value == b.roughWidth.value && a.roughLength.value == b.roughLength.value;
}

}  // namespace

Highlight highlightOf(const CautionPlace& place) {
    Highlight highlight;
    highlight.rows.insert(place.rows.begin(), place.rows.end());
    highlight.columns.insert(place.columns.begin(), place.columns.end());
    highlight.pieces.insert(place.pieces.begin(), place.pieces.end());
    highlight.border = place.border;
    return highlight;
}

std::vector<CutListLine> cutListOf(const StepList& steps) {
    std::vector<CutListLine> lines;
    for (const Step& step : steps.steps) {
        const auto* mill = std::get_if<Mill>(&step.work);
        if (mill == nullptr) {
            continue;
        }
        const std::size_t first = lines.size();
        // Rails are milled one a line, also where two are alike.
        for (const MillLine& line : mill->lines) {
            const auto known = std::find_if(lines.begin() + static_cast<std::ptrdiff_t>(first),
                                            lines.end(), [&](const CutListLine& other) {
                                                return other.strips.wood == line.wood &&
                                                       sameSize(other.strips, line);
                                            });
            if (known == lines.end()) {
                lines.push_back({mill->panel, line});
            } else {
                known->strips.strips.insert(known->strips.strips.end(), line.strips.begin(),
                                            line.strips.end());
            }
        }
    }
    return lines;
}

std::vector<std::string> partsNamed(const std::string& label) {
    const std::string between = " + ";
    std::vector<std::string> parts;
    std::size_t from = 0;
    for (std::size_t end = label.find(between); end != std::string::npos;
         end = label.find(between, from)) {
        parts.push_back(label.substr(from, end - from));
        from = end + between.size();
    }
    parts.push_back(label.substr(from));
    return parts;
}

Trails::Bits Trails::bitsOfParts(const std::vector<std::string>& labels) const {
    Bits bits;
    for (const std::string& label : labels) {
        const auto known = ids_.find(label);
        if (known != ids_.end()) {
            append(bits, ofPart_[at(known->second)]);
        }
    }
    tidy(bits);
    return bits;
}

Trails::Bits Trails::bitsOf(const Subject& subject) const {
    const auto one = [&](const std::vector<Bits>& all) {
        return subject.index >= 0 && at(subject.index) < all.size() ? all[at(subject.index)]
                                                                    : Bits();
    };
    switch (subject.kind) {
    case Subject::Kind::None:
        return {};
    case Subject::Kind::Piece:
        return one(ofPiece_);
    case Subject::Kind::Border:
        return ofBorder_;
    case Subject::Kind::Part:
        return bitsOfParts(partsNamed(subject.label));
    case Subject::Kind::Step:
        return one(ofStep_);
    case Subject::Kind::CutLine:
        return one(ofCutLine_);
    case Subject::Kind::Caution:
        return one(ofCaution_);
    case Subject::Kind::Plank: {
        Bits bits;
        for (std::size_t i = 0; i < planks_.size(); ++i) {
            if (planks_[i] == subject.label) {
                append(bits, ofPlank_[i]);
            }
        }
        tidy(bits);
        return bits;
    }
    }
    return {};
}

Trail Trails::of(const Subject& subject) const {
    Trail trail;
    const Bits bits = bitsOf(subject);
    std::vector<bool> hit(useOf_.size());
    for (const int bit : bits) {
        hit[at(bit)] = true;
    }
    const auto touches = [&](const Bits& some) {
        return std::any_of(some.begin(), some.end(), [&](int bit) { return hit[at(bit)]; });
    };
    const auto collect = [&](const std::vector<Bits>& all, std::set<int>& into) {
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (touches(all[i])) {
                into.insert(static_cast<int>(i));
            }
        }
    };
    using Kind = Subject::Kind;
    const auto self = [&](std::size_t count) {
        return subject.index >= 0 && at(subject.index) < count ? std::set<int>{subject.index}
                                                               : std::set<int>();
    };
    if (subject.kind == Kind::Piece) {
        trail.pieces = self(ofPiece_.size());
    } else {
        collect(ofPiece_, trail.pieces);
    }
    trail.border = touches(ofBorder_);
    for (std::size_t part = 0; part < ofPart_.size(); ++part) {
        if (touches(ofPart_[part])) {
            trail.parts.insert(labels_[part]);
        }
    }
    if (subject.kind == Kind::Step) {
        trail.steps = self(ofStep_.size());
    } else if (subject.kind != Kind::Caution) {
        collect(ofStep_, trail.steps);
    } else if (subject.index >= 0 && at(subject.index) < stepsOfCaution_.size()) {
        const std::vector<int>& about = stepsOfCaution_[at(subject.index)];
        trail.steps.insert(about.begin(), about.end());
    }
    if (subject.kind == Kind::CutLine) {
        trail.cutLines = self(ofCutLine_.size());
    } else {
        collect(ofCutLine_, trail.cutLines);
    }
    if (subject.kind == Kind::Caution) {
        trail.cautions = self(ofCaution_.size());
    } else if (subject.kind != Kind::Step) {
        collect(ofCaution_, trail.cautions);
    } else {
        for (std::size_t i = 0; i < stepsOfCaution_.size(); ++i) {
            const std::vector<int>& about = stepsOfCaution_[i];
            if (std::find(about.begin(), about.end(), subject.index) != about.end()) {
                trail.cautions.insert(static_cast<int>(i));
            }
        }
    }
    for (std::size_t i = 0; i < planks_.size(); ++i) {
        if (subject.kind == Kind::Plank ? planks_[i] == subject.label : touches(ofPlank_[i])) {
            trail.planks.insert(planks_[i]);
        }
    }
    if (subject.kind == Kind::Caution && !trail.cautions.empty() &&
        !placeOfCaution_[at(subject.index)].isEmpty()) {
        trail.place = placeOfCaution_[at(subject.index)];
    } else if (subject.kind == Kind::Piece) {
        trail.place.pieces = trail.pieces;
    } else {
        trail.place = placeOf(hit);
    }
    const bool ofSteps =
        subject.kind == Kind::Step || (subject.kind == Kind::Caution && !trail.cautions.empty() &&
                                       placeOfCaution_[at(subject.index)].isEmpty());
    const bool wholeField =
        (subject.kind == Kind::Part && subject.label == field_) ||
        (ofSteps && std::any_of(trail.steps.begin(), trail.steps.end(),
                                [this](int step) { return wholeField_[at(step)]; }));
    if (wholeField) {
        trail.place = Highlight();
        trail.place.field = true;
        trail.place.border = hasBand_;
    }
    return trail;
}

Highlight Trails::placeOf(const std::vector<bool>& hit) const {
    Highlight place;
    std::vector<bool> inLine(useOf_.size());
    for (std::size_t use = 0; use < ofUse_.size(); ++use) {
        const Bits& bits = ofUse_[use];
        if (bits.empty() ||
            !std::all_of(bits.begin(), bits.end(), [&](int bit) { return hit[at(bit)]; })) {
            continue;
        }
        (byColumns_ ? place.columns : place.rows)
            .insert(linesOfUse_[use].begin(), linesOfUse_[use].end());
        for (const int bit : bits) {
            inLine[at(bit)] = true;
        }
    }
    for (std::size_t i = 0; i < ofPiece_.size(); ++i) {
        if (std::any_of(ofPiece_[i].begin(), ofPiece_[i].end(),
                        [&](int bit) { return hit[at(bit)] && !inLine[at(bit)]; })) {
            place.pieces.insert(static_cast<int>(i));
        }
    }
    // Of a band only what no line of the field reaches is lit up as border.
    const bool bare = place.isEmpty();
    for (const int bit : ofBorder_) {
        place.border = place.border || (hit[at(bit)] && (useOf_[at(bit)] < 0 || bare));
    }
    return place;
}

PartSort Trails::sortOf(const std::string& part) const {
    const auto known = ids_.find(part);
    return known == ids_.end() ? PartSort::None : sorts_[at(known->second)];
}

}  // namespace kerfwright
