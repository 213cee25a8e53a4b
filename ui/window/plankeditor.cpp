#include "ui/window/plankeditor.h"

#include "ui/document/text.h"
#include "ui/window/formsection.h"
#include "ui/window/helpwindow.h"
#include "ui/window/lengthfield.h"
#include "ui/window/plankcanvas.h"
#include "ui/window/quietcombo.h"
#include "ui/window/textfield.h"
#include "ui/window/tones.h"
#include "ui/window/woodchip.h"
#include "ui/window/wrappedlabel.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

const Length leastPlankSize = Length::mm(1);

}  // namespace

PlankEditor::PlankEditor(const Plank& plank, std::vector<std::string> others,
                         const std::vector<Wood>& woods, const Notation& notation,
                         const QString& currency, QWidget* parent)
    : QDialog(parent)
    , plank_(plank)
    , others_(std::move(others))
    , woods_(woods)
    , notation_(notation)
    , canvas_(new PlankCanvas(this))
    , hint_(new WrappedLabel(this))
    , fault_(new WrappedLabel(this)) {
    setObjectName(QStringLiteral("plankEditor"));
    addHelpKey(*this);
    setWindowTitle(tr("Plank"));
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowModality(Qt::WindowModal);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(20, 16, 20, 16);
    all->setSpacing(10);
    all->addWidget(canvas_, 1);
    hint_->setForegroundRole(QPalette::PlaceholderText);
    hint_->setText(tr("Drag over the wood to mark a knot, a crack or a stain: no strip is laid "
                      "there. Keys: Insert adds one, arrows move it, Shift and arrows resize it."));
    all->addWidget(hint_);
    auto* columns = new QHBoxLayout;
    columns->setSpacing(28);
    auto* left = new FormSection(tr("Plank"), false, this);
    left->setLabelWidth(84);
    auto* right = new FormSection(tr("Defects"), false, this);
    right->setLabelWidth(96);
    buildForm(left, currency);
    buildDefects(right);
    columns->addWidget(left, 1, Qt::AlignTop);
    columns->addWidget(right, 1, Qt::AlignTop);
    all->addLayout(columns);
    fault_->setObjectName(QStringLiteral("plankFault"));
    QPalette danger = fault_->palette();
    danger.setColor(QPalette::WindowText, tonesOf(palette()).danger);
    fault_->setPalette(danger);
    fault_->hide();
    all->addWidget(fault_);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    auto* cancel = new QPushButton(tr("Cancel"), this);
    auto* done = new QPushButton(tr("Keep plank"), this);
    cancel->setObjectName(QStringLiteral("plankCancel"));
    cancel->setAutoDefault(false);
    done->setObjectName(QStringLiteral("plankKeep"));
    done->setDefault(true);
    row->addWidget(cancel);
    row->addWidget(done);
    all->addLayout(row);
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    connect(done, &QPushButton::clicked, this, &PlankEditor::keep);
    connect(canvas_, &PlankCanvas::added, this, &PlankEditor::addDefect);
    connect(canvas_, &PlankCanvas::moved, this, [this](int defect, const Defect& to) {
        plank_.defects[static_cast<std::size_t>(defect)] = to;
        refresh();
    });
    connect(canvas_, &PlankCanvas::removed, this, &PlankEditor::removeDefect);
    connect(canvas_, &PlankCanvas::chosenChanged, this, [this](int defect) {
        const QSignalBlocker quiet(defects_);
        defects_->setCurrentRow(defect);
        refreshDefect();
    });
    refresh();
    resize(720, 600);
}

LengthField* PlankEditor::lengthField(FormSection* form, const QString& label, const char* name,
                                      Length least, Length greatest, Length Plank::*part) {
    auto* field = new LengthField(
        label,
        [this, part](Length length) {
            plank_.*part = length;
            refresh();
            return QString();
        },
        form->body());
    field->setObjectName(QString::fromLatin1(name));
    field->line()->setObjectName(QString::fromLatin1(name) + QStringLiteral("Entry"));
    field->setNotation(notation_);
    field->setRange(least, greatest);
    form->addRow(label, field);
    return field;
}

