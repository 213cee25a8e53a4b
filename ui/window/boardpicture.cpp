#include "ui/window/boardpicture.h"

#include "core/sheets/boardview.h"
#include "ui/document/figureplaces.h"
#include "ui/document/surround.h"
#include "ui/paint/export.h"

#include <algorithm>
#include <utility>

namespace kerfwright {

BoardPicture::BoardPicture(ProjectPtr project, PlannedPtr planned, const FigureStyle& style)
    : project_(std::move(project))
    , planned_(std::move(planned))
    , style_(style) {
    const Job* job = planned_ ? &planned_->job : nullptr;
    surround_ = surroundOf(*project_, job);
    BoardViewOptions options;
    options.surround = surround_;
    drawing_ = drawBoard(project_->board, finishedWoods(project_->woods, style_.finish),
                         job != nullptr ? job->plan.extraJoints : std::vector<Joint>(), options);
}

double BoardPicture::scale() const {
    constexpr double longSide = 2400;  // pixels
    return longSide / std::max({drawing_.extent.width, drawing_.extent.height, 1.0});
}

QByteArray BoardPicture::svg(const QString& title) const {
    return toSvg(drawing_, title, paperTheme());
}

QImage BoardPicture::plain() const {
    return toImage(drawing_, scale(), paperTheme());
}

QImage BoardPicture::image() const {
    if (!style_.on) {
        return plain();
    }
    const Board& board = project_->board;
    const FigurePlaces places = planned_ ? figurePlaces(planned_->job, project_->woods)
                                         : figurePlaces(asGlued(board), project_->woods, {},
                                                        board.grain != GrainDirection::Across);
    return toImage(
        drawing_, scale(), paperTheme(),
        {figuredFaces(board, surround_, project_->woods, places), project_->woods, style_.finish});
}

QByteArray BoardPicture::png() const {
    return toPng(image(), scale());
}

}  // namespace kerfwright
