// How planks are sawn up: trims, how thick a plank may be, which offcuts are kept.
#pragma once

#include "ui/document/document.h"
#include "ui/window/formsection.h"

#include <utility>
#include <vector>

QT_BEGIN_NAMESPACE
class QCheckBox;
QT_END_NAMESPACE

namespace kerfwright {

class CountField;
class LengthField;

class SawingForm : public FormSection {
    Q_OBJECT

public:
    SawingForm(Document& document, QWidget* parent);

private:
    void fill();
    void refresh();

    Document& document_;
    std::vector<std::pair<LengthField*, const SawingLength*>> lengths_;
    std::vector<std::pair<CountField*, const SawingCount*>> counts_;
    QCheckBox* rails_ = nullptr;
};

}  // namespace kerfwright
