// A list that paints its lines by hand: what it is marked with is in sight when the keys come to
// it, and pictures and sizes in it keep their left and right whichever way the words run.
#pragma once

#include <QFocusEvent>
#include <QListView>

namespace kerfwright {

class KeyList : public QListView {
    Q_OBJECT

public:
    explicit KeyList(QWidget* parent)
        : QListView(parent) {
        setLayoutDirection(Qt::LeftToRight);
    }

protected:
    void focusInEvent(QFocusEvent* event) override {
        QListView::focusInEvent(event);
        // Under the pointer nothing moves away.
        if (event->reason() != Qt::MouseFocusReason && event->reason() != Qt::PopupFocusReason &&
            currentIndex().isValid()) {
            scrollTo(currentIndex());
        }
    }
};

}  // namespace kerfwright
