#include "ui/window/figurelayer.h"

#include "ui/window/boardpainter.h"
#include "ui/window/figurenotice.h"

#include <QPainter>
#include <QSettings>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <utility>

namespace kerfwright {

namespace {

constexpr std::chrono::milliseconds patience(400);

bool sameView(const BoardGeometry& a, const BoardGeometry& b) {
    return a.scale() == b.scale() && a.ratio() == b.ratio() && a.board() == b.board() &&
           a.inside() == b.inside() && a.surround() == b.surround();
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
    , style_(keptFigureStyle())
    , tiles_(std::make_unique<FigureTiles>(pool_)) {
    pool_.setMaxThreadCount(1);
    guess_.setSingleShot(true);
    guess_.setInterval(patience);
    connect(&guess_, &QTimer::timeout, this, [this] {
        mayGuess_ = true;
        Q_EMIT changed();
    });
    connect(tiles_.get(), &FigureTiles::made, this, [this] {
        stale_ = true;
        Q_EMIT changed();
    });
    connect(&planner, &Planner::changed, this, &FigureLayer::planChanged);
    connect(&document, &Document::replaced, this, &FigureLayer::forget);
}

FigureLayer::~FigureLayer() {
    // Ends what is being made for it; nothing comes back to a layer that is half gone.
    tiles_.reset();
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

void FigureLayer::paintPart(const FigurePatch& patch, const FigurePart& part,
                            const FigureTile& tile, const QRect& visible,
                            const FigureTable& table) {
    const QRect seen = QRect(patch.rect.topLeft() + QPoint(part.left, part.top),
                             QSize(std::min(tile.width, patch.rect.width() - part.left),
                                   std::min(tile.height, patch.rect.height() - part.top)))
                           .intersected(visible);
    for (int y = seen.top(); y <= seen.bottom(); ++y) {
        const auto [first, last] = patch.seenOfRow(y - patch.rect.top());
        const int from = std::max(seen.left(), patch.rect.left() + first);
        const int to = std::min(seen.right() + 1, patch.rect.left() + last);
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

void FigureLayer::compose(const std::vector<FigurePatch>& patches, const QRect& visible,
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
    for (const FigurePatch& patch : patches) {
        const FigureTable*& table = tables[static_cast<std::size_t>(patch.wood)];
        if (table == nullptr) {
            table = &tableOf(scene.woods[static_cast<std::size_t>(patch.wood)], scene.underHatch);
        }
        for (const FigurePart& part : figureParts(patch, visible, tiles_->looks())) {
            if (const FigureTile* tile = tiles_->take(part)) {
                paintPart(patch, part, *tile, visible, *table);
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
    tiles_->begin(figureLooks(scene.woods, 1 / (geometry.scale() * geometry.ratio())));
    // A new plan is shown once all of its figure is there, so that nothing flickers.
    bool pendingThere = true;
    if (pending_ && pendingField_ == scene.board.field) {
        pendingThere = tiles_->collect(figurePatches(*pending_, scene), visible, false);
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
    const std::vector<FigurePatch> patches = figurePatches(*places_, scene);
    const bool there = tiles_->collect(patches, visible, true);
    complete_ = there && pendingThere && tiles_->isDone();
    if (tiles_->isWaiting()) {
        // After this paint, which must not wait for the other thread's start.
        QTimer::singleShot(0, tiles_.get(), &FigureTiles::startWork);
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
    tiles_->tidy();
}

}  // namespace kerfwright
