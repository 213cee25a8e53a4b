// The border: none, or a rail of a width and a wood.
#pragma once

#include "ui/document/document.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QComboBox;
QT_END_NAMESPACE

namespace kerfwright {

class LengthField;
class FormSection;
class Segmented;

class BorderForm : public QObject {
    Q_OBJECT

public:
    BorderForm(Document& document, FormSection* section);
    LengthField* width() const { return width_; }
    void refresh();

private:
    void choose(bool border);

    Document& document_;
    Segmented* kind_;
    QWidget* details_;
    LengthField* width_;
    QComboBox* wood_;
    Length lastWidth_;  ///< what comes back when the border is switched on again
};

}  // namespace kerfwright
