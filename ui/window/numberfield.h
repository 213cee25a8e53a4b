// An entry for a number that is no length and no count: percent, degrees, densities.
#pragma once

#include "ui/window/entryfield.h"

#include <functional>

namespace kerfwright {

class NumberField : public EntryField {
    Q_OBJECT

public:
    /// Puts a number in force; returns why it cannot be, in words, or nothing.
    using Commit = std::function<QString(double)>;

    /// Both decimal marks are read. `unit` is for the words of faults: "%", may be empty.
    NumberField(const QString& name, const QString& unit, double least, double greatest,
                Commit commit, QWidget* parent = nullptr);

    /// The numbers themselves stay as they are.
    void setRange(const QString& unit, double least, double greatest);
    /// An empty entry stands for 0, which means that nobody knows.
    void setMayBeUnknown();
    void setValue(double value);
    double value() const { return value_; }

protected:
    QString take(const QString& text) override;
    void remember() override { remembered_ = value_; }
    void takeBack() override;
    QString written() const override;
    QString kept() const override;
    bool textStandsForValue(const QString& text) const override;

private:
    bool read(const QString& text, double& number) const;
    QString withUnit(const QString& number) const;

    QString unit_;
    double least_;
    double greatest_;
    Commit commit_;
    double value_ = 0;
    double remembered_ = 0;
    bool mayBeUnknown_ = false;
};

}  // namespace kerfwright
