#include "core/timber/master.h"

#include <CbcEventHandler.hpp>
#include <CbcHeuristic.hpp>
#include <CbcHeuristicDiveCoefficient.hpp>
#include <CbcHeuristicGreedy.hpp>
#include <CbcHeuristicRINS.hpp>
#include <CbcModel.hpp>
#include <CglGomory.hpp>
#include <CglKnapsackCover.hpp>
#include <CglMixedIntegerRounding2.hpp>
#include <ClpSimplex.hpp>
#include <CoinPackedMatrix.hpp>
#include <OsiClpSolverInterface.hpp>
#include <algorithm>
#include <cmath>

namespace kerfwright::cutting {
namespace {

/// Rows: the items, then the blanks.
struct Column {
    std::vector<int> rows;
    std::vector<double> values;

    Column(const Pool& pool, const Pattern& pattern) {
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            if (pattern.counts[item] > 0) {
                rows.push_back(static_cast<int>(item));
                values.push_back(pattern.counts[item]);
            }
        }
        rows.push_back(static_cast<int>(pool.items.size()) + pattern.blank);
        values.push_back(1);
    }
    int size() const { return static_cast<int>(rows.size()); }
};

class Asking : public CbcEventHandler {
public:
    explicit Asking(const GoOn& goOn)
        : goOn_(&goOn) {}
    CbcAction event(CbcEvent) override { return (*goOn_)() ? noAction : stop; }
    CbcEventHandler* clone() const override { return new Asking(*this); }

private:
    const GoOn* goOn_;
};

}  // namespace

struct Master::Program {
    const Pool& pool;
    const Aim& aim;
    ClpSimplex simplex;
};

Master::Master(const Pool& pool, const Aim& aim)
    : program_(std::make_unique<Program>(Program{pool, aim, {}}))
    , itemValues_(pool.items.size())
    , blankValues_(pool.blanks.size()) {
    ClpSimplex& simplex = program_->simplex;
    simplex.setLogLevel(0);
    simplex.setOptimizationDirection(1);
    simplex.resize(static_cast<int>(pool.items.size() + pool.blanks.size()), 0);
    int row = 0;
    for (const Item& item : pool.items) {
        simplex.setRowBounds(row++, item.count, COIN_DBL_MAX);
    }
    for (const Blank& blank : pool.blanks) {
        simplex.setRowBounds(row++, -COIN_DBL_MAX, blank.count());
    }
    const double one = 1;
    for (int item = 0; item < static_cast<int>(pool.items.size()); ++item) {
        simplex.addColumn(1, &item, &one, 0, COIN_DBL_MAX,
                          aim.penalty[static_cast<std::size_t>(item)]);
    }
}

Master::~Master() = default;

void Master::add(const Pattern& pattern) {
    const Column column(program_->pool, pattern);
    program_->simplex.addColumn(column.size(), column.rows.data(), column.values.data(), 0,
                                COIN_DBL_MAX,
                                program_->aim.cost[static_cast<std::size_t>(pattern.blank)]);
}

void Master::bound(const std::vector<int>& demand, const std::vector<int>& blanks) {
    int row = 0;
    for (const int count : demand) {
        program_->simplex.setRowLower(row++, count);
    }
    for (const int count : blanks) {
        program_->simplex.setRowUpper(row++, count);
    }
}

void Master::solve() {
    ClpSimplex& simplex = program_->simplex;
    simplex.primal(1);
    const double* duals = simplex.getRowPrice();
    for (double& value : itemValues_) {
        value = std::max(*duals++, 0.0);
    }
    for (double& value : blankValues_) {
        value = std::max(-*duals++, 0.0);
    }
}

double Master::value() const {
    return program_->simplex.objectiveValue();
}

std::vector<double> Master::taken() const {
    const double* columns = program_->simplex.getColSolution();
    return {columns + program_->pool.items.size(), columns + program_->simplex.numberColumns()};
}

std::vector<int> chooseWhole(const Pool& pool, const Aim& aim, const std::vector<Pattern>& patterns,
                             double cutoff, int nodes, const GoOn& goOn) {
    const int items = static_cast<int>(pool.items.size());
    const int rows = items + static_cast<int>(pool.blanks.size());
    CoinPackedMatrix matrix(true, 0, 0);
    matrix.setDimensions(rows, 0);
    std::vector<double> cost;
    std::vector<double> most;
    const double one = 1;
    for (int item = 0; item < items; ++item) {
        matrix.appendCol(1, &item, &one);
        cost.push_back(aim.penalty[static_cast<std::size_t>(item)]);
        most.push_back(pool.items[static_cast<std::size_t>(item)].count);
    }
    for (const Pattern& pattern : patterns) {
        const Column column(pool, pattern);
        matrix.appendCol(column.size(), column.rows.data(), column.values.data());
        cost.push_back(aim.cost[static_cast<std::size_t>(pattern.blank)]);
        most.push_back(pool.blanks[static_cast<std::size_t>(pattern.blank)].count());
    }
    const std::vector<double> least(cost.size(), 0);
    std::vector<double> low(static_cast<std::size_t>(rows), -COIN_DBL_MAX);
    std::vector<double> high(static_cast<std::size_t>(rows), COIN_DBL_MAX);
    for (std::size_t row = 0; row < low.size(); ++row) {
        if (row < pool.items.size()) {
            low[row] = pool.items[row].count;
        } else {
            high[row] = pool.blanks[row - pool.items.size()].count();
        }
    }
    OsiClpSolverInterface solver;
    solver.messageHandler()->setLogLevel(0);
    solver.loadProblem(matrix, least.data(), most.data(), cost.data(), low.data(), high.data());
    for (int column = 0; column < solver.getNumCols(); ++column) {
        solver.setInteger(column);
    }
    CbcModel model(solver);
    model.setLogLevel(0);
    model.solver()->messageHandler()->setLogLevel(0);
    model.setCutoff(cutoff);
    model.setMaximumNodes(nodes);
    CglGomory gomory;
    gomory.setLimit(300);
    model.addCutGenerator(&gomory, -99, "gomory");
    CglMixedIntegerRounding2 rounding;
    model.addCutGenerator(&rounding, -99, "rounding");
    CbcRounding simple(model);
    model.addHeuristic(&simple);
    CbcHeuristicDiveCoefficient dive(model);
    model.addHeuristic(&dive);
    CbcHeuristicRINS neighbours(model);
    model.addHeuristic(&neighbours);
    const Asking asking(goOn);
    model.passInEventHandler(&asking);
    model.branchAndBound();
    std::vector<int> times;
    if (const double* best = model.bestSolution()) {
        for (std::size_t i = 0; i < patterns.size(); ++i) {
            times.push_back(static_cast<int>(std::lround(best[pool.items.size() + i])));
        }
    }
    return times;
}

}  // namespace kerfwright::cutting
