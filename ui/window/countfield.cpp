#include "ui/window/countfield.h"

#include "core/measure/result.h"
#include "ui/document/text.h"

namespace kerfwright {

CountField::CountField(const QString& name, int least, int greatest, Commit commit, QWidget* parent)
    : EntryField(name, parent)
    , least_(least)
    , greatest_(greatest)
    , commit_(std::move(commit)) {}

void CountField::setValue(int value) {
    const bool another = value != value_;
    value_ = value;
    valueChanged(another);
}

QString CountField::take(const QString& text) {
    bool whole = false;
    const int count = text.trimmed().toInt(&whole);
    if (!whole || count < least_ || count > greatest_) {
        const Fault fault{fromQt(name()),
                          "must be a whole number from " + std::to_string(least_) + " to " +
                              std::to_string(greatest_),
                          fromQt(text.trimmed().isEmpty() ? tr("nothing") : text.trimmed())};
        return toQt(fault.text());
    }
    if (count == value_) {
        return QString();
    }
    const int before = value_;
    value_ = count;
    const QString refused = commit_(count);
    if (!refused.isEmpty()) {
        value_ = before;
    }
    return refused;
}

void CountField::takeBack() {
    if (value_ != remembered_) {
        value_ = remembered_;
        commit_(value_);
    }
}

QString CountField::written() const {
    return QString::number(value_);
}

bool CountField::textStandsForValue(const QString& text) const {
    bool whole = false;
    const int count = text.trimmed().toInt(&whole);
    return whole && count == value_;
}

}  // namespace kerfwright
