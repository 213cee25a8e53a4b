#include "ui/window/wishform.h"

#include "ui/document/text.h"
#include "ui/window/borderform.h"
#include "ui/window/countfield.h"
#include "ui/window/faultnote.h"
#include "ui/window/formsection.h"
#include "ui/window/glueform.h"
#include "ui/window/helptopics.h"
#include "ui/window/lengthfield.h"
#include "ui/window/patternpicker.h"
#include "ui/window/placeform.h"
#include "ui/window/ratesform.h"
#include "ui/window/recipeform.h"
#include "ui/window/segmented.h"
#include "ui/window/shopform.h"
#include "ui/window/textblock.h"
#include "ui/window/textfield.h"
#include "ui/window/tones.h"
#include "ui/window/unitform.h"
#include "ui/window/woodlist.h"
#include "ui/window/wrappedlabel.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

class Hairline : public QWidget {
public:
    explicit Hairline(QWidget* parent)
        : QWidget(parent) {
        setFixedHeight(1);
        setBackgroundRole(QPalette::Mid);
        setAutoFillBackground(true);
    }
};

QString words(const std::optional<Fault>& fault) {
    return fault ? toQt(fault->text()) : QString();
}

/// Two entries side by side, with a times sign between them.
QWidget* pair(QWidget* left, QWidget* right, QWidget* parent) {
    auto* both = new QWidget(parent);
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(3);
    row->addWidget(left, 1, Qt::AlignTop);
    auto* times = new QLabel(QStringLiteral("×"), both);
    times->setFixedHeight(28);
    row->addWidget(times, 0, Qt::AlignTop);
    row->addWidget(right, 1, Qt::AlignTop);
    both->setFocusProxy(left);
    return both;
}

bool allEqual(const std::vector<Length>& sizes) {
    return std::all_of(sizes.begin(), sizes.end(),
                       [&](Length size) { return size == sizes.front(); });
}

}  // namespace

