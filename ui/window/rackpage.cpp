#include "ui/window/rackpage.h"

#include "core/timber/rackcsv.h"
#include "core/timber/racklabels.h"
#include "ui/document/text.h"
#include "ui/paint/export.h"
#include "ui/window/dialogs.h"
#include "ui/window/icons.h"
#include "ui/window/plankeditor.h"
#include "ui/window/racklist.h"
#include "ui/window/wrappedlabel.h"

#include <QFile>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QMenu>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

QString tableFilter() {
    return RackPage::tr("Rack as a table (*.csv);;All files (*)");
}

}  // namespace

RackPage::RackPage(Document& document, Sawyer& sawyer, Dialogs& dialogs, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , sawyer_(sawyer)
    , dialogs_(dialogs)
    , add_(new QPushButton(tr("Add plank"), this))
    , more_(new QToolButton(this))
    , count_(new QLabel(this))
    , list_(new RackList(this))
    , empty_(emptyPlace()) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(16, 0, 16, 0);
    row->setSpacing(8);
    add_->setObjectName(QStringLiteral("addPlank"));
    add_->setIcon(lineIcon(QStringLiteral("add")));
    add_->setAutoDefault(false);
    more_->setObjectName(QStringLiteral("rackMenu"));
    more_->setText(tr("Planks"));
    more_->setAccessibleName(tr("What to do with planks"));
    more_->setPopupMode(QToolButton::InstantPopup);
    more_->setToolButtonStyle(Qt::ToolButtonTextOnly);
    more_->setAutoRaise(true);
    more_->setFocusPolicy(Qt::StrongFocus);
    count_->setForegroundRole(QPalette::PlaceholderText);
    count_->setObjectName(QStringLiteral("rackCount"));
    row->addWidget(add_);
    row->addWidget(more_);
    row->addStretch(1);
    row->addWidget(count_);
    column->addLayout(row);
    column->addWidget(list_, 1);
    column->addWidget(empty_, 1);
    auto* menu = new QMenu(more_);
    more_->setMenu(menu);
    const auto action = [&](const QString& text, const char* name, auto run) {
        QAction* made = menu->addAction(text);
        made->setObjectName(QString::fromLatin1(name));
        connect(made, &QAction::triggered, this, run);
        return made;
    };
    edit_ = action(tr("Edit and mark defects…"), "editPlank", [this] {
        const auto rows = list_->chosenRows();
        if (!rows.empty()) {
            edit(rows.front());
        }
    });
    duplicate_ = action(tr("Duplicate"), "duplicatePlank", [this] { duplicate(); });
    remove_ = action(tr("Remove"), "removePlank", [this] { remove(); });
    menu->addSeparator();
    action(tr("Take planks from a rack file (CSV)…"), "takePlanks", [this] { takeFromFile(); });
    write_ = action(tr("Write rack file (CSV)…"), "writeRack", [this] { writeFile(); });
    menu->addSeparator();
    putBack_ = action(tr("Cut: put the kept offcuts back on the rack"), "putOffcutsBack",
                      [this] { putOffcutsBack(); });
    list_->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(list_, &QWidget::customContextMenuRequested, this,
            [this, menu](QPoint at) { menu->popup(list_->viewport()->mapToGlobal(at)); });
    connect(add_, &QPushButton::clicked, this, &RackPage::addPlank);
    connect(list_, &RackList::editAsked, this, &RackPage::edit);
    connect(list_, &RackList::removeAsked, this, &RackPage::remove);
    connect(list_, &RackList::duplicateAsked, this, &RackPage::duplicate);
    connect(list_->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &RackPage::refresh);
    connect(&document, &Document::projectChanged, this, &RackPage::refresh);
    connect(&sawyer, &Sawyer::changed, this, &RackPage::refresh);
    refresh();
}

