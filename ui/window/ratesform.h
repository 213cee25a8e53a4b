// How long the maker takes: one entry a rate, in the order of the core's list.
#pragma once

#include "core/shop/benchrates.h"
#include "ui/document/document.h"

#include <QObject>

#include <string_view>
#include <vector>

namespace kerfwright {

class FormSection;
class NumberField;

class RatesForm : public QObject {
    Q_OBJECT

public:
    /// The entries are made when the section is first opened.
    RatesForm(Document& document, FormSection* section);
    void refresh();
    /// Opens the section and puts the cursor into the entry of that key; says whether there is one.
    bool focusRate(std::string_view key);

private:
    void fill();

    Document& document_;
    FormSection* section_;
    struct Row {
        const RateSetting* info;
        NumberField* field;
    };
    std::vector<Row> rows_;
};

}  // namespace kerfwright
