#include "ui/window/recipeform.h"

#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/countfield.h"
#include "ui/window/faultnote.h"
#include "ui/window/figurenotice.h"
#include "ui/window/formsection.h"
#include "ui/window/lengthfield.h"
#include "ui/window/tones.h"
#include "ui/window/woodchip.h"
#include "ui/window/wrappedlabel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int rowHeight = 28;
// Numbers of the entries, so that no two of them merge into one undo step.
constexpr int lengthEntries = 20;
constexpr int widthEntry = 40;
constexpr int heightEntry = 41;

QWidget* timesPair(QWidget* left, QWidget* right, QWidget* parent) {
    auto* both = new QWidget(parent);
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(3);
    row->addWidget(left, 1, Qt::AlignTop);
    auto* times = new QLabel(QStringLiteral("×"), both);
    times->setFixedHeight(rowHeight);
    row->addWidget(times, 0, Qt::AlignTop);
    row->addWidget(right, 1, Qt::AlignTop);
    both->setFocusProxy(left);
    return both;
}

}  // namespace

RoleButton::RoleButton(const QString& role, QWidget* parent)
    : QToolButton(parent)
    , role_(role) {
    setIconSize(QSize(18, 18));
    setFixedSize(26, rowHeight);
    setFocusPolicy(Qt::StrongFocus);
    connect(this, &QToolButton::clicked, this, &RoleButton::open);
    connect(&FigureNotice::instance(), &FigureNotice::changed, this, [this] {
        if (!woods_.empty()) {
            show(std::vector<Wood>(woods_), wood_);
        }
    });
}

void RoleButton::show(const std::vector<Wood>& woods, int wood) {
    woods_ = woods;
    wood_ = wood;
    const Wood& shown = woods[static_cast<std::size_t>(wood)];
    setIcon(woodChip(shown, *this));
    const QString words = tr("%1: %2").arg(role_, inSentence(toQt(shown.name)));
    setAccessibleName(words);
    setToolTip(words);
}

void RoleButton::open() {
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    for (std::size_t i = 0; i < woods_.size(); ++i) {
        QAction* action = menu->addAction(woodChip(woods_[i], *this), toQt(woods_[i].name));
        const int wood = static_cast<int>(i);
        connect(action, &QAction::triggered, this, [this, wood] { Q_EMIT chosen(wood); });
        if (wood == wood_) {
            menu->setActiveAction(action);
        }
    }
    menu->popup(mapToGlobal(QPoint(0, height())));
}

