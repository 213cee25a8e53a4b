// The planner, as its own main file starts it, with a project open.
#include "tests/bench/startee.h"
#include "ui/window/window.h"

#include <QHashSeed>
#include <QStandardPaths>

#include <thread>
#include <utility>

int main(int argc, char** argv) {
    QHashSeed::setDeterministicGlobalSeed();
    QStandardPaths::setTestModeEnabled(true);
    std::thread fonts = kerfwright::findFonts();
    QApplication application(argc, argv);
    kerfwright::bench::reportFirstPaint(application, argc > 2 ? std::atoi(argv[2]) : 0);
    return kerfwright::runWindow(
        application, argc > 1 ? QString::fromLocal8Bit(argv[1]) : QString(), std::move(fonts));
}
