// The ways to glue the board, side by side: what each costs, pictures of its stages, and which is
// in use. Above them how good the best is, and what frees pieces that lock each other.
#pragma once

#include "ui/document/comparer.h"
#include "ui/document/document.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QProgressBar;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class CardList;

class WaysPanel : public QWidget {
    Q_OBJECT

public:
    WaysPanel(Document& document, Planner& planner, QWidget* parent = nullptr);

    CardList* list() const { return list_; }
    Comparer& comparer() { return comparer_; }
    /// Adds the joints that free the picture; nothing where it is not locked.
    void freePicture();

Q_SIGNALS:
    void told(const QString& words);
    /// Pieces that lock each other.
    void piecesShown(const std::vector<int>& pieces);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void refresh();
    void fill();
    void take(int row);

    Document& document_;
    Planner& planner_;
    Comparer comparer_;
    QLabel* words_;
    QProgressBar* progress_;
    QPushButton* stop_;
    QPushButton* free_;
    CardList* list_;
    std::shared_ptr<const Comparer::Compared> shown_;
    QString inUse_;  ///< key and direction of the plan that the cards were made for
};

}  // namespace kerfwright