void PlankEditor::buildForm(FormSection* form, const QString& currency) {
    label_ = new TextField(
        tr("Label"),
        [this](const QString& text) {
            plank_.label = fromQt(text);
            return QString();
        },
        form->body());
    label_->setObjectName(QStringLiteral("plankLabel"));
    label_->line()->setObjectName(QStringLiteral("plankLabelEntry"));
    form->addRow(tr("Label"), label_);
    wood_ = new QuietCombo(tr("Wood"), form->body());
    wood_->setObjectName(QStringLiteral("plankWood"));
    const auto offer = [this](const Wood& wood, const std::string& name) {
        if (wood_->findData(toQt(wood.key)) < 0) {
            wood_->addItem(woodChip(wood, *this), toQt(name), toQt(wood.key));
        }
    };
    for (const Wood& wood : woods_) {
        offer(wood, wood.name);
    }
    for (const Wood& wood : woodCatalogue()) {
        offer(wood, spokenName(wood));
    }
    form->addRow(tr("Wood"), wood_);
    connect(wood_, &QComboBox::activated, this, [this](int index) {
        plank_.wood = fromQt(wood_->itemData(index).toString());
        refresh();
    });
    thickness_ = lengthField(form, tr("Thickness"), "plankThickness", leastPlankSize,
                             RackLimits::thickness, &Plank::thickness);
    width_ = lengthField(form, tr("Width"), "plankWidth", leastPlankSize, RackLimits::width,
                         &Plank::width);
    length_ = lengthField(form, tr("Length"), "plankLength", leastPlankSize, RackLimits::length,
                          &Plank::length);
    price_ = new TextField(
        tr("Price"),
        [this](const QString& text) {
            if (text.trimmed().isEmpty()) {
                plank_.price = 0;
                return QString();
            }
            const Result<std::int64_t> read =
                parseMoney(fromQt(text.trimmed()), fromQt(tr("Price")));
            if (!read.ok()) {
                return toQt(read.fault().text());
            }
            plank_.price = *read;
            return QString();
        },
        form->body());
    price_->setObjectName(QStringLiteral("plankPrice"));
    price_->line()->setObjectName(QStringLiteral("plankPriceEntry"));
    price_->line()->setPlaceholderText(tr("of the wood, by volume"));
    form->addRow(currency.isEmpty() ? tr("Price") : tr("Price, %1").arg(currency), price_);
    note_ = new TextField(
        tr("Note"),
        [this](const QString& text) {
            plank_.note = fromQt(text);
            return QString();
        },
        form->body());
    note_->setObjectName(QStringLiteral("plankNote"));
    form->addRow(tr("Note"), note_);
    offcut_ = new QCheckBox(tr("Offcut of an earlier project: use it first"), form->body());
    offcut_->setObjectName(QStringLiteral("plankOffcut"));
    form->add(offcut_);
    connect(offcut_, &QCheckBox::toggled, this, [this](bool on) { plank_.isOffcut = on; });
}

LengthField* PlankEditor::defectField(const QString& label, const char* name,
                                      Length Defect::*part) {
    auto* field = new LengthField(
        label,
        [this, part](Length length) {
            const int row = defects_->currentRow();
            if (row >= 0) {
                plank_.defects[static_cast<std::size_t>(row)].*part = length;
                refresh();
            }
            return QString();
        },
        place_);
    field->setObjectName(QString::fromLatin1(name));
    field->line()->setObjectName(QString::fromLatin1(name) + QStringLiteral("Entry"));
    field->setNotation(notation_);
    fields_.emplace_back(field, part);
    return field;
}

