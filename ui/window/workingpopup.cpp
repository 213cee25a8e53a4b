#include "ui/window/workingpopup.h"

#include "core/sheets/hourwords.h"
#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/tones.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QToolButton>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

constexpr int widest = 400;
constexpr int tallest = 420;
constexpr std::size_t fewFigures = 4;

QLabel* label(const QString& text, QWidget* parent, bool bold = false, bool quiet = false) {
    auto* made = new QLabel(text, parent);
    made->setTextFormat(Qt::PlainText);
    if (bold) {
        QFont font = made->font();
        font.setBold(true);
        made->setFont(font);
    }
    if (quiet) {
        QPalette palette = made->palette();
        palette.setColor(QPalette::WindowText, tonesOf(palette).quiet);
        made->setPalette(palette);
    }
    return made;
}

}  // namespace

QString termSource(TermKind kind) {
    if (const SettingInfo* info = settingInfo(settingOf(kind))) {
        return toQt(say(info->name));
    }
    switch (kind) {
    case TermKind::PieceWidth:
    case TermKind::RowHeight:
    case TermKind::FieldSide:
    case TermKind::Stick:
    case TermKind::Slices:
        return WorkingPopup::tr("Board");
    case TermKind::BoardThickness:
        return WorkingPopup::tr("Thickness");
    case TermKind::BorderWidth:
        return WorkingPopup::tr("Border width");
    case TermKind::OwnGap:
    case TermKind::Gap:
        return WorkingPopup::tr("Gap");
    case TermKind::HalfGrowth:
    case TermKind::HalfShrinkage:
    case TermKind::PinGrowth:
    case TermKind::PinShrinkage:
        return WorkingPopup::tr("Season");
    case TermKind::Inlay:
        return WorkingPopup::tr("Inlay");
    case TermKind::SpareSlices:
        return WorkingPopup::tr("Spare slices");
    default:
        return QString();
    }
}

WorkingPopup::WorkingPopup(const QString& title, const std::vector<StepFigure>& figures,
                           const Notation& notation, QWidget* parent, const BenchTask* task)
    : QFrame(parent, Qt::Popup)
    , area_(new QScrollArea(this))
    , content_(new QWidget)
    , grid_(new QGridLayout(content_)) {
    setObjectName(QStringLiteral("workingPopup"));
    setAttribute(Qt::WA_DeleteOnClose);
    setAccessibleName(tr("Working: %1").arg(title));
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(2, 10, 2, 10);
    area_->setFrameShape(QFrame::NoFrame);
    area_->setWidgetResizable(true);
    area_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area_->setFocusPolicy(Qt::NoFocus);
    area_->setWidget(content_);
    outer->addWidget(area_);
    grid_->setContentsMargins(16, 4, 16, 4);
    grid_->setHorizontalSpacing(12);
    grid_->setVerticalSpacing(2);
    grid_->setColumnStretch(1, 1);

    // Below very many numbers nobody would find it.
    const bool timeFirst = task != nullptr && figures.size() > fewFigures;
    if (timeFirst) {
        addTime(*task);
    }
    for (const StepFigure& entry : figures) {
        addFigure(entry, notation);
    }
    if (task != nullptr && !timeFirst) {
        addTime(*task);
    }
}

void WorkingPopup::addFigure(const StepFigure& entry, const Notation& notation) {
    addHead(entry.label);
    bool first = true;
    for (const Term& term : entry.figure.terms) {
        const bool minus = term.value < Length() || term.times < 0;
        const Length value = term.value < Length() ? -term.value : term.value;
        const int times = std::abs(term.times);
        QString amount = toQt(format(value, notation));
        if (times != 1) {
            amount = QStringLiteral("%1 × %2").arg(times).arg(amount);
        }
        amount.prepend(minus ? QStringLiteral("− ") : first ? QString() : QStringLiteral("+ "));
        auto* value1 = label(amount, content_);
        value1->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        grid_->addWidget(value1, row_, 0);
        grid_->addWidget(label(toQt(termName(term.kind)), content_, false, true), row_, 1);
        const QString source = termSource(term.kind);
        if (!source.isEmpty()) {
            QToolButton* to = link(source);
            to->setObjectName(QStringLiteral("term-%1").arg(static_cast<int>(term.kind)));
            connect(to, &QToolButton::clicked, this, [this, kind = term.kind] {
                Q_EMIT termAsked(kind);
                close();
            });
        }
        ++row_;
        first = false;
    }
    addSum(toQt(format(entry.figure.value, notation)));
}

void WorkingPopup::addTime(const BenchTask& task) {
    addHead(tr("Time at the bench"));
    bool first = true;
    for (const TimeTerm& term : task.terms) {
        auto* amount =
            label((first ? QString() : QStringLiteral("+ ")) + toQt(termAmount(term)), content_);
        amount->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        grid_->addWidget(amount, row_, 0);
        grid_->addWidget(label(toQt(term.what), content_, false, true), row_, 1);
        connect(link(toQt(rateName(term))), &QToolButton::clicked, this,
                [this, key = toQt(term.setting)] {
                    Q_EMIT rateAsked(key);
                    close();
                });
        ++row_;
        first = false;
    }
    addSum(toQt(timeWords(task.minutes)));
}

QToolButton* WorkingPopup::link(const QString& source) {
    auto* link = new QToolButton(content_);
    link->setText(source + QStringLiteral(" ›"));
    link->setAccessibleName(tr("Go to %1").arg(source));
    link->setAutoRaise(true);
    link->setFocusPolicy(Qt::StrongFocus);
    link->setCursor(Qt::PointingHandCursor);
    QPalette palette = link->palette();
    palette.setColor(QPalette::ButtonText, tonesOf(palette).accent);
    link->setPalette(palette);
    grid_->addWidget(link, row_, 2, Qt::AlignRight);
    return link;
}

void WorkingPopup::addHead(const QString& words) {
    if (row_ > 0) {
        grid_->setRowMinimumHeight(row_++, 12);
    }
    grid_->addWidget(label(words, content_, true), row_++, 0, 1, 3);
}

void WorkingPopup::addSum(const QString& words) {
    auto* sum = label(QStringLiteral("= ") + words, content_, true);
    sum->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    grid_->addWidget(sum, row_++, 0);
}

void WorkingPopup::fit() {
    content_->setMinimumWidth(content_->sizeHint().width());
    const QSize wanted = content_->sizeHint();
    area_->setFixedSize(std::clamp(wanted.width() + area_->verticalScrollBar()->sizeHint().width(),
                                   300, widest + 120),
                        std::min(wanted.height() + 2, tallest));
}

void WorkingPopup::openBeside(const QRect& anchor) {
    fit();
    adjustSize();
    const QRect screen = parentWidget()->screen()->availableGeometry();
    QPoint at(anchor.right() - width(), anchor.bottom() + 4);
    if (at.y() + height() > screen.bottom()) {
        at.setY(anchor.top() - 4 - height());
    }
    at.setX(std::clamp(at.x(), screen.left() + 4,
                       std::max(screen.left() + 4, screen.right() - width() - 4)));
    at.setY(std::max(at.y(), screen.top() + 4));
    move(at);
    show();
    focusNextChild();
}

void WorkingPopup::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.fillRect(rect(), tones.dark ? mixed(tones.edge, tones.text, 0.2)
                                        : mixed(tones.edge, tones.text, 0.15));
    painter.fillRect(rect().adjusted(1, 1, -1, -1), tones.surface);
}

}  // namespace kerfwright
