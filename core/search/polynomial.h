// Arithmetic modulo the prime 2^61 - 1, for hashing pictures by polynomials.
#pragma once

#include <cstdint>

namespace kerfwright::kinds {

__extension__ using Product = unsigned __int128;
using Residue = std::uint64_t;

constexpr Residue prime = (Residue{1} << 61) - 1;

constexpr Residue plus(Residue a, Residue b) {
    const Residue sum = a + b;
    return sum >= prime ? sum - prime : sum;
}

constexpr Residue minus(Residue a, Residue b) {
    return a >= b ? a - b : a + prime - b;
}

constexpr Residue times(Residue a, Residue b) {
    const Product product = static_cast<Product>(a) * b;
    return plus(static_cast<Residue>(product & prime), static_cast<Residue>(product >> 61));
}

constexpr Residue power(Residue base, std::uint64_t exponent) {
    Residue result = 1;
    for (; exponent > 0; exponent >>= 1) {
        if ((exponent & 1) != 0) {
            result = times(result, base);
        }
        base = times(base, base);
    }
    return result;
}

constexpr Residue inverse(Residue a) {
    return power(a, prime - 2);
}

/// Scatters a number over all residues.
constexpr Residue scattered(std::uint64_t number) {
    number += 0x9e3779b97f4a7c15;
    number = (number ^ (number >> 30)) * 0xbf58476d1ce4e5b9;
    number = (number ^ (number >> 27)) * 0x94d049bb133111eb;
    return (number ^ (number >> 31)) % prime;
}

}  // namespace kerfwright::kinds
