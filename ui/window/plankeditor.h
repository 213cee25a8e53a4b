// One plank of the rack: its sizes, price and note, and what spoils it, drawn on a picture or
// typed. Works on a copy, which the rack takes over when it is kept.
#pragma once

#include "core/measure/notation.h"
#include "core/timber/rack.h"

#include <QDialog>

QT_BEGIN_NAMESPACE
class QCheckBox;
class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class FormSection;
class LengthField;
class PlankCanvas;
class TextField;

class PlankEditor : public QDialog {
    Q_OBJECT

public:
    /// `others`: labels that are taken. Deletes itself when it is closed.
    PlankEditor(const Plank& plank, std::vector<std::string> others, const std::vector<Wood>& woods,
                const Notation& notation, const QString& currency, QWidget* parent);

    const Plank& plank() const { return plank_; }
    PlankCanvas* canvas() const { return canvas_; }

Q_SIGNALS:
    void kept(const Plank& plank);

private:
    void buildForm(FormSection* form, const QString& currency);
    void buildDefects(FormSection* form);
    LengthField* lengthField(FormSection* form, const QString& label, const char* name,
                             Length least, Length greatest, Length Plank::*part);
    LengthField* defectField(const QString& label, const char* name, Length Defect::*part);
    void refresh();
    void refreshDefect();
    void addDefect(const Defect& defect);
    void removeDefect(int defect);
    void keep();

    Plank plank_;
    std::vector<std::string> others_;
    std::vector<Wood> woods_;
    Notation notation_;
    PlankCanvas* canvas_;
    QLabel* hint_;
    TextField* label_ = nullptr;
    QComboBox* wood_ = nullptr;
    LengthField* thickness_ = nullptr;
    LengthField* width_ = nullptr;
    LengthField* length_ = nullptr;
    TextField* price_ = nullptr;
    QCheckBox* offcut_ = nullptr;
    TextField* note_ = nullptr;
    QListWidget* defects_ = nullptr;
    QPushButton* add_ = nullptr;
    QPushButton* remove_ = nullptr;
    QWidget* place_ = nullptr;
    std::vector<std::pair<LengthField*, Length Defect::*>> fields_;
    QLabel* fault_;
};

}  // namespace kerfwright
