// The tab "Timber": the rack, the planks with their cuts, what to buy, and which boards the rack is
// good for. Above them, how good the layout is.
#pragma once

#include "ui/document/sawyer.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QProgressBar;
class QPushButton;
class QStackedWidget;
QT_END_NAMESPACE

namespace kerfwright {

class BoardsPage;
class BuyPage;
class CutsView;
class Dialogs;
class RackPage;
class Segmented;
class Spotlight;

class TimberPanel : public QWidget {
    Q_OBJECT

public:
    TimberPanel(Document& document, Sawyer& sawyer, Spotlight& spotlight, Dialogs& dialogs,
                QWidget* parent = nullptr);

    enum Page { RackOf, Cuts, Buy, Boards };
    void showPage(Page page);
    Page page() const;
    RackPage* rack() const { return rack_; }
    CutsView* cuts() const { return cuts_; }
    BuyPage* buy() const { return buy_; }
    BoardsPage* boards() const { return boards_; }

Q_SIGNALS:
    void told(const QString& words);
    void sampleAsked(const QString& sample);
    /// Where the sheets are printed.
    void sheetsAsked();

protected:
    void showEvent(QShowEvent* event) override;

private:
    QWidget* cutsPage();
    QWidget* cutsFoot();
    void refresh();
    void follow();
    void pin(const QString& strip, const QString& plank);
    void unpin(const QString& strip);

    Document& document_;
    Sawyer& sawyer_;
    Spotlight& spotlight_;
    Segmented* pages_;
    QLabel* words_;
    QLabel* shortage_;
    QProgressBar* progress_;
    QPushButton* stop_;
    QStackedWidget* stack_;
    RackPage* rack_;
    CutsView* cuts_;
    QLabel* cutsEmpty_;
    QPushButton* unpin_;
    QPushButton* print_;
    BuyPage* buy_;
    BoardsPage* boards_;
};

}  // namespace kerfwright
