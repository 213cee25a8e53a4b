// A program with an empty window of the planner's size.
#include "tests/bench/startee.h"

#include <QHashSeed>
#include <QMainWindow>
#include <QStandardPaths>

int main(int argc, char** argv) {
    QHashSeed::setDeterministicGlobalSeed();
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    kerfwright::bench::reportFirstPaint(application, argc > 2 ? std::atoi(argv[2]) : 0);
    QMainWindow window;
    window.resize(1440, 900);
    window.show();
    return QApplication::exec();
}
