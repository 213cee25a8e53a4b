#include "ui/window/woodform.h"

#include "ui/document/text.h"
#include "ui/window/countfield.h"
#include "ui/window/lengthfield.h"
#include "ui/window/textfield.h"
#include "ui/window/tones.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QScreen>

#include <cmath>

namespace kerfwright {

namespace {

constexpr int formWidth = 316;
const Length leastTimber = Length::mm(1);
const Length greatestTimber = Length::mm(2000);

}  // namespace

WoodForm::WoodForm(Document& document, int wood, QWidget* parent)
    : QFrame(parent, Qt::Popup)
    , document_(document)
    , wood_(wood)
    , thickness_(new LengthField(
          tr("Timber thickness"),
          [this](Length length) {
              return change(tr("change timber thickness"), 0,
                            [length](Wood& changed) { changed.timber.thickness = length; });
          },
          this))
    , width_(new LengthField(
          tr("Timber width"),
          [this](Length length) {
              return change(tr("change timber width"), 1,
                            [length](Wood& changed) { changed.timber.width = length; });
          },
          this))
    , letter_(new TextField(
          tr("Letter"),
          [this](const QString& text) {
              return change(tr("change letter"), 2,
                            [&text](Wood& changed) { changed.letter = fromQt(text.trimmed()); });
          },
          this))
    , density_(new CountField(
          tr("Density"), 0, static_cast<int>(WoodLimits::density),
          [this](int density) {
              return change(tr("change density"), 3,
                            [density](Wood& changed) { changed.density = density; });
          },
          this)) {
    setObjectName(QStringLiteral("woodForm"));
    setAttribute(Qt::WA_DeleteOnClose);
    const QString name = toQt(document.project().woods[static_cast<std::size_t>(wood)].name);
    setAccessibleName(tr("Timber of %1").arg(name.toLower()));
    setFixedWidth(formWidth);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(16, 14, 16, 16);
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(8);
    grid->setColumnStretch(1, 1);
    auto* head = new QLabel(name, this);
    QFont bold = head->font();
    bold.setBold(true);
    head->setFont(bold);
    grid->addWidget(head, 0, 0, 1, 2);
    auto* why = new QLabel(tr("The greatest section of rough timber that you can get. What is "
                              "larger is divided: its joints are drawn dashed on the board."),
                           this);
    why->setObjectName(QStringLiteral("woodFormWhy"));
    why->setWordWrap(true);
    why->setForegroundRole(QPalette::PlaceholderText);
    grid->addWidget(why, 1, 0, 1, 2);
    thickness_->setRange(leastTimber, greatestTimber);
    width_->setRange(leastTimber, greatestTimber);
    letter_->setToolTip(tr("One or two capitals that stand for the wood where there is no colour"));
    density_->setToolTip(tr("At 12 % moisture, for the weight; 0 where you do not know it"));
    addRow(grid, tr("Thickness"), thickness_, "timberThickness");
    addRow(grid, tr("Width"), width_, "timberWidth");
    addRow(grid, tr("Letter"), letter_, "woodLetter");
    addRow(grid, tr("Density, kg/m³"), density_, "woodDensity");
    connect(&document, &Document::projectChanged, this, &WoodForm::refresh);
    refresh();
}

void WoodForm::addRow(QGridLayout* grid, const QString& label, EntryField* field,
                      const char* name) {
    const int row = grid->rowCount();
    field->setObjectName(QString::fromLatin1(name));
    field->line()->setObjectName(QString::fromLatin1(name) + QStringLiteral("Entry"));
    auto* words = new QLabel(label, this);
    words->setBuddy(field);
    grid->addWidget(words, row, 0, Qt::AlignTop);
    words->setMinimumHeight(field->line()->sizeHint().height());
    grid->addWidget(field, row, 1);
    connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
}

QString WoodForm::change(const QString& what, int which, const std::function<void(Wood&)>& how) {
    const auto fault = document_.edit(
        what, entry::wood + wood_ * entry::woodEntries + which,
        [&](Project& project) { how(project.woods[static_cast<std::size_t>(wood_)]); });
    return fault ? toQt(fault->text()) : QString();
}

void WoodForm::refresh() {
    const Project& project = document_.project();
    if (static_cast<std::size_t>(wood_) >= project.woods.size()) {
        close();  // undone away
        return;
    }
    const Wood& wood = project.woods[static_cast<std::size_t>(wood_)];
    for (LengthField* field : {thickness_, width_}) {
        field->setNotation(project.notation);
    }
    thickness_->setValue(wood.timber.thickness);
    width_->setValue(wood.timber.width);
    letter_->setValue(toQt(wood.letter));
    density_->setValue(static_cast<int>(std::lround(wood.density)));
}

void WoodForm::openBeside(QWidget* button) {
    adjustSize();
    const QRect screen = button->screen()->availableGeometry();
    QPoint at = button->mapToGlobal(QPoint(0, button->height() + 4));
    if (at.y() + height() > screen.bottom()) {
        at.setY(std::max(screen.top() + 4, button->mapToGlobal(QPoint()).y() - height() - 4));
    }
    at.setX(std::clamp(at.x(), screen.left() + 4,
                       std::max(screen.left() + 4, screen.right() - width() - 4)));
    move(at);
    show();
    thickness_->focusEntry();
}

bool WoodForm::event(QEvent* event) {
    const bool done = QFrame::event(event);
    if (event->type() == QEvent::LayoutRequest) {
        adjustSize();  // the words of a fault want room
    }
    return done;
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
