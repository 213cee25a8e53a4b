#include "ui/window/woodform.h"

#include "core/wood/ownwood.h"
#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/faultnote.h"
#include "ui/window/formsection.h"
#include "ui/window/lengthfield.h"
#include "ui/window/numberfield.h"
#include "ui/window/popupplace.h"
#include "ui/window/quietcombo.h"
#include "ui/window/textfield.h"
#include "ui/window/tones.h"
#include "ui/window/woodchip.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QScreen>
#include <QScrollArea>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int formWidth = 400;
constexpr int formHeight = 600;
constexpr int labelWidth = 156;
constexpr int swatches = 10;
const Length leastTimber = Length::mm(1);
const Length greatestTimber = Length::mm(2000);

QString hexOf(Colour colour) {
    return QColor(colour.red, colour.green, colour.blue).name().toUpper();
}

/// The catalogue's colours from light to dark, as many as there is room for.
std::vector<Colour> usualColours() {
    std::vector<Colour> all;
    for (const Wood& wood : woodCatalogue()) {
        all.push_back(wood.colour);
    }
    std::sort(all.begin(), all.end(), [](Colour a, Colour b) {
        return a.red + a.green + a.blue > b.red + b.green + b.blue;
    });
    std::vector<Colour> some;
    for (std::size_t i = 0; i < swatches; ++i) {
        some.push_back(all[i * (all.size() - 1) / (swatches - 1)]);
    }
    return some;
}

}  // namespace

WoodForm::WoodForm(Document& document, int wood, QWidget* parent)
    : QFrame(parent, Qt::Popup)
    , document_(document)
    , wood_(wood)
    , scroll_(new QScrollArea(this))
    , chip_(new QLabel(this))
    , head_(new QLabel(this)) {
    setObjectName(QStringLiteral("woodForm"));
    setAttribute(Qt::WA_DeleteOnClose);
    setFixedWidth(formWidth);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(1, 12, 1, 1);
    all->setSpacing(8);
    auto* top = new QHBoxLayout;
    top->setContentsMargins(16, 0, 16, 0);
    QFont bold = head_->font();
    bold.setBold(true);
    head_->setFont(bold);
    top->addWidget(chip_);
    top->addWidget(head_, 1);
    all->addLayout(top);
    scroll_->setFrameShape(NoFrame);
    scroll_->setWidgetResizable(true);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setFocusPolicy(Qt::NoFocus);
    auto* content = new QWidget;
    column_ = new QVBoxLayout(content);
    column_->setContentsMargins(16, 0, 8, 16);
    column_->setSpacing(10);
    scroll_->setWidget(content);
    all->addWidget(scroll_, 1);
    buildTimber();
    buildLooks();
    buildWeight();
    buildMovement();
    buildGlue();
    buildHealth();
    column_->addStretch(1);
    connect(&document, &Document::projectChanged, this, &WoodForm::refresh);
    refresh();
}

FormSection* WoodForm::section(const QString& title) {
    auto* made = new FormSection(title, false, scroll_->widget());
    made->setLabelWidth(labelWidth);
    column_->addWidget(made);
    return made;
}

void WoodForm::addEntry(FormSection* section, const QString& label, EntryField* field,
                        const char* name) {
    field->setObjectName(QString::fromLatin1(name));
    field->line()->setObjectName(QString::fromLatin1(name) + QStringLiteral("Entry"));
    connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
    section->addRow(label, field);
}

LengthField* WoodForm::addLength(FormSection* section, const QString& label, const char* name,
                                 Length Section::*member) {
    const QString full = tr("Timber %1").arg(inSentence(label));
    auto* field = new LengthField(
        full,
        [this, full, member, which = nextEntry()](Length length) {
            return change(tr("change %1").arg(inSentence(full)), which,
                          [&](Wood& wood) { wood.timber.*member = length; });
        },
        section->body());
    field->setRange(leastTimber, greatestTimber);
    addEntry(section, label, field, name);
    shown_.emplace_back([field, member](const Project& project, const Wood& wood) {
        field->setNotation(project.notation);
        field->setValue(wood.timber.*member);
    });
    return field;
}

