// A label whose words may wrap, and that is quick to ask for its height.
#pragma once

#include <QLabel>

namespace kerfwright {

/// Layouts ask a wrapping label many times over how high it is, and breaking lines is slow: it
/// remembers the last answer.
class WrappedLabel : public QLabel {
    Q_OBJECT

public:
    explicit WrappedLabel(QWidget* parent)
        : QLabel(parent) {
        setWordWrap(true);
    }

    int heightForWidth(int width) const override {
        if (width != width_ || text() != text_) {
            width_ = width;
            text_ = text();
            height_ = QLabel::heightForWidth(width);
        }
        return height_;
    }

protected:
    void changeEvent(QEvent* event) override {
        width_ = -1;  // the font may be another
        QLabel::changeEvent(event);
    }

private:
    mutable int width_ = -1;
    mutable QString text_;
    mutable int height_ = 0;
};

}  // namespace kerfwright
