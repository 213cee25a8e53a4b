// Exact lengths, areas and volumes.
//
// Everything that somebody will set a machine to is an integer count of nanometres: 1/64 in is
// exactly 396 875 nm and 0.1 mm exactly 100 000 nm, so neither inch fractions nor millimetres are
// ever rounded on the way through a plan. There is no Length * Length and no way in from a bare
// number; areas and volumes come from the named functions below and live on 128-bit integers
// (a cube of one kilometre in nm^3 still fits).
#pragma once

#include <compare>
#include <concepts>
#include <cstdint>

namespace kerfwright {

class Length {
public:
    constexpr Length() = default;

    static constexpr Length nm(std::int64_t count) { return Length(count); }
    static constexpr Length um(std::int64_t count) { return Length(count * 1'000); }
    static constexpr Length mm(std::int64_t count) { return Length(count * 1'000'000); }
    /// `numerator / denominator` inches. The denominator must divide an inch (25 400 000 nm)
    /// times the numerator; every power of two up to 64 does.
    static constexpr Length inch(std::int64_t numerator, std::int64_t denominator = 1) {
        return Length(25'400'000 * numerator / denominator);
    }

    constexpr std::int64_t nm() const { return nm_; }
    /// For pixels, drawings and physics only; never for a dimension that is cut.
    constexpr double toMm() const { return static_cast<double>(nm_) / 1e6; }

    constexpr Length operator-() const { return Length(-nm_); }
    constexpr Length& operator+=(Length other) {
        nm_ += other.nm_;
        return *this;
    }
    constexpr Length& operator-=(Length other) {
        nm_ -= other.nm_;
        return *this;
    }
    friend constexpr Length operator+(Length a, Length b) { return Length(a.nm_ + b.nm_); }
    friend constexpr Length operator-(Length a, Length b) { return Length(a.nm_ - b.nm_); }
    friend constexpr Length operator*(Length a, std::int64_t times) {
        return Length(a.nm_ * times);
    }
    friend constexpr Length operator*(std::int64_t times, Length a) {
        return Length(a.nm_ * times);
    }
    /// A cut is never a fraction of a nanometre, and 0.5 would silently become 0.
    template <std::floating_point Number>
    friend constexpr Length operator*(Length, Number) = delete;
    template <std::floating_point Number>
    friend constexpr Length operator*(Number, Length) = delete;
    friend constexpr auto operator<=>(Length, Length) = default;  // NOLINT(modernize-use-nullptr)

private:
    explicit constexpr Length(std::int64_t count)
        : nm_(count) {}
    std::int64_t nm_ = 0;
};

/// The smallest multiple of `step` that is not less than `length`. `step` must be more than 0.
constexpr Length roundedUp(Length length, Length step) {
    const std::int64_t rest = length.nm() % step.nm();
    if (rest == 0) {
        return length;
    }
    return Length::nm(length.nm() - rest + (rest > 0 ? step.nm() : 0));
}

/// Half, rounded towards zero to a whole nanometre.
constexpr Length half(Length length) {
    return Length::nm(length.nm() / 2);
}

namespace detail {
__extension__ using Wide = __int128;
}

/// Of a square of that side, rounded down to a whole nanometre. For sides up to 1 km.
constexpr Length diagonal(Length side) {
    const detail::Wide wanted = static_cast<detail::Wide>(side.nm()) * side.nm() * 2;
    detail::Wide root = static_cast<detail::Wide>(side.nm()) * 2;
    while (root > 0 && root * root > wanted) {
        root = (root + wanted / root) / 2;
    }
    return Length::nm(static_cast<std::int64_t>(root));
}

class Area {
public:
    constexpr Area() = default;
    explicit constexpr Area(detail::Wide squareNm)
        : squareNm_(squareNm) {}

    constexpr detail::Wide squareNm() const { return squareNm_; }
    /// For texts and physics.
    constexpr double toSquareMetres() const { return static_cast<double>(squareNm_) / 1e18; }

    constexpr Area& operator+=(Area other) {
        squareNm_ += other.squareNm_;
        return *this;
    }
    friend constexpr Area operator+(Area a, Area b) { return Area(a.squareNm_ + b.squareNm_); }
    friend constexpr Area operator*(Area a, std::int64_t n) { return Area(a.squareNm_ * n); }
    friend constexpr auto operator<=>(const Area&, const Area&) = default;

private:
    detail::Wide squareNm_ = 0;
};

class Volume {
public:
    constexpr Volume() = default;
    explicit constexpr Volume(detail::Wide cubicNm)
        : cubicNm_(cubicNm) {}

    constexpr detail::Wide cubicNm() const { return cubicNm_; }
    /// For texts and physics.
    constexpr double toCubicMetres() const { return static_cast<double>(cubicNm_) / 1e27; }
    /// One board foot is 144 cubic inches (1 ft x 1 ft x 1 in).
    constexpr double toBoardFeet() const {
        return static_cast<double>(cubicNm_) / (144.0 * 25.4e6 * 25.4e6 * 25.4e6);
    }

    constexpr Volume& operator+=(Volume other) {
        cubicNm_ += other.cubicNm_;
        return *this;
    }
    constexpr Volume& operator-=(Volume other) {
        cubicNm_ -= other.cubicNm_;
        return *this;
    }
    friend constexpr Volume operator+(Volume a, Volume b) {
        return Volume(a.cubicNm_ + b.cubicNm_);
    }
    friend constexpr Volume operator-(Volume a, Volume b) {
        return Volume(a.cubicNm_ - b.cubicNm_);
    }
    friend constexpr Volume operator*(Volume a, std::int64_t n) { return Volume(a.cubicNm_ * n); }
    friend constexpr auto operator<=>(const Volume&, const Volume&) = default;

private:
    detail::Wide cubicNm_ = 0;
};

constexpr Area area(Length a, Length b) {
    return Area(static_cast<detail::Wide>(a.nm()) * b.nm());
}
constexpr Volume volume(Area base, Length height) {
    return Volume(base.squareNm() * height.nm());
}
constexpr Volume volume(Length a, Length b, Length c) {
    return volume(area(a, b), c);
}

}  // namespace kerfwright
