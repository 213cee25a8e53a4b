// What goes into a quote: one entry a setting, in the order of the core's list.
#pragma once

#include "core/shop/pricing.h"
#include "ui/document/document.h"

#include <QObject>

#include <string_view>
#include <vector>

namespace kerfwright {

class FormSection;
class QuietCombo;
class TextField;

class PriceForm : public QObject {
    Q_OBJECT

public:
    /// The entries are made when the section is first opened.
    PriceForm(Document& document, FormSection* section);
    void refresh();
    /// Opens the section and puts the cursor into the entry of that key; says whether there is one.
    bool focusSetting(std::string_view key);

private:
    void fill();
    void addSetting(const PriceSetting& info, int which);
    void addRounding();
    TextField* addText(const QString& label, const char* name, int which,
                       std::string Pricing::*text);

    Document& document_;
    FormSection* section_;
    struct Row {
        const PriceSetting* info;
        TextField* field;
    };
    std::vector<Row> rows_;
    QuietCombo* rounding_ = nullptr;
    TextField* customer_ = nullptr;
    TextField* validUntil_ = nullptr;
};

}  // namespace kerfwright
