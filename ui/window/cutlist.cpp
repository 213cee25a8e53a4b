#include "ui/window/cutlist.h"

#include "ui/document/text.h"
#include "ui/window/stepwords.h"

#include <QHeaderView>

namespace kerfwright {

namespace {

QString bareSize(const Figure& thickness, const Figure& width, const Figure& length,
                 const Notation& notation) {
    return QStringLiteral("%1 × %2 × %3")
        .arg(toQt(formatBare(thickness.value, notation)), toQt(formatBare(width.value, notation)),
             toQt(formatBare(length.value, notation)));
}

}  // namespace

CutList::CutList(Planner& planner, QWidget* parent)
    : QTableWidget(0, 5, parent)
    , planner_(planner) {
    setObjectName(QStringLiteral("cutList"));
    setAccessibleName(tr("Cut list"));
    setFrameShape(NoFrame);
    setShowGrid(false);
    setEditTriggers(NoEditTriggers);
    setSelectionBehavior(SelectRows);
    setTabKeyNavigation(false);
    setWordWrap(true);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(32);
    horizontalHeader()->setMinimumHeight(36);
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setHighlightSections(false);
    viewport()->setBackgroundRole(QPalette::Window);
    QFont small = font();
    small.setPixelSize(12);
    setFont(small);
    connect(&planner, &Planner::changed, this, [this] {
        if (isVisible()) {
            refresh();
        }
    });
}

void CutList::showEvent(QShowEvent* event) {
    QTableWidget::showEvent(event);
    refresh();
}

void CutList::refresh() {
    const PlannedPtr planned = planner_.last();
    if (planned == shown_) {
        return;
    }
    shown_ = planned;
    setRowCount(0);
    if (!planned) {
        return;
    }
    const Notation& notation = planned->project->notation;
    const QString unit = toQt(unitName(notation.unit));
    setHorizontalHeaderLabels(
        {tr("No."), tr("Wood"), tr("For"), tr("Milled, %1").arg(unit), tr("Rough, %1").arg(unit)});
    horizontalHeaderItem(3)->setToolTip(tr("thickness × width × length"));
    horizontalHeaderItem(4)->setToolTip(tr("thickness × width × length"));
    int row = 0;
    for (const Step& step : planned->job.steps.steps) {
        const auto* mill = std::get_if<Mill>(&step.work);
        if (mill == nullptr) {
            continue;
        }
        for (const MillLine& line : mill->lines) {
            insertRow(row);
            QStringList strips;
            for (const std::string& strip : line.strips) {
                strips << toQt(strip);
            }
            const QStringList cells{
                QString::number(line.strips.size()),
                toQt(planned->project->woods[static_cast<std::size_t>(line.wood)].name),
                mill->panel.empty() ? tr("border") : toQt(mill->panel),
                bareSize(line.thickness, line.width, line.length, notation),
                bareSize(line.roughThickness, line.roughWidth, line.roughLength, notation)};
            for (int column = 0; column < cells.size(); ++column) {
                auto* item = new QTableWidgetItem(cells[column]);
                item->setToolTip(tr("Strips %1").arg(strips.join(QStringLiteral(", "))));
                setItem(row, column, item);
            }
            ++row;
        }
    }
}

}  // namespace kerfwright
