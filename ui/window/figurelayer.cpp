#include "ui/window/figurelayer.h"

#include "ui/window/boardpainter.h"
#include "ui/window/figurenotice.h"

#include <QPainter>
#include <QSettings>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <utility>

namespace kerfwright {

namespace {

constexpr int chunk = 256;                // pixels
constexpr int atOnce = 8'000;             // pixels that are made in between: half a millisecond
constexpr int inOnePart = 400'000;        // pixels that are made before it is asked again
constexpr std::size_t room = 48U << 20U;  // bytes of textures that are kept
constexpr std::chrono::milliseconds patience(400);

quint64 mixed64(quint64 hash, quint64 value) {
    hash ^= value + 0x9E3779B97F4A7C15ULL + (hash << 6U) + (hash >> 2U);
    hash *= 0xBF58476D1CE4E5B9ULL;
    return hash ^ (hash >> 29U);
}

/// To the thousandth, since sums that differ in their last bits mean the same.
quint64 mixedLength(quint64 hash, double mm) {
    return mixed64(hash, static_cast<quint64>(std::llround(mm * 1000)));
}

bool sameView(const BoardGeometry& a, const BoardGeometry& b) {
    return a.scale() == b.scale() && a.ratio() == b.ratio() && a.board() == b.board() &&
           a.inside() == b.inside() && a.surround() == b.surround();
}

QRect inDevicePixels(const QRectF& rect, const BoardGeometry& geometry) {
    const auto device = [&](double pixel, double origin) {
        return static_cast<int>(std::lround((pixel - origin) * geometry.ratio()));
    };
    const QPointF corner = geometry.board().topLeft();
    return QRect(
        QPoint(device(rect.left(), corner.x()), device(rect.top(), corner.y())),
        QPoint(device(rect.right(), corner.x()) - 1, device(rect.bottom(), corner.y()) - 1));
}

/// Which part of a row of a mitred strip is seen: [from, to).
std::pair<int, int> mitredRow(int side, int mitre, const QRect& rect, int row) {
    const int width = rect.width();
    const int height = rect.height();
    const double middle = row + 0.5;
    if (side == 0 || side == 2) {
        const double in = mitre * (side == 0 ? middle : height - middle) / height;
        return {static_cast<int>(std::lround(in)), static_cast<int>(std::lround(width - in))};
    }
    const double reach = std::min({1.0, middle / mitre, (height - middle) / mitre});
    const int seen = static_cast<int>(std::lround(width * reach));
    return side == 3 ? std::pair(0, seen) : std::pair(width - seen, width);
}

}  // namespace

FigureStyle keptFigureStyle() {
    FigureStyle style;
    style.on = QSettings().value(QStringLiteral("woodFigure"), true).toBool();
    style.finish =
        QSettings().value(QStringLiteral("oiledLook"), true).toBool() ? Finish::Oiled : Finish::Raw;
    return style;
}

void keepFigureStyle(const FigureStyle& style) {
    QSettings settings;
    settings.setValue(QStringLiteral("woodFigure"), style.on);
    settings.setValue(QStringLiteral("oiledLook"), style.finish == Finish::Oiled);
    Q_EMIT FigureNotice::instance().changed();
}

FigureLayer::FigureLayer(Document& document, Planner& planner, QObject* parent)
    : QObject(parent)
    , planner_(planner)
    , style_(keptFigureStyle()) {
    pool_.setMaxThreadCount(1);
    guess_.setSingleShot(true);
    guess_.setInterval(patience);
    connect(&guess_, &QTimer::timeout, this, [this] {
        mayGuess_ = true;
        Q_EMIT changed();
    });
    connect(&planner, &Planner::changed, this, &FigureLayer::planChanged);
    connect(&document, &Document::replaced, this, &FigureLayer::forget);
}

FigureLayer::~FigureLayer() {
    if (stop_) {
        *stop_ = true;
    }
    pool_.waitForDone();
}

void FigureLayer::setStyle(const FigureStyle& style) {
    if (!(style == style_)) {
        style_ = style;
        Q_EMIT changed();
    }
}

void FigureLayer::forget() {
    exact_.reset();
    pending_.reset();
    places_.reset();
    asked_.reset();
    mayGuess_ = false;
    image_ = QImage();
    shown_.reset();
    complete_ = false;
}

void FigureLayer::planChanged() {
    if (planner_.state() == Planner::State::Impossible && !mayGuess_) {
        mayGuess_ = true;
        Q_EMIT changed();
    }
    const PlannedPtr planned = planner_.last();
    if (!style_.on || planner_.state() != Planner::State::Current || planned == asked_) {
        return;
    }
    asked_ = planned;
    pool_.start([this, planned] {
        const auto places = std::make_shared<const FigurePlaces>(
            figurePlaces(planned->job, planned->project->woods));
        QMetaObject::invokeMethod(
            this, [this, places, planned] { placesMade(places, planned); }, Qt::QueuedConnection);
    });
}

void FigureLayer::placesMade(const FigurePlacesPtr& places, const PlannedPtr& planned) {
    if (planned == asked_) {
        pending_ = places;
        pendingField_ = planned->job.board.field;
        stale_ = true;
        Q_EMIT changed();
    }
}

void FigureLayer::choosePlaces(const Board& board, const std::vector<Wood>& woods, bool grainDown) {
    if (exact_ && exactField_ == board.field) {
        places_ = exact_;
        placesField_ = exactField_;
        return;
    }
    if (places_ && placesField_ == board.field) {
        return;
    }
    const FigurePlacesPtr before = exact_ ? exact_ : places_;
    if (!before && !mayGuess_) {
        if (!guess_.isActive()) {
            guess_.start();
        }
        return;
    }
    places_ = std::make_shared<const FigurePlaces>(
        figurePlaces(board, woods, before ? *before : FigurePlaces(), grainDown));
    placesField_ = board.field;
}

const std::vector<Wood>& FigureLayer::finished(const std::vector<Wood>& woods) {
    if (style_.finish == Finish::Oiled) {
        return woods;
    }
    if (finishedFrom_ != woods) {
        finishedFrom_ = woods;
        finished_ = finishedWoods(woods, Finish::Raw);
    }
    return finished_;
}

const FigureTable& FigureLayer::tableOf(const Wood& wood, bool underHatch) {
    const double contrast = underHatch ? 0.45 : 1;
    for (const auto& known : tables_) {
        if (known->finish == style_.finish && known->contrast == contrast && known->wood == wood) {
            return known->table;
        }
    }
    if (tables_.size() > 200) {
        tables_.erase(tables_.begin(), tables_.begin() + 100);
    }
    tables_.push_back(std::make_unique<Table>(
        Table{wood, style_.finish, contrast, figureTable(wood, style_.finish, contrast)}));
    return tables_.back()->table;
}

quint64 FigureLayer::lookKeyOf(const Wood& wood) const {
    quint64 key = static_cast<quint64>(wood.pores) + 1;
    for (const char c : wood.key) {
        key = mixed64(key, static_cast<quint64>(static_cast<unsigned char>(c)));
    }
    return key;
}

std::vector<FigureLayer::Patch> FigureLayer::patchesOf(const FigurePlaces& places,
                                                       const FigureScene& scene) const {
    std::vector<Patch> patches;
    patches.reserve(places.size() + 4);
    const double joint = jointWidth(scene.board.field, scene.geometry);
    for (const FigurePlace& place : places) {
        Patch patch;
        patch.rect = inDevicePixels(pieceRect(place.piece, scene.geometry, joint), scene.geometry);
        patch.wood = place.piece.wood;
        patch.cut = place.cut;
        patch.face = place.face;
        patches.push_back(patch);
    }
    if (scene.board.border.isThere()) {
        addRails(patches, scene);
    }
    return patches;
}

void FigureLayer::addRails(std::vector<Patch>& patches, const FigureScene& scene) const {
    const BoardGeometry& geometry = scene.geometry;
    const QRect outer = inDevicePixels(geometry.board(), geometry);
    const QRect inner = inDevicePixels(geometry.inside(), geometry).intersected(outer);
    const Border& border = scene.board.border;
    const bool frame = border.isFrame();
    const Surround& surround = geometry.surround();
    const int left = inner.left() - outer.left();
    const int top = inner.top() - outer.top();
    const int right = outer.right() - inner.right();
    const int bottom = outer.bottom() - inner.bottom();
    // Straight strips at top and bottom lie over the ends of the others.
    const int under = frame ? 0 : top;
    const int sideHeight = outer.height() - (frame ? 0 : top + bottom);
    const std::array<QRect, 4> rects = {
        QRect(0, 0, outer.width(), top),
        QRect(outer.width() - right, under, right, sideHeight),
        QRect(0, outer.height() - bottom, outer.width(), bottom),
        QRect(0, under, left, sideHeight),
    };
    for (int side = 0; side < 4; ++side) {
        const bool upright = side % 2 == 1;
        const double width = (upright ? surround.railX : surround.railY).toMm();
        const QRect& rect = rects[static_cast<std::size_t>(side)];
        if (rect.isEmpty() || width <= 0) {
            continue;
        }
        const RailPlace place =
            railPlace(side, width, geometry.size().width(), geometry.size().height(),
                      scene.woods[static_cast<std::size_t>(border.wood)]);
        Patch patch;
        patch.rect = rect;
        patch.wood = border.wood;
        patch.cut = place.cut;
        patch.face = place.face;
        if (frame) {
            patch.mitred = side;
            patch.mitre = upright ? top : left;
        }
        patches.push_back(patch);
    }
}

std::vector<FigureLayer::Part> FigureLayer::partsOf(const Patch& patch,
                                                    const QRect& visible) const {
    std::vector<Part> parts;
    const QRect seen = patch.rect.intersected(visible).translated(-patch.rect.topLeft());
    if (seen.isEmpty()) {
        return parts;
    }
    quint64 place = mixed64(patch.cut.seed, static_cast<quint64>(std::llround(step_ * 1e9)));
    place = mixedLength(place, patch.cut.radius);
    for (const Vector* vector : {&patch.face.origin, &patch.face.across, &patch.face.down}) {
        for (const double mm : *vector) {
            place = mixedLength(place, mm);
        }
    }
    const quint64 look = lookKeys_[static_cast<std::size_t>(patch.wood)];
    // Somewhat larger than needed, so that a piece which grows or is rounded up keeps its texture.
    const auto extent = [](int from, int whole) {
        return std::min(chunk, (whole - from + 15) / 16 * 16);
    };
    for (int top = seen.top() / chunk * chunk; top <= seen.bottom(); top += chunk) {
        for (int left = seen.left() / chunk * chunk; left <= seen.right(); left += chunk) {
            Part part;
            part.left = left;
            part.top = top;
            part.width = extent(left, patch.rect.width());
            part.height = extent(top, patch.rect.height());
            part.place =
                mixed64(mixed64(place, static_cast<quint64>(left)), static_cast<quint64>(top));
            part.key = mixed64(part.place, look);
            parts.push_back(part);
        }
    }
    return parts;
}

const FigureLayer::Tile* FigureLayer::find(const Part& part, bool mayBorrow) const {
    const auto fits = [&part](const Tile& tile) {
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

void FigureLayer::put(const Order& order, std::vector<std::uint8_t> tones) {
    Tile& tile = tiles_[order.key];
    bytes_ += tones.size();
    bytes_ -= tile.tones.size();
    tile = {order.area.width, order.area.height, std::move(tones), round_};
    anyLook_[order.place] = order.key;
}

bool FigureLayer::collect(const std::vector<Patch>& patches, const QRect& visible, bool mayBorrow) {
    bool all = true;
    int pixels = 0;
    std::unordered_map<quint64, bool> ordered;
    const std::size_t first = orders_.size();
    for (const Patch& patch : patches) {
        for (const Part& part : partsOf(patch, visible)) {
            if (find(part, false) != nullptr) {
                continue;
            }
            all = all && mayBorrow && find(part, true) != nullptr;
            if (ordered.emplace(part.key, true).second) {
                orders_.push_back({part.key,
                                   part.place,
                                   {part.left, part.top, part.width, part.height, step_},
                                   looks_[static_cast<std::size_t>(patch.wood)],
                                   patch.cut,
                                   patch.face});
                pixels += part.width * part.height;
            }
        }
    }
    if (first == 0 && pixels <= atOnce && !working_) {
        for (const Order& order : orders_) {
            std::vector<std::uint8_t> tones(static_cast<std::size_t>(order.area.width) *
                                            static_cast<std::size_t>(order.area.height));
            figureTexture(tones.data(), order.area, order.look, order.cut, order.face);
            put(order, std::move(tones));
        }
        orders_.clear();
        return true;
    }
    return all;
}

void FigureLayer::startWork() {
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
            std::vector<std::uint8_t> tones(static_cast<std::size_t>(order.area.width) *
                                            static_cast<std::size_t>(order.area.height));
            figureTexture(tones.data(), order.area, order.look, order.cut, order.face);
            made.emplace_back(order, std::move(tones));
        }
        QMetaObject::invokeMethod(
            this, [this, made = std::move(made)]() mutable { workDone(std::move(made)); },
            Qt::QueuedConnection);
    });
}

