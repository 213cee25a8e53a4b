#include "ui/window/workingpopup.h"

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

/// Where a term comes from, as the link to it reads.
QString sourceOf(TermKind kind) {
    if (const SettingInfo* info = settingInfo(settingOf(kind))) {
        return toQt(info->name);
    }
    switch (kind) {
    case TermKind::PieceWidth:
    case TermKind::RowHeight:
    case TermKind::FieldSide:
        return WorkingPopup::tr("Board");
    case TermKind::BoardThickness:
        return WorkingPopup::tr("Thickness");
    case TermKind::BorderWidth:
        return WorkingPopup::tr("Border width");
    case TermKind::OwnGap:
        return WorkingPopup::tr("Gap");
    case TermKind::HalfGrowth:
    case TermKind::HalfShrinkage:
    case TermKind::PinGrowth:
    case TermKind::PinShrinkage:
        return WorkingPopup::tr("Season");
    case TermKind::SpareSlices:
        return WorkingPopup::tr("Spare slices");
    default:
        return QString();
    }
}

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

WorkingPopup::WorkingPopup(const QString& title, const std::vector<StepFigure>& figures,
                           const Notation& notation, QWidget* parent)
    : QFrame(parent, Qt::Popup) {
    setObjectName(QStringLiteral("workingPopup"));
    setAttribute(Qt::WA_DeleteOnClose);
    setAccessibleName(tr("Working: %1").arg(title));
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(2, 10, 2, 10);
    auto* area = new QScrollArea(this);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    auto* content = new QWidget;
    auto* grid = new QGridLayout(content);
    grid->setContentsMargins(16, 4, 16, 4);
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(2);
    grid->setColumnStretch(1, 1);

    int row = 0;
    for (const StepFigure& entry : figures) {
        if (row > 0) {
            grid->setRowMinimumHeight(row++, 12);
        }
        grid->addWidget(label(entry.label, content, true), row++, 0, 1, 3);
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
            auto* value1 = label(amount, content);
            value1->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
            grid->addWidget(value1, row, 0);
            grid->addWidget(label(QString::fromUtf8(termName(term.kind)), content, false, true),
                            row, 1);
            const QString source = sourceOf(term.kind);
            if (!source.isEmpty()) {
                auto* link = new QToolButton(content);
                link->setText(source + QStringLiteral(" ›"));
                link->setAccessibleName(tr("Go to %1").arg(source));
                link->setAutoRaise(true);
                link->setFocusPolicy(Qt::StrongFocus);
                link->setCursor(Qt::PointingHandCursor);
                QPalette palette = link->palette();
                palette.setColor(QPalette::ButtonText, tonesOf(palette).accent);
                link->setPalette(palette);
                connect(link, &QToolButton::clicked, this, [this, kind = term.kind] {
                    Q_EMIT termAsked(kind);
                    close();
                });
                grid->addWidget(link, row, 2, Qt::AlignRight);
            }
            ++row;
            first = false;
        }
        auto* sum =
            label(QStringLiteral("= ") + toQt(format(entry.figure.value, notation)), content, true);
        sum->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        grid->addWidget(sum, row++, 0);
    }
    area->setWidget(content);
    content->setMinimumWidth(content->sizeHint().width());
    outer->addWidget(area);
    const QSize wanted = content->sizeHint();
    area->setFixedSize(std::clamp(wanted.width() + area->verticalScrollBar()->sizeHint().width(),
                                  300, widest + 120),
                       std::min(wanted.height() + 2, tallest));
}

void WorkingPopup::openBeside(const QRect& anchor) {
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