WishForm::WishForm(Document& document, Planner& planner, BoardEditor& editor, QWidget* parent)
    : QScrollArea(parent)
    , document_(document)
    , planner_(planner)
    , editor_(editor)
    , content_(new QWidget)
    , column_(new QVBoxLayout(content_)) {
    setObjectName(QStringLiteral("wish"));
    setFrameShape(NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    setFocusPolicy(Qt::NoFocus);
    column_->setContentsMargins(14, 12, 8, 16);
    column_->setSpacing(8);
    buildSize();
    rule();
    auto* pattern = section(tr("Pattern"), "patterns", false);
    auto* picker = new PatternPicker(document_, pattern->body());
    pattern->add(picker);
    pattern->add(new RecipeForm(document_, picker->lastButton(), pattern->body()));
    rule();
    buildWoods();
    rule();
    buildPlace();
    rule();
    buildChoices();
    rule();
    buildShop();
    rule();
    buildUnits();
    rule();
    buildTitles();
    column_->addStretch(1);
    setWidget(content_);
    connect(&document, &Document::projectChanged, this, &WishForm::refresh);
    refresh();
}

FormSection* WishForm::section(const QString& title, const char* topic, bool folds) {
    auto* made = new FormSection(title, folds, content_);
    setHelpTopic(made, topic);
    column_->addWidget(made);
    return made;
}

void WishForm::rule() {
    column_->addWidget(new Hairline(content_));
}

void WishForm::watch(EntryField* field) {
    field->line()->setObjectName(field->objectName() + QStringLiteral("Entry"));
    connect(field, &EntryField::sessionEnded, &document_, [this] {
        began_.reset();
        document_.endSession();
    });
}

void WishForm::buildTitles() {
    auto* titles = section(tr("Titles"), "sheets", true);
    titles->head()->setObjectName(QStringLiteral("titlesHead"));
    const auto field = [&](const QString& label, const char* object, int key,
                           std::string Titles::*member) {
        auto* made = new TextField(
            label,
            [this, label, key, member](const QString& text) {
                return words(document_.edit(
                    tr("change %1").arg(inSentence(label)), key,
                    [&](Project& project) { project.titles.*member = fromQt(text); }));
            },
            titles->body());
        made->setObjectName(QString::fromLatin1(object));
        watch(made);
        titles->addRow(label, made);
        return made;
    };
    name_ = field(tr("Name"), "name", entry::name, &Titles::name);
    maker_ = field(tr("Maker"), "maker", entry::maker, &Titles::maker);
    date_ = field(tr("Date"), "date", entry::date, &Titles::date);
    note_ = field(tr("Note"), "note", entry::note, &Titles::note);
}

void WishForm::buildSize() {
    auto* size = section(tr("Size"), "sizes", false);
    buildBuild(size);
    fieldNote_ = new FaultNote(size->body());
    fieldNote_->setObjectName(QStringLiteral("fieldNote"));
    fieldNote_->keepLines(2);
    buildSquares(size);
    buildCounts(size);
    size->add(fieldNote_);
    for (EntryField* field :
         std::initializer_list<EntryField*>{cellWidth_, cellHeight_, across_, down_}) {
        field->setFaultNote(fieldNote_);
        watch(field);
    }
    thickness_ = new LengthField(
        tr("Thickness"),
        [this](Length length) {
            return words(
                document_.edit(tr("change thickness"), entry::thickness,
                               [length](Project& project) { project.board.thickness = length; }));
        },
        size->body());
    thickness_->setObjectName(QStringLiteral("thickness"));
    thickness_->setRange(BoardLimits::leastThickness, BoardLimits::greatestThickness);
    watch(thickness_);
    size->addRow(tr("Thickness"), thickness_);
}

void WishForm::buildBuild(FormSection* size) {
    build_ = new Segmented(tr("Build"), {tr("End grain up"), tr("Long grain up")}, size->body());
    build_->setObjectName(QStringLiteral("build"));
    size->add(build_);
    connect(build_, &Segmented::chosen, this, [this](int index) {
        document_.edit(tr("change build"), entry::none, [index](Project& project) {
            project.board.build = index == 0 ? Build::EndGrain : Build::LongGrain;
        });
    });
    grain_ = new Segmented(tr("Grain direction"), {tr("Either"), tr("Down"), tr("Across")},
                           size->body());
    grain_->setObjectName(QStringLiteral("grain"));
    size->add(grain_);
    connect(grain_, &Segmented::chosen, this, [this](int index) {
        document_.edit(tr("change grain direction"), entry::none, [index](Project& project) {
            project.board.grain = static_cast<GrainDirection>(index);
        });
    });
}

void WishForm::buildSquares(FormSection* size) {
    const auto scale = [this](Length width, Length height) {
        const bool across = width > Length();
        return reshape(tr("change size of squares"), across ? entry::cellWidth : entry::cellHeight,
                       [&](Project& project) {
                           Field& field = project.board.field;
                           field = scaled(field, width, height, project.notation.step());
                       });
    };
    cellWidth_ = new LengthField(
        tr("Square width"), [scale](Length length) { return scale(length, Length()); },
        size->body());
    cellWidth_->setObjectName(QStringLiteral("cellWidth"));
    cellHeight_ = new LengthField(
        tr("Square height"), [scale](Length length) { return scale(Length(), length); },
        size->body());
    cellHeight_->setObjectName(QStringLiteral("cellHeight"));
    for (LengthField* field : {cellWidth_, cellHeight_}) {
        field->setRange(BoardLimits::leastCell, BoardLimits::greatestCell);
    }
    squares_ = size->addRow(tr("Squares"), pair(cellWidth_, cellHeight_, size->body()));
    squares_->setObjectName(QStringLiteral("squaresLabel"));
}

void WishForm::buildCounts(FormSection* size) {
    const auto resize = [this](int across, int down) {
        return reshape(
            tr("change number of squares"), across > 0 ? entry::across : entry::down,
            [=](Project& project) {
                Field& field = project.board.field;
                const int columns = across > 0 ? across : static_cast<int>(field.columns.size());
                const int rows = down > 0 ? down : static_cast<int>(field.rows.size());
                // A pattern goes on; what was painted by hand is cut off or has its last lines
                // again.
                const std::optional<Recipe> more =
                    project.recipe ? recounted(*project.recipe, columns, rows) : std::nullopt;
                if (more) {
                    project.recipe = more;
                }
                field = more ? layOut(*more).value() : resized(field, columns, rows);
            });
    };
    across_ = new CountField(
        tr("Squares across"), 1, BoardLimits::cellsAcross,
        [resize](int count) { return resize(count, 0); }, size->body());
    across_->setObjectName(QStringLiteral("across"));
    down_ = new CountField(
        tr("Squares down"), 1, BoardLimits::cellsAcross,
        [resize](int count) { return resize(0, count); }, size->body());
    down_->setObjectName(QStringLiteral("down"));
    size->addRow(tr("Across × down"), pair(across_, down_, size->body()));
}

QString WishForm::reshape(const QString& what, int entry,
                          const std::function<void(Project&)>& how) {
    const Field& now = document_.project().board.field;
    if (!began_ || now != reshaped_) {
        began_ = now;
        beganRecipe_ = document_.project().recipe;
    }
    const auto fault = document_.edit(what, entry, [&](Project& project) {
        project.board.field = *began_;
        project.recipe = beganRecipe_;
        how(project);
    });
    reshaped_ = document_.project().board.field;
    return words(fault);
}

void WishForm::buildWoods() {
    auto* woods = section(tr("Woods"), "woods", false);
    woodSection_ = woods;
    woods_ = new WoodList(document_, editor_, woods->body());
    woods->add(woods_);
    connect(woods_, &WoodList::previewed, this, &WishForm::previewed);
    rule();
    border_ = new BorderForm(document_, planner_, section(tr("Border"), "border", false));
    connect(border_, &BorderForm::termAsked, this, &WishForm::focusTerm);
}

void WishForm::buildChoices() {
    auto* choices = section(tr("Glue-up"), "ways", false);
    rows_ = new Segmented(tr("Glue strips into"), {tr("Either"), tr("Rows"), tr("Columns")},
                          choices->body());
    rows_->setObjectName(QStringLiteral("rowChoice"));
    rows_->setToolTip(tr("Which way the strips are glued; either takes what needs fewer panels"));
    choices->add(rows_);
    decided_ = new WrappedLabel(choices->body());
    decided_->setObjectName(QStringLiteral("decidedBy"));
    decided_->setFont(smallFont(font()));
    decided_->setForegroundRole(QPalette::PlaceholderText);
    choices->add(decided_);
    connect(&planner_, &Planner::changed, this, [this] {
        if (const PlannedPtr planned = planner_.last()) {
            decided_->setText(toQt(planned->job.plan.decidedBy));
        }
    });
    connect(rows_, &Segmented::chosen, this, [this](int index) {
        document_.edit(tr("change glue-up"), entry::none, [index](Project& project) {
            project.choices.rows = static_cast<RowChoice>(index);
            project.choices.construction.clear();
        });
    });
    merge_ = new QCheckBox(tr("Merge like strips"), choices->body());
    merge_->setObjectName(QStringLiteral("mergeLike"));
    merge_->setToolTip(
        tr("Neighbours of one wood become one strip, where the timber is wide enough"));
    choices->add(merge_);
    connect(merge_, &QCheckBox::clicked, this, [this](bool on) {
        document_.edit(on ? tr("merge like strips") : tr("keep strips apart"), entry::none,
                       [on](Project& project) { project.choices.mergeLike = on; });
    });
}

void WishForm::buildShop() {
    auto* glue = section(tr("Glue and clamps"), "glue", true);
    glue->head()->setObjectName(QStringLiteral("glueHead"));
    glue_ = new GlueForm(document_, glue);
    rule();
    auto* rates = section(tr("Time at the bench"), "hours", true);
    rates->head()->setObjectName(QStringLiteral("ratesHead"));
    rates_ = new RatesForm(document_, rates);
    rule();
    auto* allowances = section(tr("Allowances"), "shop", true);
    allowances->head()->setObjectName(QStringLiteral("allowancesHead"));
    rule();
    auto* machines = section(tr("Machine limits"), "shop", true);
    machines->head()->setObjectName(QStringLiteral("machinesHead"));
    shop_ = new ShopForm(document_, allowances, machines);
}

void WishForm::buildPlace() {
    auto* place = section(tr("Use and season"), "season", true);
    place->head()->setObjectName(QStringLiteral("placeHead"));
    place_ = new PlaceForm(document_, place);
}

void WishForm::buildUnits() {
    auto* units = section(tr("Units"), "sizes", true);
    units->head()->setObjectName(QStringLiteral("unitsHead"));
    units_ = new UnitForm(document_, units);
}

void WishForm::refresh() {
    const Project& project = document_.project();
    const Board& board = project.board;
    name_->setValue(toQt(project.titles.name));
    maker_->setValue(toQt(project.titles.maker));
    date_->setValue(toQt(project.titles.date));
    note_->setValue(toQt(project.titles.note));
    build_->setCurrent(board.build == Build::EndGrain ? 0 : 1);
    grain_->setCurrent(static_cast<int>(board.grain));
    grain_->setVisible(board.build == Build::LongGrain);
    refreshSize();
    border_->refresh();
    place_->refresh();
    glue_->refresh();
    rates_->refresh();
    units_->refresh();
    shop_->refresh();
    // A way that was chosen is none of these.
    rows_->setCurrent(project.choices.construction.empty() ? static_cast<int>(project.choices.rows)
                                                           : -1);
    merge_->setChecked(project.choices.mergeLike);
}

void WishForm::refreshSize() {
    const Project& project = document_.project();
    const Field& field = project.board.field;
    for (LengthField* entry : {cellWidth_, cellHeight_, thickness_}) {
        entry->setNotation(project.notation);
    }
    cellWidth_->setValue(field.columns.front());
    cellHeight_->setValue(field.rows.front());
    across_->setValue(static_cast<int>(field.columns.size()));
    down_->setValue(static_cast<int>(field.rows.size()));
    thickness_->setValue(project.board.thickness);
    const bool even = allEqual(field.columns) && allEqual(field.rows);
    squares_->setText(even ? tr("Squares") : tr("First square"));
    const QString whole = tr("Field %1 × %2")
                              .arg(toQt(formatBare(field.width(), project.notation)),
                                   toQt(format(field.height(), project.notation)));
    fieldNote_->rest(even ? whole
                          : whole + QLatin1Char('\n') + tr("The other squares follow the first."));
}

void WishForm::showPrice(const QString& wood) {
    woodSection_->setOpen(true);
    woods_->showPrice(wood);
}

void WishForm::focusTerm(TermKind kind) {
    EntryField* field = nullptr;
    switch (kind) {
    case TermKind::PieceWidth:
    case TermKind::FieldSide:
    case TermKind::Stick:
        field = cellWidth_;
        break;
    case TermKind::RowHeight:
    case TermKind::Slices:
        field = cellHeight_;
        break;
    case TermKind::BoardThickness:
        field = thickness_;
        break;
    case TermKind::BorderWidth:
        field = border_->width();
        break;
    case TermKind::OwnGap:
        field = border_->gap();
        break;
    case TermKind::Gap:
        border_->focusGap();
        break;
    case TermKind::Inlay:
        field = border_->inlay();
        break;
    case TermKind::HalfGrowth:
    case TermKind::HalfShrinkage:
    case TermKind::PinGrowth:
    case TermKind::PinShrinkage:
        place_->focusSeason();
        break;
    case TermKind::SpareSlices:
        shop_->focusSpareSlices();
        break;
    default:
        if (settingOf(kind) != Setting::None) {
            shop_->focusSetting(settingOf(kind));
        }
    }
    if (field != nullptr) {
        field->focusEntry();
    }
    showFocused();
}

void WishForm::focusRate(const QString& key) {
    if (!rates_->focusRate(fromQt(key))) {
        glue_->focusSetting(fromQt(key));
    }
    showFocused();
}

void WishForm::showFocused() {
    // A section that has just been opened gets its place only with the next layout.
    QTimer::singleShot(0, this, [this] {
        if (QWidget* focused = focusWidget()) {
            ensureWidgetVisible(focused, 16, 48);
        }
    });
}

}  // namespace kerfwright
