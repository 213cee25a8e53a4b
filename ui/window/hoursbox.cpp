#include "ui/window/hoursbox.h"

#include "core/sheets/hourwords.h"
#include "ui/document/text.h"
#include "ui/window/textblock.h"

#include <QLabel>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr std::size_t mostSessions = 10;  // the steps below need the room

}  // namespace

HoursBox::HoursBox(Planner& planner, QWidget* parent)
    : FormSection(tr("Time at the bench"), true, parent)
    , planner_(planner)
    , words_(new QLabel(body())) {
    setObjectName(QStringLiteral("hours"));
    head()->setObjectName(QStringLiteral("hoursHead"));
    words_->setObjectName(QStringLiteral("hoursWords"));
    words_->setTextFormat(Qt::RichText);
    words_->setFont(smallFont(font()));
    words_->setWordWrap(true);
    add(words_);
    connect(&planner, &Planner::changed, this, &HoursBox::refresh);
    refresh();
}

void HoursBox::refresh() {
    words_->setEnabled(planner_.state() == Planner::State::Current);
    if (shown_ == planner_.last()) {
        return;
    }
    shown_ = planner_.last();
    if (!shown_) {
        words_->clear();
        return;
    }
    const BenchHours& hours = shown_->job.hours;
    QString rows;
    const std::size_t shown = std::min(mostSessions, hours.sessions.size());
    for (std::size_t i = 0; i < shown; ++i) {
        const BenchSession& session = hours.sessions[i];
        const QString day = toQt(dayTitle(session));
        QString what = toQt(taskWords(hours, session));
        const QString wait = toQt(waitWords(hours, session));
        if (!wait.isEmpty()) {
            what += tr("; once %1").arg(wait);
        }
        rows += QStringLiteral("<tr><td style='padding-right:10px;white-space:nowrap'>%1</td>"
                               "<td style='padding-right:10px;white-space:nowrap;"
                               "font-weight:bold'>%2</td><td>%3</td></tr>")
                    .arg(day.toHtmlEscaped(), toQt(timeWords(session.minutes)).toHtmlEscaped(),
                         what.toHtmlEscaped());
    }
    QString words = QStringLiteral("<p>%1</p><table cellspacing='0' cellpadding='1'>%2</table>")
                        .arg(tr("About %1.").arg(toQt(totalWords(hours))).toHtmlEscaped(), rows);
    if (shown < hours.sessions.size()) {
        words += QStringLiteral("<p>%1</p>")
                     .arg(tr("and %1 more, on the sheet “Time at the bench”")
                              .arg(hours.sessions.size() - shown)
                              .toHtmlEscaped());
    }
    words_->setText(words);
}

}  // namespace kerfwright
