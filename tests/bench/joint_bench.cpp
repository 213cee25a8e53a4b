// Dragging a joint in the real window: from the pointer's event to the painted frame, planning
// beside it as always.
#include "tests/bench/pairs.h"
#include "ui/window/boardview.h"
#include "ui/window/mainwindow.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QMouseEvent>
#include <QPainter>
#include <QTemporaryDir>

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

namespace kerfwright::bench {
namespace {

constexpr int frames = 300;
constexpr int across = 1440;
constexpr int high = 900;

/// Nothing but a ground of one colour.
class EmptyWindow : public QWidget {
protected:
    void paintEvent(QPaintEvent* event) override {
        QPainter(this).fillRect(event->rect(), Qt::lightGray);
    }
};

struct Frames {
    double median = 0;  ///< seconds
    double slow = 0;    ///< seconds, the 99th of a hundred
};

Frames framesOf(const std::function<void(int)>& frame) {
    std::vector<double> times;
    QElapsedTimer timer;
    for (int i = 0; i < frames; ++i) {
        timer.start();
        frame(i);
        // All that the event set off, the painting of it among them.
        QApplication::sendPostedEvents();
        QApplication::processEvents();
        times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e9);
    }
    std::sort(times.begin(), times.end());
    return {times[times.size() / 2], times[times.size() * 99 / 100]};
}

void send(QWidget& widget, QEvent::Type type, QPointF at, Qt::MouseButton button) {
    QMouseEvent event(type, at, widget.mapToGlobal(at), button,
                      type == QEvent::MouseButtonRelease ? Qt::NoButton : Qt::LeftButton,
                      Qt::NoModifier);
    QCoreApplication::sendEvent(&widget, &event);
}

/// A board in the main window with a joint held by the mouse.
class Held {
public:
    Held()
        : window_(withFolder(folder_), QString()) {
        window_.document().start(randomProject(10));
        window_.resize(across, high);
        window_.show();
        board_.setTool(Tool::Joints);
        QElapsedTimer settling;
        settling.start();
        while (window_.planner().state() != Planner::State::Current &&
               settling.elapsed() < 10'000) {
            QApplication::processEvents(QEventLoop::WaitForMoreEvents, 50);
        }
    }

    Frames drag() {
        const QRectF cell = board_.geometry().cells(QRect(4, 4, 1, 1));
        const QPointF from(cell.right(), cell.center().y());
        const double sway = 0.7 * cell.width();
        send(board_, QEvent::MouseButtonPress, from, Qt::LeftButton);
        const Frames result = framesOf([&](int i) {
            // To and fro, three times in all, so that nearly every frame has other sizes.
            const double swing = std::sin(i * 6 * 3.14159265 / frames);
            send(board_, QEvent::MouseMove, from + QPointF(sway * swing, 0), Qt::NoButton);
        });
        send(board_, QEvent::MouseButtonRelease, from, Qt::LeftButton);
        window_.document().history().undo();
        return result;
    }

private:
    static WindowOptions withFolder(const QTemporaryDir& folder) {
        WindowOptions options;
        options.recoveryFolder = folder.path();
        return options;
    }

    QTemporaryDir folder_;
    MainWindow window_;
    BoardView& board_ = window_.board();
};

Frames draggedFrames() {
    return Held().drag();
}

Frames emptyFrames() {
    EmptyWindow window;
    window.resize(across, high);
    window.show();
    QApplication::processEvents();
    return framesOf([&](int) { window.update(); });
}

}  // namespace

void addJoint() {
    const char* baseline = "painting an empty window of that size";
    timedPair(
        "drag a joint, 10 x 10: median frame", {12, 0}, [] { return draggedFrames().median; },
        baseline, [] { return emptyFrames().median; });
    timedPair(
        "drag a joint, 10 x 10: 99th of 100 frames", {25, 0}, [] { return draggedFrames().slow; },
        baseline, [] { return emptyFrames().slow; });
}

}  // namespace kerfwright::bench
