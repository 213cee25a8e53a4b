// From a point of the field back to the strip that lies there.
#include "core/replay/trace.h"

#include <algorithm>

namespace kerfwright {
namespace {

/// How a workpiece came about, and what came off its low sides since.
struct History {
    const Glue* glued = nullptr;
    const Laid* taken = nullptr;  ///< the field of one slice
    std::string cutOff;           ///< the panel it was crosscut off
    Corner base;                  ///< of a slice: its low corner in that panel as it was made
    Corner low;                   ///< what has come off since it was made
};

int sign(Length length) {
    return length > Length() ? 1 : length < Length() ? -1 : 0;
}

class Walk {
public:
    Walk(const StepList& list, const Trace& trace)
        : trace_(trace) {
        for (const Step& step : list.steps) {
            std::visit([this](const auto& work) { take(work); }, step.work);
        }
    }

    std::vector<std::string> from(Length x, Length y) {
        const auto known = trace_.find(field_);
        if (field_.empty() || known == trace_.end()) {
            return {};
        }
        const Corner& size = known->second.ready.size;
        if (x < Length() || y < Length() || x >= size[X] || y >= size[Y]) {
            return {};
        }
        std::vector<std::string> chain;
        across_ = Corner{unit, Length(), Length()};
        down_ = Corner{Length(), unit, Length()};
        follow(field_, {x, y, size[Z]}, chain);
        chain.erase(chain.begin());
        return chain;
    }

    /// Of the point that was followed last.
    StripPlace place(std::string strip) const {
        const auto found = trace_.find(strip);
        StripPlace place;
        if (found != trace_.end()) {
            place.size = found->second.made.size;
        }
        place.strip = std::move(strip);
        place.point = end_;
        for (const Axis axis : {X, Y, Z}) {
            place.across[axis] = sign(across_[axis]);
            place.down[axis] = sign(down_[axis]);
        }
        return place;
    }

private:
    void take(const Glue& work) {
        histories_[work.result].glued = &work;
        field_ = work.final ? work.result : field_;
    }
    void take(const Take& work) {
        histories_[work.result].taken = &work.part;
        field_ = work.result;
    }
    void take(const Flatten& work) {
        const Length off = work.from.value - work.to.value;
        histories_[work.part].low[Z] += off - half(off);
    }
    void take(const SquareEnd& work) {
        histories_[work.part].low[Y] += work.waste.value + work.kerf.value;
    }
    void take(const Crosscut& work) {
        for (const auto* labels : {&work.slices, &work.spares}) {
            for (const std::string& label : *labels) {
                Corner& low = histories_[work.part].low;
                const Corner base = low;
                low[Y] += work.stop.value + work.kerf.value;
                History& slice = histories_[label];
                slice.cutOff = work.part;
                slice.base = base;
            }
        }
    }
    void take(const BringToSize& work) {
        const Axis axis = work.sizing.in == SizedIn::Width    ? X
                          : work.sizing.in == SizedIn::Length ? Y
                                                              : Z;
        for (const std::string& label : work.parts) {
            histories_[label].low[axis] += work.sizing.offFirst;
        }
    }
    void take(const TrimField& work) {
        Corner& low = histories_[work.part].low;
        low[X] += work.margin.value;
        low[Y] += work.margin.value;
    }
    template <class Work>
    void take(const Work&) {}

    /// `point` in the workpiece as it is when it goes on.
    void follow(const std::string& label, Corner point, std::vector<std::string>& chain) {
        chain.push_back(label);
        const auto found = histories_.find(label);
        if (found == histories_.end()) {
            end_ = point;
            return;
        }
        const History& history = found->second;
        for (const Axis axis : {X, Y, Z}) {
            // Slices were cut off a panel while it was that large; its own point is one of what it
            // was when it was made.
            point[axis] += history.cutOff.empty() ? Length() : history.low[axis];
        }
        if (!history.cutOff.empty()) {
            for (const Axis axis : {X, Y, Z}) {
                point[axis] += history.base[axis];
            }
            const auto panel = histories_.find(history.cutOff);
            if (panel != histories_.end() && panel->second.glued != nullptr) {
                into(*panel->second.glued, point, chain);
            } else {
                chain.push_back(history.cutOff);
                end_ = point;
            }
            return;
        }
        for (const Axis axis : {X, Y, Z}) {
            point[axis] += history.low[axis];
        }
        if (history.taken != nullptr) {
            part(*history.taken, point, chain);
        } else if (history.glued != nullptr) {
            into(*history.glued, point, chain);
        } else {
            end_ = point;
        }
    }

    void part(const Laid& laid, const Corner& point, std::vector<std::string>& chain) {
        const auto solid = trace_.find(laid.part);
        if (solid != trace_.end()) {
            const Corner& size = solid->second.ready.size;
            const Corner origin = unlaid({}, size, laid.lay);
            for (Corner* direction : {&across_, &down_}) {
                *direction = unlaid(*direction, size, laid.lay);
                for (const Axis axis : {X, Y, Z}) {
                    (*direction)[axis] -= origin[axis];
                }
            }
            follow(laid.part, unlaid(point, size, laid.lay), chain);
        }
    }

    void into(const Glue& glue, Corner point, std::vector<std::string>& chain) {
        const Axis along = glue.along == GlueAlong::Width ? X : Y;
        for (const Laid& laid : glue.parts) {
            const auto solid = trace_.find(laid.part);
            if (solid == trace_.end()) {
                return;
            }
            const Length size = laidSize(solid->second.ready.size, laid.lay)[along];
            if (point[along] < size) {
                part(laid, point, chain);
                return;
            }
            point[along] -= size;
        }
    }

    static constexpr Length unit = Length::mm(1);

    const Trace& trace_;
    std::unordered_map<std::string, History> histories_;
    std::string field_;
    Corner end_;            ///< where the point that is followed lies in its strip
    Corner across_, down_;  ///< of one mm of the field, in the part that is looked at
};

}  // namespace

std::vector<std::string> originAt(const StepList& list, const Trace& trace, Length x, Length y) {
    return Walk(list, trace).from(x, y);
}

std::vector<std::vector<std::string>> originsAt(const StepList& list, const Trace& trace,
                                                const std::vector<FieldPoint>& points) {
    Walk walk(list, trace);
    std::vector<std::vector<std::string>> chains;
    chains.reserve(points.size());
    for (const FieldPoint& point : points) {
        chains.push_back(walk.from(point.x, point.y));
    }
    return chains;
}

std::vector<StripPlace> stripsAt(const StepList& list, const Trace& trace,
                                 const std::vector<FieldPoint>& points) {
    Walk walk(list, trace);
    std::vector<StripPlace> places;
    places.reserve(points.size());
    for (const FieldPoint& point : points) {
        std::vector<std::string> chain = walk.from(point.x, point.y);
        places.push_back(chain.empty() ? StripPlace() : walk.place(std::move(chain.back())));
    }
    return places;
}

}  // namespace kerfwright
