// What is marked on the board, and the widths and heights of its column and row to full precision.
#pragma once

#include "ui/document/document.h"
#include "ui/window/boardeditor.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class LengthField;

class MarkBar : public QWidget {
    Q_OBJECT

public:
    MarkBar(Document& document, BoardEditor& editor, QWidget* parent = nullptr);

private:
    void refresh();

    Document& document_;
    BoardEditor& editor_;
    QLabel* columnName_;
    LengthField* columnWidth_;
    QLabel* rowName_;
    LengthField* rowHeight_;
    QToolButton* merge_;
    QToolButton* split_;
};

}  // namespace kerfwright
