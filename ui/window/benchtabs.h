// The bench: steps, cautions, cut list and cut sheets. What is heavy is made when it is first seen.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/boardpainter.h"

#include <QTabWidget>

namespace kerfwright {

class CardList;
class Dialogs;
class MovementBox;
class SheetsPanel;
class StepsPanel;
class WaysPanel;

/// A number on a tab.
class Badge : public QWidget {
    Q_OBJECT

public:
    explicit Badge(QWidget* parent);
    void setCount(int count, bool grave);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int count_ = 0;
    bool grave_ = false;
};

class BenchTabs : public QTabWidget {
    Q_OBJECT

public:
    BenchTabs(Document& document, Planner& planner, Dialogs& dialogs, QWidget* parent = nullptr);

    enum Tab { Steps, Cautions, CutListTab, Ways, Sheets };
    StepsPanel* steps() const { return steps_; }
    CardList* cautions() const { return cautions_; }
    /// Both are made on first use.
    SheetsPanel* sheets();
    WaysPanel* ways();

Q_SIGNALS:
    void told(const QString& words);
    /// What the chosen caution is about, on the board.
    void highlighted(const Highlight& highlight);
    /// The entry that a term of a working in the cut list comes from.
    void termAsked(TermKind kind);
    /// Where the maker says what timber there is.
    void timberAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void letGo(int tab);
    void refreshCautions();
    void cautionChosen(int row);
    void takeWay(int row, int way);
    void fill(int tab);

    Document& document_;
    Planner& planner_;
    Dialogs& dialogs_;
    StepsPanel* steps_;
    QWidget* cautionsPage_;
    CardList* cautions_;
    MovementBox* movement_;
    Badge* badge_;
    QWidget* cutListPage_;
    QWidget* sheetsPage_;
    SheetsPanel* sheets_ = nullptr;
    QWidget* waysPage_;
    WaysPanel* ways_ = nullptr;
    PlannedPtr shown_;
};

}  // namespace kerfwright
