// What every place that puts pages on paper or into a file does alike.
#pragma once

#include "core/sheets/sheets.h"

#include <QString>

#include <functional>
#include <vector>

QT_BEGIN_NAMESPACE
class QWidget;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;
class Document;

/// What the maker chose last, else what is usual in the country.
Paper paperChoice();
void keepPaperChoice(Paper paper);

/// The name of the project without what a file name may not hold.
QString fileNameOf(const Document& document);
QString withEnding(const QString& path, const QString& ending);

/// Pages that are made only once they are wanted.
struct PaperWork {
    QString title;      ///< of the document
    QString suggested;  ///< file name without ending
    Paper paper = Paper::A4;
    std::function<std::vector<Page>()> pages;
};
/// Asks where to, and writes; a fault is told. The words for what was saved, empty where nothing
/// was.
QString savePdf(Dialogs& dialogs, QWidget* parent, const QString& question, const PaperWork& work);
/// Asks for a printer, and prints; a fault is told.
void printPages(Dialogs& dialogs, QWidget* parent, const PaperWork& work);

/// "Saved 6 pages to “board.pdf”".
QString savedWords(std::size_t pages, const QString& name);

}  // namespace kerfwright
