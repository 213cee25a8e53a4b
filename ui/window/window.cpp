#include "ui/window/window.h"

#include "ui/document/recovery.h"
#include "ui/window/dialogs.h"
#include "ui/window/filework.h"
#include "ui/window/icons.h"
#include "ui/window/mainwindow.h"
#include "ui/window/theme.h"

#include <QApplication>
#include <QScreen>
#include <QSettings>
#include <QTimer>

static void initResources() {
    // A static library's resources are linked in only where they are asked for.
    Q_INIT_RESOURCE(kw_icons);
    Q_INIT_RESOURCE(kw_samples);
}

namespace kerfwright {

std::unique_ptr<QWidget> makeMainWindow(const QString& file, const WindowOptions& options) {
    initResources();
    applyTheme(*qApp);
    auto window = std::make_unique<MainWindow>(options, file);
    window->finishStart(file);
    if (file.isEmpty() && options.gallery) {
        window->showGallery();
    }
    return window;
}

int runWindow(QApplication& application, const QString& file) {
    initResources();
    QSettings settings;
    const QString knownKey = QStringLiteral("samplesSeen");
    WindowOptions options;
    options.gallery = file.isEmpty() && !settings.value(knownKey).toBool();
    settings.setValue(knownKey, true);
    applyTheme(application);
    QApplication::setWindowIcon(applicationIcon());

    MainWindow window(options, file);
    if (options.gallery) {
        window.showGallery();
    }
    const QSize room = window.screen()->availableSize();
    window.resize(QSize(1440, 900).boundedTo(room));
    window.show();
    // A fault or lost work is asked about over a window that is there.
    QTimer::singleShot(0, &window, [&] {
        window.finishStart(file);
        window.files().offerLostWork(Recovery::usualFolder());
    });
    return QApplication::exec();
}

}  // namespace kerfwright
