#include "base/result.h"

#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>

namespace tw {

namespace {

std::string describe(const Place& place) {
  std::string out = place.file;
  if (place.line > 0) out += fmt::format(":{}", place.line);
  if (!place.path.empty()) out += fmt::format("{}at {}", out.empty() ? "" : " ", place.path);
  if (place.page > 0) out += fmt::format("{}page {}", out.empty() ? "" : ", ", place.page);
  if (place.panel > 0) out += fmt::format("{}panel {}", out.empty() ? "" : ", ", place.panel);
  return out;
}

tl::unexpected<Problems> one(Cause cause, std::string sentence, Place place, std::string advice) {
  return tl::unexpected<Problems>(
      Problems{{cause, std::move(sentence), std::move(place), std::move(advice)}});
}

}  // namespace

std::string describe(const Problem& problem) {
  std::string out = describe(problem.place);
  if (!out.empty()) out += ": ";
  out += problem.sentence;
  if (!problem.advice.empty()) out += " " + problem.advice;
  return out;
}

std::string describe(const Problems& problems) {
  std::string out;
  for (const Problem& problem : problems) out += describe(problem) + "\n";
  return out;
}

tl::unexpected<Problems> badInput(std::string sentence, Place place, std::string advice) {
  return one(Cause::BadInput, std::move(sentence), std::move(place), std::move(advice));
}

tl::unexpected<Problems> ourFault(std::string sentence, Place place, std::string advice) {
  return one(Cause::OurFault, std::move(sentence), std::move(place), std::move(advice));
}

tl::unexpected<Problems> stopped() {
  return one(Cause::Stopped, "Stopped.", {}, {});
}

void ensure(bool condition, std::string_view message) {
  if (condition) return;
  fmt::print(stderr, "tierwright: a promise of our own was broken: {}\n", message);
  std::abort();
}

}  // namespace tw