TextField* WoodForm::addText(FormSection* section, const QString& label, const char* name,
                             std::string Wood::*member) {
    auto* field = new TextField(
        label,
        [this, label, member, which = nextEntry()](const QString& text) {
            return change(tr("change %1").arg(inSentence(label)), which,
                          [&](Wood& wood) { wood.*member = fromQt(text.trimmed()); });
        },
        section->body());
    addEntry(section, label, field, name);
    shown_.emplace_back(
        [field, member](const Project&, const Wood& wood) { field->setValue(toQt(wood.*member)); });
    return field;
}

template <class Member>
void WoodForm::addNumber(FormSection* section, const QString& label, const QString& unit,
                         double greatest, const char* name, Member member) {
    auto* field = new NumberField(
        label, unit, 0, greatest,
        [this, label, member, which = nextEntry()](double value) {
            return change(tr("change %1").arg(inSentence(label)), which,
                          [&](Wood& wood) { member(wood) = value; });
        },
        section->body());
    field->setMayBeUnknown();
    addEntry(section, unit.isEmpty() ? label : tr("%1, %2").arg(label, unit), field, name);
    shown_.emplace_back(
        [field, member](const Project&, const Wood& wood) { field->setValue(member(wood)); });
}

template <class Value>
void WoodForm::addChoice(FormSection* section, const QString& label, const char* name,
                         const QStringList& choices, Value Wood::*member) {
    auto* list = new QuietCombo(label, section->body());
    list->setObjectName(QString::fromLatin1(name));
    list->addItems(choices);
    section->addRow(label, list);
    connect(list, &QComboBox::activated, this,
            [this, label, member, which = nextEntry()](int index) {
                change(tr("change %1").arg(inSentence(label)), which,
                       [&](Wood& wood) { wood.*member = static_cast<Value>(index); });
                document_.endSession();
            });
    shown_.emplace_back([list, member](const Project&, const Wood& wood) {
        list->setCurrentIndex(static_cast<int>(wood.*member));
    });
}

template <class Member>
void WoodForm::addSource(FormSection* section, Member member) {
    auto* note = new FaultNote(section->body());
    section->add(note);
    shown_.emplace_back([note, member](const Project&, const Wood& wood) {
        const QString source = toQt(say(member(wood)));
        note->rest(source.isEmpty() ? QString() : tr("Source: %1.").arg(source));
    });
}

void WoodForm::addColour(FormSection* section) {
    auto* field = new TextField(
        tr("Colour"),
        [this, which = nextEntry()](const QString& text) {
            const QColor colour(text.trimmed());
            if (!text.trimmed().startsWith(QLatin1Char('#')) || text.trimmed().size() != 7 ||
                !colour.isValid()) {
                return tr("Colour: must be # and six signs from 0 to 9 and A to F; got %1.")
                    .arg(text.trimmed());
            }
            return change(tr("change colour"), which, [&](Wood& wood) {
                wood.colour = {static_cast<std::uint8_t>(colour.red()),
                               static_cast<std::uint8_t>(colour.green()),
                               static_cast<std::uint8_t>(colour.blue())};
            });
        },
        section->body());
    addEntry(section, tr("Colour"), field, "woodColour");
    shown_.emplace_back(
        [field](const Project&, const Wood& wood) { field->setValue(hexOf(wood.colour)); });
    auto* row = new QWidget(section->body());
    auto* places = new QHBoxLayout(row);
    places->setContentsMargins(0, 0, 0, 0);
    places->setSpacing(4);
    const int which = nextEntry();
    for (const Colour colour : usualColours()) {
        auto* swatch = new QToolButton(row);
        swatch->setObjectName(QStringLiteral("colour-") + hexOf(colour).mid(1));
        swatch->setAccessibleName(tr("Colour %1").arg(hexOf(colour)));
        swatch->setIcon(woodChip(colour, *this));
        swatch->setIconSize(QSize(18, 18));
        swatch->setAutoRaise(true);
        swatch->setFocusPolicy(Qt::StrongFocus);
        places->addWidget(swatch);
        connect(swatch, &QToolButton::clicked, this, [this, colour, which] {
            change(tr("change colour"), which, [&](Wood& wood) { wood.colour = colour; });
            document_.endSession();
        });
    }
    places->addStretch(1);
    section->add(row);
}

