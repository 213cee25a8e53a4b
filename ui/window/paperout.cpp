#include "ui/window/paperout.h"

#include "ui/document/document.h"
#include "ui/document/habits.h"
#include "ui/document/text.h"
#include "ui/paint/export.h"
#include "ui/window/dialogs.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QPageSize>
#include <QPrinter>
#include <QSettings>

namespace kerfwright {

namespace {

struct PaperOut {
    Q_DECLARE_TR_FUNCTIONS(PaperOut)
};

QString paperKey() {
    return QStringLiteral("paper");
}

QString letter() {
    return QStringLiteral("letter");
}

}  // namespace

Paper paperChoice() {
    const QString kept = QSettings().value(paperKey()).toString();
    return kept.isEmpty() ? usualPaper() : kept == letter() ? Paper::Letter : Paper::A4;
}

void keepPaperChoice(Paper paper) {
    QSettings().setValue(paperKey(), paper == Paper::Letter ? letter() : QStringLiteral("a4"));
}

QString fileNameOf(const Document& document) {
    QString name = document.path().isEmpty() ? document.displayName()
                                             : QFileInfo(document.path()).completeBaseName();
    for (const QChar c : {QLatin1Char('/'), QLatin1Char('\\'), QLatin1Char(':')}) {
        name.replace(c, QLatin1Char('-'));
    }
    return name;
}

QString withEnding(const QString& path, const QString& ending) {
    return path.isEmpty() || path.endsWith(ending, Qt::CaseInsensitive) ? path : path + ending;
}

QString savedWords(std::size_t pages, const QString& name) {
    return counted(static_cast<qsizetype>(pages), PaperOut::tr("Saved %1 page to “%2”"),
                   PaperOut::tr("Saved %1 pages to “%2”"))
        .arg(name);
}

QString savePdf(Dialogs& dialogs, QWidget* parent, const QString& question, const PaperWork& work) {
    const QString ending = QStringLiteral(".pdf");
    const QString path = withEnding(
        dialogs.fileToWrite(parent, question, work.suggested + ending, PaperOut::tr("PDF (*.pdf)")),
        ending);
    if (path.isEmpty()) {
        return {};
    }
    const std::vector<Page> pages = work.pages();
    const QString fault = writeFileAtomically(path, toPdf(pages, work.paper, work.title));
    if (!fault.isEmpty()) {
        dialogs.tell(parent, PaperOut::tr("Not saved"), fault);
        return {};
    }
    return savedWords(pages.size(), QFileInfo(path).fileName());
}

void printPages(Dialogs& dialogs, QWidget* parent, const PaperWork& work) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageSize(QPageSize(work.paper == Paper::Letter ? QPageSize::Letter : QPageSize::A4));
    printer.setDocName(work.title);
    if (dialogs.setUpPrinter(parent, printer) && !print(printer, work.pages(), work.paper)) {
        dialogs.tell(
            parent, PaperOut::tr("Not printed"),
            PaperOut::tr("The printer gave up before the last page. Nothing else has changed."));
    }
}

}  // namespace kerfwright
