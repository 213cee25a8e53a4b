// The board with wood figure, as the view shows it: textures made beside the window and kept, put
// together to one picture that is painted in one go. Until textures are there, woods are plain.
//
// Textures are tones, one byte a pixel. Which strip a piece shows, its place in the tree and the
// size of a pixel say which texture it is; a piece in another wood shows the old texture in the new
// wood's colours until its own is there.
#pragma once

#include "ui/document/figureplaces.h"
#include "ui/document/planner.h"
#include "ui/paint/figure.h"
#include "ui/window/boardgeometry.h"

#include <QImage>
#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include <atomic>
#include <memory>
#include <optional>
#include <unordered_map>
#include <vector>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

/// Kept for the user.
FigureStyle keptFigureStyle();
void keepFigureStyle(const FigureStyle& style);

/// What is to be seen.
struct FigureScene {
    const Board& board;
    const std::vector<Wood>& woods;
    const BoardGeometry& geometry;
    QRect view;               ///< of the widget, in its pixels
    bool grainDown = true;    ///< of a long-grain field without a plan
    bool underHatch = false;  ///< calmer, so that hatch and letters stay legible
};

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
    struct Tile {
        int width = 0, height = 0;
        std::vector<std::uint8_t> tones;
        quint64 used = 0;  ///< the round in which it was last painted
    };
    /// A texture that is to be made.
    struct Order {
        quint64 key = 0, place = 0;
        TextureArea area;
        WoodLook look;
        TimberCut cut;
        FacePlane face;
    };
    using Made = std::vector<std::pair<Order, std::vector<std::uint8_t>>>;
    /// What of a patch is one texture: at most `chunk` pixels wide and high.
    struct Part {
        quint64 key = 0, place = 0;
        int left = 0, top = 0, width = 0, height = 0;  ///< in the patch
    };
    /// A piece or a strip of the border, in device pixels from the board's corner.
    struct Patch {
        QRect rect;
        int wood = 0;
        int mitred = -1;  ///< side of the frame, 0 top to 3 left; -1: a rectangle
        int mitre = 0;    ///< as wide as the mitre cuts in
        TimberCut cut;
        FacePlane face;
    };

    void paintGlued(QPainter& painter, const FigureScene& scene);
    void forget();
    void planChanged();
    void placesMade(const FigurePlacesPtr& places, const PlannedPtr& planned);
    void choosePlaces(const Board& board, const std::vector<Wood>& woods, bool grainDown);
    std::vector<Patch> patchesOf(const FigurePlaces& places, const FigureScene& scene) const;
    void addRails(std::vector<Patch>& patches, const FigureScene& scene) const;
    std::vector<Part> partsOf(const Patch& patch, const QRect& visible) const;
    /// Orders what is missing of the patches; false where something is.
    bool collect(const std::vector<Patch>& patches, const QRect& visible, bool mayBorrow);
    const Tile* find(const Part& part, bool mayBorrow) const;
    void put(const Order& order, std::vector<std::uint8_t> tones);
    void startWork();
    void workDone(Made made);
    void compose(const std::vector<Patch>& patches, const QRect& visible, const FigureScene& scene);
    void paintPart(const Patch& patch, const Part& part, const Tile& tile, const QRect& visible,
                   const FigureTable& table);
    void tidy();
    const FigureTable& tableOf(const Wood& wood, bool underHatch);
    quint64 lookKeyOf(const Wood& wood) const;

    Planner& planner_;
    FigureStyle style_;
    QThreadPool pool_;
    QTimer guess_;  ///< after it pieces have figure of their own, if there is still no plan

    FigurePlacesPtr exact_;  ///< of the last plan whose textures are there
    Field exactField_;
    PlannedPtr asked_;  ///< the plan whose places are wanted
    FigurePlacesPtr pending_;
    Field pendingField_;
    FigurePlacesPtr places_;  ///< of the board that is shown
    Field placesField_;
    bool mayGuess_ = false;

    std::unordered_map<quint64, Tile> tiles_;
    std::unordered_map<quint64, quint64> anyLook_;  ///< a texture for a place in whichever wood
    std::vector<quint64> lookKeys_;                 ///< of the scene's woods
    std::vector<WoodLook> looks_;
    double step_ = 1;  ///< mm a device pixel
    std::vector<Order> orders_;
    bool working_ = false;
    std::shared_ptr<std::atomic<bool>> stop_;
    quint64 round_ = 0;
    std::size_t bytes_ = 0;

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
