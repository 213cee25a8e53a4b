#include "ui/window/boardspage.h"

#include "ui/document/text.h"
#include "ui/window/cardlist.h"
#include "ui/window/samples.h"
#include "ui/window/segmented.h"
#include "ui/window/wrappedlabel.h"

#include <QHBoxLayout>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

/// Whether what was found still holds.
bool sameQuestion(const Project& a, const Project& b) {
    return a.board == b.board && a.woods == b.woods && a.shop == b.shop && a.timber == b.timber &&
           a.choices == b.choices && a.notation == b.notation;
}

}  // namespace

BoardsPage::BoardsPage(Document& document, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , finder_(this)
    , growth_(new Segmented(tr("Made larger by"), {tr("Larger squares"), tr("More squares")}, this))
    , look_(new QPushButton(tr("Find the largest board"), this))
    , use_(new QPushButton(this))
    , samples_(new QPushButton(tr("Which samples can I make?"), this))
    , words_(new WrappedLabel(this))
    , samplesWords_(new WrappedLabel(this))
    , progress_(new QProgressBar(this))
    , stop_(new QPushButton(tr("Stop here"), this))
    , list_(new CardList(this)) {
    growth_->setObjectName(QStringLiteral("growth"));
    growth_->setCurrent(0);
    look_->setObjectName(QStringLiteral("findLargest"));
    use_->setObjectName(QStringLiteral("useLargest"));
    samples_->setObjectName(QStringLiteral("judgeSamples"));
    words_->setObjectName(QStringLiteral("largestWords"));
    stop_->setObjectName(QStringLiteral("stopFinding"));
    list_->setObjectName(QStringLiteral("verdicts"));
    list_->setAccessibleName(tr("Samples on this rack"));
    list_->setEmptyText(
        tr("Ask above, and every sample is laid on your planks one after the other."));
    progress_->setRange(0, 100);
    progress_->setTextVisible(false);
    progress_->setMaximumHeight(6);
    progress_->setAccessibleName(tr("How far the search is"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 0);
    column->setSpacing(8);
    auto* top = new QVBoxLayout;
    top->setContentsMargins(20, 0, 16, 0);
    top->setSpacing(8);
    auto* head = new QLabel(tr("The largest board from this rack"), this);
    QFont bold = head->font();
    bold.setBold(true);
    head->setFont(bold);
    top->addWidget(head);
    top->addWidget(growth_);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(8);
    buttons->addWidget(look_);
    buttons->addWidget(use_);
    buttons->addStretch(1);
    top->addLayout(buttons);
    top->addWidget(words_);
    auto* second = new QLabel(tr("Samples on this rack"), this);
    second->setFont(bold);
    top->addSpacing(10);
    top->addWidget(second);
    top->addWidget(samplesWords_);
    top->addWidget(samples_, 0, Qt::AlignLeft);
    auto* row = new QHBoxLayout;
    row->addWidget(progress_, 1);
    row->addWidget(stop_);
    top->addLayout(row);
    column->addLayout(top);
    column->addWidget(list_, 1);
    samplesWords_->setForegroundRole(QPalette::PlaceholderText);
    samplesWords_->setText(tr("In their own woods and sizes, with the saw and machines set as for "
                              "this board."));
    for (QPushButton* button : {look_, use_, samples_, stop_}) {
        button->setAutoDefault(false);
    }
    connect(look_, &QPushButton::clicked, this, [this] {
        judging_ = false;
        project_ = document_.snapshot();
        finder_.findLargest(project_, static_cast<Growth>(growth_->current()));
    });
    connect(use_, &QPushButton::clicked, this, &BoardsPage::useLargest);
    connect(samples_, &QPushButton::clicked, this, &BoardsPage::judge);
    connect(stop_, &QPushButton::clicked, this, [this] { finder_.stop(); });
    connect(growth_, &Segmented::chosen, this, [this] {
        if (!judging_ && project_) {
            project_.reset();
            finder_.forget();
        }
    });
    connect(list_, &CardList::wayAsked, this, [this](int card, int) {
        const auto index = static_cast<std::size_t>(card);
        if (index < finder_.verdicts().size()) {
            Q_EMIT sampleAsked(finder_.verdicts()[index].key);
        }
    });
    connect(&finder_, &BoardFinder::changed, this, &BoardsPage::refresh);
    connect(&document, &Document::projectChanged, this, [this] {
        if (project_ && !sameQuestion(*project_, document_.project())) {
            project_.reset();
            finder_.forget();
        }
        refresh();
    });
    refresh();
}

void BoardsPage::judge() {
    judging_ = true;
    project_ = document_.snapshot();
    std::vector<BoardFinder::Candidate> candidates;
    for (const QString& path : samplePaths()) {
        const Result<Project> sample = readSample(path);
        if (sample.ok()) {
            candidates.push_back(
                {path, toQt(sample->titles.name), std::make_shared<const Project>(*sample)});
        }
    }
    finder_.judge(project_, candidates);
}

QString BoardsPage::largestWords() const {
    const auto& largest = finder_.largest();
    if (!largest) {
        return finder_.fault();
    }
    const Notation& notation = document_.project().notation;
    QString words = toQt(largest->field.words);
    words[0] = words[0].toUpper();
    words += tr(": a field of %1 × %2. ")
                 .arg(toQt(formatBare(largest->field.field.width(), notation)),
                      toQt(format(largest->field.field.height(), notation)));
    return words + (largest->isSure ? tr("Proven: the next size does not fit.")
                                    : tr("The next size was not found to fit; it is not proven "
                                         "that it cannot."));
}

QString BoardsPage::useWords() const {
    return finder_.largest() ? tr("Use %1").arg(toQt(finder_.largest()->field.words)) : QString();
}

void BoardsPage::refresh() {
    const bool working = finder_.isWorking();
    const bool any = !document_.project().timber.rack.planks.empty();
    look_->setEnabled(any && !working);
    samples_->setEnabled(any && !working);
    progress_->setVisible(working);
    stop_->setVisible(working);
    progress_->setValue(static_cast<int>(finder_.progress() * 100));
    use_->setVisible(finder_.largest().has_value());
    use_->setText(useWords());
    use_->setEnabled(finder_.largest() &&
                     finder_.largest()->field.field != document_.project().board.field);
    words_->setText(
        !any ? tr("There are no planks on the rack yet. Add them under “Rack”, then ask here what "
                  "can be made from them.")
        : working ? (judging_ ? QString() : tr("Trying sizes…"))
                  : largestWords());
    words_->setVisible(!words_->text().isEmpty());
    const auto& verdicts = finder_.verdicts();
    std::vector<Card> cards;
    for (const BoardFinder::Verdict& verdict : verdicts) {
        Card card;
        card.title = verdict.name;
        if (!verdict.fault.isEmpty()) {
            card.warning = tr("Not in this shop: %1").arg(verdict.fault);
        } else if (verdict.fits()) {
            card.lines << counted(verdict.strips, tr("Can be made: its strip fits."),
                                  tr("Can be made: all its %1 strips fit."));
        } else {
            card.lines << (verdict.isSure
                               ? tr("Cannot be made: %1 of %2 strips find no place.")
                               : tr("%1 of %2 strips found no place, which is not proven."))
                              .arg(verdict.missing)
                              .arg(verdict.strips);
        }
        card.ways.push_back({tr("Open it with this rack"), verdict.fits()});
        cards.push_back(std::move(card));
    }
    list_->setCards(std::move(cards));
}

void BoardsPage::useLargest() {
    const auto largest = finder_.largest();
    if (!largest) {
        return;
    }
    document_.endSession();
    const auto fault =
        document_.edit(tr("largest board from the rack"), entry::none, [&](Project& project) {
            project.board.field = largest->field.field;
            project.recipe = largest->field.recipe;
        });
    document_.endSession();
    Q_EMIT told(fault ? toQt(fault->text())
                      : tr("The board is as large as the rack allows. Undo takes it back."));
}

}  // namespace kerfwright