void FigureLayer::workDone(Made made) {
    working_ = false;
    for (auto& [order, tones] : made) {
        put(order, std::move(tones));
    }
    stale_ = true;
    Q_EMIT changed();
}

void FigureLayer::tidy() {
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

void FigureLayer::paintPart(const Patch& patch, const Part& part, const Tile& tile,
                            const QRect& visible, const FigureTable& table) {
    const QRect seen = QRect(patch.rect.topLeft() + QPoint(part.left, part.top),
                             QSize(std::min(tile.width, patch.rect.width() - part.left),
                                   std::min(tile.height, patch.rect.height() - part.top)))
                           .intersected(visible);
    for (int y = seen.top(); y <= seen.bottom(); ++y) {
        int from = seen.left();
        int to = seen.right() + 1;
        if (patch.mitred >= 0) {
            const auto [first, last] =
                mitredRow(patch.mitred, patch.mitre, patch.rect, y - patch.rect.top());
            from = std::max(from, patch.rect.left() + first);
            to = std::min(to, patch.rect.left() + last);
        }
        const int offsetX = patch.rect.left() + part.left;
        const std::uint8_t* tones = tile.tones.data() + static_cast<std::ptrdiff_t>(tile.width) *
                                                            (y - patch.rect.top() - part.top);
        auto* line =
            reinterpret_cast<std::uint32_t*>(image_.scanLine(y - visible.top())) - visible.left();
        for (int x = from; x < to; ++x) {
            line[x] = table[tones[x - offsetX]];
        }
    }
}

void FigureLayer::compose(const std::vector<Patch>& patches, const QRect& visible,
                          const FigureScene& scene) {
    const BoardGeometry& geometry = scene.geometry;
    if (image_.size() != visible.size()) {
        image_ = QImage(visible.size(), QImage::Format_RGB32);
    }
    image_.setDevicePixelRatio(1);
    const auto paintFlat = [&](const auto& paint) {
        image_.setDevicePixelRatio(geometry.ratio());
        QPainter painter(&image_);
        painter.translate(-geometry.board().topLeft() -
                          QPointF(visible.topLeft()) / geometry.ratio());
        paint(painter);
    };
    paintFlat([&](QPainter& painter) {
        paintBoard(painter, scene.board, finished(scene.woods), geometry);
    });
    std::vector<const FigureTable*> tables(scene.woods.size(), nullptr);
    for (const Patch& patch : patches) {
        const FigureTable*& table = tables[static_cast<std::size_t>(patch.wood)];
        if (table == nullptr) {
            table = &tableOf(scene.woods[static_cast<std::size_t>(patch.wood)], scene.underHatch);
        }
        for (const Part& part : partsOf(patch, visible)) {
            if (const Tile* tile = find(part, true)) {
                paintPart(patch, part, *tile, visible, *table);
                if (const auto own = tiles_.find(part.key); own != tiles_.end()) {
                    own->second.used = round_;
                }
            }
        }
    }
    if (scene.board.border.isThere()) {
        paintFlat([&](QPainter& painter) {
            paintBorderLines(painter, scene.board.border, finished(scene.woods), geometry);
        });
    }
}

bool FigureLayer::paint(QPainter& painter, const FigureScene& scene) {
    if (!style_.on) {
        return false;
    }
    if (scene.board.border.has(BorderDesign::EndGrainBand)) {
        // The band is pieces like those of the field.
        const Board glued = asGlued(scene.board);
        paintGlued(painter, {glued, scene.woods,
                             BoardGeometry(glued, {}, scene.geometry.scale(),
                                           scene.geometry.origin(), scene.geometry.ratio()),
                             scene.view, scene.grainDown, scene.underHatch});
    } else {
        paintGlued(painter, scene);
    }
    return true;
}

void FigureLayer::paintGlued(QPainter& painter, const FigureScene& scene) {
    const BoardGeometry& geometry = scene.geometry;
    const QRect whole = inDevicePixels(geometry.board(), geometry);
    const QRect visible = inDevicePixels(QRectF(scene.view), geometry).intersected(whole);
    const QRectF target(geometry.board().topLeft() + QPointF(visible.topLeft()) / geometry.ratio(),
                        QSizeF(visible.size()) / geometry.ratio());
    const bool like = shown_ && shown_->style == style_ && shown_->underHatch == scene.underHatch &&
                      shown_->board == scene.board && shown_->woods == scene.woods;
    if (like && !stale_ && shown_->rect == visible && sameView(shown_->geometry, geometry)) {
        painter.drawImage(target, image_);
        return;
    }
    planChanged();
    ++round_;
    step_ = 1 / (geometry.scale() * geometry.ratio());
    lookKeys_.clear();
    looks_.clear();
    for (const Wood& wood : scene.woods) {
        lookKeys_.push_back(lookKeyOf(wood));
        looks_.push_back(lookOf(wood));
    }
    orders_.clear();
    // A new plan is shown once all of its figure is there, so that nothing flickers.
    bool pendingThere = true;
    if (pending_ && pendingField_ == scene.board.field) {
        pendingThere = collect(patchesOf(*pending_, scene), visible, false);
        if (pendingThere || !places_) {
            exact_ = std::exchange(pending_, nullptr);
            exactField_ = pendingField_;
        }
    }
    choosePlaces(scene.board, scene.woods, scene.grainDown);
    if (!places_) {
        // At a start nothing is made ready that is not seen.
        paintBoard(painter, scene.board, finished(scene.woods), geometry);
        complete_ = false;
        return;
    }
    const std::vector<Patch> patches = patchesOf(*places_, scene);
    const bool there = collect(patches, visible, true);
    complete_ = there && pendingThere && orders_.empty() && !working_;
    if (!orders_.empty() && !working_) {
        // After this paint, which must not wait for the other thread's start.
        QTimer::singleShot(0, this, &FigureLayer::startWork);
    }
    if (!there && like && !image_.isNull()) {
        // Zoomed or moved: what was there, in its new place and size, until it is there anew.
        paintBoard(painter, scene.board, finished(scene.woods), geometry);
        const double larger = geometry.scale() / shown_->geometry.scale();
        const double ratio = shown_->geometry.ratio();
        painter.drawImage(
            QRectF(geometry.board().topLeft() + QPointF(shown_->rect.topLeft()) / ratio * larger,
                   QSizeF(shown_->rect.size()) / ratio * larger),
            image_);
        return;
    }
    compose(patches, visible, scene);
    painter.drawImage(target, image_);
    shown_.reset();
    if (there) {
        shown_ = Shown{scene.board, scene.woods, geometry, scene.underHatch, style_, visible};
        stale_ = false;
    }
    tidy();
}

}  // namespace kerfwright
