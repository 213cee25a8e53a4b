#include "ui/window/buypage.h"

#include "core/bench/quote.h"
#include "core/sheets/amounts.h"
#include "core/sheets/layoutwords.h"
#include "core/timber/timberwords.h"
#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/cardlist.h"
#include "ui/window/formsection.h"
#include "ui/window/quietcombo.h"
#include "ui/window/textfield.h"
#include "ui/window/timberentries.h"
#include "ui/window/wrappedlabel.h"

#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

/// A number and its unit stay in one line.
QString volumeText(Volume volume, Unit unit) {
    return toQt(formatVolume(volume, unit)).replace(QLatin1Char(' '), QChar::Nbsp);
}

}  // namespace

QString listOfLengths(const std::vector<Length>& lengths, const Notation& notation) {
    QStringList all;
    for (const Length length : lengths) {
        all << toQt(formatBare(length, notation));
    }
    return all.join(QStringLiteral("; "));
}

Result<std::vector<Length>> lengthsOf(const QString& text, const Notation& notation,
                                      const QString& entry) {
    QString plain = text;
    plain.replace(QStringLiteral(", "), QStringLiteral(";"));
    std::vector<Length> all;
    for (const QString& part : plain.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
        if (part.trimmed().isEmpty()) {
            continue;
        }
        const Result<Reading> read = parse(fromQt(part), notation, fromQt(entry));
        if (!read.ok()) {
            return read.fault();
        }
        all.push_back(read->length);
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

BuyPage::BuyPage(Document& document, Sawyer& sawyer, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , sawyer_(sawyer)
    , words_(new WrappedLabel(this))
    , list_(new CardList(this))
    , yard_(new FormSection(tr("The yard"), true, this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    words_->setObjectName(QStringLiteral("buyWords"));
    words_->setContentsMargins(20, 0, 16, 0);
    column->addWidget(words_);
    list_->setObjectName(QStringLiteral("shopping"));
    list_->setAccessibleName(tr("Shopping list"));
    list_->setEmptyText(tr("The shopping list appears here once the board can be planned."));
    column->addWidget(list_, 1);
    yard_->setObjectName(QStringLiteral("yard"));
    yard_->head()->setObjectName(QStringLiteral("yardHead"));
    yard_->setContentsMargins(20, 4, 16, 10);
    buildYard();
    yard_->setOpen(false);
    column->addWidget(yard_);
    connect(&document, &Document::projectChanged, this, &BuyPage::refresh);
    connect(&sawyer, &Sawyer::changed, this, &BuyPage::refresh);
    refresh();
}

void BuyPage::buildYard() {
    tally_ = new QuietCombo(tr("How the yard counts"), yard_->body());
    tally_->setObjectName(QStringLiteral("tally"));
    for (const TallyInfo& info : tallies()) {
        tally_->addItem(toQt(say(info.name)), static_cast<int>(info.tally));
    }
    yard_->addRow(tr("Counts by"), tally_);
    about_ = new WrappedLabel(yard_->body());
    about_->setForegroundRole(QPalette::PlaceholderText);
    yard_->add(about_);
    connect(tally_, &QComboBox::activated, this, [this](int index) {
        const auto tally = static_cast<Tally>(tally_->itemData(index).toInt());
        document_.endSession();
        document_.edit(tr("change how the yard counts"), entry::none,
                       [tally](Project& project) { project.timber.yard.tally = tally; });
    });
    addLengths(tr("Thicknesses"), "yardThicknesses", &Yard::thicknesses, entry::yard);
    addLengths(tr("Widths"), "yardWidths", &Yard::widths, entry::yard + 1);
    addLengths(tr("Lengths"), "yardLengths", &Yard::lengths, entry::yard + 2);
}

void BuyPage::addLengths(const QString& label, const char* name, std::vector<Length> Yard::*which,
                         int number) {
    auto* field = new TextField(
        label,
        [this, label, which, number](const QString& text) {
            const Result<std::vector<Length>> read =
                lengthsOf(text, document_.project().notation, label);
            if (!read.ok()) {
                return toQt(read.fault().text());
            }
            const auto fault =
                document_.edit(tr("change what the yard has"), number,
                               [&](Project& project) { project.timber.yard.*which = *read; });
            return fault ? toQt(fault->text()) : QString();
        },
        yard_->body());
    field->setObjectName(QString::fromLatin1(name));
    field->line()->setObjectName(QString::fromLatin1(name) + QStringLiteral("Entry"));
    field->setToolTip(tr("Several, parted by semicolons"));
    connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    yard_->addRow(label, field);
    lengths_.emplace_back(field, which);
}

void BuyPage::refresh() {
    const Project& project = document_.project();
    const Yard& yard = project.timber.yard;
    const QSignalBlocker quiet(tally_);
    tally_->setCurrentIndex(tally_->findData(static_cast<int>(yard.tally)));
    const QString rule = toQt(tallyWords(yard.tally));
    about_->setText(rule.mid(rule.indexOf(QLatin1Char(':')) + 2));
    for (const auto& [field, which] : lengths_) {
        field->setValue(listOfLengths(yard.*which, project.notation));
    }
    list_->setStale(sawyer_.state() != Sawyer::State::Current);
    const SawnPtr sawn = sawyer_.last();
    if (sawn == shown_ || (sawn && !sawn->isFinal)) {
        return;
    }
    shown_ = sawn;
    list_->setEmptyText(
        sawn ? tr("Nothing has to be bought: the rack holds all that the board needs.")
             : tr("The shopping list appears here once the board can be planned."));
    std::vector<Card> cards;
    words_->setVisible(false);
    if (sawn && !sawn->plan.layout.isComplete()) {
        const Project& of = *sawn->project;
        const ShoppingList& list = sawn->plan.shopping;
        const Unit unit = of.notation.unit;
        for (const ShoppingLine& line : list.lines) {
            const LeastPlank least = leastPlank(sawn->plan, line);
            Card card;
            card.number = QString::number(line.count);
            card.title = toQt(woodName(line.wood, of.woods));
            card.bigLabel = line.count == 1 ? tr("plank of") : tr("planks of");
            card.big = toQt(sizeWords(line.thickness, line.width, line.length, of.notation));
            card.lines << tr("any other does that is at least %1 wide and %2 long")
                              .arg(toQt(format(least.width, of.notation)),
                                   toQt(format(least.length, of.notation)));
            QString price = tr("charged as %1").arg(volumeText(line.charged, unit));
            if (line.price) {
                price += QStringLiteral(" · ") + toQt(moneyWords(*line.price, of.currency));
            }
            card.lines << price;
            cards.push_back(std::move(card));
        }
        if (!list.lines.empty()) {
            Card all;
            all.mood = Card::Mood::Note;
            all.title = list.price
                            ? tr("Together %1").arg(toQt(moneyWords(*list.price, of.currency)))
                            : tr("Together");
            all.lines << tr("Net %1 · bought %2 · charged %3")
                             .arg(volumeText(list.net, unit), volumeText(list.volume, unit),
                                  volumeText(list.charged, unit));
            all.lines << tr("Waste %1 as these planks are laid out.")
                             .arg(toQt(percentWords(wastePercent(list.net, list.volume))));
            all.lines << toQt(shoppingVerdict(list));
            QStringList usual;
            for (const UsualWaste& waste : usualWastes()) {
                usual << tr("%1 %2 %: %3")
                             .arg(toQt(say(waste.name)))
                             .arg(waste.percent)
                             .arg(volumeText(withWaste(list.net, waste.percent), unit));
            }
            all.lines << tr("Usually reckoned, net ÷ (1 − waste): %1.")
                             .arg(usual.join(QStringLiteral("; ")));
            cards.push_back(std::move(all));
        }
        int impossible = 0;
        for (const int strips : list.impossible) {
            impossible += strips;
        }
        if (impossible > 0) {
            Card none;
            none.mood = Card::Mood::Caution;
            none.title = counted(impossible, tr("%1 strip comes out of no plank of this yard"),
                                 tr("%1 strips come out of no plank of this yard"));
            none.remedy = tr("Add thicker, wider or longer planks to what the yard has.");
            cards.push_back(std::move(none));
        }
    }
    list_->setCards(std::move(cards));
}

}  // namespace kerfwright
