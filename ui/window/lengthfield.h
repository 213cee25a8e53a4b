// An entry for a length: fractions, decimals with either mark, sums and units, whatever the unit
// in force is.
#pragma once

#include "core/measure/notation.h"
#include "ui/window/entryfield.h"

#include <functional>

namespace kerfwright {

class LengthField : public EntryField {
    Q_OBJECT

public:
    /// Puts a length in force; returns why it cannot be, in words, or nothing.
    using Commit = std::function<QString(Length)>;

    LengthField(const QString& name, Commit commit, QWidget* parent = nullptr);

    void setRange(Length least, Length greatest);
    void setNotation(const Notation& notation);
    void setValue(Length value);
    Length value() const { return value_; }

protected:
    QString take(const QString& text) override;
    void remember() override { remembered_ = value_; }
    void takeBack() override;
    QString written() const override;
    QString readingNote(const QString& text) const override;
    bool textStandsForValue(const QString& text) const override;

private:
    Commit commit_;
    Notation notation_;
    Length value_;
    Length remembered_;
    Length least_;
    Length greatest_;
};

}  // namespace kerfwright