void WoodForm::addPrice(FormSection* section) {
    auto* field = new TextField(
        tr("Price"),
        [this, which = nextEntry()](const QString& text) {
            std::int64_t hundredths = 0;
            if (!text.trimmed().isEmpty()) {
                const Result<std::int64_t> read = parseMoney(fromQt(text), fromQt(tr("Price")));
                if (!read.ok()) {
                    return toQt(read.fault().text());
                }
                hundredths = *read;
            }
            return change(tr("change price"), which, [&](Wood& wood) {
                wood.price = document_.project().notation.unit == Unit::Inches
                                 ? pricePerBoardFoot(hundredths)
                                 : Price{hundredths};
            });
        },
        section->body());
    price_ = field;
    addEntry(section, tr("Price"), field, "woodPrice");
    field->line()->setPlaceholderText(tr("not known"));
    field->setToolTip(tr("Of rough timber. What the money is called is said under Units"));
    auto* note = new FaultNote(section->body());
    section->add(note);
    shown_.emplace_back([field, note](const Project& project, const Wood& wood) {
        const bool inches = project.notation.unit == Unit::Inches;
        const std::int64_t hundredths =
            inches ? hundredthsPerBoardFoot(wood.price) : wood.price.minorPerCubicMetre;
        field->setValue(hundredths == 0 ? QString() : toQt(formatMoney(hundredths)));
        const QString money = project.currency.empty() ? tr("Price") : toQt(project.currency);
        note->rest(inches ? tr("%1 for a board foot of rough timber").arg(money)
                          : tr("%1 for a cubic metre of rough timber").arg(money));
    });
}

void WoodForm::buildTimber() {
    auto* timber = section(tr("Timber"));
    auto* why = new FaultNote(timber->body());
    why->setObjectName(QStringLiteral("woodFormWhy"));
    why->rest(tr("The greatest section of rough timber that you can get. What is larger is "
                 "divided: its joints are drawn dashed on the board."));
    timber->add(why);
    thickness_ = addLength(timber, tr("Thickness"), "timberThickness", &Section::thickness);
    addLength(timber, tr("Width"), "timberWidth", &Section::width);
    addChoice(timber, tr("Rings"), "woodRings",
              {tr("not said"), tr("flat-sawn: along the width"), tr("rift-sawn: aslant"),
               tr("quarter-sawn: across the width")},
              &Wood::rings);
    addPrice(timber);
}

void WoodForm::buildLooks() {
    auto* looks = section(tr("Name and look"));
    name_ = addText(looks, tr("Name"), "woodName", &Wood::name);
    addText(looks, tr("Botanical name"), "woodBotanical", &Wood::botanical);
    addText(looks, tr("Letter"), "woodLetter", &Wood::letter)
        ->setToolTip(tr("One or two capitals that stand for the wood where there is no colour"));
    addColour(looks);
}

void WoodForm::buildWeight() {
    auto* weight = section(tr("Weight and hardness"));
    addNumber(
        weight, tr("Density"), tr("kg/m³"), WoodLimits::density, "woodDensity",
        [](auto& wood) -> auto& { return wood.density; });
    addSource(weight, [](const Wood& wood) { return wood.source; });
    addNumber(
        weight, tr("Side hardness"), tr("N"), WoodLimits::hardness, "woodHardness",
        [](auto& wood) -> auto& { return wood.hardness; });
    addSource(weight, [](const Wood& wood) { return wood.sources.hardness; });
}

