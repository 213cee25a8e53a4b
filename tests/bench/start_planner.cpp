// The planner, as its own main file starts it, with a project open.
#include "tests/bench/startee.h"
#include "ui/window/window.h"

#include <QHashSeed>
#include <QStandardPaths>

int main(int argc, char** argv) {
    QHashSeed::setDeterministicGlobalSeed();
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    kerfwright::bench::reportFirstPaint(application, argc > 2 ? std::atoi(argv[2]) : 0);
    return kerfwright::runWindow(application,
                                 argc > 1 ? QString::fromLocal8Bit(argv[1]) : QString());
}
