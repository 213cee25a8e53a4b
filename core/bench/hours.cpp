#include "core/bench/hours.h"

#include "core/bench/sessions.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <unordered_map>
#include <utility>

namespace kerfwright {
namespace {

/// In one pass each; at least one where anything comes off at all.
int passesFor(Length off, double pass) {
    return off <= Length() ? 0 : std::max(1, static_cast<int>(std::ceil(off.toMm() / pass - 1e-9)));
}

std::string endGrainIn(int passes) {
    // Translators: behind a square measure: "0.3 m² of end grain, in 15 passes".
    return sayCount(passes, "of end grain, in {1} pass", "of end grain, in {1} passes");
}
std::string longGrainIn(int passes) {
    // Translators: behind a square measure.
    return sayCount(passes, "of long grain, in {1} pass", "of long grain, in {1} passes");
}

/// Walks through the step list, keeps the sizes of all workpieces and counts the work.
class Counter {
public:
    Counter(const GlueNeeds& needs, const GlueShop& shop, const BenchRates& rates)
        : needs_(needs)
        , shop_(shop)
        , rates_(rates) {}

    void take(const Step& step) {
        begin(title(step));
        task_.step = static_cast<int>(hours_.tasks.size());
        std::visit([this](const auto& work) { count(work); }, step.work);
        end();
    }

    BenchHours done() && {
        sand();
        const auto coats = static_cast<int>(rates_.coats);
        for (int coat = 1; coat <= coats; ++coat) {
            begin(coats == 1 ? say("Coat of finish") : say("Coat {1}", coat));
            touch(board_);
            // Translators: behind a square measure.
            add(say("of surface"), "m²", longGrain_ + endGrain_, &BenchRates::coatArea);
            task_.wait = BenchWait::Finish;
            task_.waitMinutes = rates_.dryingHours * 60;
            end();
        }
        return std::move(hours_);
    }

private:
    struct Stock {
        Length width, length, thickness;
    };

    void begin(std::string title) {
        task_ = {};
        task_.title = std::move(title);
    }
    void end() {
        for (const TimeTerm& term : task_.terms) {
            task_.minutes += term.minutes();
        }
        hours_.minutes += task_.minutes;
        hours_.tasks.push_back(std::move(task_));
    }
    void touch(const std::string& label) {
        auto& labels = task_.labels;
        if (std::find(labels.begin(), labels.end(), label) == labels.end()) {
            labels.push_back(label);
        }
    }

    /// Nothing is said of work that there is none of.
    void add(std::string what, const char* unit, double count, double BenchRates::*rate) {
        const auto& rows = rateSettings();
        const auto row = std::find_if(rows.begin(), rows.end(),
                                      [rate](const RateSetting& one) { return one.value == rate; });
        if (count > 0) {
            task_.terms.push_back({std::move(what), unit, count, rates_.*rate, row->key});
        }
    }
    void add(std::string what, std::size_t count, double BenchRates::*rate) {
        add(std::move(what), "", static_cast<double>(count), rate);
    }
    void settings(std::size_t count) {
        add(sayCount(count, "machine setting", "machine settings"), count, &BenchRates::setting);
    }
    void crosscuts(std::size_t count) {
        add(sayCount(count, "crosscut", "crosscuts"), count, &BenchRates::crosscut);
    }
    void rips(std::size_t count) {
        // Translators: cuts along the grain.
        add(sayCount(count, "rip", "rips"), count, &BenchRates::rip);
    }
    void partsLaid(std::size_t count) {
        add(sayCount(count, "part laid and fitted", "parts laid and fitted"), count,
            &BenchRates::layPart);
    }
    void railsFitted(std::size_t count) {
        add(sayCount(count, "part fitted", "parts fitted"), count, &BenchRates::fitRail);
    }
    void scraped(Length joint) {
        // Translators: behind a length.
        add(say("of joint scraped"), "m", joint.toMm() / 1000, &BenchRates::scrapeMetre);
    }
    void clampsSet(std::size_t count) {
        add(sayCount(count, "clamp set", "clamps set"), count, &BenchRates::clamp);
    }

