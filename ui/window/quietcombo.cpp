#include "ui/window/quietcombo.h"

#include <QAbstractItemView>
#include <QEvent>

namespace kerfwright {

QuietCombo::QuietCombo(const QString& name, QWidget* parent)
    : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(name);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize QuietCombo::minimumSizeHint() const {
    return QSize(72, QComboBox::minimumSizeHint().height());
}

bool QuietCombo::event(QEvent* event) {
    if (event->type() == QEvent::Wheel && !hasFocus()) {
        event->ignore();
        return false;
    }
    return QComboBox::event(event);
}

}  // namespace kerfwright
