#include "base/parallel.h"

#include <doctest/doctest.h>

#include <atomic>
#include <mutex>
#include <set>
#include <thread>
#include <vector>

using namespace tw;

TEST_CASE("every index is worked on exactly once, at any number of threads") {
  for (const unsigned threads : {0u, 1u, 2u, 7u, 300u}) {
    CAPTURE(threads);
    std::vector<std::atomic<int>> done(1000);
    parallelFor(done.size(), threads, [&](std::size_t i) { ++done[i]; });
    int once = 0;
    for (const auto& count : done) once += count == 1 ? 1 : 0;
    CHECK(once == 1000);
  }
}

TEST_CASE("results written by index do not depend on the number of threads") {
  const auto squares = [](unsigned threads) {
    std::vector<std::size_t> out(500);
    parallelFor(out.size(), threads, [&](std::size_t i) { out[i] = i * i; });
    return out;
  };
  CHECK(squares(1) == squares(2));
  CHECK(squares(1) == squares(5));
  CHECK(squares(3)[499] == 249001);
}

TEST_CASE("no work is no call") {
  int calls = 0;
  parallelFor(0, 4, [&](std::size_t) { ++calls; });
  CHECK(calls == 0);
}

TEST_CASE("one thread means the caller's own") {
  const auto caller = std::this_thread::get_id();
  bool same = true;
  parallelFor(20, 1, [&](std::size_t) { same = same && std::this_thread::get_id() == caller; });
  CHECK(same);
}

TEST_CASE("two threads really work at the same time") {
  // Both pieces wait until the other has begun; one thread alone could never finish.
  std::atomic<int> begun{0};
  parallelFor(2, 2, [&](std::size_t) {
    ++begun;
    while (begun < 2) std::this_thread::yield();
  });
  CHECK(begun == 2);
}

TEST_CASE("there is at least one thread") {
  CHECK(defaultThreads() >= 1);
}
