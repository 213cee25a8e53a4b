#include "ui/window/wayspanel.h"

#include "core/sheets/hourwords.h"
#include "core/sheets/stagepictures.h"
#include "core/sheets/ways.h"
#include "ui/document/text.h"
#include "ui/window/cardlist.h"
#include "ui/window/wrappedlabel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QShowEvent>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

constexpr double pictureSize = 30;  // mm, the longer side

}  // namespace

WaysPanel::WaysPanel(Document& document, Planner& planner, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , planner_(planner)
    , comparer_(planner)
    , words_(new WrappedLabel(this))
    , progress_(new QProgressBar(this))
    , stop_(new QPushButton(tr("Stop here"), this))
    , free_(new QPushButton(this))
    , list_(new CardList(this)) {
    words_->setObjectName(QStringLiteral("waysWords"));
    free_->setObjectName(QStringLiteral("freePicture"));
    stop_->setObjectName(QStringLiteral("stopSearch"));
    list_->setObjectName(QStringLiteral("ways"));
    list_->setAccessibleName(tr("Ways to glue the board"));
    list_->setEmptyText(tr("The ways to glue the board appear here once it can be planned."));
    progress_->setRange(0, 100);
    progress_->setTextVisible(false);
    progress_->setMaximumHeight(6);
    progress_->setAccessibleName(tr("How far the search is"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 12, 0, 0);
    column->setSpacing(4);
    words_->setContentsMargins(20, 0, 16, 4);
    column->addWidget(words_);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(20, 0, 16, 0);
    row->addWidget(progress_, 1);
    row->addWidget(stop_);
    column->addLayout(row);
    auto* below = new QHBoxLayout;
    below->setContentsMargins(20, 0, 16, 4);
    below->addWidget(free_, 0, Qt::AlignLeft);
    column->addLayout(below);
    column->addWidget(list_, 1);
    connect(&comparer_, &Comparer::changed, this, &WaysPanel::refresh);
    connect(&planner, &Planner::changed, this, [this] {
        if (isVisible()) {
            comparer_.compare();
        }
        refresh();
    });
    connect(stop_, &QPushButton::clicked, this, [this] { comparer_.stop(); });
    connect(free_, &QPushButton::clicked, this, &WaysPanel::freePicture);
    connect(list_, &CardList::wayAsked, this, [this](int card, int) { take(card); });
    refresh();
}

void WaysPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    comparer_.compare();
}

void WaysPanel::refresh() {
    const bool working = comparer_.state() == Comparer::State::Working;
    progress_->setVisible(working);
    stop_->setVisible(working);
    const SearchProgress& progress = comparer_.progress();
    progress_->setValue(static_cast<int>(progress.done * 100));
    const auto last = comparer_.last();
    if (working) {
        words_->setText(progress.best > 0
                            ? tr("Looking for fewer glue-ups: %1 found, at least %2 needed.")
                                  .arg(progress.best)
                                  .arg(progress.bound)
                            : tr("Looking for ways to glue this board…"));
    } else if (comparer_.state() == Comparer::State::Impossible) {
        words_->setText(comparer_.fault());
    } else if (last) {
        words_->setText(toQt(last->ways.sentence));
    } else {
        words_->setText(QString());
    }
    list_->setStale(working || planner_.state() != Planner::State::Current);
    fill();
}

void WaysPanel::fill() {
    const auto last = comparer_.last();
    const PlannedPtr planned = planner_.last();
    const QString inUse =
        planned ? toQt(planned->job.plan.construction) +
                      (planned->job.plan.byColumns ? QStringLiteral("c") : QStringLiteral("r"))
                : QString();
    if (shown_ == last && inUse_ == inUse) {
        return;
    }
    shown_ = last;
    inUse_ = inUse;
    std::vector<Card> cards;
    if (last && planned) {
        int number = 0;
        for (const Alternative& way : last->ways.all) {
            const Measures& m = way.measures;
            Card card;
            card.number = QString::number(++number);
            card.title = toQt(way.name);
            card.lines << counted(m.glueUps, tr("%1 glue-up"), tr("%1 glue-ups")) + tr(" · ") +
                              counted(m.clampLoads, tr("%1 clamp load"), tr("%1 clamp loads")) +
                              tr(" · ") + counted(m.panels, tr("%1 panel"), tr("%1 panels"));
            card.lines << tr("%1 settings · %2 cuts · %3 timber")
                              .arg(m.settings)
                              .arg(m.cuts)
                              .arg(toQt(formatVolume(m.timber, last->project->notation.unit)));
            card.lines << toQt(totalWords(way.job.hours));
            const auto joints = static_cast<int>(way.job.plan.extraJoints.size());
            if (joints > 0) {
                card.lines << counted(joints, tr("%1 joint inside pieces"),
                                      tr("%1 joints inside pieces"));
            }
            QStringList limits;
            for (const std::string& limit : way.limits) {
                limits << toQt(limit);
            }
            card.warning = limits.join(QStringLiteral("; "));
            card.pictures = std::make_shared<const std::vector<StagePicture>>(
                stagePictures(*last->project, way.job, pictureSize));
            if (isInUse(way, planned->job.plan)) {
                card.remedy = tr("in use");
            } else {
                card.ways.push_back({tr("Glue it this way"), true});
            }
            cards.push_back(std::move(card));
        }
    }
    if (last) {
        // Told at the end of the list: worth knowing, and nothing to choose.
        Card looks;
        looks.title = tr("Odd and even");
        for (const OddEven& look : last->ways.looks) {
            looks.lines << toQt(look.sentence);
        }
        looks.mood = Card::Mood::Note;
        cards.push_back(std::move(looks));
    }
    list_->setCards(std::move(cards));
    const std::size_t joints = last ? last->ways.locked.freeing.size() : 0;
    free_->setVisible(joints > 0);
    free_->setText(counted(static_cast<int>(joints), tr("Free it with %1 joint more"),
                           tr("Free it with %1 joints more")));
    if (last && !last->ways.locked.pieces.empty()) {
        Q_EMIT piecesShown(last->ways.locked.pieces);
    }
}

void WaysPanel::freePicture() {
    const auto last = comparer_.last();
    if (!last || last->ways.locked.freeing.empty()) {
        return;
    }
    document_.endSession();
    const std::vector<Joint> joints = last->ways.locked.freeing;
    const auto fault = document_.edit(tr("free locked pieces"), entry::none, [&](Project& project) {
        project.board.field = dividedAlong(project.board.field, joints);
    });
    Q_EMIT told(fault ? toQt(fault->text())
                      : tr("The pieces are divided along the joints. Undo takes it back."));
}

void WaysPanel::take(int row) {
    if (!shown_ || row < 0 || row >= static_cast<int>(shown_->ways.all.size())) {
        return;
    }
    if (comparer_.state() != Comparer::State::Done) {
        Q_EMIT told(tr("These are ways to glue the board as it was; new ones are on their way."));
        return;
    }
    const Alternative& way = shown_->ways.all[static_cast<std::size_t>(row)];
    document_.endSession();
    const auto fault = document_.edit(tr("choose a way to glue"), entry::none,
                                      [&](Project& project) { project.choices = way.choices; });
    Q_EMIT told(
        fault ? toQt(fault->text())
              : tr("Glued this way from now on: %1. Undo takes it back.").arg(toQt(way.name)));
}

}  // namespace kerfwright
