// The bench: steps, cautions, cut list, ways, cut sheets and price. What is heavy is made when it
// is first seen.
#pragma once

#include "core/board/seento.h"
#include "ui/document/sawyer.h"

#include <QTabWidget>

#include <vector>

namespace kerfwright {

struct CautionCount;
class CardList;
class Dialogs;
class MovementBox;
class PricePanel;
class SheetsPanel;
class SnugTabs;
class Spotlight;
class StepsPanel;
class TimberPanel;
class WaysPanel;

/// A number on a tab.
class Badge : public QWidget {
    Q_OBJECT

public:
    explicit Badge(QWidget* parent);
    /// `grave`: some of them are dangers.
    void setCount(int count, bool grave);
    /// A tick instead: there was something, and nothing of it is open. No number, no dangers.
    void setDone();
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int count_ = 0;
    bool grave_ = false;
    bool done_ = false;
};

class BenchTabs : public QTabWidget {
    Q_OBJECT

public:
    BenchTabs(Document& document, Planner& planner, Sawyer& sawyer, Spotlight& spotlight,
              Dialogs& dialogs, QWidget* parent = nullptr);

    /// In which all tabs, and a badge, are just in sight.
    int snugWidth() const;
    /// In which they stand at their ease.
    int easyWidth() const;

    enum Tab { Steps, Cautions, CutListTab, TimberTab, Ways, Sheets, Price };
    StepsPanel* steps() const { return steps_; }
    CardList* cautions() const { return cautions_; }
    /// All four are made on first use.
    TimberPanel* timber();
    SheetsPanel* sheets();
    PricePanel* price();
    WaysPanel* ways();
    /// Gives the keys to the first that takes them on the page that is shown.
    void focusPage();

Q_SIGNALS:
    void told(const QString& words);
    /// The entry that a term of a working in the cut list comes from.
    void termAsked(TermKind kind);
    /// The maker asked for the price of the wood with that name.
    void woodPriceAsked(const QString& name);
    /// Where the maker says what timber there is.
    void timberAsked();
    /// A sample by its resource path, with the rack of the project that is open.
    void sampleAsked(const QString& sample);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void refreshCautions();
    void showCount(const CautionCount& count);
    int roomForBadge() const;
    void cautionChosen(int row);
    void tick(int row);
    /// Where the list has that caution of the job, and which one it has there; -1: nowhere, none.
    int rowOf(int caution) const;
    int cautionAt(int row) const;
    void follow();
    void takeWay(int row, int way);
    void fill(int tab);
    void inOrder(QWidget* page);

    Document& document_;
    Planner& planner_;
    Sawyer& sawyer_;
    Spotlight& spotlight_;
    Dialogs& dialogs_;
    SnugTabs* tabs_;
    StepsPanel* steps_;
    QWidget* cautionsPage_;
    CardList* cautions_;
    MovementBox* movement_;
    Badge* badge_;
    QWidget* cutListPage_;
    QWidget* timberPage_;
    TimberPanel* timber_ = nullptr;
    QWidget* sheetsPage_;
    SheetsPanel* sheets_ = nullptr;
    QWidget* waysPage_;
    WaysPanel* ways_ = nullptr;
    QWidget* pricePage_;
    PricePanel* price_ = nullptr;
    PlannedPtr shown_;
    std::vector<SeenTo> shownSeenTo_;
    std::vector<int> order_;  ///< of each row of the list: which caution of the job
    bool following_ = false;
};

}  // namespace kerfwright
