#include "press/text_column.h"

#include <doctest/doctest.h>

#include "press/svg_surface.h"

namespace tw {

namespace {

struct Column {
  Typesetter typesetter;
  SvgSurface surface{typesetter, {{0, 0}, {60, 100}}, "column"};
  TextColumn text{surface, {{5, 5}, {55, 95}}, typesetter};
};

const std::string kLong =
    "a sentence that is a good deal longer than fifty millimetres of small type can ever hold";

}  // namespace

TEST_CASE("a paragraph takes as much room as its lines were said to take") {
  Column c;
  const double before = c.text.y();
  const std::size_t lines = c.text.linesOf(kLong, Face::Regular, TextColumn::kTextPt, 0);
  CHECK(lines > 1);
  c.text.paragraph(kLong, Face::Regular, TextColumn::kTextPt, kBlack);
  CHECK(c.text.y() - before == doctest::Approx(static_cast<double>(lines) * TextColumn::kLineMm));
}

TEST_CASE("an empty text takes no room") {
  Column c;
  const double before = c.text.y();
  c.text.paragraph("", Face::Regular, TextColumn::kTextPt, kBlack);
  CHECK(c.text.y() == before);
  CHECK(c.text.linesOf("", Face::Regular, TextColumn::kTextPt, 0) == 0);
}

TEST_CASE("an indent leaves less width") {
  Column c;
  CHECK(c.text.linesOf(kLong, Face::Regular, TextColumn::kTextPt, 25) >
        c.text.linesOf(kLong, Face::Regular, TextColumn::kTextPt, 0));
}

TEST_CASE("a word too long for the column is shortened to fit") {
  const Column c;
  const std::string shorter = c.text.shortened(kLong, Face::Bold, TextColumn::kRulePt, 20);
  CHECK(shorter.size() < kLong.size());
  CHECK(c.typesetter.widthOf(shorter, Face::Bold, TextColumn::kRulePt) <= 30);
}

}  // namespace tw
