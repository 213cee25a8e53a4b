#include "ui/window/textfield.h"

namespace kerfwright {

TextField::TextField(const QString& name, Commit commit, QWidget* parent)
    : EntryField(name, parent)
    , commit_(std::move(commit)) {}

void TextField::setValue(const QString& value) {
    const bool another = value != value_;
    value_ = value;
    valueChanged(another);
}

QString TextField::take(const QString& text) {
    if (text == value_) {
        return QString();
    }
    const QString before = value_;
    value_ = text;
    const QString refused = commit_(text);
    if (!refused.isEmpty()) {
        value_ = before;
    }
    return refused;
}

void TextField::takeBack() {
    if (value_ != remembered_) {
        value_ = remembered_;
        commit_(value_);
    }
}

QString TextField::kept() const {
    return value_.isEmpty() ? tr("empty") : QStringLiteral("“") + value_ + QStringLiteral("”");
}

}  // namespace kerfwright
