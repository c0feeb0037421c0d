#include "base/random.h"

#include <doctest/doctest.h>

#include <array>
#include <vector>

using namespace tw;

// The first five outputs of SplitMix64 for the seed 1234567, as published on Rosetta Code
// ("Pseudo-random numbers/Splitmix64"); written down from memory.
TEST_CASE("the sequence is SplitMix64's") {
  Random random(1234567);
  for (const std::uint64_t expected :
       {6457827717110365317u, 3203168211198807973u, 9817491932198370423u, 4593380528125082431u,
        16408922859458223821u})
    CHECK(random.next() == expected);
}

// First output for seed 0, the value usually printed as 0xE220A8397B1DCDAF; from memory.
TEST_CASE("seed zero is as good as any other") {
  CHECK(Random(0).next() == 0xE220A8397B1DCDAFu);
}

// Same Rosetta Code task: 100 000 draws with seed 987654321, floor(5 × uniform) counted; from
// memory.
TEST_CASE("uniform numbers fall evenly, with the published counts") {
  Random random(987654321);
  std::array<int, 5> counts{};
  for (int i = 0; i < 100000; ++i) ++counts.at(static_cast<std::size_t>(random.uniform() * 5));
  CHECK(counts == std::array<int, 5>{20027, 19892, 20073, 19978, 20030});
}

TEST_CASE("uniform numbers stay below one and at or above zero") {
  Random random(7);
  bool inside = true;
  for (int i = 0; i < 100000; ++i) {
    const double u = random.uniform();
    inside = inside && u >= 0 && u < 1;
  }
  CHECK(inside);
}

TEST_CASE("the same seed gives the same sequence, another seed another") {
  const auto first = [](std::uint64_t seed) {
    Random random(seed);
    return std::vector{random.next(), random.next(), random.next()};
  };
  CHECK(first(1) == first(1));
  CHECK(first(1) != first(2));
}
