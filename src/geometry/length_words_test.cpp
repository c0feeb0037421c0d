#include "geometry/length_words.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

namespace tw {
namespace {

TEST_CASE("lengths are read in the unit they name") {
  // 1 in = 25.4 mm exactly (international inch); 72 points to the inch as in PostScript, from
  // memory.
  const std::pair<const char*, double> kLengths[] = {
      {"12.5", 12.5},     {" 12,5 mm ", 12.5},     {"3.25 in", 82.55},   {"1/2 in", 12.7},
      {"3 1/4\"", 82.55}, {"3-1/4 inches", 82.55}, {"6⅝ in", 168.275},   {"½″", 12.7},
      {"-3", -3},         {"−1/8 IN", -3.175},     {"2cm", 20},          {"36 pt", 12.7},
      {"0", 0},           {".5 in", 12.7},         {"10 1/4 in", 260.35}};
  for (const auto& [words, mm] : kLengths) {
    CAPTURE(words);
    const auto read = readLength(words);
    REQUIRE(read);
    CHECK(*read == doctest::Approx(mm).epsilon(1e-12));
  }
}

TEST_CASE("a bare number is taken in the unit of the field") {
  CHECK(*readLength("2", LengthUnit::Inches) == doctest::Approx(50.8));
  CHECK(*readLength("2 mm", LengthUnit::Inches) == doctest::Approx(2));
}

TEST_CASE("what is no length is told with what was expected") {
  for (const char* words : {"", "mm", "abc", "3 4", "1/0 in", "1/ in", "3 1/4 1/4", "5 furlongs",
                            "1.2.3", "--3", "1e3", "nan", "inf", "12 mm 5"}) {
    CAPTURE(words);
    const auto read = readLength(words);
    REQUIRE_FALSE(read);
    CHECK(read.error().front().sentence == "“" + std::string(words) + "” is no length.");
    CHECK(read.error().front().advice.find("12.5 mm") != std::string::npos);
  }
  CHECK(readLength("99999 in").error().front().sentence == "“99999 in” is longer than ten metres.");
}

TEST_CASE("lengths are written without needless zeros") {
  CHECK(lengthWords(12.5) == "12.5 mm");
  CHECK(lengthWords(12) == "12 mm");
  CHECK(lengthWords(100) == "100 mm");
  CHECK(lengthWords(-0.001) == "0 mm");
  CHECK(lengthWords(82.55, LengthUnit::Inches) == "3.25 in");
  CHECK(lengthWords(168.275, LengthUnit::Inches) == "6.625 in");
}

TEST_CASE("what is written is read again") {
  CHECK(rc::check("length words", [] {
    const double mm = *rc::gen::inRange(-400'000, 400'000) / 100.0;
    RC_ASSERT(std::abs(*readLength(lengthWords(mm)) - mm) < 1e-9);
    const double inches = *readLength(lengthWords(mm, LengthUnit::Inches));
    RC_ASSERT(std::abs(inches - mm) < 0.0005 * kMmPerInch + 1e-9);
  }));
}

}  // namespace
}  // namespace tw
