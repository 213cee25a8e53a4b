#include "ui/window/windowplace.h"

#include "ui/window/benchtabs.h"
#include "ui/window/mainwindow.h"
#include "ui/window/panels.h"

#include <QScreen>
#include <QSettings>

namespace kerfwright {

namespace {

constexpr QSize usualSize(1440, 900);

QString placeKey() {
    return QStringLiteral("window");
}

QString tabKey() {
    return QStringLiteral("benchTab");
}

}  // namespace

void keepPlace(MainWindow& window) {
    QSettings settings;
    settings.setValue(placeKey(), window.saveGeometry());
    settings.setValue(tabKey(), window.bench().currentIndex());
    window.panels().save();
}

void restorePlace(MainWindow& window) {
    // Qt itself moves what would lie beside every screen.
    if (!window.restoreGeometry(QSettings().value(placeKey()).toByteArray())) {
        window.resize(usualSize.boundedTo(window.screen()->availableSize()));
    }
    window.panels().fitInto(window.width());
    window.panels().restore();
}

void restoreTab(MainWindow& window) {
    BenchTabs& bench = window.bench();
    const int tab = QSettings().value(tabKey()).toInt();
    if (tab > 0 && tab < bench.count()) {
        bench.setCurrentIndex(tab);
    }
}

}  // namespace kerfwright
