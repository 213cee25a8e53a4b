// The strips to mill, two to three lines each, so that they read in a narrow panel without being
// pushed sideways.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/keylist.h"
#include "ui/window/stepwords.h"

#include <QAbstractListModel>
#include <QColor>

#include <vector>

QT_BEGIN_NAMESPACE
class QLabel;
QT_END_NAMESPACE

namespace kerfwright {

class Spotlight;

/// Strips alike in wood, size and use.
struct CutLine {
    QColor colour;
    QString letter;  ///< of the wood
    QString wood;
    QString use;     ///< "panel A", "border"
    QString pieces;  ///< "4 pieces: A1, A3, A5, A7"
    QString milled;  ///< "milled 41 × 50 × 480 mm"
    QString rough;
    std::vector<StepFigure> figures;  ///< its six sizes, with their workings
    /// Everything, for screen readers.
    QString spoken() const;
};

class CutModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    int rowCount(const QModelIndex& parent = QModelIndex()) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    const CutLine& line(int row) const { return lines_[static_cast<std::size_t>(row)]; }
    void setLines(std::vector<CutLine> lines);

private:
    std::vector<CutLine> lines_;
};

class CutList : public KeyList {
    Q_OBJECT

public:
    CutList(Planner& planner, Spotlight& spotlight, QWidget* parent = nullptr);
    int count() const { return model_->rowCount(); }
    const CutLine& line(int row) const { return model_->line(row); }
    /// Of the line that the spotlight is on; -1: none.
    int chosenLine() const;
    /// Whether it belongs to what is chosen elsewhere.
    bool isMarked(int row) const;
    /// Where the "=" of a line is painted, in the viewport.
    QRect workingRect(int row) const;

Q_SIGNALS:
    /// The entry that a term of a working comes from.
    void termAsked(TermKind kind);

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void follow();
    void toggle(int row);
    void openWorking(int row);

    Planner& planner_;
    Spotlight& spotlight_;
    CutModel* model_;
    QLabel* head_;  ///< what the three numbers of a size are
    PlannedPtr shown_;
};

}  // namespace kerfwright
