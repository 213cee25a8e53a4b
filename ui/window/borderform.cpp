#include "ui/window/borderform.h"

#include "ui/document/text.h"
#include "ui/window/formsection.h"
#include "ui/window/lengthfield.h"
#include "ui/window/quietcombo.h"
#include "ui/window/segmented.h"
#include "ui/window/woodchip.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace kerfwright {

BorderForm::BorderForm(Document& document, FormSection* section)
    : QObject(section)
    , document_(document) {
    kind_ = new Segmented(tr("Border"), {tr("None"), tr("Border")}, section->body());
    kind_->setObjectName(QStringLiteral("borderKind"));
    section->add(kind_);
    details_ = new QWidget(section->body());
    auto* rows = new QVBoxLayout(details_);
    rows->setContentsMargins(0, 2, 0, 0);
    auto* inner = new FormSection(QString(), false, details_);
    inner->head()->hide();
    rows->addWidget(inner);
    width_ = new LengthField(
        tr("Border width"),
        [this](Length length) {
            const auto fault =
                document_.edit(tr("change border width"), entry::borderWidth,
                               [length](Project& project) { project.board.border.width = length; });
            return fault ? toQt(fault->text()) : QString();
        },
        inner->body());
    width_->setObjectName(QStringLiteral("borderWidth"));
    width_->line()->setObjectName(QStringLiteral("borderWidthEntry"));
    width_->setRange(Length::mm(1), BoardLimits::greatestBorder);
    connect(width_, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    inner->addRow(tr("Width"), width_);
    wood_ = new QuietCombo(tr("Border wood"), inner->body());
    wood_->setObjectName(QStringLiteral("borderWood"));
    inner->addRow(tr("Wood"), wood_);
    section->add(details_);
    connect(kind_, &Segmented::chosen, this, [this](int index) { choose(index == 1); });
    connect(wood_, &QComboBox::activated, this, [this](int index) {
        document_.edit(tr("change border wood"), entry::none,
                       [index](Project& project) { project.board.border.wood = index; });
    });
}

void BorderForm::choose(bool border) {
    const Project& project = document_.project();
    Length width;
    int wood = project.board.border.wood;
    if (border) {
        const Length usual =
            project.notation.unit == Unit::Inches ? Length::inch(1) : Length::mm(25);
        width = lastWidth_ > Length() ? lastWidth_ : usual;
        // A wood that the field does not use sets the border off.
        const auto uses = woodUse(project.board.field, static_cast<int>(project.woods.size()));
        for (std::size_t i = 0; lastWidth_ == Length() && i < uses.size(); ++i) {
            if (uses[i].pieces == 0) {
                wood = static_cast<int>(i);
            }
        }
    } else {
        lastWidth_ = project.board.border.width;
    }
    document_.edit(border ? tr("add border") : tr("remove border"), entry::none,
                   [&](Project& changed) {
                       changed.board.border.width = width;
                       changed.board.border.wood = wood;
                   });
    refresh();
}

void BorderForm::refresh() {
    const Project& project = document_.project();
    const bool border = project.board.border.width > Length();
    kind_->setCurrent(border ? 1 : 0);
    details_->setVisible(border);
    if (border) {
        width_->setNotation(project.notation);
        width_->setValue(project.board.border.width);
        wood_->clear();
        for (const Wood& wood : project.woods) {
            wood_->addItem(woodChip(wood.colour, *wood_), toQt(wood.name));
        }
        wood_->setCurrentIndex(project.board.border.wood);
    }
}

}  // namespace kerfwright
