#include "ui/window/figurepatches.h"

#include "ui/window/boardpainter.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace kerfwright {

namespace {

constexpr int chunk = 256;  // pixels

quint64 mixed64(quint64 hash, quint64 value) {
    hash ^= value + 0x9E3779B97F4A7C15ULL + (hash << 6U) + (hash >> 2U);
    hash *= 0xBF58476D1CE4E5B9ULL;
    return hash ^ (hash >> 29U);
}

/// To the thousandth, since sums that differ in their last bits mean the same.
quint64 mixedLength(quint64 hash, double mm) {
    return mixed64(hash, static_cast<quint64>(std::llround(mm * 1000)));
}

quint64 lookKeyOf(const Wood& wood) {
    quint64 key = static_cast<quint64>(wood.pores) + 1;
    for (const char c : wood.key) {
        key = mixed64(key, static_cast<quint64>(static_cast<unsigned char>(c)));
    }
    return key;
}

void addRails(std::vector<FigurePatch>& patches, const FigureScene& scene) {
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
        FigurePatch patch;
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

}  // namespace

std::pair<int, int> FigurePatch::seenOfRow(int row) const {
    const int width = rect.width();
    const int height = rect.height();
    if (mitred < 0) {
        return {0, width};
    }
    const double middle = row + 0.5;
    if (mitred == 0 || mitred == 2) {
        const double in = mitre * (mitred == 0 ? middle : height - middle) / height;
        return {static_cast<int>(std::lround(in)), static_cast<int>(std::lround(width - in))};
    }
    const double reach = std::min({1.0, middle / mitre, (height - middle) / mitre});
    const int seen = static_cast<int>(std::lround(width * reach));
    return mitred == 3 ? std::pair(0, seen) : std::pair(width - seen, width);
}

FigureLooks figureLooks(const std::vector<Wood>& woods, double step) {
    FigureLooks looks;
    looks.step = step;
    for (const Wood& wood : woods) {
        looks.keys.push_back(lookKeyOf(wood));
        looks.woods.push_back(lookOf(wood));
    }
    return looks;
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

std::vector<FigurePatch> figurePatches(const FigurePlaces& places, const FigureScene& scene) {
    std::vector<FigurePatch> patches;
    patches.reserve(places.size() + 4);
    const double joint = jointWidth(scene.board.field, scene.geometry);
    for (const FigurePlace& place : places) {
        FigurePatch patch;
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

std::vector<FigurePart> figureParts(const FigurePatch& patch, const QRect& visible,
                                    const FigureLooks& looks) {
    std::vector<FigurePart> parts;
    const QRect seen = patch.rect.intersected(visible).translated(-patch.rect.topLeft());
    if (seen.isEmpty()) {
        return parts;
    }
    quint64 place = mixed64(patch.cut.seed, static_cast<quint64>(std::llround(looks.step * 1e9)));
    place = mixedLength(place, patch.cut.radius);
    for (const Vector* vector : {&patch.face.origin, &patch.face.across, &patch.face.down}) {
        for (const double mm : *vector) {
            place = mixedLength(place, mm);
        }
    }
    const quint64 look = looks.keys[static_cast<std::size_t>(patch.wood)];
    // Somewhat larger than needed, so that a piece which grows or is rounded up keeps its texture.
    const auto extent = [](int from, int whole) {
        return std::min(chunk, (whole - from + 15) / 16 * 16);
    };
    for (int top = seen.top() / chunk * chunk; top <= seen.bottom(); top += chunk) {
        for (int left = seen.left() / chunk * chunk; left <= seen.right(); left += chunk) {
            FigurePart part;
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

}  // namespace kerfwright
