#include "ui/window/benchtabs.h"

#include "core/bench/standing.h"
#include "core/timber/worth.h"
#include "ui/document/text.h"
#include "ui/window/cardlist.h"
#include "ui/window/cutlist.h"
#include "ui/window/helptopics.h"
#include "ui/window/movementbox.h"
#include "ui/window/pricepanel.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/snugtabs.h"
#include "ui/window/spotlight.h"
#include "ui/window/stepspanel.h"
#include "ui/window/timberpanel.h"
#include "ui/window/tones.h"
#include "ui/window/wayspanel.h"

#include <QKeyEvent>
#include <QPainter>
#include <QResizeEvent>
#include <QTabBar>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace kerfwright {

namespace {

std::size_t asSize(int index) {
    return static_cast<std::size_t>(index);
}

QWidget* emptyPage(QWidget* parent) {
    auto* page = new QWidget(parent);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    return page;
}

}  // namespace

Badge::Badge(QWidget* parent)
    : QWidget(parent) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    hide();
}

void Badge::setCount(int count, bool grave) {
    count_ = count;
    grave_ = grave;
    done_ = false;
    setVisible(count > 0);
    resize(sizeHint());
    update();
}

void Badge::setDone() {
    setCount(0, false);
    done_ = true;
    show();
}

QSize Badge::sizeHint() const {
    return QSize((count_ > 9 ? 24 : 18) + (grave_ ? 5 : 0), 18);
}

