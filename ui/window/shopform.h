// Allowances and machine limits, one entry a setting, in the order of the core's list.
#pragma once

#include "core/shop/shop.h"
#include "ui/document/document.h"

#include <QObject>

#include <vector>

namespace kerfwright {

class CountField;
class LengthField;
class FormSection;

class ShopForm : public QObject {
    Q_OBJECT

public:
    /// The entries are made when their section is first opened.
    ShopForm(Document& document, FormSection* allowances, FormSection* machines);
    void refresh();
    /// Opens the section and puts the cursor into the entry.
    void focusSetting(Setting setting);
    void focusSpareSlices();

private:
    void fill(FormSection* section, bool machines);

    Document& document_;
    FormSection* allowances_;
    FormSection* machines_;
    struct Row {
        const SettingInfo* info;
        LengthField* field;
    };
    std::vector<Row> rows_;
    CountField* spares_ = nullptr;
};

}  // namespace kerfwright
