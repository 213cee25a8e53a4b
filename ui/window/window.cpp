#include "ui/window/window.h"

#include "ui/document/recovery.h"
#include "ui/window/dialogs.h"
#include "ui/window/filework.h"
#include "ui/window/focusring.h"
#include "ui/window/icons.h"
#include "ui/window/mainwindow.h"
#include "ui/window/theme.h"
#include "ui/window/windowplace.h"

#include <QApplication>
#include <QEvent>
#include <QFontDatabase>
#include <QSettings>

#include <fontconfig/fontconfig.h>
#include <functional>
#include <thread>

static void initResources() {
    // A static library's resources are linked in only where they are asked for.
    Q_INIT_RESOURCE(kw_icons);
    Q_INIT_RESOURCE(kw_samples);
    Q_INIT_RESOURCE(kw_help);
}

namespace kerfwright {

namespace {

/// Does something once, after the window was painted for the first time.
class AfterFirstPaint : public QObject {
public:
    AfterFirstPaint(QWidget& window, std::function<void()> action)
        : QObject(&window)
        , action_(std::move(action)) {
        window.installEventFilter(this);
    }

    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() == QEvent::Paint && action_) {
            QMetaObject::invokeMethod(this, std::exchange(action_, nullptr), Qt::QueuedConnection);
        }
        return QObject::eventFilter(watched, event);
    }

private:
    std::function<void()> action_;
};

}  // namespace

std::unique_ptr<QWidget> makeMainWindow(const QString& file, const WindowOptions& options) {
    initResources();
    watchKeysAndMouse();
    applyTheme(*qApp);
    auto window = std::make_unique<MainWindow>(options, file);
    window->finishStart(file);
    if (file.isEmpty() && options.gallery) {
        window->showGallery();
    }
    return window;
}

std::thread findFonts() {
    return std::thread([] { FcInit(); });
}

int runWindow(QApplication& application, const QString& file, std::thread fonts) {
    initResources();
    // Two that find the fonts at the same time would both do all of the work.
    const std::jthread families([&fonts] {
        fonts.join();
        QFontDatabase::families();
    });
    QSettings settings;
    const QString knownKey = QStringLiteral("samplesSeen");
    const bool first = !settings.value(knownKey).toBool();
    WindowOptions options;
    options.gallery = file.isEmpty() && first;
    watchKeysAndMouse();
    applyTheme(application);
    QApplication::setWindowIcon(applicationIcon());

    MainWindow window(options, file);
    if (options.gallery) {
        window.showGallery();
    }
    restorePlace(window);
    window.show();
    // A fault or lost work is asked about over a window that is there.
    new AfterFirstPaint(window, [&] {
        settings.setValue(knownKey, true);
        restoreTab(window);
        window.finishStart(file);
        window.files().offerLostWork(Recovery::usualFolder());
        if (first) {
            window.offerTour();
        }
    });
    return QApplication::exec();
}

}  // namespace kerfwright
