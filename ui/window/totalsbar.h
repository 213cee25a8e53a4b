// What the whole board comes to, along the foot of the window.
#pragma once

#include "ui/document/planner.h"

#include <QWidget>

#include <vector>

QT_BEGIN_NAMESPACE
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class TotalsBar : public QWidget {
    Q_OBJECT

public:
    TotalsBar(Document& document, Planner& planner, QWidget* parent = nullptr);
    QSize sizeHint() const override { return QSize(600, 40); }
    QSize minimumSizeHint() const override { return QSize(200, 40); }

    /// Where the "=" of the finished size is painted; null before it was.
    QRect workingRect() const { return workingRect_; }

Q_SIGNALS:
    /// The entry that a term of a working comes from.
    void termAsked(TermKind kind);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Item;

    void refresh();
    /// Decides which items have room, and where the button for the others stands.
    void place();
    int widthOf(const Item& item) const;
    static QString moreWords(qsizetype count);
    void openWorking();
    void openMore();

    struct Item {
        QString label;
        QString value;
        int rank;              ///< no two are alike; those from some rank on have no room
        bool right = false;    ///< at the right edge
        bool danger = false;   ///< in the colour of dangers
        bool working = false;  ///< has an "=" that opens it
    };

    Document& document_;
    Planner& planner_;
    std::vector<Item> items_;
    std::vector<Item> shown_;
    QToolButton* more_;  ///< opens those that have no room
    bool stale_ = false;
    QRect workingRect_;
};

}  // namespace kerfwright
