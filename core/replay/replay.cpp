#include "core/replay/replay.h"

#include "core/replay/bench.h"
#include "core/words/say.h"

namespace kerfwright {

Proof replay(const StepList& list, const Board& board, bool mergeLike, const FieldSeason& season) {
    Bench bench(list, board, season);
    Proof proof;
    for (std::size_t i = 0; i < list.steps.size() && proof.ok(); ++i) {
        for (const std::string& text : bench.carryOut(list.steps[i])) {
            proof.faults.push_back(say("Step {1}: {2}.", i + 1, text));
        }
    }
    if (proof.ok()) {
        for (const std::string& text : bench.finish(mergeLike)) {
            proof.faults.push_back(say("After the last step: {1}.", text));
        }
    }
    proof.ledger = bench.ledger();
    proof.width = bench.width();
    proof.height = bench.height();
    proof.thickness = bench.thickness();
    return proof;
}

Trace trace(const StepList& list, const Board& board, const FieldSeason& season) {
    Trace all;
    Bench bench(list, board, season);
    bench.noteIn(all);
    for (const Step& step : list.steps) {
        if (!bench.carryOut(step).empty()) {
            break;
        }
    }
    bench.noteRest();
    return all;
}

}  // namespace kerfwright
