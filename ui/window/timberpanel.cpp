#include "ui/window/timberpanel.h"

#include "core/sheets/cutwords.h"
#include "core/timber/timberwords.h"
#include "ui/document/text.h"
#include "ui/window/boardspage.h"
#include "ui/window/buypage.h"
#include "ui/window/cutsview.h"
#include "ui/window/racklist.h"
#include "ui/window/rackpage.h"
#include "ui/window/sawingform.h"
#include "ui/window/segmented.h"
#include "ui/window/spotlight.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"
#include "ui/window/wrappedlabel.h"

#include <QHBoxLayout>
#include <QProgressBar>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {}  // namespace

TimberPanel::TimberPanel(Document& document, Sawyer& sawyer, Spotlight& spotlight, Dialogs& dialogs,
                         QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , sawyer_(sawyer)
    , spotlight_(spotlight)
    , pages_(
          new Segmented(tr("Timber"), {tr("Rack"), tr("Cuts"), tr("Shopping"), tr("Boards")}, this))
    , words_(new WrappedLabel(this))
    , shortage_(new WrappedLabel(this))
    , progress_(new QProgressBar(this))
    , stop_(new QPushButton(tr("Stop here"), this))
    , stack_(new QStackedWidget(this))
    , rack_(new RackPage(document, sawyer, dialogs, stack_))
    , cuts_(new CutsView(stack_))
    , buy_(new BuyPage(document, sawyer, stack_))
    , boards_(new BoardsPage(document, stack_)) {
    pages_->setObjectName(QStringLiteral("timberPages"));
    words_->setObjectName(QStringLiteral("timberWords"));
    shortage_->setObjectName(QStringLiteral("shortage"));
    stop_->setObjectName(QStringLiteral("stopSawing"));
    stop_->setToolTip(tr("Keep the best layout so far"));
    stop_->setAutoDefault(false);
    progress_->setObjectName(QStringLiteral("sawingProgress"));
    progress_->setRange(0, 100);
    progress_->setTextVisible(false);
    progress_->setMaximumHeight(6);
    progress_->setAccessibleName(tr("How far the layout is"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 12, 0, 0);
    column->setSpacing(6);
    auto* top = new QVBoxLayout;
    top->setContentsMargins(16, 0, 16, 0);
    top->setSpacing(6);
    top->addWidget(pages_);
    words_->setContentsMargins(4, 4, 0, 0);
    shortage_->setContentsMargins(4, 0, 0, 0);
    top->addWidget(words_);
    top->addWidget(shortage_);
    auto* row = new QHBoxLayout;
    row->addWidget(progress_, 1);
    row->addWidget(stop_);
    top->addLayout(row);
    column->addLayout(top);
    stack_->addWidget(rack_);
    stack_->addWidget(cutsPage());
    stack_->addWidget(buy_);
    stack_->addWidget(boards_);
    column->addWidget(stack_, 1);
    connect(pages_, &Segmented::chosen, this,
            [this](int index) { showPage(static_cast<Page>(index)); });
    connect(stop_, &QPushButton::clicked, this, [this] { sawyer_.stop(); });
    connect(rack_, &RackPage::told, this, &TimberPanel::told);
    connect(rack_, &RackPage::shoppingAsked, this, [this] { showPage(Buy); });
    connect(boards_, &BoardsPage::told, this, &TimberPanel::told);
    connect(boards_, &BoardsPage::sampleAsked, this, &TimberPanel::sampleAsked);
    connect(cuts_, &CutsView::pinAsked, this, &TimberPanel::pin);
    connect(cuts_, &CutsView::unpinAsked, this, &TimberPanel::unpin);
    connect(cuts_, &CutsView::stripChosen, this, [this](const QString& strip) {
        spotlight_.choose({Subject::Kind::Part, -1, fromQt(strip)});
    });
    const auto choosePlank = [this](const QString& plank) {
        spotlight_.choose({Subject::Kind::Plank, -1, fromQt(plank)});
    };
    connect(cuts_, &CutsView::plankChosen, this, choosePlank);
    connect(rack_->list(), &RackList::plankChosen, this, choosePlank);
    connect(cuts_, &CutsView::left, &spotlight, &Spotlight::letGo);
    connect(&spotlight, &Spotlight::changed, this, &TimberPanel::follow);
    connect(unpin_, &QPushButton::clicked, this, [this] { unpin(QString()); });
    connect(print_, &QPushButton::clicked, this, &TimberPanel::sheetsAsked);
    connect(&sawyer, &Sawyer::changed, this, &TimberPanel::refresh);
    connect(&document, &Document::projectChanged, this, &TimberPanel::refresh);
    showPage(document.project().timber.rack.planks.empty() ? RackOf : Cuts);
    refresh();
}

QWidget* TimberPanel::cutsPage() {
    auto* page = new QWidget(stack_);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    cutsEmpty_ = new WrappedLabel(page);
    cutsEmpty_->setObjectName(QStringLiteral("cutsEmpty"));
    cutsEmpty_->setContentsMargins(20, 16, 20, 0);
    column->addWidget(cutsEmpty_);
    cuts_->setParent(page);
    column->addWidget(cuts_, 1);
    cuts_->setFoot(cutsFoot());
    return page;
}

/// Below the planks, not beside them: it is looked for once, they all the time.
QWidget* TimberPanel::cutsFoot() {
    auto* page = new QWidget(stack_);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 8);
    column->setSpacing(6);
    auto* sawing = new SawingForm(document_, page);
    sawing->setContentsMargins(20, 0, 16, 0);
    sawing->setOpen(false);
    column->addWidget(sawing);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(16, 0, 16, 0);
    row->setSpacing(8);
    print_ = new QPushButton(tr("Plank cuts on paper"), page);
    print_->setObjectName(QStringLiteral("printPlanks"));
    print_->setAutoDefault(false);
    unpin_ = new QPushButton(tr("Unpin all"), page);
    unpin_->setObjectName(QStringLiteral("unpinAll"));
    unpin_->setAutoDefault(false);
    row->addWidget(print_);
    row->addWidget(unpin_);
    row->addStretch(1);
    column->addLayout(row);
    auto* safety = new WrappedLabel(page);
    safety->setObjectName(QStringLiteral("sawSafety"));
    safety->setText(toQt(sawSafety()));
    safety->setFont(smallFont(font()));
    safety->setForegroundRole(QPalette::PlaceholderText);
    safety->setContentsMargins(20, 0, 16, 0);
    column->addWidget(safety);
    return page;
}

void TimberPanel::follow() {
    const Subject& subject = spotlight_.subject();
    if (subject.kind != Subject::Kind::Part) {
        cuts_->letGo();
    }
    cuts_->setMarked(spotlight_.trail().parts);
    rack_->list()->setMarked(spotlight_.trail().planks);
}

void TimberPanel::showPage(Page page) {
    pages_->setCurrent(page);
    stack_->setCurrentIndex(page);
    refresh();
}

TimberPanel::Page TimberPanel::page() const {
    return static_cast<Page>(stack_->currentIndex());
}

void TimberPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    sawyer_.wake();
}

