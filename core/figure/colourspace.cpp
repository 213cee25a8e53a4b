#include "core/figure/colourspace.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace kerfwright {
namespace {

double linear(std::uint8_t channel) {
    const double value = channel / 255.0;
    return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

std::uint8_t channel(double linear) {
    const double value =
        linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(255 * std::clamp(value, 0.0, 1.0)));
}

OkLab okLabOfCones(double l, double m, double s) {
    l = std::cbrt(l);
    m = std::cbrt(m);
    s = std::cbrt(s);
    return {0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s};
}

double cube(double x) {
    return x * x * x;
}

constexpr double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

/// 0 to 2 π; 0 for a grey.
double hueOf(double a, double b) {
    if (a == 0 && b == 0) {
        return 0;
    }
    const double hue = std::atan2(b, a);
    return hue < 0 ? hue + 2 * std::numbers::pi : hue;
}

}  // namespace

OkLab okLabOfXyz(double x, double y, double z) {
    return okLabOfCones(0.8189330101 * x + 0.3618667424 * y - 0.1288597137 * z,
                        0.0329845436 * x + 0.9293118715 * y + 0.0361456387 * z,
                        0.0482003018 * x + 0.2643662691 * y + 0.6338517070 * z);
}

OkLab okLabOf(Colour colour) {
    const double r = linear(colour.red);
    const double g = linear(colour.green);
    const double b = linear(colour.blue);
    return okLabOfCones(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b,
                        0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b,
                        0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
}

Colour colourOf(const OkLab& lab) {
    const double l = cube(lab.l + 0.3963377774 * lab.a + 0.2158037573 * lab.b);
    const double m = cube(lab.l - 0.1055613458 * lab.a - 0.0638541728 * lab.b);
    const double s = cube(lab.l - 0.0894841775 * lab.a - 1.2914855480 * lab.b);
    return {channel(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
            channel(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
            channel(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s)};
}

OkLab blend(const OkLab& a, const OkLab& b, double share) {
    return {a.l + share * (b.l - a.l), a.a + share * (b.a - a.a), a.b + share * (b.b - a.b)};
}

Colour blend(Colour a, Colour b, double share) {
    return colourOf(blend(okLabOf(a), okLabOf(b), share));
}

CieLab cieLabOf(Colour colour) {
    const double r = linear(colour.red);
    const double g = linear(colour.green);
    const double b = linear(colour.blue);
    // sRGB to XYZ as in IEC 61966-2-1, each through the white that three full channels make.
    constexpr std::array<double, 3> white = {0.95047, 1, 1.08883};
    const std::array<double, 3> xyz = {0.4124564 * r + 0.3575761 * g + 0.1804375 * b,
                                       0.2126729 * r + 0.7151522 * g + 0.0721750 * b,
                                       0.0193339 * r + 0.1191920 * g + 0.9503041 * b};
    std::array<double, 3> f{};
    for (std::size_t i = 0; i < 3; ++i) {
        const double t = xyz[i] / white[i];
        f[i] = t > cube(6.0 / 29) ? std::cbrt(t) : t / (3 * 36.0 / 841) + 4.0 / 29;
    }
    return {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
}

double colourDifference(const CieLab& a, const CieLab& b) {
    using std::numbers::pi;
    const auto stretch = [](double chroma) {
        const double seventh = std::pow(chroma, 7);
        return std::sqrt(seventh / (seventh + std::pow(25.0, 7)));
    };
    const double g = 0.5 * (1 - stretch((std::hypot(a.a, a.b) + std::hypot(b.a, b.b)) / 2));
    const double a1 = (1 + g) * a.a;
    const double a2 = (1 + g) * b.a;
    const double c1 = std::hypot(a1, a.b);
    const double c2 = std::hypot(a2, b.b);
    const double h1 = hueOf(a1, a.b);
    const double h2 = hueOf(a2, b.b);
    const bool grey = c1 * c2 == 0;

    double turn = grey ? 0 : h2 - h1;
    turn += turn > pi ? -2 * pi : turn < -pi ? 2 * pi : 0;
    const double lightness = b.l - a.l;
    const double chroma = c2 - c1;
    const double hue = 2 * std::sqrt(c1 * c2) * std::sin(turn / 2);

    const double meanL = (a.l + b.l) / 2;
    const double meanC = (c1 + c2) / 2;
    double meanH = h1 + h2;
    if (!grey) {
        if (std::abs(h1 - h2) > pi) {
            meanH += meanH < 2 * pi ? 2 * pi : -2 * pi;
        }
        meanH /= 2;
    }
    const double t = 1 - 0.17 * std::cos(meanH - radians(30)) + 0.24 * std::cos(2 * meanH) +
                     0.32 * std::cos(3 * meanH + radians(6)) -
                     0.20 * std::cos(4 * meanH - radians(63));
    const double off = (meanL - 50) * (meanL - 50);
    const double sl = 1 + 0.015 * off / std::sqrt(20 + off);
    const double sc = 1 + 0.045 * meanC;
    const double sh = 1 + 0.015 * meanC * t;
    const double fromBlue = (meanH - radians(275)) / radians(25);
    const double rotation =
        -std::sin(2 * radians(30) * std::exp(-fromBlue * fromBlue)) * 2 * stretch(meanC);
    const double dl = lightness / sl;
    const double dc = chroma / sc;
    const double dh = hue / sh;
    return std::sqrt(dl * dl + dc * dc + dh * dh + rotation * dc * dh);
}

double colourDifference(Colour a, Colour b) {
    return colourDifference(cieLabOf(a), cieLabOf(b));
}

}  // namespace kerfwright
