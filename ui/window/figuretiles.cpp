#include "ui/window/figuretiles.h"

#include <QThreadPool>

#include <algorithm>
#include <utility>

namespace kerfwright {

namespace {

constexpr int atOnce = 8'000;             // pixels that are made in between: half a millisecond
constexpr int inOnePart = 400'000;        // pixels that are made before it is asked again
constexpr std::size_t room = 48U << 20U;  // bytes of textures that are kept

}  // namespace

FigureTiles::FigureTiles(QThreadPool& pool, QObject* parent)
    : QObject(parent)
    , pool_(pool) {}

FigureTiles::~FigureTiles() {
    if (stop_) {
        *stop_ = true;
    }
    pool_.waitForDone();
}

void FigureTiles::begin(FigureLooks looks) {
    ++round_;
    looks_ = std::move(looks);
    orders_.clear();
}

std::vector<std::uint8_t> FigureTiles::Order::tones() const {
    std::vector<std::uint8_t> tones(static_cast<std::size_t>(area.width) *
                                    static_cast<std::size_t>(area.height));
    figureTexture(tones.data(), area, look, cut, face);
    return tones;
}

const FigureTile* FigureTiles::find(const FigurePart& part, bool mayBorrow) const {
    const auto fits = [&part](const FigureTile& tile) {
        return tile.width >= part.width && tile.height >= part.height;
    };
    const auto found = tiles_.find(part.key);
    if (found != tiles_.end() && fits(found->second)) {
        return &found->second;
    }
    if (!mayBorrow) {
        return nullptr;
    }
    // Smaller than the piece has become, or in another wood.
    if (found != tiles_.end()) {
        return &found->second;
    }
    const auto any = anyLook_.find(part.place);
    const auto other = any == anyLook_.end() ? tiles_.end() : tiles_.find(any->second);
    return other != tiles_.end() ? &other->second : nullptr;
}

const FigureTile* FigureTiles::take(const FigurePart& part) {
    const auto own = tiles_.find(part.key);
    if (own != tiles_.end()) {
        own->second.used = round_;
    }
    return find(part, true);
}

void FigureTiles::put(const Order& order, std::vector<std::uint8_t> tones) {
    FigureTile& tile = tiles_[order.key];
    bytes_ += tones.size();
    bytes_ -= tile.tones.size();
    tile = {order.area.width, order.area.height, std::move(tones), round_};
    anyLook_[order.place] = order.key;
}

bool FigureTiles::collect(const std::vector<FigurePatch>& patches, const QRect& visible,
                          bool mayBorrow) {
    bool all = true;
    int pixels = 0;
    std::unordered_map<quint64, bool> ordered;
    const std::size_t first = orders_.size();
    for (const FigurePatch& patch : patches) {
        for (const FigurePart& part : figureParts(patch, visible, looks_)) {
            if (find(part, false) != nullptr) {
                continue;
            }
            all = all && mayBorrow && find(part, true) != nullptr;
            if (ordered.emplace(part.key, true).second) {
                orders_.push_back({part.key,
                                   part.place,
                                   {part.left, part.top, part.width, part.height, looks_.step},
                                   looks_.woods[static_cast<std::size_t>(patch.wood)],
                                   patch.cut,
                                   patch.face});
                pixels += part.width * part.height;
            }
        }
    }
    if (first == 0 && pixels <= atOnce && !working_) {
        for (const Order& order : orders_) {
            put(order, order.tones());
        }
        orders_.clear();
        return true;
    }
    return all;
}

void FigureTiles::startWork() {
    if (working_ || orders_.empty()) {
        return;
    }
    working_ = true;
    stop_ = std::make_shared<std::atomic<bool>>(false);
    // No more than a part: what is wanted may be something else by then. Each part asks for the
    // next when it is painted.
    int pixels = 0;
    std::size_t count = 0;
    while (count < orders_.size() && pixels < inOnePart) {
        pixels += orders_[count].area.width * orders_[count].area.height;
        ++count;
    }
    orders_.resize(count);
    pool_.start([this, orders = std::exchange(orders_, {}), stop = stop_] {
        Made made;
        made.reserve(orders.size());
        for (const Order& order : orders) {
            if (*stop) {
                break;
            }
            made.emplace_back(order, order.tones());
        }
        QMetaObject::invokeMethod(
            this, [this, made = std::move(made)]() mutable { workDone(std::move(made)); },
            Qt::QueuedConnection);
    });
}

void FigureTiles::workDone(Made done) {
    working_ = false;
    for (auto& [order, tones] : done) {
        put(order, std::move(tones));
    }
    Q_EMIT made();
}

void FigureTiles::tidy() {
    if (bytes_ <= room) {
        return;
    }
    for (auto tile = tiles_.begin(); tile != tiles_.end();) {
        if (tile->second.used + 8 < round_) {
            bytes_ -= tile->second.tones.size();
            tile = tiles_.erase(tile);
        } else {
            ++tile;
        }
    }
    for (auto any = anyLook_.begin(); any != anyLook_.end();) {
        any = tiles_.count(any->second) == 0 ? anyLook_.erase(any) : std::next(any);
    }
}

}  // namespace kerfwright
