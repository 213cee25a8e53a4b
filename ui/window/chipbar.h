// Chips to paint with, each with its number and how many pieces it has.
#pragma once

#include "ui/document/document.h"
#include "ui/window/boardeditor.h"

#include <QAbstractButton>
#include <QWidget>

#include <vector>

namespace kerfwright {

class Chip : public QAbstractButton {
    Q_OBJECT

public:
    Chip(int number, QWidget* parent);
    void show(const Wood& wood, int pieces, bool paints);
    QSize sizeHint() const override { return QSize(40, 52); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int number_;
    Wood wood_;
    QString pieces_;
};

class ChipBar : public QWidget {
    Q_OBJECT

public:
    ChipBar(Document& document, BoardEditor& editor, QWidget* parent = nullptr);
    /// So narrow that every chip can still be hit with ease.
    int leastWidth() const;
    QSize minimumSizeHint() const override { return QSize(80, 56); }
    QSize sizeHint() const override;

Q_SIGNALS:
    /// A chip was, by mouse or key.
    void clicked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void place();

    Document& document_;
    BoardEditor& editor_;
    std::vector<Chip*> chips_;
};

}  // namespace kerfwright
