// A small seeded source of random numbers whose sequence is fixed by us, not by the standard
// library, so that the same seed gives the same page on every machine.
// SplitMix64: Steele, Lea, Flood 2014, doi:10.1145/2660193.2660195; the constants are public.
#pragma once

#include <cstdint>

namespace tw {

class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15u);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
  }

  /// Uniform in [0, 1).
  double uniform() { return static_cast<double>(next() >> 11) * 0x1.0p-53; }

 private:
  std::uint64_t state_;
};

}  // namespace tw
