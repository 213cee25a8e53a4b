#include "ui/window/textfield.h"

namespace kerfwright {

TextField::TextField(const QString& name, Commit commit, QWidget* parent)
    : EntryField(name, parent)
    , commit_(std::move(commit)) {}

void TextField::setValue(const QString& value) {
    value_ = value;
    valueChanged();
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

QString TextField::kept() const {
    return value_.isEmpty() ? tr("empty") : QStringLiteral("“") + value_ + QStringLiteral("”");
}

}  // namespace kerfwright
