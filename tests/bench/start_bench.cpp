// From the start of the process to the first painted window, and memory once the plan is there,
// each against an empty window of the same toolkit.
#include "tests/bench/pairs.h"
#include "tests/source.h"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <vector>

namespace kerfwright::bench {
namespace {

struct Started {
    double seconds = 0;
    double mebibytes = 0;
};

/// `settle`: how long the program stays after its first paint, in ms.
Started start(const std::string& program, int settle) {
    const std::string command = "QT_QPA_PLATFORM=offscreen '" + program + "' '" +
                                (sourceFolder() / "samples/hut-draughts.kerfwright").string() +
                                "' " + std::to_string(settle) + " 2>/dev/null";
    timespec begin{};
    clock_gettime(CLOCK_MONOTONIC, &begin);
    Started started;
    if (std::FILE* pipe = popen(command.c_str(), "r")) {
        long long painted = 0;
        long kib = 0;
        if (std::fscanf(pipe, "%lld %ld", &painted, &kib) == 2) {
            const long long from = begin.tv_sec * 1'000'000'000LL + begin.tv_nsec;
            started.seconds = static_cast<double>(painted - from) / 1e9;
            started.mebibytes = static_cast<double>(kib) / 1024;
        }
        pclose(pipe);
    }
    return started;
}

/// Of five starts, each left alone for half a second, in which the plan is made and painted.
double memory(const std::string& program) {
    std::vector<double> all;
    all.reserve(5);
    for (int i = 0; i < 5; ++i) {
        all.push_back(start(program, 500).mebibytes);
    }
    std::sort(all.begin(), all.end());
    return all[2];
}

}  // namespace

void addStart(const std::string& folder) {
    const std::string planner = folder + "/kw_start_planner";
    const std::string empty = folder + "/kw_start_empty";
    timedPair(
        "start to the first painted window", {0, 2.5},
        [planner] { return start(planner, 0).seconds; }, "an empty window",
        [empty] { return start(empty, 0).seconds; });
    notedPair("memory of the open planner", "MiB", 3, memory(planner), "an empty window",
              memory(empty));
}

}  // namespace kerfwright::bench
