// An entry for a line of words.
#pragma once

#include "ui/window/entryfield.h"

#include <functional>

namespace kerfwright {

class TextField : public EntryField {
    Q_OBJECT

public:
    /// Puts a text in force; returns why it cannot be, in words, or nothing.
    using Commit = std::function<QString(const QString&)>;

    TextField(const QString& name, Commit commit, QWidget* parent = nullptr);

    void setValue(const QString& value);

protected:
    QString take(const QString& text) override;
    void remember() override { remembered_ = value_; }
    void takeBack() override;
    QString written() const override { return value_; }
    QString kept() const override;
    bool textStandsForValue(const QString& text) const override { return text == value_; }

private:
    Commit commit_;
    QString value_;
    QString remembered_;
};

}  // namespace kerfwright
