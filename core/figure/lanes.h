// Arithmetic on one number or on several side by side, written the same way. Every operation is
// rounded alike in both, so that both give the same bits. Private to core/figure.
//
// Vectors are an extension of GCC and Clang; on x86-64 without further flags they are SSE2.
#pragma once

#include <cmath>
#include <cstdint>
#include <cstring>
#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace kerfwright {

using Floats = float __attribute__((vector_size(16)));
using Ints = std::int32_t __attribute__((vector_size(16)));
using Words = std::uint32_t __attribute__((vector_size(16)));

template <class F>
inline constexpr int lanesOf = 1;
template <>
inline constexpr int lanesOf<Floats> = 4;

template <class F>
struct WordsOf {
    using Type = std::uint32_t;
};
template <>
struct WordsOf<Floats> {
    using Type = Words;
};

/// 0, 1, 2, ...
template <class F>
F counting() {
    return 0;
}
template <>
inline Floats counting<Floats>() {
    return Floats{0, 1, 2, 3};
}

// --- one number
// -----------------------------------------------------------------------------------
inline std::int32_t toInt(float x) {
    return static_cast<std::int32_t>(x);
}
inline float select(bool mask, float a, float b) {
    return mask ? a : b;
}
inline float minimum(float a, float b) {
    return a < b ? a : b;
}
inline float maximum(float a, float b) {
    return a > b ? a : b;
}
inline float absolute(float x) {
    return std::abs(x);
}
inline float floorOf(float x) {
    const auto whole = static_cast<float>(static_cast<std::int32_t>(x));
    return whole > x ? whole - 1.0F : whole;
}
inline float rootOf(float x) {
    return std::sqrt(x);
}
inline std::uint32_t wordOf(std::int32_t x) {
    return static_cast<std::uint32_t>(x);
}
inline float floatOf(std::uint32_t x) {
    return static_cast<float>(static_cast<std::int32_t>(x));
}
inline bool anyOf(bool mask) {
    return mask;
}
inline void store(std::int32_t tone, std::uint8_t* to, int) {
    *to = static_cast<std::uint8_t>(tone);
}

// --- several
// --------------------------------------------------------------------------------------
inline Ints toInt(Floats x) {
    return __builtin_convertvector(x, Ints);
}
template <class To, class From>
To bitsOf(From from) {
    static_assert(sizeof(To) == sizeof(From));
    To to;
    std::memcpy(&to, &from, sizeof to);
    return to;
}
inline Floats select(Ints mask, Floats a, Floats b) {
    return bitsOf<Floats>((mask & bitsOf<Ints>(a)) | (~mask & bitsOf<Ints>(b)));
}
inline Floats minimum(Floats a, Floats b) {
#if defined(__SSE2__)
    return bitsOf<Floats>(_mm_min_ps(bitsOf<__m128>(a), bitsOf<__m128>(b)));
#else
    return select(a < b, a, b);
#endif
}
inline Floats maximum(Floats a, Floats b) {
#if defined(__SSE2__)
    return bitsOf<Floats>(_mm_max_ps(bitsOf<__m128>(a), bitsOf<__m128>(b)));
#else
    return select(a > b, a, b);
#endif
}
inline Floats absolute(Floats x) {
    return bitsOf<Floats>(bitsOf<Ints>(x) & 0x7FFFFFFF);
}
inline Floats floorOf(Floats x) {
    const Floats whole = __builtin_convertvector(__builtin_convertvector(x, Ints), Floats);
    return whole - bitsOf<Floats>((whole > x) & bitsOf<Ints>(Floats{} + 1.0F));
}
inline Floats rootOf(Floats x) {
#if defined(__SSE2__)
    return bitsOf<Floats>(_mm_sqrt_ps(bitsOf<__m128>(x)));
#else
    return Floats{std::sqrt(x[0]), std::sqrt(x[1]), std::sqrt(x[2]), std::sqrt(x[3])};
#endif
}
inline Words wordOf(Ints x) {
    return bitsOf<Words>(x);
}
inline Floats floatOf(Words x) {
    return __builtin_convertvector(bitsOf<Ints>(x), Floats);
}
inline bool anyOf(Ints mask) {
#if defined(__SSE2__)
    return _mm_movemask_ps(bitsOf<__m128>(mask)) != 0;
#else
    return (mask[0] | mask[1] | mask[2] | mask[3]) != 0;
#endif
}
inline bool areAll(Ints x, std::int32_t value) {
    return !anyOf(x != value);
}
inline void store(Ints tone, std::uint8_t* to, int count) {
#if defined(__SSE2__)
    if (count == 4) {
        const auto words = _mm_packs_epi32(bitsOf<__m128i>(tone), bitsOf<__m128i>(tone));
        const int bytes = _mm_cvtsi128_si32(_mm_packus_epi16(words, words));
        std::memcpy(to, &bytes, sizeof bytes);
        return;
    }
#endif
    for (int i = 0; i < count; ++i) {
        to[i] = static_cast<std::uint8_t>(tone[i]);
    }
}

// --- both
// -----------------------------------------------------------------------------------------
template <class F>
F clamped(F x) {
    return minimum(maximum(x, F{}), F{} + 1.0F);
}

/// Of a lattice: neighbours are one of these apart.
constexpr std::uint32_t hashStepX = 0x9E3779B1U;
constexpr std::uint32_t hashStepY = 0x85EBCA77U;

/// `salt`: what the hash is for, and the seed.
template <class I, class W>
W hashed(I x, W salt) {
    return wordOf(x) * hashStepX + salt;
}
template <class I, class W>
W hashed(I x, I y, W salt) {
    return wordOf(x) * hashStepX + wordOf(y) * hashStepY + salt;
}
/// Spreads what differs in any bit over all of them.
template <class W>
W scrambled(W word) {
    word = (word ^ (word >> 15U)) * 0x2C1B3C6DU;
    word = (word ^ (word >> 12U)) * 0x297A2D39U;
    return word ^ (word >> 15U);
}
/// The same for numbers that are only blended, in half the time; the high bits are the better ones.
template <class W>
W stirred(W word) {
    return (word ^ (word >> 15U)) * 0x2C1B3C6DU;
}
/// 0 to 1 of such a word; the next three are of parts of it, to be used side by side.
template <class W>
auto unitOf(W word) {
    return floatOf(word >> 8U) * (1 / 16777216.0F);
}
template <class W>
auto lowBits(W word) {
    return floatOf(word & 0x3FFU) * (1 / 1024.0F);
}
template <class W>
auto middleBits(W word) {
    return floatOf((word >> 10U) & 0x3FFU) * (1 / 1024.0F);
}
template <class W>
auto highBits(W word) {
    return floatOf(word >> 20U) * (1 / 4096.0F);
}

}  // namespace kerfwright
