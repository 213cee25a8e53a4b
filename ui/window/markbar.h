// What is marked on the board: the width and height of its column and row to full precision, and
// the size of what spans several of them.
#pragma once

#include "ui/document/document.h"
#include "ui/window/boardeditor.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class FaultNote;
class LengthField;

class MarkBar : public QWidget {
    Q_OBJECT

public:
    MarkBar(Document& document, BoardEditor& editor, QWidget* parent = nullptr);

    /// Where faults of the entries are told.
    void setFaultNote(FaultNote* note);

Q_SIGNALS:
    /// A button was pressed.
    void commandGiven();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void placeSize();

    Document& document_;
    BoardEditor& editor_;
    QLabel* columnName_;
    LengthField* columnWidth_;
    QLabel* rowName_;
    LengthField* rowHeight_;
    QLabel* size_;
    FaultNote* faults_ = nullptr;
    QToolButton* merge_;
    QToolButton* split_;
};

}  // namespace kerfwright
