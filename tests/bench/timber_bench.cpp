// Layouts of cuts: how soon a bound is known, and how good the layout is after so many seconds.
#include "core/project/file.h"
#include "core/timber/layout.h"
#include "tests/bench/pairs.h"
#include "tests/core/timber/instances.h"

#include <benchmark/benchmark.h>

#include <chrono>
#include <cstdlib>
#include <functional>
#include <memory>
#include <string>

namespace kerfwright::bench {
namespace {

using timbertest::Instance;
using Clock = std::chrono::steady_clock;

double secondsSince(Clock::time_point begin) {
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

/// As good as it gets in that time.
Layout laidWithin(Instance instance, double seconds) {
    instance.rules.budget = std::int64_t{1} << 40;
    const auto begin = Clock::now();
    return layout(instance.rack, instance.demand, instance.rules,
                  [&](const LayoutProgress&) { return secondsSince(begin) < seconds; });
}

/// Seconds until a complete layout has a bound of at least that much.
double untilBound(Instance instance, std::int64_t bound) {
    instance.rules.budget = std::int64_t{1} << 40;
    const auto begin = Clock::now();
    double seconds = 0;
    layout(instance.rack, instance.demand, instance.rules, [&](const LayoutProgress& progress) {
        seconds = secondsSince(begin);
        return seconds < 10 && (progress.best == nullptr || progress.best->bound < bound);
    });
    return seconds;
}

void addQuality(const char* name, const Instance& instance, double seconds, double limit,
                const std::string& baselineName, double baseline) {
    notedPair(name, "", limit, static_cast<double>(laidWithin(instance, seconds).cost),
              baselineName, baseline);
}

void addQualities() {
    const Instance lum1 = timbertest::boards("lum1");
    const Instance lum3 = timbertest::boards("lum3");
    const Instance measured = timbertest::measured();
    // Baselines of lum1 and lum3: tests/core/timber/data/README.md.
    addQuality("layout of lum1, cost after 2 s", lum1, 2, 1, "tree search, 10 s", 1'969'906);
    addQuality("layout of lum1, cost after 10 s", lum1, 10, 1, "tree search, 40 s", 1'937'679);
    addQuality("layout of lum3, cost after 2 s", lum3, 2, 1, "tree search, 10 s", 3'046'349);
    const Layout laid = laidWithin(measured, 5);
    notedPair("layout of 30 planks, 260 strips, 60 defects, cost after 5 s", "", 1.02,
              static_cast<double>(laid.cost), "its own bound", static_cast<double>(laid.bound));
    notedPair("layout of lum1, seconds to the published bound", "s", 1, untilBound(lum1, 1'874'419),
              "allowed", 0.5);
    notedPair("layout of lum3, seconds to the published bound", "s", 1, untilBound(lum3, 2'927'687),
              "allowed", 0.5);
}

}  // namespace

void addTimber() {
    // They take half a minute, so that other benchmarks need not wait for them.
    const std::string filter = benchmark::GetBenchmarkFilter();
    if (filter.empty() || filter == "." || filter.find("layout") != std::string::npos) {
        addQualities();
    }
    const auto typical = std::make_shared<Instance>(timbertest::typical());
    const auto bytes = std::make_shared<std::string>(toBytes(randomProject(10)));
    pair(
        "layout of a typical project proven, 6 planks, 20 strips", {300, 0},
        [typical] {
            const Layout best = layout(typical->rack, typical->demand, typical->rules);
            if (!best.proven) {
                std::abort();  // what is measured is the proof
            }
            benchmark::DoNotOptimize(best.cost);
        },
        "reading a project of 10 x 10 from its bytes",
        [bytes] { benchmark::DoNotOptimize(fromBytes(*bytes).ok()); });
}

}  // namespace kerfwright::bench