    void sets() {
        task_.wait = BenchWait::Glue;
        task_.waitMinutes.reset();
        if (needs_.times) {
            task_.waitMinutes =
                std::max(needs_.times->clampMinutes, needs_.times->machiningHours * 60);
        }
    }
    void spread(std::size_t lines) {
        if (lines > 0) {
            // Translators: with glue.
            task_.terms.push_back({sayCount(lines, "joint spread", "joints spread"), "",
                                   static_cast<double>(lines), shop_.secondsPerLine / 60,
                                   "glue-seconds-per-line"});
        }
    }

    void count(const Mill& work) {
        std::set<Length> thicknesses, widths, lengths;
        std::size_t cuts = 0, ripped = 0;
        double metres = 0;
        for (const MillLine& line : work.lines) {
            const std::size_t alike = line.strips.size();
            const Length off = line.roughThickness.value - line.thickness.value;
            const bool wide = line.roughWidth.value > line.width.value;
            const bool longer = line.roughLength.value > line.length.value;
            // Both faces, and an edge made straight for the fence.
            const int passes = (off > Length() ? std::max(2, passesFor(off, rates_.millPass)) : 0) +
                               (wide ? 1 : 0);
            metres += static_cast<double>(alike) * passes * line.roughLength.value.toMm() / 1000;
            cuts += longer ? 2 * alike : alike;
            ripped += wide ? 2 * alike : alike;
            thicknesses.insert(line.thickness.value);
            widths.insert(line.width.value);
            lengths.insert(line.length.value);
            for (const std::string& label : line.strips) {
                touch(label);
                stocks_[label] = {line.width.value, line.length.value, line.thickness.value};
            }
        }
        settings(thicknesses.size() + widths.size() + lengths.size());
        crosscuts(cuts);
        rips(ripped);
        // Translators: behind a length.
        add(say("of milling passes"), "m", metres, &BenchRates::millMetre);
    }

    void count(const Glue& work) {
        for (const Laid& laid : work.parts) {
            touch(laid.part);
        }
        touch(work.result);
        partsLaid(work.parts.size());
        const auto needs =
            std::find_if(needs_.glueUps.begin(), needs_.glueUps.end(),
                         [this](const GlueUpNeeds& one) { return one.step == task_.step; });
        if (needs != needs_.glueUps.end()) {
            spread(static_cast<std::size_t>(needs->lines));
            clampsSet(static_cast<std::size_t>(needs->clamps * needs->loads));
            scraped(needs->jointLength * needs->lines);
            task_.clamps = needs->clamps;
            if (needs_.times) {
                task_.betweenLoads = (needs->loads - 1) * needs_.times->clampMinutes;
            }
            sets();
        }
        stocks_[work.result] = {work.width.value, work.length.value, work.thickness.value};
        if (work.final) {
            fieldLaid(work.result, work.parts.front().lay, work.along == GlueAlong::Width);
        }
    }
    void count(const Take& work) {
        touch(work.part.part);
        touch(work.result);
        partsLaid(1);
        stocks_[work.result] = {work.width.value, work.length.value, work.thickness.value};
        fieldLaid(work.result, work.part.lay, work.part.lay.turned);
    }

    void count(const Flatten& work) {
        touch(work.part);
        Stock& stock = stocks_[work.part];
        const bool endGrain = work.face == Face::EndGrain;
        const int passes =
            passesFor(work.from.value - work.to.value, endGrain ? rates_.endPass : rates_.longPass);
        settings(1);
        add(endGrain ? endGrainIn(passes) : longGrainIn(passes), "m²",
            area(stock.width, stock.length).toSquareMetres() * passes,
            endGrain ? &BenchRates::flattenEnd : &BenchRates::flattenLong);
        stock.thickness = work.to.value;
    }

