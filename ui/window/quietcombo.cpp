#include "ui/window/quietcombo.h"

#include <QAbstractItemView>
#include <QEvent>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int entryHeight = 28;

}  // namespace

QuietCombo::QuietCombo(const QString& name, QWidget* parent)
    : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(name);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize QuietCombo::minimumSizeHint() const {
    return QSize(72, sizeHint().height());
}

QSize QuietCombo::sizeHint() const {
    const QSize usual = QComboBox::sizeHint();
    return QSize(usual.width(), std::max(usual.height(), entryHeight));
}

bool QuietCombo::event(QEvent* event) {
    if (event->type() == QEvent::Wheel && !hasFocus()) {
        event->ignore();
        return false;
    }
    return QComboBox::event(event);
}

}  // namespace kerfwright
