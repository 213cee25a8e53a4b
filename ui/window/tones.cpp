#include "ui/window/tones.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

/// Relative luminance of sRGB, 0 to 1 (WCAG 2.1).
double luminance(const QColor& colour) {
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

}  // namespace

bool isDark(const QPalette& palette) {
    return palette.color(QPalette::Window).lightness() <
           palette.color(QPalette::WindowText).lightness();
}

QColor mixed(const QColor& a, const QColor& b, double share) {
    const auto part = [share](int x, int y) {
        return static_cast<int>(std::lround(x + (y - x) * share));
    };
    return QColor(part(a.red(), b.red()), part(a.green(), b.green()), part(a.blue(), b.blue()));
}

QColor readableOn(const QColor& ground) {
    // Soft where that suffices for text (WCAG 2.1, 1.4.3); between, black or white alone does. They
    // have the same contrast against a luminance of about 0.18.
    constexpr double least = 4.5;
    const bool light = luminance(ground) > 0.18;
    const QColor soft = light ? QColor(28, 26, 22) : QColor(250, 247, 240);
    return contrast(soft, ground) >= least ? soft : QColor(light ? Qt::black : Qt::white);
}

QColor outlineOf(const QColor& wood, const Tones& tones) {
    // In the dark a dark wood is what gets lost, in the light a light one.
    return tones.dark ? mixed(wood, QColor(250, 247, 240), 0.38)
                      : mixed(wood, QColor(28, 26, 22), 0.32);
}

double contrast(const QColor& a, const QColor& b) {
    const double x = luminance(a);
    const double y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

Tones tonesOf(const QPalette& palette) {
    Tones tones;
    tones.dark = isDark(palette);
    tones.surface = palette.color(QPalette::Active, QPalette::Window);
    tones.surround = palette.color(QPalette::Active, QPalette::AlternateBase);
    tones.entry = palette.color(QPalette::Active, QPalette::Base);
    tones.text = palette.color(QPalette::Active, QPalette::WindowText);
    tones.quiet = palette.color(QPalette::Active, QPalette::PlaceholderText);
    tones.edge = palette.color(QPalette::Active, QPalette::Mid);
    tones.rim = palette.color(QPalette::Active, QPalette::Dark);
    tones.accent = palette.color(QPalette::Active, QPalette::Highlight);
    tones.soft = mixed(tones.surface, tones.accent, 0.13);
    tones.caution = tones.dark ? QColor(226, 178, 90) : QColor(133, 84, 0);
    tones.danger = tones.dark ? QColor(244, 140, 126) : QColor(168, 46, 36);
    return tones;
}

}  // namespace kerfwright
