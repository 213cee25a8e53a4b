// An entry for a whole number.
#pragma once

#include "ui/window/entryfield.h"

#include <functional>

namespace kerfwright {

class CountField : public EntryField {
    Q_OBJECT

public:
    /// Puts a count in force; returns why it cannot be, in words, or nothing.
    using Commit = std::function<QString(int)>;

    CountField(const QString& name, int least, int greatest, Commit commit,
               QWidget* parent = nullptr);

    void setValue(int value);
    int value() const { return value_; }

protected:
    QString take(const QString& text) override;
    void remember() override { remembered_ = value_; }
    void takeBack() override;
    QString written() const override;
    bool textStandsForValue(const QString& text) const override;

private:
    int least_;
    int greatest_;
    Commit commit_;
    int value_ = 0;
    int remembered_ = 0;
};

}  // namespace kerfwright