void Badge::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (done_) {
        const QPointF middle = QRectF(rect()).center();
        painter.setPen(QPen(tones.quiet, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.drawPolyline(QPolygonF{middle + QPointF(-4.5, 0.5), middle + QPointF(-1.2, 3.8),
                                       middle + QPointF(5, -3.6)});
        return;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(grave_ ? tones.danger : QColor(232, 188, 92));
    painter.drawRoundedRect(rect(), 9, 9);
    QFont bold = font();
    bold.setPixelSize(11);
    bold.setBold(true);
    painter.setFont(bold);
    painter.setPen(grave_ ? readableOn(tones.danger) : QColor(58, 40, 6));
    // The sign says it to who does not see red.
    painter.drawText(rect(), Qt::AlignCenter,
                     QString::number(count_) + (grave_ ? QStringLiteral("!") : QString()));
}

BenchTabs::BenchTabs(Document& document, Planner& planner, Sawyer& sawyer, Spotlight& spotlight,
                     Dialogs& dialogs, QWidget* parent)
    : QTabWidget(parent)
    , document_(document)
    , planner_(planner)
    , sawyer_(sawyer)
    , spotlight_(spotlight)
    , dialogs_(dialogs)
    , tabs_(new SnugTabs(this))
    , steps_(new StepsPanel(planner, spotlight, this))
    , cautionsPage_(emptyPage(this))
    , cautions_(new CardList(cautionsPage_))
    , movement_(new MovementBox(planner, cautionsPage_))
    , badge_(new Badge(this))
    , cutListPage_(emptyPage(this))
    , timberPage_(emptyPage(this))
    , sheetsPage_(emptyPage(this))
    , waysPage_(emptyPage(this))
    , pricePage_(emptyPage(this)) {
    setObjectName(QStringLiteral("bench"));
    setTabBar(tabs_);
    setDocumentMode(true);
    setAccessibleName(tr("The bench"));
    cautions_->setObjectName(QStringLiteral("cautions"));
    cautions_->setAccessibleName(tr("Cautions"));
    addTab(steps_, tr("Steps"));
    movement_->setContentsMargins(20, 8, 12, 4);
    cautionsPage_->layout()->addWidget(movement_);
    qobject_cast<QVBoxLayout*>(cautionsPage_->layout())->addWidget(cautions_, 1);
    addTab(cautionsPage_, tr("Cautions"));
    addTab(cutListPage_, tr("Cut list"));
    addTab(timberPage_, tr("Timber"));
    setTabToolTip(TimberTab, tr("Your planks, where every strip lies on them, and what to buy"));
    addTab(waysPage_, tr("Ways"));
    setTabToolTip(Ways, tr("Other ways to glue this board, side by side"));
    addTab(sheetsPage_, tr("Sheets"));
    setTabToolTip(Sheets, tr("Cut sheets, to print and pin above the bench"));
    addTab(pricePage_, tr("Price"));
    setTabToolTip(Price, tr("What the board costs to make and what to ask for it"));
    for (const auto& [page, topic] :
         std::initializer_list<std::pair<QWidget*, const char*>>{{steps_, "steps"},
                                                                 {cautionsPage_, "cautions"},
                                                                 {cutListPage_, "cut-list"},
                                                                 {timberPage_, "rack"},
                                                                 {waysPage_, "ways"},
                                                                 {sheetsPage_, "sheets"},
                                                                 {pricePage_, "price"}}) {
        setHelpTopic(page, topic);
    }
    tabBar()->setUsesScrollButtons(true);  // the narrowest bench has no room for all
    tabBar()->setExpanding(false);
    tabBar()->setElideMode(Qt::ElideNone);
    tabBar()->setAccessibleName(tr("The bench"));
    connect(this, &QTabWidget::currentChanged, this, &BenchTabs::fill);
    connect(this, &QTabWidget::currentChanged, this, [this](int tab) {
        if (tab != Ways) {
            spotlight_.showPieces({});
        }
    });
    connect(cautions_, &CardList::wayAsked, this, &BenchTabs::takeWay);
    connect(&planner, &Planner::changed, this, &BenchTabs::refreshCautions);
    connect(&document, &Document::projectChanged, this, &BenchTabs::refreshCautions);
    connect(cautions_, &CardList::chosen, this, &BenchTabs::cautionChosen);
    connect(cautions_, &CardList::tickAsked, this, &BenchTabs::tick);
    connect(&spotlight, &Spotlight::changed, this, &BenchTabs::follow);
    refreshCautions();
}

/// What a badge takes that is not there yet.
int BenchTabs::roomForBadge() const {
    constexpr int badge = 27;
    return tabBar()->tabButton(Cautions, QTabBar::RightSide) != nullptr ? 0 : badge;
}

int BenchTabs::snugWidth() const {
    return tabs_->leastWidth() + roomForBadge();
}

int BenchTabs::easyWidth() const {
    return tabs_->comfortableWidth() + roomForBadge();
}

namespace {

Card cautionCard(const Caution& caution, Standing standing) {
    Card card;
    card.title = toQt(caution.title);
    card.lines << toQt(caution.reason);
    card.remedy = toQt(caution.remedy);
    for (const Remedy& remedy : caution.remedies) {
        card.ways.push_back({toQt(remedy.label), true});
    }
    if (caution.key == "extra-joints") {
        card.ways.push_back({BenchTabs::tr("Timber of your woods"), false});
    }
    if (!caution.steps.empty()) {
        card.title += QStringLiteral(" · ") + toQt(whichSteps(caution));
    }
    switch (caution.severity) {
    case Severity::Note:
        card.mood = Card::Mood::Note;
        break;
    case Severity::Caution:
        card.mood = Card::Mood::Caution;
        break;
    case Severity::Danger:
        card.mood = Card::Mood::Danger;
        break;
    }
    card.ticked = standing == Standing::SeenTo;
    if (standing == Standing::Lapsed) {
        card.lapsed = BenchTabs::tr("Was seen to before its numbers changed");
    }
    return card;
}

}  // namespace

void BenchTabs::refreshCautions() {
    cautions_->setStale(planner_.state() == Planner::State::Impossible);
    const std::vector<SeenTo>& seenTo = document_.project().seenTo;
    if (shown_ == planner_.last() && shownSeenTo_ == seenTo && !cautions_->emptyText().isEmpty()) {
        return;
    }
    const int chosen = cautionAt(cautions_->chosenCard());
    const std::string chosenTitle = chosen >= 0 ? shown_->job.cautions[asSize(chosen)].title : "";
    shown_ = planner_.last();
    shownSeenTo_ = seenTo;
    const std::vector<Caution> none;
    const std::vector<Caution>& all = shown_ ? shown_->job.cautions : none;
    order_ = openFirst(all, seenTo);
    std::vector<Card> cards;
    for (const int caution : order_) {
        const Caution& one = all[asSize(caution)];
        cards.push_back(cautionCard(one, standingOf(one, seenTo)));
        if (cards.back().isQuiet() && (cards.size() == 1 || !cards[cards.size() - 2].isQuiet())) {
            cards.back().section = tr("Seen to");
        }
    }
    cautions_->setEmptyText(
        shown_ ? tr("Nothing to warn of. While you draw, whatever can hurt, spoil or surprise is "
                    "said here.")
               : tr("The cautions appear here once the board can be planned."));
    {
        // Another order is no other choice.
        const bool before = std::exchange(following_, true);
        cautions_->setCards(std::move(cards));
        following_ = before;
    }
    if (chosen >= 0 &&
        (chosen >= static_cast<int>(all.size()) || all[asSize(chosen)].title != chosenTitle)) {
        spotlight_.letGoOf(Subject::Kind::Caution);
    }
    showCount(countOf(all, seenTo));
    follow();
}

void BenchTabs::showCount(const CautionCount& count) {
    if (count.open == 0 && count.seenTo > 0) {
        badge_->setDone();
    } else {
        badge_->setCount(count.open, count.openDangers > 0);
    }
    const bool isThere = count.open + count.seenTo > 0;
    // A tab measures its button only when it is set.
    tabBar()->setTabButton(Cautions, QTabBar::RightSide, nullptr);
    tabBar()->setTabButton(Cautions, QTabBar::RightSide, isThere ? badge_ : nullptr);
    badge_->setVisible(isThere);
    const QString told = toQt(countWords(count));
    setTabToolTip(Cautions, told);
    tabBar()->setAccessibleTabName(Cautions,
                                   count.openDangers > 0 ? tr("%1, with dangers").arg(told) : told);
}

int BenchTabs::rowOf(int caution) const {
    const auto at = std::find(order_.begin(), order_.end(), caution);
    return at == order_.end() ? -1 : static_cast<int>(at - order_.begin());
}

int BenchTabs::cautionAt(int row) const {
    return row >= 0 && row < static_cast<int>(order_.size()) ? order_[asSize(row)] : -1;
}

void BenchTabs::tick(int row) {
    const int index = cautionAt(row);
    if (index < 0) {
        return;
    }
    const Caution& caution = shown_->job.cautions[asSize(index)];
    const bool opens = standingOf(caution, document_.project().seenTo) == Standing::SeenTo;
    if (!opens && spotlight_.subject() == Subject{Subject::Kind::Caution, index}) {
        spotlight_.letGo();  // it is done with
    }
    const PlannedPtr keeps = shown_;  // the caution, whatever the edit brings about
    document_.endSession();
    const auto fault =
        document_.edit(opens ? tr("caution open again") : tr("caution seen to"), entry::none,
                       [&caution, opens](Project& project) {
                           opens ? reopen(project.seenTo, caution) : seeTo(project.seenTo, caution);
                       });
    // The keys stay where they are, on the next one.
    cautions_->goTo(std::min(row, cautions_->count() - 1));
    const QString title = toQt(caution.title);
    const QString count =
        toQt(countWords(countOf(keeps->job.cautions, document_.project().seenTo)));
    Q_EMIT told(fault   ? toQt(fault->text())
                : opens ? tr("Open again: %1. %2.").arg(title, count)
                        : tr("Seen to: %1. %2.").arg(title, count));
}

void BenchTabs::cautionChosen(int row) {
    if (following_) {
        return;
    }
    if (row >= 0) {
        spotlight_.choose({Subject::Kind::Caution, cautionAt(row)});
    } else {
        spotlight_.letGoOf(Subject::Kind::Caution);
    }
}

void BenchTabs::follow() {
    const Subject& subject = spotlight_.subject();
    const int own = subject.kind == Subject::Kind::Caution ? rowOf(subject.index) : -1;
    following_ = true;
    if (cautions_->chosenCard() != own && own < cautions_->count()) {
        cautions_->choose(own);
    }
    following_ = false;
    std::set<int> marked;
    if (own < 0) {
        for (const int caution : spotlight_.trail().cautions) {
            marked.insert(rowOf(caution));
        }
        marked.erase(-1);
    }
    cautions_->setMarked(marked);
}

void BenchTabs::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && !spotlight_.subject().isNone()) {
        spotlight_.letGo();
        return;
    }
    QTabWidget::keyPressEvent(event);
}