    void count(const SquareEnd& work) {
        touch(work.part);
        settings(1);
        crosscuts(1);
        stocks_[work.part].length = work.left;
    }
    void count(const Crosscut& work) {
        touch(work.part);
        settings(1);
        crosscuts(work.slices.size() + work.spares.size());
        Stock slice = stocks_[work.part];
        stocks_[work.part].length = work.left;
        slice.length = work.stop.value;
        for (const auto* labels : {&work.slices, &work.spares}) {
            for (const std::string& label : *labels) {
                touch(label);
                stocks_[label] = slice;
            }
        }
    }
    void count(const BringToSize& work) {
        const Sizing& sizing = work.sizing;
        const int sides =
            (sizing.offFirst > Length() ? 1 : 0) + (sizing.offLast > Length() ? 1 : 0);
        const std::size_t cuts = work.parts.size() * static_cast<std::size_t>(sides);
        settings(static_cast<std::size_t>(sides));
        const int passes = passesFor(sizing.offFirst + sizing.offLast, rates_.longPass);
        double face = 0;
        for (const std::string& part : work.parts) {
            touch(part);
            Stock& stock = stocks_[part];
            face += area(stock.width, stock.length).toSquareMetres() * passes;
            (sizing.in == SizedIn::Width    ? stock.width
             : sizing.in == SizedIn::Length ? stock.length
                                            : stock.thickness) = sizing.to.value;
        }
        switch (sizing.in) {
        case SizedIn::Width:
            rips(cuts);
            break;
        case SizedIn::Length:
            crosscuts(cuts);
            break;
        case SizedIn::Thickness:
            add(longGrainIn(passes), "m²", face, &BenchRates::flattenLong);
            break;
        }
    }
    void count(const TrimField& work) {
        touch(work.part);
        settings(2);  // the fence, once for each pair of sides
        crosscuts(4);
        stocks_[work.part].width = work.width.value;
        stocks_[work.part].length = work.height.value;
    }

    void count(const CutChannel& work) {
        settings(1);
        Length run;
        for (const std::string& part : work.parts) {
            touch(part);
            const Stock& stock = stocks_[part];
            run += work.edges == 1   ? stock.length
                   : work.edges == 4 ? (stock.width + stock.length) * 2
                                     : ends(stock);
        }
        // Translators: behind a length; a groove or a rebate.
        add(say("of channel"), "m", run.toMm() / 1000, &BenchRates::groove);
    }
    void count(const GlueIn& work) {
        Length sticks;
        for (const Inset& inset : work.insets) {
            touch(inset.stick);
            touch(inset.rail);
            sticks += stocks_[inset.stick].length;
        }
        railsFitted(work.insets.size());
        spread(work.insets.size());
        if (work.purpose == ChannelFor::Inlay) {
            scraped(sticks);
        }
        sets();
    }
    void count(const CutRails& work) {
        std::set<Length> stops;
        touch(board_);  // rails are sawn to the field as it came out
        for (const Rail& rail : work.rails) {
            touch(rail.label);
            stops.insert(rail.longPoint.value);
            stocks_[rail.label].length = rail.longPoint.value;
        }
        settings(stops.size() + (work.mitred ? 1 : 0));
        if (work.mitred) {
            const std::size_t mitres = work.rails.size() * 2;
            add(sayCount(mitres, "mitre", "mitres"), mitres, &BenchRates::mitre);
        } else {
            crosscuts(work.rails.size() * 2);
        }
    }
    void count(const FitBorder& work) {
        touch(work.part);
        Length edges;
        for (const Rail& rail : work.rails) {
            touch(rail.label);
            edges += rail.longPoint.value;
        }
        railsFitted(work.rails.size());
        if (work.glueFace > Area()) {
            const bool mitred = work.design == BorderDesign::FloatingFrame ||
                                work.design == BorderDesign::FixedFrame;
            const std::size_t sides = work.rails.size();
            spread((mitred ? sides : 0) + (work.mustNotBeGlued ? 0 : sides));
            clampsSet(sides);
            if (!work.mustNotBeGlued) {
                scraped(edges);
            }
            sets();
        }
        const std::size_t pins = work.pins.size() * 2;
        // Translators: holes bored and pins driven.
        add(sayCount(pins, "pin", "pins"), pins, &BenchRates::pin);
        Stock& stock = stocks_[work.part];
        bordered_ = area(work.boardWidth.value, work.boardHeight.value).toSquareMetres() -
                    area(stock.width, stock.length).toSquareMetres();
        stock.width = work.boardWidth.value;
        stock.length = work.boardHeight.value;
    }
    void count(const KeyCorners& work) {
        touch(work.part);
        touch(work.stick);
        settings(1);
        constexpr std::size_t corners = 4;
        add(sayCount(corners, "corner keyed", "corners keyed"), corners, &BenchRates::key);
        sets();
    }

