#include "ui/window/numberfield.h"

#include "core/measure/number.h"
#include "core/measure/result.h"
#include "ui/document/text.h"

namespace kerfwright {

namespace {

QString inDigits(double number) {
    return toQt(formatNumber(number));
}

}  // namespace

NumberField::NumberField(const QString& name, const QString& unit, double least, double greatest,
                         Commit commit, QWidget* parent)
    : EntryField(name, parent)
    , unit_(unit)
    , least_(least)
    , greatest_(greatest)
    , commit_(std::move(commit)) {}

void NumberField::setRange(const QString& unit, double least, double greatest) {
    unit_ = unit;
    least_ = least;
    greatest_ = greatest;
}

void NumberField::setMayBeUnknown() {
    mayBeUnknown_ = true;
    line()->setPlaceholderText(tr("not known"));
    valueChanged(false);
}

void NumberField::setValue(double value) {
    const bool another = value < value_ || value > value_;
    value_ = value;
    valueChanged(another);
}

bool NumberField::read(const QString& text, double& number) const {
    QString plain = text.trimmed();
    if (plain.isEmpty() && mayBeUnknown_) {
        number = 0;
        return true;
    }
    if (!unit_.isEmpty() && plain.endsWith(unit_)) {
        plain.chop(unit_.size());
    }
    const std::optional<double> parsed = parseNumber(fromQt(plain));
    number = parsed.value_or(0);
    return parsed.has_value();
}

QString NumberField::take(const QString& text) {
    double number = 0;
    if (!read(text, number) || number < least_ || number > greatest_) {
        const Fault fault{fromQt(name()),
                          fromQt(tr("must be a number from %1 to %2")
                                     .arg(inDigits(least_), withUnit(inDigits(greatest_)))),
                          fromQt(text.trimmed().isEmpty() ? tr("nothing") : text.trimmed())};
        return toQt(fault.text());
    }
    const double before = value_;
    value_ = number;
    const QString refused = commit_(number);
    if (!refused.isEmpty()) {
        value_ = before;
    }
    return refused;
}

void NumberField::takeBack() {
    value_ = remembered_;
    commit_(value_);
}

QString NumberField::withUnit(const QString& number) const {
    return unit_.isEmpty() ? number : number + QLatin1Char(' ') + unit_;
}

QString NumberField::written() const {
    return mayBeUnknown_ && !(value_ > 0 || value_ < 0) ? QString() : inDigits(value_);
}

QString NumberField::kept() const {
    return written().isEmpty() ? tr("not known") : withUnit(written());
}

bool NumberField::textStandsForValue(const QString& text) const {
    double number = 0;
    return read(text, number) && !(number < value_ || number > value_);
}

}  // namespace kerfwright