void BenchTabs::takeWay(int row, int way) {
    const int caution = cautionAt(row);
    if (caution < 0) {
        return;
    }
    const auto& remedies = shown_->job.cautions[asSize(caution)].remedies;
    if (way >= static_cast<int>(remedies.size())) {
        Q_EMIT timberAsked();
        return;
    }
    // A remedy holds whole values, made for the board that was planned.
    if (planner_.state() != Planner::State::Current) {
        Q_EMIT told(tr("The plan of this board is not ready yet."));
        return;
    }
    const Remedy remedy = remedies[static_cast<std::size_t>(way)];
    document_.endSession();
    const auto fault = document_.edit(toQt(remedy.label), entry::none, [&remedy](Project& project) {
        project.board = remedy.board.value_or(project.board);
        project.shop = remedy.shop.value_or(project.shop);
        project.choices = remedy.choices.value_or(project.choices);
        if (remedy.conditions) {
            project.climate = remedy.conditions->climate;
            project.glue = remedy.conditions->glue;
            project.purpose = remedy.conditions->purpose;
            project.rates = remedy.conditions->rates;
        }
    });
    Q_EMIT told(fault ? toQt(fault->text())
                      : tr("%1: done. Undo takes it back.").arg(toQt(remedy.label)));
}

void BenchTabs::fill(int tab) {
    if (tab == CutListTab && cutListPage_->layout()->isEmpty()) {
        cutListPage_->layout()->setContentsMargins(10, 0, 4, 0);
        auto* list = new CutList(planner_, spotlight_, cutListPage_);
        cutListPage_->layout()->addWidget(list);
        inOrder(cutListPage_);
        connect(list, &CutList::termAsked, this, &BenchTabs::termAsked);
        list->show();
    } else if (tab == TimberTab) {
        timber();
    } else if (tab == Ways) {
        ways();
    } else if (tab == Sheets) {
        sheets();
    } else if (tab == Price) {
        price();
    }
}