RecipeForm::RecipeForm(Document& document, QWidget* before, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , before_(before)
    , column_(new QVBoxLayout(this))
    , name_(new QLabel(this))
    , about_(new WrappedLabel(this)) {
    column_->setContentsMargins(0, 8, 0, 0);
    column_->setSpacing(4);
    QFont bold = name_->font();
    bold.setWeight(QFont::DemiBold);
    name_->setFont(bold);
    name_->setObjectName(QStringLiteral("recipeName"));
    about_->setObjectName(QStringLiteral("recipeAbout"));
    column_->addWidget(name_);
    column_->addWidget(about_);
    connect(&document, &Document::replaced, this, [this] { lastName_.clear(); });
    connect(&document, &Document::projectChanged, this, &RecipeForm::refresh);
    refresh();
}

QString RecipeForm::change(const QString& what, int entry,
                           const std::function<void(Recipe&)>& how) {
    const Project& project = document_.project();
    if (!project.recipe) {
        return QString();
    }
    Recipe recipe = *project.recipe;
    how(recipe);
    recipe.step = ruleStep(project.notation.unit);
    const Result<Field> laid = layOut(recipe, project.notation);
    if (!laid) {
        return toQt(laid.fault().text());
    }
    const auto fault = document_.edit(what, entry, [&](Project& changed) {
        changed.board.field = *laid;
        changed.recipe = recipe;
    });
    return fault ? toQt(fault->text()) : QString();
}

void RecipeForm::watch(EntryField* field, Fields& fields, const QString& object) {
    field->setObjectName(object);
    field->line()->setObjectName(object + QStringLiteral("Entry"));
    field->setFaultNote(fields.words);
    connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
}

void RecipeForm::addCounts(Fields& fields, const PatternInfo& info) {
    const QString prefix = toQt(info.key) + QLatin1Char('-');
    for (std::size_t i = 0; i < info.counts.size(); ++i) {
        const PatternCount& count = info.counts[i];
        const QString name = toQt(say(count.name));
        auto* field = new CountField(
            name, count.least, count.greatest,
            [this, name, i](int value) {
                return change(tr("change %1").arg(inSentence(name)),
                              entry::recipe + static_cast<int>(i),
                              [i, value](Recipe& recipe) { recipe.counts[i] = value; });
            },
            fields.rows->body());
        watch(field, fields, prefix + toQt(count.key));
        field->setToolTip(name);
        fields.counts.push_back(field);
    }
    std::size_t next = 0;
    if (!info.together.empty()) {
        fields.rows->addRow(toQt(say(info.together)),
                            timesPair(fields.counts[0], fields.counts[1], fields.rows->body()));
        next = 2;
    }
    for (; next < fields.counts.size(); ++next) {
        fields.rows->addRow(toQt(say(info.counts[next].name)), fields.counts[next]);
    }
}

LengthField* RecipeForm::lengthField(Fields& fields, const PatternInfo& info, const QString& name,
                                     const QString& key, int entry,
                                     const std::function<void(Recipe&, Length)>& how) {
    auto* field = new LengthField(
        name,
        [this, name, entry, how](Length length) {
            return change(tr("change %1").arg(inSentence(name)), entry::recipe + entry,
                          [&](Recipe& recipe) { how(recipe, length); });
        },
        fields.rows->body());
    watch(field, fields, toQt(info.key) + QLatin1Char('-') + key);
    return field;
}

void RecipeForm::addLengths(Fields& fields, const PatternInfo& info) {
    for (std::size_t i = 0; i < info.lengths.size(); ++i) {
        const QString name = toQt(say(info.lengths[i].name));
        LengthField* field = lengthField(
            fields, info, name, toQt(info.lengths[i].key), lengthEntries + static_cast<int>(i),
            [i](Recipe& recipe, Length length) { recipe.lengths[i] = length; });
        field->setRange(BoardLimits::leastCell, BoardLimits::greatestCell);
        fields.lengths.push_back(field);
        fields.rows->addRow(name, field);
    }
    fields.width = lengthField(fields, info, tr("Field width"), QStringLiteral("width"), widthEntry,
                               [](Recipe& recipe, Length length) { recipe.width = length; });
    fields.height =
        lengthField(fields, info, tr("Field height"), QStringLiteral("height"), heightEntry,
                    [](Recipe& recipe, Length length) { recipe.height = length; });
    for (LengthField* field : {fields.width, fields.height}) {
        field->setRange(BoardLimits::leastCell, BoardLimits::greatestField);
        field->setToolTip(
            tr("The field is as large as equal parts on your rule allow, and never larger"));
    }
    fields.rows->addRow(tr("Field, at most"),
                        timesPair(fields.width, fields.height, fields.rows->body()));
}

void RecipeForm::addRoles(Fields& fields, const PatternInfo& info) {
    auto* all = new QWidget(fields.rows->body());
    auto* row = new QHBoxLayout(all);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(6);
    // A recipe from elsewhere may go on with more woods than the pattern has roles.
    for (std::size_t i = 0; i < static_cast<std::size_t>(RecipeLimits::woods); ++i) {
        QString role = tr("wood %1").arg(i + 1);
        if (i < info.roles.size()) {
            role = toQt(sayIn("wood of a pattern", info.roles[i]));
            if (std::count(info.roles.begin(), info.roles.end(), info.roles[i]) > 1) {
                role = tr("%1 %2").arg(role).arg(i + 1);
            }
        }
        auto* button = new RoleButton(role, all);
        button->setObjectName(toQt(info.key) + QStringLiteral("-wood%1").arg(i + 1));
        row->addWidget(button);
        connect(button, &RoleButton::chosen, this, [this, button, i](int wood) {
            change(tr("change wood (%1)").arg(inSentence(button->role())), entry::none,
                   [&](Recipe& recipe) {
                       // Woods repeat where there are fewer than roles.
                       const std::size_t given = recipe.woods.size();
                       while (recipe.woods.size() <= i) {
                           recipe.woods.push_back(recipe.woods[recipe.woods.size() % given]);
                       }
                       recipe.woods[i] = wood;
                   });
        });
        fields.roles.push_back(button);
    }
    row->addStretch(1);
    all->setFocusProxy(fields.roles.front());
    fields.rows->addRow(info.roles.size() == 1 ? tr("Wood") : tr("Woods"), all);
}

void RecipeForm::joinTabs(const Fields& fields) {
    QWidget* last = before_;
    const auto next = [&last](QWidget* widget) {
        setTabOrder(last, widget);
        last = widget;
    };
    for (CountField* field : fields.counts) {
        next(field->line());
    }
    for (LengthField* field : fields.lengths) {
        next(field->line());
    }
    next(fields.width->line());
    next(fields.height->line());
    for (RoleButton* button : fields.roles) {
        next(button);
    }
}

RecipeForm::Fields& RecipeForm::fieldsOf(Pattern pattern) {
    Fields& fields = fields_[pattern];
    if (fields.rows == nullptr) {
        const PatternInfo& info = patternInfo(pattern);
        fields.rows = new FormSection(QString(), false, this);
        fields.rows->head()->hide();
        fields.rows->setLabelWidth(104);
        fields.words = new FaultNote(fields.rows->body());
        addCounts(fields, info);
        addLengths(fields, info);
        addRoles(fields, info);
        fields.rows->add(fields.words);
        column_->addWidget(fields.rows);
        joinTabs(fields);
    }
    return fields;
}

void RecipeForm::refresh() {
    const Project& project = document_.project();
    for (auto& [pattern, fields] : fields_) {
        fields.rows->setVisible(project.recipe && pattern == project.recipe->pattern);
    }
    if (!project.recipe) {
        name_->setText(tr("Free field"));
        about_->setText(lastName_.isEmpty()
                            ? tr("Painted or changed by hand. Pick a pattern to lay it anew.")
                            : tr("Changed by hand, so it is no longer laid out as %1. Undo brings "
                                 "that back; picking a pattern lays the field anew.")
                                  .arg(inSentence(lastName_)));
        about_->show();
        return;
    }
    const Recipe& recipe = *project.recipe;
    const PatternInfo& info = patternInfo(recipe.pattern);
    lastName_ = toQt(say(info.name));
    name_->setText(lastName_);
    about_->hide();
    Fields& fields = fieldsOf(recipe.pattern);
    fields.rows->show();
    for (std::size_t i = 0; i < fields.counts.size(); ++i) {
        fields.counts[i]->setValue(recipe.counts[i]);
    }
    const auto show = [&project](LengthField* field, Length length) {
        field->setNotation(project.notation);
        field->setValue(length);
    };
    for (std::size_t i = 0; i < fields.lengths.size(); ++i) {
        show(fields.lengths[i], recipe.lengths[i]);
    }
    show(fields.width, recipe.width);
    show(fields.height, recipe.height);
    for (std::size_t i = 0; i < fields.roles.size(); ++i) {
        fields.roles[i]->show(project.woods, recipe.woods[i % recipe.woods.size()]);
        fields.roles[i]->setVisible(i < std::max(info.roles.size(), recipe.woods.size()));
    }
}

}  // namespace kerfwright