void WoodForm::buildMovement() {
    auto* shrinkage = section(tr("Shrinkage, green to ovendry"));
    addNumber(
        shrinkage, tr("Radial shrinkage"), tr("%"), WoodLimits::shrinkage, "shrinkageRadial",
        [](auto& wood) -> auto& { return wood.shrinkage.radial; });
    addNumber(
        shrinkage, tr("Tangential shrinkage"), tr("%"), WoodLimits::shrinkage,
        "shrinkageTangential", [](auto& wood) -> auto& { return wood.shrinkage.tangential; });
    addNumber(
        shrinkage, tr("Volumetric shrinkage"), tr("%"), WoodLimits::shrinkage,
        "shrinkageVolumetric", [](auto& wood) -> auto& { return wood.shrinkage.volumetric; });
    addSource(shrinkage, [](const Wood& wood) { return wood.sources.shrinkage; });
    auto* movement = section(tr("Movement for each 1 % of moisture"));
    addNumber(
        movement, tr("Radial movement"), QString(), WoodLimits::movement, "movementRadial",
        [](auto& wood) -> auto& { return wood.movement.radial; });
    addNumber(
        movement, tr("Tangential movement"), QString(), WoodLimits::movement, "movementTangential",
        [](auto& wood) -> auto& { return wood.movement.tangential; });
    addSource(movement, [](const Wood& wood) { return wood.sources.movement; });
}

void WoodForm::buildGlue() {
    auto* glue = section(tr("Pores and glue"));
    addChoice(glue, tr("Pores"), "woodPores",
              {tr("not known"), tr("in rings"), tr("half in rings"), tr("all over")}, &Wood::pores);
    addChoice(glue, tr("End grain"), "woodPoreEnds",
              {tr("not known"), tr("closed to water"), tr("open to water")}, &Wood::poreEnds);
    addSource(glue, [](const Wood& wood) { return wood.sources.pores; });
    addChoice(glue, tr("Gluing"), "woodGluing",
              {tr("not known"), tr("bonds easily"), tr("bonds well"), tr("bonds satisfactorily"),
               tr("bonds with difficulty")},
              &Wood::gluing);
    addSource(glue, [](const Wood& wood) { return wood.sources.gluing; });
}

void WoodForm::buildHealth() {
    auto* health = section(tr("Health and food"));
    addText(health, tr("Reactions reported"), "woodReactions", &Wood::reactions);
    addSource(health, [](const Wood& wood) { return wood.sources.reactions; });
    addText(health, tr("On boards for food"), "woodFood", &Wood::food);
    addSource(health, [](const Wood& wood) { return wood.sources.food; });
}

QString WoodForm::change(const QString& what, int entry, const Change& how) {
    const auto fault = document_.edit(
        what, entry::wood + wood_ * entry::woodEntries + entry, [&](Project& project) {
            Wood& wood = project.woods[static_cast<std::size_t>(wood_)];
            const Wood before = wood;
            how(wood);
            renewSources(wood, before);
        });
    return fault ? toQt(fault->text()) : QString();
}

void WoodForm::refresh() {
    const Project& project = document_.project();
    if (static_cast<std::size_t>(wood_) >= project.woods.size()) {
        close();  // undone away
        return;
    }
    const Wood& wood = project.woods[static_cast<std::size_t>(wood_)];
    const QString name = toQt(wood.name);
    head_->setText(name);
    chip_->setPixmap(woodChip(wood, *this).pixmap(QSize(18, 18), devicePixelRatioF()));
    setAccessibleName(tr("All about %1").arg(inSentence(name)));
    for (const auto& show : shown_) {
        show(project, wood);
    }
}

void WoodForm::openBeside(QWidget* button) {
    setFixedHeight(std::min(formHeight, button->screen()->availableGeometry().height() - 8));
    placeBeside(*this, *button);
    show();
    thickness_->focusEntry();
}

void WoodForm::focusName() {
    name_->focusEntry();
    scroll_->ensureWidgetVisible(name_);
}

void WoodForm::focusPrice() {
    price_->focusEntry();
    scroll_->ensureWidgetVisible(price_);
}

void WoodForm::hideEvent(QHideEvent* event) {
    document_.endSession();
    QFrame::hideEvent(event);
}

void WoodForm::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.fillRect(rect(), mixed(tones.edge, tones.text, 0.15));
    painter.fillRect(rect().adjusted(1, 1, -1, -1), tones.surface);
}

}  // namespace kerfwright
