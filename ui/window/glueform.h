// What the shop glues with: one entry a setting, in the order of the core's list.
#pragma once

#include "core/shop/glueshop.h"
#include "ui/document/document.h"

#include <QObject>

#include <string_view>
#include <vector>

QT_BEGIN_NAMESPACE
class QLabel;
QT_END_NAMESPACE

namespace kerfwright {

class FormSection;
class NumberField;

class GlueForm : public QObject {
    Q_OBJECT

public:
    /// The entries are made when the section is first opened.
    GlueForm(Document& document, FormSection* section);
    void refresh();
    /// Opens the section and puts the cursor into the entry of that key, if there is one.
    void focusSetting(std::string_view key);

private:
    void fill();

    Document& document_;
    FormSection* section_;
    struct Row {
        const GlueSetting* info;
        NumberField* field;
        QLabel* label;
        bool degrees;
    };
    std::vector<Row> rows_;
};

}  // namespace kerfwright