QWidget* RackPage::emptyPlace() {
    auto* place = new QWidget(this);
    auto* column = new QVBoxLayout(place);
    column->setContentsMargins(24, 24, 24, 24);
    column->setSpacing(10);
    auto* words = new WrappedLabel(place);
    words->setObjectName(QStringLiteral("rackEmpty"));
    words->setText(tr("No planks yet. Measure what stands on your rack and add it plank by plank, "
                      "or take a table of planks from a file. Then every strip is laid out on "
                      "them, round knots and cracks."));
    column->addWidget(words);
    const auto add = [&](const QString& text, const char* name, auto run) {
        auto* button = new QPushButton(text, place);
        button->setObjectName(QString::fromLatin1(name));
        button->setAutoDefault(false);
        column->addWidget(button, 0, Qt::AlignLeft);
        connect(button, &QPushButton::clicked, this, run);
    };
    add(tr("Add the first plank"), "firstPlank", [this] { addPlank(); });
    add(tr("Take planks from a rack file (CSV)…"), "firstFile", [this] { takeFromFile(); });
    add(tr("Only a shopping list"), "onlyShopping", [this] { Q_EMIT shoppingAsked(); });
    auto* columns = new WrappedLabel(place);
    columns->setForegroundRole(QPalette::PlaceholderText);
    columns->setText(
        tr("The table has one row a kind of plank and these columns: wood, thickness, width, "
           "length; and where wanted label, count, price, offcut, defects, note. Name the unit in "
           "the heading: “width mm”."));
    column->addWidget(columns);
    column->addStretch(1);
    return place;
}

void RackPage::refresh() {
    const Project& project = document_.project();
    const Rack& rack = project.timber.rack;
    list_->setProject(document_.snapshot());
    const bool any = !rack.planks.empty();
    list_->setVisible(any);
    empty_->setVisible(!any);
    Volume all;
    for (const Plank& plank : rack.planks) {
        all += volume(plank.thickness, plank.width, plank.length);
    }
    count_->setText(
        any ? counted(static_cast<qsizetype>(rack.planks.size()), tr("%1 plank"), tr("%1 planks")) +
                  QStringLiteral(" · ") + toQt(formatVolume(all, project.notation.unit))
            : QString());
    const bool chosen = !list_->chosenRows().empty();
    for (QAction* action : {edit_, duplicate_, remove_}) {
        action->setEnabled(chosen);
    }
    write_->setEnabled(any);
    const SawnPtr sawn = sawyer_.last();
    putBack_->setEnabled(sawyer_.state() == Sawyer::State::Current && sawn &&
                         !sawn->plan.layout.planks.empty());
}

bool RackPage::change(const QString& what, const std::function<void(Rack&)>& how) {
    document_.endSession();
    const auto fault =
        document_.edit(what, entry::none, [&](Project& project) { how(project.timber.rack); });
    document_.endSession();
    if (fault) {
        dialogs_.tell(this, tr("The rack stays as it was"), toQt(fault->text()));
    }
    return !fault;
}

PlankEditor* RackPage::openEditor(const Plank& plank, int row) {
    const Project& project = document_.project();
    std::vector<std::string> others;
    for (std::size_t i = 0; i < project.timber.rack.planks.size(); ++i) {
        if (static_cast<int>(i) != row) {
            others.push_back(project.timber.rack.planks[i].label);
        }
    }
    auto* editor = new PlankEditor(plank, std::move(others), project.woods, project.notation,
                                   toQt(project.currency), this);
    editor->open();
    return editor;
}

void RackPage::addPlank() {
    const Project& project = document_.project();
    const bool inches = project.notation.unit == Unit::Inches;
    Plank plank;
    if (!project.timber.rack.planks.empty()) {
        plank = project.timber.rack.planks.back();
        plank.defects.clear();
        plank.note.clear();
        plank.isOffcut = false;
    } else {
        plank.wood = project.woods.front().key;
        plank.thickness = inches ? Length::inch(5, 4) : Length::mm(32);
        plank.width = inches ? Length::inch(6) : Length::mm(150);
        plank.length = inches ? Length::inch(72) : Length::mm(1800);
    }
    // What is missing is most likely what he has in his hand.
    const SawnPtr sawn = sawyer_.last();
    if (sawyer_.state() == Sawyer::State::Current && sawn && !sawn->plan.shopping.lines.empty()) {
        const ShoppingLine& missing = sawn->plan.shopping.lines.front();
        plank.wood = missing.wood;
        plank.thickness = missing.thickness;
        plank.width = missing.width;
        plank.length = missing.length;
    }
    plank.label = nextLabel(project.timber.rack);
    connect(openEditor(plank, -1), &PlankEditor::kept, this, [this](const Plank& kept) {
        if (change(tr("add plank"), [&](Rack& rack) { rack.planks.push_back(kept); })) {
            list_->choose(list_->count() - 1);
        }
    });
}

