// The patterns as small live pictures in the woods at hand.
#pragma once

#include "core/board/patterns.h"
#include "ui/document/document.h"
#include "ui/window/boardeditor.h"

#include <QAbstractButton>

namespace kerfwright {

class PatternButton : public QAbstractButton {
    Q_OBJECT

public:
    PatternButton(const PatternInfo& info, QWidget* parent);
    /// The picture: a small field in `woods`.
    void show(const Field& field, const std::vector<Wood>& woods, bool inForce);
    QSize sizeHint() const override { return QSize(60, 60); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Board board_;
    std::vector<Wood> woods_;
    bool inForce_ = false;
};

class PatternPicker : public QWidget {
    Q_OBJECT

public:
    PatternPicker(Document& document, QWidget* parent = nullptr);

private:
    void refresh();
    bool isLaid(const Field& field) const;
    void lay(const PatternInfo& info);
    /// As many woods as the pattern wants, in the order of the chips, the border's own last.
    std::vector<int> woodsFor(const PatternInfo& info) const;

    Document& document_;
    std::vector<PatternButton*> buttons_;
    int chosen_ = -1;
    struct Base {
        int columns = 1;
        int rows = 1;
        Length width, height;
    } base_;      ///< the squares of the field before patterns were tried
    Field laid_;  ///< what the chosen pattern gave; it is in force while the field has its pieces
};

}  // namespace kerfwright
