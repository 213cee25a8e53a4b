#include "tests/bench/startee.h"

#include <QEvent>
#include <QMainWindow>
#include <QTimer>

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>

namespace kerfwright::bench {
namespace {

long long now() {
    timespec time{};
    clock_gettime(CLOCK_MONOTONIC, &time);  // the same clock in every process
    return time.tv_sec * 1'000'000'000LL + time.tv_nsec;
}

long residentKiB() {
    long kib = 0;
    if (std::FILE* status = std::fopen("/proc/self/status", "r")) {
        char line[256];
        while (std::fgets(line, sizeof line, status) != nullptr) {
            if (std::strncmp(line, "VmRSS:", 6) == 0) {
                kib = std::strtol(line + 6, nullptr, 10);
            }
        }
        std::fclose(status);
    }
    return kib;
}

class Watcher : public QObject {
public:
    Watcher(QApplication& application, int settle)
        : QObject(&application)
        , settle_(settle) {
        application.installEventFilter(this);
    }

    bool eventFilter(QObject* object, QEvent* event) override {
        // The update request of a window paints all of it; it has been handled once the loop turns.
        if (!seen_ && event->type() == QEvent::Paint &&
            qobject_cast<QMainWindow*>(object) != nullptr) {
            seen_ = true;
            QMetaObject::invokeMethod(
                this, [this] { painted(); }, Qt::QueuedConnection);
        }
        return QObject::eventFilter(object, event);
    }

private:
    void painted() {
        const long long time = now();
        QTimer::singleShot(settle_, this, [time] {
            std::printf("%lld %ld\n", time, residentKiB());
            std::fflush(stdout);
            // No farewell: saving settings and closing windows is not what is measured.
            std::_Exit(0);
        });
    }

    int settle_;
    bool seen_ = false;
};

}  // namespace

void reportFirstPaint(QApplication& application, int settle) {
    new Watcher(application, settle);
}

}  // namespace kerfwright::bench