void TimberPanel::refresh() {
    const bool working = sawyer_.state() == Sawyer::State::Working;
    const SawnPtr sawn = sawyer_.last();
    const Project& project = document_.project();
    progress_->setVisible(working && sawyer_.progress() > 0);
    stop_->setVisible(working && sawyer_.progress() > 0);
    progress_->setValue(static_cast<int>(sawyer_.progress() * 100));
    QString words;
    QStringList shortage;
    const bool isEmpty = project.timber.rack.planks.empty();
    if (sawyer_.state() == Sawyer::State::Impossible) {
        words = sawyer_.fault();
    } else if (working) {
        words = sawn && !sawn->isFinal && sawn->project->timber == project.timber
                    ? tr("Best so far: %1").arg(toQt(layoutWords(sawn->plan)))
                    : tr("Laying the strips out…");
    } else if (sawn) {
        const TimberPlan& plan = sawn->plan;
        words = toQt(layoutWords(plan));
        const QString missing = toQt(shortageInBrief(plan, sawn->project->woods));
        // The list of what to buy says it itself, with the sizes.
        if (!missing.isEmpty() && page() != Buy) {
            shortage << missing;
        }
        for (const LostPin& lost : plan.lostPins) {
            shortage << tr("%1 cannot be pinned to %2: %3.")
                            .arg(toQt(lost.pin.strip), toQt(lost.pin.plank), toQt(lost.reason));
        }
    }
    const bool aboutLayout = page() != Boards && !(page() == RackOf && isEmpty);
    words_->setText(words);
    words_->setVisible(aboutLayout && !words.isEmpty());
    shortage_->setText(shortage.join(QLatin1Char('\n')));
    shortage_->setVisible(aboutLayout && !shortage.isEmpty());
    QPalette palette = this->palette();
    palette.setColor(QPalette::WindowText, tonesOf(palette).caution);
    shortage_->setPalette(palette);
    cuts_->setSawn(sawn);
    cuts_->setStale(working && sawn && sawn->isFinal);
    cutsEmpty_->setVisible(cuts_->plankCount() == 0);
    cutsEmpty_->setText(isEmpty ? tr("There are no planks to cut yet. Add them under “Rack”; what "
                                     "to buy stands under “Shopping”.")
                        : sawn ? tr("No plank on the rack is of a wood that this board needs.")
                               : QString());
    unpin_->setVisible(!project.timber.pins.empty());
    print_->setEnabled(sawn && !sawn->plan.layout.planks.empty());
    follow();
}

namespace {

/// The single strips of what is sawn in one length: "Top rail + Right rail".
std::vector<std::string> singleStrips(const QString& strip) {
    std::vector<std::string> strips;
    for (const QString& one : strip.split(QStringLiteral(" + "))) {
        strips.push_back(fromQt(one));
    }
    return strips;
}

void dropPins(std::vector<StripPin>& pins, const std::vector<std::string>& strips) {
    pins.erase(std::remove_if(pins.begin(), pins.end(),
                              [&](const StripPin& pin) {
                                  return std::find(strips.begin(), strips.end(), pin.strip) !=
                                         strips.end();
                              }),
               pins.end());
}

}  // namespace

void TimberPanel::pin(const QString& strip, const QString& plank) {
    const std::vector<std::string> strips = singleStrips(strip);
    document_.endSession();
    const auto fault = document_.edit(tr("pin strip to plank"), entry::none, [&](Project& project) {
        dropPins(project.timber.pins, strips);
        for (const std::string& one : strips) {
            project.timber.pins.push_back({one, fromQt(plank)});
        }
    });
    Q_EMIT told(fault ? toQt(fault->text())
                      : tr("%1 is pinned to %2. Undo takes it back.").arg(strip, plank));
}

void TimberPanel::unpin(const QString& strip) {
    document_.endSession();
    document_.edit(strip.isEmpty() ? tr("unpin all strips") : tr("unpin strip"), entry::none,
                   [&](Project& project) {
                       if (strip.isEmpty()) {
                           project.timber.pins.clear();
                       } else {
                           dropPins(project.timber.pins, singleStrips(strip));
                       }
                   });
}

}  // namespace kerfwright
