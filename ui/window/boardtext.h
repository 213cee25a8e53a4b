// The whole board in words: what is heard of it, and a text to copy.
#pragma once

#include "core/board/border.h"
#include "core/project/project.h"

#include <QDialog>
#include <QString>

QT_BEGIN_NAMESPACE
class QPlainTextEdit;
QT_END_NAMESPACE

namespace kerfwright {

class BoardView;

/// "Row 2 of 8, 50 mm high: 4 times black walnut 50 mm, hard maple 50 mm". Rows count from 0.
QString rowWords(const Project& project, int row);
/// Size, woods, border and every row from the top; rows that are equal to one above say so.
QString boardWords(const Project& project, const BoardSize& size);

/// Reads out the rows of every BoardView, as lines of a list, from now on.
void readBoardsAloud();

/// The words of the board, to read and to copy.
class BoardText : public QDialog {
    Q_OBJECT

public:
    BoardText(const QString& words, QWidget* parent);

private:
    QPlainTextEdit* text_;
};

}  // namespace kerfwright
