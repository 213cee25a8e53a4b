#include "ui/window/spotlight.h"

#include "core/sheets/record.h"
#include "ui/document/text.h"

namespace kerfwright {

namespace {

template <class Things>
bool isIn(int index, const Things& things) {
    return index >= 0 && static_cast<std::size_t>(index) < things.size();
}

}  // namespace

Spotlight::Spotlight(Planner& planner, Sawyer& sawyer, QObject* parent)
    : QObject(parent)
    , planner_(planner)
    , sawyer_(sawyer) {
    connect(&planner, &Planner::changed, this, &Spotlight::planChanged);
    connect(&sawyer, &Sawyer::changed, this, [this] {
        if (!subject_.isNone() && sawyer_.last() != sawn_) {
            follow();
        }
    });
}

void Spotlight::choose(const Subject& subject) {
    if (subject == subject_ && pieces_.empty()) {
        return;
    }
    subject_ = subject;
    pieces_.clear();
    planned_ = planner_.last();
    follow();
}

void Spotlight::choosePiece(QPoint cell) {
    cell_ = cell;
    const PlannedPtr last = planner_.last();
    choose({Subject::Kind::Piece,
            last ? pieceAt(last->project->board.field, cell.x(), cell.y()) : -1});
}

void Spotlight::letGoOf(Subject::Kind kind) {
    if (subject_.kind == kind) {
        letGo();
    }
}

void Spotlight::showPieces(const std::vector<int>& pieces) {
    std::set<int> shown(pieces.begin(), pieces.end());
    if (shown != pieces_) {
        subject_ = {};
        trail_ = {};
        pieces_ = std::move(shown);
        Q_EMIT changed();
    }
}

/// A step of another plan with the same number may be quite another step.
bool Spotlight::isStillThere(const Planned& before, const Planned& now) const {
    const int index = subject_.index;
    const auto same = [index](const auto& old, const auto& fresh, const auto& isSame) {
        return isIn(index, old) && isIn(index, fresh) &&
               isSame(old[static_cast<std::size_t>(index)], fresh[static_cast<std::size_t>(index)]);
    };
    switch (subject_.kind) {
    case Subject::Kind::Step:
        return same(before.job.steps.steps, now.job.steps.steps, [](const Step& a, const Step& b) {
            return a.work.index() == b.work.index() && workpiece(a) == workpiece(b);
        });
    case Subject::Kind::CutLine:
        return same(cutListOf(before.job.steps), cutListOf(now.job.steps),
                    [](const CutListLine& a, const CutListLine& b) {
                        return a.panel == b.panel && a.strips.strips == b.strips.strips;
                    });
    case Subject::Kind::Caution:
        return same(before.job.cautions, now.job.cautions,
                    [](const Caution& a, const Caution& b) { return a.key == b.key; });
    default:
        return true;
    }
}

void Spotlight::planChanged() {
    if (subject_.isNone()) {
        return;
    }
    const PlannedPtr now = planner_.last();
    if (!now || (planned_ && planned_ != now && !isStillThere(*planned_, *now))) {
        letGo();
        return;
    }
    planned_ = now;
    if (subject_.kind == Subject::Kind::Piece) {
        subject_.index = pieceAt(now->project->board.field, cell_.x(), cell_.y());
    }
    follow();
}

void Spotlight::follow() {
    trail_ = {};
    const PlannedPtr last = planner_.last();
    const bool isPlanned =
        subject_.kind != Subject::Kind::Piece || planner_.state() == Planner::State::Current;
    if (last && !subject_.isNone() && isPlanned) {
        const SawnPtr sawn = sawyer_.last();
        if (!trails_ || trailsOf_ != last || sawn_ != sawn) {
            const bool fits = sawn && sawn->planned == last;
            trails_.emplace(last->job, last->project->board.field, fits ? &sawn->plan : nullptr);
            trailsOf_ = last;
            sawn_ = sawn;
        }
        trail_ = trails_->of(subject_);
    }
    Q_EMIT changed();
}

Highlight Spotlight::place() const {
    if (!pieces_.empty()) {
        Highlight shown;
        shown.pieces = pieces_;
        return shown;
    }
    return subject_.kind == Subject::Kind::Piece ? Highlight() : trail_.place;
}

QString Spotlight::words() const {
    const PlannedPtr last = planner_.last();
    switch (subject_.kind) {
    case Subject::Kind::None:
        return {};
    case Subject::Kind::Piece:
        return tr("Piece in column %1, row %2").arg(cell_.x() + 1).arg(cell_.y() + 1);
    case Subject::Kind::Border:
        return tr("Border");
    case Subject::Kind::Part: {
        const QString label = toQt(subject_.label);
        switch (trails_ ? trails_->sortOf(subject_.label) : PartSort::None) {
        case PartSort::Strip:
            return tr("Strip %1").arg(label);
        case PartSort::Slice:
            return tr("Slice %1").arg(label);
        case PartSort::Panel:
            return tr("Panel %1").arg(label);
        default:
            return label;
        }
    }
    case Subject::Kind::Step:
        return tr("Step %1").arg(subject_.index + 1);
    case Subject::Kind::CutLine: {
        const auto lines = last ? cutListOf(last->job.steps) : std::vector<CutListLine>();
        return isIn(subject_.index, lines)
                   ? tr("Strips %1")
                         .arg(toQt(labelList(
                             lines[static_cast<std::size_t>(subject_.index)].strips.strips)))
                   : QString();
    }
    case Subject::Kind::Caution:
        return last && isIn(subject_.index, last->job.cautions)
                   ? toQt(last->job.cautions[static_cast<std::size_t>(subject_.index)].title)
                   : QString();
    case Subject::Kind::Plank:
        return tr("Plank %1").arg(toQt(subject_.label));
    }
    return {};
}

}  // namespace kerfwright