void RackPage::edit(int row) {
    const auto index = static_cast<std::size_t>(row);
    const std::vector<Plank>& planks = document_.project().timber.rack.planks;
    if (row < 0 || index >= planks.size()) {
        return;
    }
    const std::string before = planks[index].label;
    connect(openEditor(planks[index], row), &PlankEditor::kept, this,
            [this, before](const Plank& kept) {
                change(tr("edit plank"), [&](Rack& rack) {
                    for (Plank& plank : rack.planks) {
                        if (plank.label == before) {
                            plank = kept;
                            return;
                        }
                    }
                });
            });
}

void RackPage::duplicate() {
    const std::vector<int> rows = list_->chosenRows();
    if (rows.empty()) {
        return;
    }
    if (change(tr("duplicate plank"), [&](Rack& rack) {
            for (const int row : rows) {
                Plank copy = rack.planks[static_cast<std::size_t>(row)];
                copy.label = nextLabel(rack);
                copy.defects.clear();  // its twin has knots of its own
                rack.planks.push_back(std::move(copy));
            }
        })) {
        list_->choose(list_->count() - 1);
    }
}

void RackPage::remove() {
    const std::vector<int> rows = list_->chosenRows();
    if (rows.empty()) {
        return;
    }
    change(rows.size() == 1 ? tr("remove plank") : tr("remove planks"), [&](Rack& rack) {
        for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
            rack.planks.erase(rack.planks.begin() + *row);
        }
    });
}

void RackPage::takeFromFile() {
    const QString path =
        dialogs_.fileToRead(this, tr("Take planks from a rack file"), tableFilter());
    if (path.isEmpty()) {
        return;
    }
    const QString name = QFileInfo(path).fileName();
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        dialogs_.tell(this, tr("No planks taken"),
                      tr("“%1” could not be read: %2.").arg(name, file.errorString()));
        return;
    }
    const Result<Rack> read = rackFromCsv(file.readAll().toStdString());
    if (!read.ok()) {
        dialogs_.tell(this, tr("No planks taken from “%1”").arg(name), toQt(read.fault().text()));
        return;
    }
    qsizetype renamed = 0;
    const auto count = static_cast<qsizetype>(read->planks.size());
    if (!change(tr("take planks from a file"),
                [&](Rack& rack) { renamed = addPlanks(rack, *read); })) {
        return;
    }
    QString words =
        counted(count, tr("%1 plank taken from “%2”"), tr("%1 planks taken from “%2”")).arg(name);
    if (renamed > 0) {
        words += QStringLiteral("; ") +
                 counted(renamed, tr("%1 got another label"), tr("%1 got other labels"));
    }
    Q_EMIT told(words);
}

void RackPage::writeFile() {
    QString path =
        dialogs_.fileToWrite(this, tr("Write the rack to a file"), tr("rack.csv"), tableFilter());
    if (path.isEmpty()) {
        return;
    }
    if (QFileInfo(path).suffix().isEmpty()) {
        path += QStringLiteral(".csv");
    }
    const Project& project = document_.project();
    const std::string table = rackToCsv(project.timber.rack, project.notation.unit);
    const QString fault =
        writeFileAtomically(path, QByteArray(table.data(), static_cast<qsizetype>(table.size())));
    if (fault.isEmpty()) {
        Q_EMIT told(tr("Wrote the rack to “%1”").arg(QFileInfo(path).fileName()));
    } else {
        dialogs_.tell(this, tr("The rack was not written"), fault);
    }
}

void RackPage::putOffcutsBack() {
    const SawnPtr sawn = sawyer_.last();
    if (sawyer_.state() != Sawyer::State::Current || !sawn) {
        Q_EMIT told(tr("The layout of this board is not ready yet."));
        return;
    }
    const Layout& layout = sawn->plan.layout;
    // Planks without a price of their own stay without: the plan's have that of their wood.
    TimberPlan plan = sawn->plan;
    plan.rack = document_.project().timber.rack;
    const Rack after = rackAfter(plan);
    qsizetype offcuts = 0;
    for (const PlankCuts& cuts : layout.planks) {
        offcuts += static_cast<qsizetype>(cuts.offcuts.size());
    }
    if (change(tr("cut planks and keep offcuts"), [&](Rack& rack) { rack = after; })) {
        Q_EMIT told(counted(static_cast<qsizetype>(layout.planks.size()),
                            tr("%1 plank left the rack"), tr("%1 planks left the rack")) +
                    QStringLiteral(", ") +
                    counted(offcuts, tr("%1 offcut came in."), tr("%1 offcuts came in.")) +
                    tr(" Undo takes it back."));
    }
}

}  // namespace kerfwright
