#include "ui/window/movementbox.h"

#include "ui/document/text.h"
#include "ui/window/amounts.h"
#include "ui/window/textblock.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

QString cell(const QString& text, const char* style) {
    return QStringLiteral("<td style='padding-right:12px;%1'>%2</td>")
        .arg(QLatin1String(style), text.toHtmlEscaped());
}

/// The first word is what the rest is about.
QString row(const QStringList& cells, bool head = false) {
    QString words;
    for (int i = 0; i < cells.size(); ++i) {
        words += cell(cells[i], i > 0 && !head ? "font-weight:bold" : "");
    }
    return QStringLiteral("<tr>%1</tr>").arg(words);
}

QString table(const QString& rows) {
    return QStringLiteral("<table cellspacing='0' cellpadding='1'>%1</table>").arg(rows);
}

/// Glue is weighed out: in steps of 5 g, as on the sheets.
QString grams(double mass) {
    return MovementBox::tr("%1 g").arg(std::ceil(mass / 5) * 5, 0, 'f', 0);
}

}  // namespace

MovementBox::MovementBox(Planner& planner, QWidget* parent)
    : FormSection(tr("Movement, glue and clamps"), true, parent)
    , planner_(planner)
    , words_(new QLabel(body())) {
    setObjectName(QStringLiteral("movement"));
    head()->setObjectName(QStringLiteral("movementHead"));
    words_->setObjectName(QStringLiteral("movementWords"));
    words_->setTextFormat(Qt::RichText);
    words_->setFont(smallFont(font()));
    words_->setWordWrap(true);
    add(words_);
    setOpen(true);
    connect(&planner, &Planner::changed, this, &MovementBox::refresh);
    refresh();
}

void MovementBox::refresh() {
    words_->setEnabled(planner_.state() == Planner::State::Current);
    if (shown_ == planner_.last()) {
        return;
    }
    shown_ = planner_.last();
    if (!shown_) {
        words_->clear();
        return;
    }
    const Job& job = shown_->job;
    const Project& project = *shown_->project;
    const Unit unit = project.notation.unit;
    QString season = row({QString(), tr("driest"), tr("dampest")}, true);
    const auto change = [&](const QString& name, const SeasonChange& by) {
        season += row({name, changeText(by.toDriest, unit), changeText(by.toDampest, unit)});
    };
    change(tr("Across"), job.movement.width);
    change(tr("Down"), job.movement.height);
    const auto weight = [&](double moisture) {
        return weightAt(project.board, project.woods, project.climate, moisture,
                        job.plan.border.surround);
    };
    const auto dry = weight(project.climate.driest);
    const auto damp = weight(project.climate.dampest);
    if (dry && damp) {
        season += row({tr("Weight"), weightText(*dry, unit), weightText(*damp, unit)});
    }
    QString glueUps = row({tr("Glue"), tr("about %1 in all").arg(grams(job.glue.grams))});
    // Glue-ups that take the same are told together.
    std::vector<const GlueUpNeeds*> told;
    for (const GlueUpNeeds& needs : job.glue.glueUps) {
        const auto alike = [&needs](const GlueUpNeeds* other) {
            return other->clamps == needs.clamps && other->area == needs.area;
        };
        if (std::any_of(told.begin(), told.end(), alike)) {
            continue;
        }
        QStringList results;
        for (const GlueUpNeeds& other : job.glue.glueUps) {
            if (alike(&other)) {
                results << toQt(shownLabel(other.result));
            }
        }
        told.push_back(&needs);
        glueUps += row(
            {results.join(QStringLiteral(", ")),
             tr("%1, %2 in %3")
                 .arg(counted(needs.clamps, tr("%1 clamp"), tr("%1 clamps")), grams(needs.grams),
                      counted(needs.lines, tr("%1 joint"), tr("%1 joints")))});
    }
    QString words = table(season) + table(glueUps);
    if (!job.movement.unknownWoods.empty()) {
        QStringList names;
        for (const int wood : job.movement.unknownWoods) {
            names << inSentence(toQt(project.woods[static_cast<std::size_t>(wood)].name));
        }
        words += QStringLiteral("<p>%1</p>")
                     .arg(tr("Without what %1 does: how it moves is not known.")
                              .arg(names.join(QStringLiteral(", ")))
                              .toHtmlEscaped());
    }
    words_->setText(words);
}

}  // namespace kerfwright