void BenchTabs::resizeEvent(QResizeEvent* event) {
    QTabWidget::resizeEvent(event);
    // In a low window the cautions need the room.
    constexpr int low = 520;
    if (height() < low && event->oldSize().height() >= low) {
        movement_->setOpen(false);
    }
}

/// A page that is made late comes in the order of the keys behind the tabs, not at the very end.
void BenchTabs::inOrder(QWidget* page) {
    QWidget* before = tabBar();
    std::vector<QWidget*> inside;
    for (QWidget* at = page->nextInFocusChain(); at != page; at = at->nextInFocusChain()) {
        if (page->isAncestorOf(at) && at->window() == page->window() &&
            at->focusPolicy() != Qt::NoFocus) {
            inside.push_back(at);
        }
    }
    for (QWidget* at : inside) {
        setTabOrder(before, at);
        before = at;
    }
}

void BenchTabs::focusPage() {
    QWidget* page = currentWidget();
    for (QWidget* at = page->nextInFocusChain(); at != page; at = at->nextInFocusChain()) {
        const bool byKeys = (at->focusPolicy() & Qt::TabFocus) == Qt::TabFocus;
        if (byKeys && page->isAncestorOf(at) && at->isVisible() && at->isEnabled()) {
            at->setFocus(Qt::ShortcutFocusReason);
            return;
        }
    }
    tabBar()->setFocus(Qt::ShortcutFocusReason);
}

TimberPanel* BenchTabs::timber() {
    if (timber_ == nullptr) {
        timber_ = new TimberPanel(document_, sawyer_, spotlight_, dialogs_, timberPage_);
        timberPage_->layout()->addWidget(timber_);
        inOrder(timberPage_);
        timber_->show();
        connect(timber_, &TimberPanel::told, this, &BenchTabs::told);
        connect(timber_, &TimberPanel::sampleAsked, this, &BenchTabs::sampleAsked);
        connect(timber_, &TimberPanel::sheetsAsked, this, [this] { setCurrentIndex(Sheets); });
    }
    return timber_;
}

WaysPanel* BenchTabs::ways() {
    if (ways_ == nullptr) {
        ways_ = new WaysPanel(document_, planner_, waysPage_);
        waysPage_->layout()->addWidget(ways_);
        inOrder(waysPage_);
        ways_->show();
        connect(ways_, &WaysPanel::told, this, &BenchTabs::told);
        connect(ways_, &WaysPanel::piecesShown, this, [this](const std::vector<int>& pieces) {
            if (currentIndex() == Ways) {
                spotlight_.showPieces(pieces);
            }
        });
    }
    return ways_;
}

SheetsPanel* BenchTabs::sheets() {
    if (sheets_ == nullptr) {
        sheets_ = new SheetsPanel(document_, planner_, sawyer_, dialogs_, sheetsPage_);
        sheetsPage_->layout()->addWidget(sheets_);
        inOrder(sheetsPage_);
        sheets_->show();
        connect(sheets_, &SheetsPanel::told, this, &BenchTabs::told);
    }
    return sheets_;
}

PricePanel* BenchTabs::price() {
    if (price_ == nullptr) {
        price_ = new PricePanel(document_, planner_, dialogs_, pricePage_);
        // Whole planks and what is to be bought cost more than the strips.
        sawyer_.wake();
        price_->setTimberSource([this](const Planned& planned) -> std::optional<TimberCost> {
            const SawnPtr last = sawyer_.last();
            if (sawyer_.state() != Sawyer::State::Current || !last || !last->isFinal ||
                last->planned.get() != &planned) {
                return std::nullopt;
            }
            return timberCost(last->plan, planned.project->woods, planned.project->notation);
        });
        connect(&sawyer_, &Sawyer::changed, price_, &PricePanel::refresh);
        pricePage_->layout()->addWidget(price_);
        inOrder(pricePage_);
        price_->show();
        connect(price_, &PricePanel::told, this, &BenchTabs::told);
        connect(price_, &PricePanel::woodAsked, this, &BenchTabs::woodPriceAsked);
    }
    return price_;
}

}  // namespace kerfwright
