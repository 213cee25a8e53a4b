#include "ui/window/unitform.h"

#include "ui/document/text.h"
#include "ui/window/faultnote.h"
#include "ui/window/formsection.h"
#include "ui/window/segmented.h"
#include "ui/window/textfield.h"

#include <algorithm>
#include <array>

namespace kerfwright {

namespace {

constexpr std::array denominators{8, 16, 32, 64};
constexpr std::array decimalsOffered{0, 1, 2, 3};

/// The finest lengths that are offered, as they are written.
QStringList written(Unit unit) {
    QStringList all;
    for (std::size_t i = 0; i < denominators.size(); ++i) {
        const Notation notation = unit == Unit::Inches ? Notation::inches(denominators[i])
                                                       : Notation::millimetres(decimalsOffered[i]);
        all << toQt(formatBare(notation.step(), notation));
    }
    return all;
}

/// Which of the choices is in force; -1 where a file asked for another.
template <std::size_t count>
int placeOf(const std::array<int, count>& choices, int value) {
    const auto at = std::find(choices.begin(), choices.end(), value);
    return at == choices.end() ? -1 : static_cast<int>(at - choices.begin());
}

}  // namespace

UnitForm::UnitForm(Document& document, FormSection* section)
    : QObject(section)
    , document_(document)
    , unit_(new Segmented(tr("Lengths in"), {tr("inches"), tr("mm")}, section->body()))
    , fractions_(new Segmented(tr("Finest fraction"), written(Unit::Inches), section->body()))
    , decimals_(new Segmented(tr("Finest step"), written(Unit::Millimetres), section->body()))
    , currency_(new TextField(
          tr("Prices in"),
          [this](const QString& text) {
              const auto fault =
                  document_.edit(tr("change currency"), entry::currency, [&](Project& project) {
                      project.currency = fromQt(text.trimmed());
                  });
              return fault ? toQt(fault->text()) : QString();
          },
          section->body())) {
    unit_->setObjectName(QStringLiteral("unitChoice"));
    fractions_->setObjectName(QStringLiteral("fractions"));
    decimals_->setObjectName(QStringLiteral("decimals"));
    section->add(unit_);
    section->add(fractions_);
    section->add(decimals_);
    auto* note = new FaultNote(section->body());
    note->rest(tr("The finest step that is written. A length between two steps is marked ≈ and "
                  "kept exactly as it is."));
    section->add(note);
    currency_->setObjectName(QStringLiteral("currency"));
    currency_->line()->setObjectName(QStringLiteral("currencyEntry"));
    currency_->setToolTip(tr("What the prices of the woods are in: a sign or a word"));
    connect(currency_, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    section->addRow(tr("Prices in"), currency_);
    connect(unit_, &Segmented::chosen, this, [this](int index) {
        document_.edit(tr("change units"), entry::none, [index](Project& project) {
            setUnit(project, index == 0 ? Unit::Inches : Unit::Millimetres);
        });
    });
    connect(fractions_, &Segmented::chosen, this, [this](int index) {
        document_.edit(tr("change finest fraction"), entry::none, [index](Project& project) {
            project.notation.denominator = denominators[static_cast<std::size_t>(index)];
        });
    });
    connect(decimals_, &Segmented::chosen, this, [this](int index) {
        document_.edit(tr("change finest step"), entry::none, [index](Project& project) {
            project.notation.decimals = decimalsOffered[static_cast<std::size_t>(index)];
        });
    });
}

void UnitForm::refresh() {
    const Notation& notation = document_.project().notation;
    const bool inches = notation.unit == Unit::Inches;
    unit_->setCurrent(inches ? 0 : 1);
    currency_->setValue(toQt(document_.project().currency));
    fractions_->setVisible(inches);
    decimals_->setVisible(!inches);
    fractions_->setCurrent(placeOf(denominators, notation.denominator));
    decimals_->setCurrent(placeOf(decimalsOffered, notation.decimals));
}

}  // namespace kerfwright
