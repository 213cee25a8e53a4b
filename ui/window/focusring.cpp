#include "ui/window/focusring.h"

#include <QAbstractScrollArea>
#include <QApplication>
#include <QKeyEvent>
#include <QPointer>

namespace kerfwright {

namespace {

/// Sees every event before anyone else: whoever works by mouse knows where he clicked, and whoever
/// works by keys must see where they go.
class KeysOrMouse : public QObject {
public:
    explicit KeysOrMouse(QObject* parent)
        : QObject(parent) {}

    bool byKeys = false;

    bool eventFilter(QObject*, QEvent* event) override {
        switch (event->type()) {
        case QEvent::MouseButtonPress:
        case QEvent::MouseButtonDblClick:
            set(false);
            break;
        case QEvent::KeyPress:
        case QEvent::ShortcutOverride:  // all that is seen of a key that is a shortcut
            set(byKeys || goes(*static_cast<QKeyEvent*>(event)));
            break;
        default:
            break;
        }
        return false;
    }

private:
    /// Keys that go somewhere. Letters paint or are typed, and lead nobody to look for the focus.
    static bool goes(const QKeyEvent& key) {
        switch (key.key()) {
        case Qt::Key_Tab:
        case Qt::Key_Backtab:
        case Qt::Key_Left:
        case Qt::Key_Right:
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_Home:
        case Qt::Key_End:
        case Qt::Key_PageUp:
        case Qt::Key_PageDown:
        case Qt::Key_Menu:
            return true;
        default:
            return (key.key() >= Qt::Key_F1 && key.key() <= Qt::Key_F12) ||
                   key.modifiers().testFlag(Qt::AltModifier);
        }
    }

    void set(bool keys) {
        QWidget* focus = keys == byKeys ? nullptr : QApplication::focusWidget();
        byKeys = keys;
        if (focus == nullptr) {
            return;
        }
        focus->update();
        if (auto* area = qobject_cast<QAbstractScrollArea*>(focus)) {
            area->viewport()->update();
        }
    }
};

KeysOrMouse& keysOrMouse() {
    // One for each application: tests may make several, one after the other.
    static QPointer<KeysOrMouse> one;
    if (one.isNull()) {
        one = new KeysOrMouse(qApp);
        qApp->installEventFilter(one);
    }
    return *one;
}

}  // namespace

void watchKeysAndMouse() {
    keysOrMouse().byKeys = false;
}

bool focusIsByKeys() {
    return keysOrMouse().byKeys;
}

void paintFocusRing(QPainter& painter, const QRectF& rect, const Tones& tones, double radius,
                    FocusRing ring) {
    const bool strong = ring == FocusRing::Always || focusIsByKeys();
    const double thick = strong ? 2 : 1;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(strong ? tones.accent : tones.rim, thick));
    const double in = thick / 2;
    painter.drawRoundedRect(rect.adjusted(in, in, -in, -in), radius, radius);
    painter.restore();
}

}  // namespace kerfwright
