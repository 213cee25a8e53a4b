#include "ui/window/lengthfield.h"

#include "ui/document/text.h"

namespace kerfwright {

LengthField::LengthField(const QString& name, Commit commit, QWidget* parent)
    : EntryField(name, parent)
    , commit_(std::move(commit))
    , greatest_(Length::mm(1'000'000)) {}

void LengthField::setRange(Length least, Length greatest) {
    least_ = least;
    greatest_ = greatest;
}

void LengthField::setNotation(const Notation& notation) {
    if (notation != notation_) {
        notation_ = notation;
        valueChanged(false);
    }
}

void LengthField::setValue(Length value) {
    const bool another = value != value_;
    value_ = value;
    valueChanged(another);
}

QString LengthField::take(const QString& text) {
    const Result<Reading> read = parse(fromQt(text), notation_, fromQt(name()));
    if (!read.ok()) {
        return toQt(read.fault().text());
    }
    const Length length = read->length;
    if (length < least_ || length > greatest_) {
        const Fault fault{fromQt(name()),
                          "must be from " + formatLeast(least_, notation_) + " to " +
                              formatGreatest(greatest_, notation_),
                          formatExact(length, notation_)};
        return toQt(fault.text());
    }
    if (length == value_) {
        return QString();
    }
    const Length before = value_;
    value_ = length;
    const QString refused = commit_(length);
    if (!refused.isEmpty()) {
        value_ = before;
    }
    return refused;
}

void LengthField::takeBack() {
    if (value_ != remembered_) {
        value_ = remembered_;
        commit_(value_);
    }
}

QString LengthField::written() const {
    return toQt(format(value_, notation_));
}

QString LengthField::readingNote(const QString& text) const {
    const QString said = written();
    return text.trimmed() == said ? QString() : QStringLiteral("= ") + said;
}

bool LengthField::textStandsForValue(const QString& text) const {
    const Result<Reading> read = parse(fromQt(text), notation_, fromQt(name()));
    return read.ok() && read->length == value_;
}

}  // namespace kerfwright