    void fieldLaid(const std::string& label, const Lay& lay, bool grainAcross) {
        board_ = label;
        endGrainUp_ = lay.stoodUp;
        grainAcross_ = grainAcross;
    }
    /// Both edges at which the grain of a long-grain field ends.
    Length ends(const Stock& field) const {
        return (grainAcross_ ? field.length : field.width) * 2;
    }

    /// Edges of a border and of an end-grain field are side grain.
    void sand() {
        begin(say("Sand the board"));
        touch(board_);
        const Stock& board = stocks_[board_];
        const double field = area(board.width, board.length).toSquareMetres() - bordered_;
        const double edges =
            area((board.width + board.length) * 2, board.thickness).toSquareMetres();
        (endGrainUp_ ? endGrain_ : longGrain_) += 2 * field;
        longGrain_ += 2 * bordered_;
        const double sawn =
            endGrainUp_ || bordered_ > 0 ? 0 : area(ends(board), board.thickness).toSquareMetres();
        longGrain_ += edges - sawn;
        endGrain_ += sawn;
        // Translators: behind a square measure.
        add(say("of long grain"), "m²", longGrain_, &BenchRates::sandLong);
        // Translators: behind a square measure.
        add(say("of end grain"), "m²", endGrain_, &BenchRates::sandEnd);
        end();
    }

    const GlueNeeds& needs_;
    const GlueShop& shop_;
    const BenchRates& rates_;
    BenchHours hours_;
    BenchTask task_;
    std::unordered_map<std::string, Stock> stocks_;
    std::string board_;  ///< label of the field, which becomes the board
    bool endGrainUp_ = false;
    bool grainAcross_ = false;
    double bordered_ = 0;                  ///< m2 of border, seen from above
    double longGrain_ = 0, endGrain_ = 0;  ///< m2 of the finished board, all round
};

}  // namespace

std::int64_t toldMinutes(double minutes) {
    constexpr double hour = 60;
    constexpr double many = 20 * hour;
    constexpr double beyondAnyWork = 1e9;
    if (minutes >= beyondAnyWork) {
        return std::llround(beyondAnyWork);
    }
    if (minutes >= many) {
        return std::llround(minutes / hour) * 60;
    }
    if (minutes < hour - 0.5) {
        return minutes > 0 ? std::max(1LL, std::llround(minutes)) : 0;
    }
    return std::llround(minutes / 5) * 5;
}

BenchHours benchHours(const StepList& list, const GlueNeeds& needs, const GlueShop& shop,
                      const BenchRates& rates) {
    Counter counter(needs, shop, rates);
    for (const Step& step : list.steps) {
        counter.take(step);
    }
    BenchHours hours = std::move(counter).done();
    addSessions(hours, needs.times, shop.clampsOwned, rates.hoursADay);
    return hours;
}

}  // namespace kerfwright
