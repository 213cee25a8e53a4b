// The border: its design, what it is made of and how it is held, and what its sizes come to.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/designpicker.h"

#include <QObject>

#include <functional>

QT_BEGIN_NAMESPACE
class QCheckBox;
class QComboBox;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class FaultNote;
class FitList;
class FormSection;
class LengthField;
class Segmented;

class BorderForm : public QObject {
    Q_OBJECT

public:
    BorderForm(Document& document, Planner& planner, FormSection* section);
    LengthField* width() const { return width_; }
    LengthField* gap() const { return gap_; }
    LengthField* inlay() const { return inlay_.size; }
    /// The gap, or where it is chosen that it follows the season.
    void focusGap();
    void refresh();

Q_SIGNALS:
    /// The maker asked for the entry that a term of a working comes from.
    void termAsked(TermKind kind);

private:
    /// A line of a wood of its own: inlay, splines.
    struct Extra {
        QCheckBox* wanted;
        FormSection* rows;
        LengthField* size;
        QComboBox* wood;
    };

    void buildFloating();
    void buildCaution();
    void choose(DesignChoice design);
    void change(const QString& what, const std::function<void(Border&)>& how);
    FormSection* rowsIn(FormSection* section);
    LengthField* addLength(FormSection* rows, const QString& label, const QString& name,
                           const char* object, int entry, Length Border::*member);
    QComboBox* addWood(FormSection* rows, const QString& name, const char* object,
                       int Border::*member);
    struct ExtraNames {
        QString wanted, label, size, wood;
    };
    Extra addExtra(const ExtraNames& names, const char* object, int entry, Length Border::*length,
                   int Border::*wood);
    void refreshExtra(const Extra& extra, Length size, int wood, Length greatest);
    void refreshCaution();
    void refreshFit();

    Document& document_;
    Planner& planner_;
    FormSection* section_;
    DesignPicker* designs_;
    FaultNote* hindrance_;
    FormSection* details_;
    LengthField* width_;
    QComboBox* wood_;
    FormSection* floating_ = nullptr;
    Segmented* housing_ = nullptr;
    Segmented* gapFrom_ = nullptr;
    FormSection* gapRow_ = nullptr;
    LengthField* gap_ = nullptr;
    Extra inlay_{};
    Extra splines_{};
    FaultNote* caution_ = nullptr;
    QCheckBox* read_ = nullptr;
    QPushButton* float_ = nullptr;
    FitList* fit_ = nullptr;
    Length lastWidth_;  ///< what comes back when there is a border again
};

}  // namespace kerfwright
