// The board with wood figure, as the view shows it: textures made beside the window and kept, put
// together to one picture that is painted in one go. Until textures are there, woods are plain.
#pragma once

#include "ui/document/figureplaces.h"
#include "ui/document/planner.h"
#include "ui/paint/figure.h"
#include "ui/window/figuretiles.h"

#include <QImage>
#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include <memory>
#include <optional>
#include <vector>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

/// Kept for the user.
FigureStyle keptFigureStyle();
void keepFigureStyle(const FigureStyle& style);

class FigureLayer : public QObject {
    Q_OBJECT

public:
    FigureLayer(Document& document, Planner& planner, QObject* parent = nullptr);
    ~FigureLayer() override;

    FigureStyle style() const { return style_; }
    void setStyle(const FigureStyle& style);
    /// Paints board and border; false where the style is without figure, and nothing was painted.
    bool paint(QPainter& painter, const FigureScene& scene);
    /// What was painted last was painted with all of its figure.
    bool isComplete() const { return complete_; }
    /// The woods in the colours of the style.
    const std::vector<Wood>& finished(const std::vector<Wood>& woods);

Q_SIGNALS:
    /// There is more to be seen than was painted.
    void changed();

private:
    void paintGlued(QPainter& painter, const FigureScene& scene);
    void forget();
    void planChanged();
    void placesMade(const FigurePlacesPtr& places, const PlannedPtr& planned);
    void choosePlaces(const Board& board, const std::vector<Wood>& woods, bool grainDown);
    void compose(const std::vector<FigurePatch>& patches, const QRect& visible,
                 const FigureScene& scene);
    void paintPart(const FigurePatch& patch, const FigurePart& part, const FigureTile& tile,
                   const QRect& visible, const FigureTable& table);
    const FigureTable& tableOf(const Wood& wood, bool underHatch);

    Planner& planner_;
    FigureStyle style_;
    QThreadPool pool_;
    std::unique_ptr<FigureTiles> tiles_;
    QTimer guess_;  ///< after it pieces have figure of their own, if there is still no plan

    FigurePlacesPtr exact_;  ///< of the last plan whose textures are there
    Field exactField_;
    PlannedPtr asked_;  ///< the plan whose places are wanted
    FigurePlacesPtr pending_;
    Field pendingField_;
    FigurePlacesPtr places_;  ///< of the board that is shown
    Field placesField_;
    bool mayGuess_ = false;

    struct Table {
        Wood wood;
        Finish finish;
        double contrast;
        FigureTable table;
    };
    std::vector<std::unique_ptr<Table>> tables_;
    std::vector<Wood> finishedFrom_, finished_;

    /// What `image_` shows.
    struct Shown {
        Board board;
        std::vector<Wood> woods;
        BoardGeometry geometry;
        bool underHatch = false;
        FigureStyle style;
        QRect rect;  ///< in device pixels from the board's corner
    };
    std::optional<Shown> shown_;
    QImage image_;
    bool complete_ = false;
    bool stale_ = true;
};

}  // namespace kerfwright
