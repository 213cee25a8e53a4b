#include "ui/window/pricepanel.h"

#include "core/sheets/quotepage.h"
#include "ui/document/text.h"
#include "ui/window/dialogs.h"
#include "ui/window/formsection.h"
#include "ui/window/icons.h"
#include "ui/window/paperout.h"
#include "ui/window/priceform.h"
#include "ui/window/reckoninglist.h"
#include "ui/window/segmented.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"
#include "ui/window/wrappedlabel.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace kerfwright {

PricePanel::PricePanel(Document& document, Planner& planner, Dialogs& dialogs, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , planner_(planner)
    , dialogs_(dialogs)
    , reader_(new Segmented(tr("Paper for"),
                            {tr("Quote for the customer"), tr("Reckoning for you")}, this))
    , total_(new QLabel(this))
    , each_(new QLabel(this))
    , missing_(new WrappedLabel(this))
    , area_(new QScrollArea(this)) {
    reader_->setObjectName(QStringLiteral("quoteReader"));
    reader_->setCurrent(0);
    reader_->segment(0)->setToolTip(tr("A quote to hand over: the board and its price"));
    reader_->segment(1)->setToolTip(tr("The reckoning behind it: every line with its working"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 12, 0, 0);
    column->setSpacing(8);
    auto* grid = new QGridLayout;
    grid->setContentsMargins(12, 0, 12, 0);
    grid->setSpacing(8);
    grid->addWidget(reader_, 0, 0, 1, 2);
    const auto button = [&](const QString& text, const char* name, const char* icon, int at,
                            auto run) {
        auto* made = new QPushButton(text, this);
        made->setObjectName(QString::fromLatin1(name));
        made->setIcon(lineIcon(QString::fromLatin1(icon)));
        made->setAutoDefault(false);
        grid->addWidget(made, 1, at);
        buttons_.push_back(made);
        connect(made, &QPushButton::clicked, this, run);
    };
    button(tr("Save PDF…"), "saveQuote", "export", 0, [this] { savePdf(); });
    button(tr("Print…"), "printQuote", "print", 1, [this] { print(); });
    column->addLayout(grid);

    auto* content = new QWidget(area_);
    auto* rows = new QVBoxLayout(content);
    rows->setContentsMargins(0, 4, 0, 12);
    rows->setSpacing(4);
    total_->setObjectName(QStringLiteral("quoteTotal"));
    QFont big = font();
    big.setBold(true);
    big.setPixelSize(pixelSizeOf(font()) * 3 / 2);
    total_->setFont(big);
    each_->setObjectName(QStringLiteral("quoteEach"));
    each_->setFont(smallFont(font()));
    each_->setForegroundRole(QPalette::PlaceholderText);
    missing_->setObjectName(QStringLiteral("quoteMissing"));
    missing_->setFont(smallFont(font()));
    for (QLabel* label : {total_, each_, static_cast<QLabel*>(missing_)}) {
        label->setContentsMargins(20, 0, 16, 0);
        rows->addWidget(label);
    }
    section_ = new FormSection(tr("What goes into it"), true, content);
    section_->setObjectName(QStringLiteral("pricing"));
    section_->head()->setObjectName(QStringLiteral("pricingHead"));
    section_->setContentsMargins(20, 4, 12, 4);
    form_ = new PriceForm(document, section_);
    rows->addWidget(section_);
    list_ = new ReckoningList(content);
    rows->addWidget(list_);
    rule_ = new WrappedLabel(content);
    rule_->setObjectName(QStringLiteral("quoteRule"));
    rule_->setFont(smallFont(font()));
    rule_->setForegroundRole(QPalette::PlaceholderText);
    rule_->setContentsMargins(20, 4, 16, 0);
    rows->addWidget(rule_);
    rows->addStretch(1);
    area_->setWidget(content);
    area_->setWidgetResizable(true);
    area_->setFrameShape(QFrame::NoFrame);
    area_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area_->setFocusPolicy(Qt::NoFocus);
    column->addWidget(area_, 1);

    connect(list_, &ReckoningList::settingAsked, this,
            [this](const QString& key) { form_->focusSetting(fromQt(key)); });
    connect(list_, &ReckoningList::woodAsked, this, &PricePanel::woodAsked);
    connect(list_, &ReckoningList::shown, this, [this](const QRect& place) {
        const QPoint top = list_->mapTo(area_->widget(), place.topLeft());
        const QPoint bottom = list_->mapTo(area_->widget(), place.bottomLeft());
        area_->ensureVisible(0, bottom.y(), 0, 8);
        area_->ensureVisible(0, top.y(), 0, 8);
    });
    const auto refreshIfSeen = [this] {
        if (isVisible()) {
            refresh();
        }
    };
    connect(&planner, &Planner::changed, this, refreshIfSeen);
    connect(&document, &Document::projectChanged, this, refreshIfSeen);
}

void PricePanel::setTimberSource(TimberSource source) {
    timber_ = std::move(source);
    refresh();
}

void PricePanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh();
    // At first the entries are what there is to do; later the maker folds them as he likes.
    if (!seen_ && planner_.last()) {
        seen_ = true;
        section_->setOpen(!document_.project().pricing.benchHour);
    }
}

Quote PricePanel::reckon() const {
    const Planned& planned = *planner_.last();
    const Project& project = document_.project();
    std::optional<TimberCost> timber;
    if (timber_) {
        timber = timber_(planned);
    }
    if (!timber) {
        timber = timberAsSawn(planned.job.totals, planned.project->woods);
    }
    return quote(planned.job, *timber, project.pricing, project.notation, project.currency);
}

void PricePanel::showTotal(const Quote& made) {
    const QString money = toQt(moneyWords(made.total, document_.project().currency));
    total_->setText(made.isComplete() ? tr("To pay %1").arg(money)
                    : made.total > 0  ? tr("At least %1").arg(money)
                                      : tr("Price not known yet"));
    const QString each = toQt(eachWords(made, document_.project().currency));
    each_->setText(each.isEmpty()
                       ? QString()
                       : tr("for %1 boards, %2").arg(QString::number(made.boards), each));
    each_->setVisible(!each.isEmpty());
    missing_->setVisible(!made.isComplete());
    missing_->setText(made.isComplete() ? QString()
                                        : QStringLiteral("▲ ") + toQt(incompleteWords(made)));
    QPalette tinted = palette();
    tinted.setColor(QPalette::WindowText, tonesOf(palette()).caution);
    missing_->setPalette(tinted);
}

void PricePanel::refresh() {
    form_->refresh();
    const bool ready = isReady();
    for (QPushButton* button : buttons_) {
        button->setEnabled(ready);
    }
    // What has the keys keeps them while the plan is made anew.
    list_->setStale(!ready);
    total_->setEnabled(ready);
    if (!planner_.last()) {
        total_->setText(tr("The price appears here once the board can be planned."));
        each_->hide();
        missing_->hide();
        rule_->hide();
        list_->setLines({}, {});
        return;
    }
    const Quote made = reckon();
    showTotal(made);
    list_->setLines(made.lines, document_.project().currency);
    rule_->setText(toQt(reckoningRule(made)));
    rule_->show();
}

bool PricePanel::forCustomer() const {
    return reader_->current() == 0;
}

Paper PricePanel::paper() const {
    return paperChoice();
}

std::vector<Page> PricePanel::pages() const {
    const Project& project = document_.project();
    const Job& job = planner_.last()->job;
    return forCustomer() ? quotePages(project, job, reckon(), paper())
                         : reckoningPages(project, job, reckon(), paper());
}

bool PricePanel::readyOrTold() {
    if (!isReady()) {
        dialogs_.tell(this, tr("No plan to price"),
                      planner_.state() == Planner::State::Impossible
                          ? planner_.fault()
                          : tr("The plan is still being made. Try again in a moment."));
    }
    return isReady();
}

void PricePanel::savePdf() {
    if (!readyOrTold()) {
        return;
    }
    const QString words = kerfwright::savePdf(
        dialogs_, this, forCustomer() ? tr("Save the quote") : tr("Save the reckoning"), work());
    if (!words.isEmpty()) {
        Q_EMIT told(words);
    }
}

void PricePanel::print() {
    if (!readyOrTold()) {
        return;
    }
    printPages(dialogs_, this, work());
}

PaperWork PricePanel::work() const {
    return {document_.displayName(),
            fileNameOf(document_) + (forCustomer() ? tr("-quote") : tr("-reckoning")), paper(),
            [this] { return pages(); }};
}

}  // namespace kerfwright
