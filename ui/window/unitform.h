// In which unit lengths are written, and how finely.
#pragma once

#include "ui/document/document.h"

#include <QObject>

namespace kerfwright {

class FormSection;
class TextField;
class Segmented;

class UnitForm : public QObject {
    Q_OBJECT

public:
    UnitForm(Document& document, FormSection* section);
    void refresh();

private:
    Document& document_;
    Segmented* unit_;
    Segmented* fractions_;  ///< in sight while inches are in force
    Segmented* decimals_;   ///< while millimetres are
    TextField* currency_;
};

}  // namespace kerfwright
