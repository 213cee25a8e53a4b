#include "tests/bench/pairs.h"

#include <QApplication>
#include <QFileInfo>
#include <QHashSeed>
#include <QStandardPaths>

#include <benchmark/benchmark.h>

#include <cstdint>
#include <cstdio>
#include <map>
#include <vector>

namespace kerfwright::bench {
namespace {

struct Row {
    std::string name;
    std::string baselineName;
    Limit limit;
    std::string unit = "ms";
    double value = 0;
    double baseline = 0;
    bool noted = false;
};

std::vector<Row>& rows() {
    static std::vector<Row> all;
    return all;
}

/// Prints as usual and keeps each median.
class Keeper : public benchmark::ConsoleReporter {
public:
    Keeper()
        : ConsoleReporter(OO_None) {}
    void ReportRuns(const std::vector<Run>& runs) override {
        for (const Run& run : runs) {
            if (run.aggregate_name == "median") {
                medians[run.run_name.function_name] = run.GetAdjustedRealTime();
            }
        }
        ConsoleReporter::ReportRuns(runs);
    }
    std::map<std::string, double> medians;  ///< ms
};

std::string baselineOf(const std::string& name) {
    return name + " (baseline)";
}

void add(const std::string& name, const std::function<void()>& work) {
    benchmark::RegisterBenchmark(name.c_str(),
                                 [work](benchmark::State& state) {
                                     for (auto _ : state) {
                                         work();
                                     }
                                 })
        ->Unit(benchmark::kMillisecond)
        ->UseRealTime()
        ->Repetitions(5)
        ->ReportAggregatesOnly(true)
        ->MinTime(0.2);
}

void addTimed(const std::string& name, const std::function<double()>& work) {
    benchmark::RegisterBenchmark(name.c_str(),
                                 [work](benchmark::State& state) {
                                     for (auto _ : state) {
                                         state.SetIterationTime(work());
                                     }
                                 })
        ->Unit(benchmark::kMillisecond)
        ->UseManualTime()
        ->Iterations(1)
        ->Repetitions(11)
        ->ReportAggregatesOnly(true);
}

void printTable(const Keeper& keeper) {
    std::printf("\n%-44s %12s %12s %8s  %s\n", "measured", "value", "baseline", "ratio",
                "limit; baseline is");
    for (Row row : rows()) {
        if (!row.noted) {
            const auto value = keeper.medians.find(row.name + "/real_time");
            const auto timed = keeper.medians.find(row.name);
            const auto baseline = keeper.medians.find(baselineOf(row.name) + "/real_time");
            const auto timedBaseline = keeper.medians.find(baselineOf(row.name));
            const auto end = keeper.medians.end();
            if ((value == end && timed == end) || (baseline == end && timedBaseline == end)) {
                continue;  // filtered out
            }
            row.value = value != end ? value->second : timed->second;
            row.baseline = baseline != end ? baseline->second : timedBaseline->second;
        }
        std::string limit;
        char text[64];
        if (row.limit.milliseconds > 0) {
            std::snprintf(text, sizeof text, "%g ms", row.limit.milliseconds);
            limit += text;
        }
        if (row.limit.ratio > 0) {
            std::snprintf(text, sizeof text, "%s%g x", limit.empty() ? "" : ", ", row.limit.ratio);
            limit += text;
        }
        std::printf("%-44s %8.2f %-3s %8.2f %-3s %8.2f  %s; %s\n", row.name.c_str(), row.value,
                    row.unit.c_str(), row.baseline, row.unit.c_str(), row.value / row.baseline,
                    limit.c_str(), row.baselineName.c_str());
    }
}

}  // namespace

void pair(const std::string& name, Limit limit, const std::function<void()>& work,
          const std::string& baselineName, const std::function<void()>& baseline) {
    rows().push_back({name, baselineName, limit});
    add(name, work);
    add(baselineOf(name), baseline);
}

void timedPair(const std::string& name, Limit limit, const std::function<double()>& work,
               const std::string& baselineName, const std::function<double()>& baseline) {
    rows().push_back({name, baselineName, limit});
    addTimed(name, work);
    addTimed(baselineOf(name), baseline);
}

void notedPair(const std::string& name, const std::string& unit, double limitRatio, double value,
               const std::string& baselineName, double baseline) {
    rows().push_back({name, baselineName, {0, limitRatio}, unit, value, baseline, true});
}

Project randomProject(int cells) {
    Project project = newProject(Unit::Millimetres);
    project.board.field = plainGrid(cells, cells, Length::mm(20), Length::mm(20), 0);
    project.board.border.width = Length();
    std::uint64_t state = 20'24;  // any seed, the same for all
    for (Piece& piece : project.board.field.pieces) {
        // The multiplier and increment of Knuth's MMIX generator.
        state = state * 6364136223846793005ULL + 1442695040888963407ULL;
        piece.wood = static_cast<int>((state >> 33) % project.woods.size());
    }
    return project;
}

}  // namespace kerfwright::bench

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QHashSeed::setDeterministicGlobalSeed();
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) {
        return 2;
    }
    kerfwright::bench::addPlanning();
    kerfwright::bench::addSearch();
    kerfwright::bench::addTimber();
    kerfwright::bench::addSeasons();
    kerfwright::bench::addView();
    kerfwright::bench::addJoint();
    kerfwright::bench::addSheets();
    kerfwright::bench::addStart(
        QFileInfo(QCoreApplication::applicationFilePath()).path().toStdString());
    kerfwright::bench::Keeper keeper;
    benchmark::RunSpecifiedBenchmarks(&keeper);
    kerfwright::bench::printTable(keeper);
    return 0;
}