void PlankEditor::buildDefects(FormSection* form) {
    defects_ = new QListWidget(form->body());
    defects_->setObjectName(QStringLiteral("defects"));
    defects_->setAccessibleName(tr("Defects"));
    defects_->setFixedHeight(104);
    form->add(defects_);
    connect(defects_, &QListWidget::currentRowChanged, this,
            [this](int row) { canvas_->choose(row); });
    auto* buttons = new QWidget(form->body());
    auto* row = new QHBoxLayout(buttons);
    row->setContentsMargins(0, 0, 0, 0);
    add_ = new QPushButton(tr("Add defect"), buttons);
    add_->setObjectName(QStringLiteral("addDefect"));
    add_->setAutoDefault(false);
    remove_ = new QPushButton(tr("Remove"), buttons);
    remove_->setObjectName(QStringLiteral("removeDefect"));
    remove_->setAccessibleName(tr("Remove defect"));
    remove_->setAutoDefault(false);
    row->addWidget(add_);
    row->addWidget(remove_);
    row->addStretch(1);
    form->add(buttons);
    connect(add_, &QPushButton::clicked, this, [this] {
        const Length side =
            std::min(notation_.unit == Unit::Inches ? Length::inch(1) : Length::mm(30),
                     std::min(plank_.width, plank_.length));
        addDefect({half(plank_.length - side), half(plank_.width - side), side, side});
        defects_->setCurrentRow(defects_->count() - 1);
    });
    connect(remove_, &QPushButton::clicked, this, [this] { removeDefect(defects_->currentRow()); });
    place_ = new QWidget(form->body());
    auto* grid = new QGridLayout(place_);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(10);
    const auto put = [&](int line, int column, const QString& words, LengthField* field) {
        auto* label = new QLabel(words, place_);
        label->setBuddy(field->line());
        label->setForegroundRole(QPalette::PlaceholderText);
        grid->addWidget(label, line * 2, column);
        grid->addWidget(field, line * 2 + 1, column, Qt::AlignTop);
        grid->setColumnStretch(column, 1);
    };
    put(0, 0, tr("From the left end"), defectField(tr("From the left end"), "defectX", &Defect::x));
    put(0, 1, tr("From the lower edge"),
        defectField(tr("From the lower edge"), "defectY", &Defect::y));
    put(1, 0, tr("Length"), defectField(tr("Defect length"), "defectLength", &Defect::length));
    put(1, 1, tr("Width"), defectField(tr("Defect width"), "defectWidth", &Defect::width));
    form->add(place_);
}

void PlankEditor::addDefect(const Defect& defect) {
    if (plank_.defects.size() >= RackLimits::defects) {
        return;
    }
    plank_.defects.push_back(defect);
    refresh();
}

void PlankEditor::removeDefect(int defect) {
    if (defect >= 0 && defect < static_cast<int>(plank_.defects.size())) {
        plank_.defects.erase(plank_.defects.begin() + defect);
        refresh();
    }
}

void PlankEditor::refresh() {
    label_->setValue(toQt(plank_.label));
    wood_->setCurrentIndex(wood_->findData(toQt(plank_.wood)));
    thickness_->setValue(plank_.thickness);
    width_->setValue(plank_.width);
    length_->setValue(plank_.length);
    price_->setValue(plank_.price > 0 ? toQt(formatMoney(plank_.price)) : QString());
    note_->setValue(toQt(plank_.note));
    const QSignalBlocker still(offcut_);
    offcut_->setChecked(plank_.isOffcut);
    canvas_->show(plank_, woods_, notation_);
    const QSignalBlocker quiet(defects_);
    const int row = canvas_->chosen();
    defects_->clear();
    for (const Defect& defect : plank_.defects) {
        defects_->addItem(tr("%1 × %2 at %3, %4")
                              .arg(toQt(formatBare(defect.length, notation_)),
                                   toQt(formatBare(defect.width, notation_)),
                                   toQt(formatBare(defect.x, notation_)),
                                   toQt(format(defect.y, notation_))));
    }
    defects_->setCurrentRow(row);
    add_->setEnabled(plank_.defects.size() < RackLimits::defects);
    refreshDefect();
}

void PlankEditor::refreshDefect() {
    const int row = canvas_->chosen();
    const bool any = row >= 0 && row < static_cast<int>(plank_.defects.size());
    remove_->setEnabled(any);
    place_->setEnabled(any);
    const Defect defect = any ? plank_.defects[static_cast<std::size_t>(row)] : Defect();
    for (const auto& [field, part] : fields_) {
        field->setValue(defect.*part);
    }
}

void PlankEditor::keep() {
    std::vector<Fault> found = faults(plank_, "Plank", notation_);
    if (found.empty() && std::find(others_.begin(), others_.end(), plank_.label) != others_.end()) {
        found.push_back({"Label", "must differ from those of the other planks", plank_.label});
    }
    if (!found.empty()) {
        fault_->setText(toQt(found.front().text()));
        fault_->show();
        return;
    }
    Q_EMIT kept(plank_);
    accept();
}

}  // namespace kerfwright
