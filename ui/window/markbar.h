// What is marked on the board: the width and height of its column and row to full precision, the
// size of what spans several of them, and what can be done with it.
#pragma once

#include "ui/document/document.h"
#include "ui/window/boardeditor.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
QT_END_NAMESPACE

namespace kerfwright {

class FaultNote;
class LengthField;
class RegionActions;
class RegionBar;

class MarkBar : public QWidget {
    Q_OBJECT

public:
    MarkBar(Document& document, BoardEditor& editor, const RegionActions& actions,
            QWidget* parent = nullptr);

    /// Where faults of the entries are told.
    void setFaultNote(FaultNote* note);

    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void place();

    Document& document_;
    BoardEditor& editor_;
    const RegionActions& actions_;
    QLabel* columnName_;
    LengthField* columnWidth_;
    QLabel* rowName_;
    LengthField* rowHeight_;
    QLabel* size_;
    FaultNote* faults_ = nullptr;
    RegionBar* region_ = nullptr;
};

}  // namespace kerfwright
