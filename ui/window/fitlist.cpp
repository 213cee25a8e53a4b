#include "ui/window/fitlist.h"

#include "ui/document/text.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"
#include "ui/window/workingpopup.h"
#include "ui/window/wrappedlabel.h"

#include <QAbstractButton>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

/// The sign that opens a working, in the accent of the palette in force.
class WorkingButton : public QAbstractButton {
public:
    explicit WorkingButton(QWidget* parent)
        : QAbstractButton(parent) {
        setFocusPolicy(Qt::StrongFocus);
        setCursor(Qt::PointingHandCursor);
        setAttribute(Qt::WA_Hover);
    }
    QSize sizeHint() const override { return QSize(26, 20); }

protected:
    void paintEvent(QPaintEvent*) override {
        const Tones tones = tonesOf(palette());
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        if (hasFocus() || underMouse()) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(tones.soft);
            painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
        }
        if (hasFocus()) {
            paintFocusRing(painter, rect(), tones);
        }
        QFont bold = painter.font();
        bold.setBold(true);
        painter.setFont(bold);
        painter.setPen(tones.accent);
        painter.drawText(rect(), Qt::AlignCenter, QStringLiteral("="));
    }
};

struct FitLine {
    QString label;
    Figure figure;
};

std::vector<FitLine> linesOf(const BorderFit& fit, const Border& border) {
    std::vector<FitLine> all;
    const auto add = [&](const QString& label, const Figure& figure) {
        if (figure.value > Length()) {
            all.push_back({label, figure});
        }
    };
    add(FitList::tr("Gap left and right"), fit.gapX);
    add(FitList::tr("Gap above and below"), fit.gapY);
    const bool ledge = border.has(BorderDesign::FloatingFrame) && border.housing == Housing::Rebate;
    add(FitList::tr("Groove in the rail"), fit.railGroove);
    add(ledge ? FitList::tr("Rebate in the field") : FitList::tr("Groove in the field"),
        fit.fieldGroove);
    add(FitList::tr("Width of grooves"), fit.tongueThickness);
    add(FitList::tr("From the top face"), fit.tongueFromFace);
    add(FitList::tr("Width of the tongue"), fit.tongueWidth);
    add(FitList::tr("Ledge"), fit.ledge);
    add(FitList::tr("Thickness of the ledge"), fit.ledgeThickness);
    add(FitList::tr("Width of a rail as milled"), fit.railStock);
    add(FitList::tr("Depth of the inlay"), fit.inlayDepth);
    add(FitList::tr("Height of the inlay strip"), fit.inlayHeight);
    add(FitList::tr("Depth of the spline slot"), fit.splineDepth);
    add(FitList::tr("Slot from the top face"), fit.splineFromFace);
    add(FitList::tr("Pins"), fit.pinDiameter);
    add(FitList::tr("Pins from the edge"), fit.pinFromEdge);
    return all;
}

}  // namespace

FitList::FitList(QWidget* parent)
    : QWidget(parent) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
}

void FitList::show(const PlannedPtr& planned) {
    delete content_;
    content_ = nullptr;
    if (!planned) {
        return;
    }
    content_ = new QWidget(this);
    auto* grid = new QGridLayout(content_);
    grid->setContentsMargins(0, 2, 0, 2);
    grid->setHorizontalSpacing(8);
    grid->setVerticalSpacing(0);
    grid->setColumnStretch(0, 1);
    const Notation& notation = planned->project->notation;
    int row = 0;
    for (const FitLine& line : linesOf(planned->job.plan.border, planned->project->board.border)) {
        auto* label = new WrappedLabel(content_);
        label->setText(line.label);
        label->setForegroundRole(QPalette::PlaceholderText);
        grid->addWidget(label, row, 0);
        auto* value = new QLabel(toQt(format(line.figure.value, notation)), content_);
        value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        grid->addWidget(value, row, 1);
        auto* why = new WorkingButton(content_);
        why->setObjectName(QStringLiteral("fitWorking%1").arg(row));
        why->setAccessibleName(tr("Working of %1").arg(line.label));
        why->setToolTip(tr("How this number comes about"));
        connect(why, &QAbstractButton::clicked, this, [this, why, line, notation] {
            auto* popup = new WorkingPopup(line.label, {{line.label, line.figure}}, notation, this);
            connect(popup, &WorkingPopup::termAsked, this, &FitList::termAsked);
            popup->openBeside(QRect(why->mapToGlobal(QPoint()), why->size()));
        });
        grid->addWidget(why, row, 2);
        ++row;
    }
    layout()->addWidget(content_);
}

}  // namespace kerfwright
