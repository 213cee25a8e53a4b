// Textures of figure, made beside the window and kept. Tones, one byte a pixel; a piece in another
// wood borrows the old texture until its own is there.
#pragma once

#include "ui/window/figurepatches.h"

#include <QObject>

#include <atomic>
#include <cstdint>
#include <memory>
#include <unordered_map>
#include <vector>

QT_BEGIN_NAMESPACE
class QThreadPool;
QT_END_NAMESPACE

namespace kerfwright {

struct FigureTile {
    int width = 0, height = 0;
    std::vector<std::uint8_t> tones;  ///< row by row
    quint64 used = 0;                 ///< the round in which it was last painted
};

class FigureTiles : public QObject {
    Q_OBJECT

public:
    /// What is made beside the window is made in this pool, which outlives it.
    explicit FigureTiles(QThreadPool& pool, QObject* parent = nullptr);
    ~FigureTiles() override;

    /// A new picture, of these looks. What was ordered for the last one is forgotten.
    void begin(FigureLooks looks);
    const FigureLooks& looks() const { return looks_; }
    /// Orders what is missing of the patches; false where something is. With `mayBorrow` what can
    /// be borrowed is not missing, but ordered all the same.
    bool collect(const std::vector<FigurePatch>& patches, const QRect& visible, bool mayBorrow);
    /// Its own texture, or the next best; null where there is none.
    const FigureTile* take(const FigurePart& part);
    /// Something is ordered, and nothing is being made yet.
    bool isWaiting() const { return !orders_.empty() && !working_; }
    /// Nothing is ordered, and nothing is being made.
    bool isDone() const { return orders_.empty() && !working_; }
    /// Begins to make what is ordered. `made` comes when a part of it is there.
    void startWork();
    /// Throws out what has long not been painted, once there is too much.
    void tidy();

Q_SIGNALS:
    void made();

private:
    /// A texture that is to be made.
    struct Order {
        quint64 key = 0, place = 0;
        TextureArea area;
        WoodLook look;
        TimberCut cut;
        FacePlane face;
        std::vector<std::uint8_t> tones() const;
    };
    using Made = std::vector<std::pair<Order, std::vector<std::uint8_t>>>;

    const FigureTile* find(const FigurePart& part, bool mayBorrow) const;
    void put(const Order& order, std::vector<std::uint8_t> tones);
    void workDone(Made made);

    QThreadPool& pool_;
    FigureLooks looks_;
    std::unordered_map<quint64, FigureTile> tiles_;
    std::unordered_map<quint64, quint64> anyLook_;  ///< a texture for a place in whichever wood
    std::vector<Order> orders_;
    bool working_ = false;
    std::shared_ptr<std::atomic<bool>> stop_;
    quint64 round_ = 0;
    std::size_t bytes_ = 0;
};

}  // namespace kerfwright
