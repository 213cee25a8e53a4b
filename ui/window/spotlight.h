// What the maker chose last, wherever that was: a piece of the board, a step, a line of the cut
// list, a caution, a strip or a plank. Every part of the window shows what belongs to it, and keeps
// to it until something else is chosen or Esc lets go.
#pragma once

#include "core/bench/trail.h"
#include "ui/document/sawyer.h"

#include <QObject>
#include <QPoint>

#include <optional>

namespace kerfwright {

class Spotlight : public QObject {
    Q_OBJECT

public:
    Spotlight(Planner& planner, Sawyer& sawyer, QObject* parent = nullptr);

    const Subject& subject() const { return subject_; }
    bool isOn(Subject::Kind kind, int index) const {
        return subject_.kind == kind && subject_.index == index;
    }
    /// Of the last plan; empty where nothing is chosen, or where what is chosen is a piece of a
    /// board that is not planned yet.
    const Trail& trail() const { return trail_; }
    /// What is to be lit up on the board. A piece is framed there already.
    Highlight place() const;
    /// "Strip A3", "Step 4"; empty where nothing is chosen.
    QString words() const;

    void choose(const Subject& subject);
    /// The piece at a cell of the field as it is drawn.
    void choosePiece(QPoint cell);
    void letGo() { choose({}); }
    /// Lets go of what is chosen if it is of that kind.
    void letGoOf(Subject::Kind kind);
    /// Pieces that are shown for a reason of their own. Choosing anything ends it.
    void showPieces(const std::vector<int>& pieces);

Q_SIGNALS:
    void changed();

private:
    void planChanged();
    void follow();
    bool isStillThere(const Planned& before, const Planned& now) const;

    Planner& planner_;
    Sawyer& sawyer_;
    Subject subject_;
    QPoint cell_;  ///< of a piece that is chosen
    Trail trail_;
    std::set<int> pieces_;
    PlannedPtr planned_;  ///< that the subject is of
    SawnPtr sawn_;
    std::optional<Trails> trails_;  ///< of both
    PlannedPtr trailsOf_;
};

}  // namespace kerfwright
