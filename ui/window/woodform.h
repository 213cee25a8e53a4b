// What a wood of the project is to the plan and to the paper, opened beside a button: the timber it
// is to be had in, its letter and its density.
#pragma once

#include "ui/document/document.h"

#include <QFrame>

QT_BEGIN_NAMESPACE
class QGridLayout;
QT_END_NAMESPACE

namespace kerfwright {

class CountField;
class EntryField;
class LengthField;
class TextField;

class WoodForm : public QFrame {
    Q_OBJECT

public:
    /// `wood` is an index into the project's woods. Deletes itself when it is closed.
    WoodForm(Document& document, int wood, QWidget* parent);
    void openBeside(QWidget* button);

protected:
    bool event(QEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void refresh();
    void addRow(QGridLayout* grid, const QString& label, EntryField* field, const char* name);
    /// Changes the wood; `which` is the entry, from 0. Returns the fault in words.
    QString change(const QString& what, int which, const std::function<void(Wood&)>& how);

    Document& document_;
    int wood_;
    LengthField* thickness_;
    LengthField* width_;
    TextField* letter_;
    CountField* density_;
};

}  // namespace kerfwright
