// The patterns as small live pictures in the woods at hand.
#pragma once

#include "core/board/recipe.h"
#include "ui/document/document.h"

#include <QAbstractButton>

#include <optional>
#include <vector>

namespace kerfwright {

class FaultNote;

class PatternButton : public QAbstractButton {
    Q_OBJECT

public:
    PatternButton(const PatternInfo& info, QWidget* parent);
    /// The picture: a small field in `woods`.
    void show(const Field& field, const std::vector<Wood>& woods, bool inForce);
    QSize sizeHint() const override;

Q_SIGNALS:
    /// An arrow key: to the next button that way.
    void stepped(int right, int down);

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    Pattern pattern_;
    Board board_;
    std::vector<Wood> woods_;
    bool inForce_ = false;
};

class PatternPicker : public QWidget {
    Q_OBJECT

public:
    PatternPicker(Document& document, QWidget* parent = nullptr);

    /// The last that the tab key visits.
    QWidget* lastButton() const { return buttons_.back(); }

private:
    void refresh();
    void lay(const PatternInfo& info);
    void step(std::size_t from, int right, int down);
    /// As many woods as the pattern wants: those of the recipe in force, then the others in the
    /// order of the chips, the border's own last.
    std::vector<int> woodsFor(const PatternInfo& info) const;

    /// What patterns are laid on: the room, and about how many squares it has.
    struct Ground {
        int columns = 1;
        int rows = 1;
        Length width, height;
    };
    Ground groundOf(const Project& project) const;

    Document& document_;
    std::vector<PatternButton*> buttons_;
    FaultNote* words_;
    Ground ground_;
    std::optional<Recipe> laid_;  ///< what was laid on `ground_` last: trying one pattern after
                                  ///< another starts from the same squares each time
};

}  // namespace kerfwright
