#include "press/reading_sheet.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "press/example_rough.h"
#include "press/recorder.h"

namespace tw {

namespace {

Finding finding(const std::string& rule, int panel, Severity severity) {
  Finding out;
  out.rule = rule;
  out.panel = panel;
  out.severity = severity;
  out.reason = "the " + rule + " is off in panel " + std::to_string(panel);
  out.remedy = "Set it right.";
  out.unit = "%";
  return out;
}

ReadingSheet sheet() {
  ReadingSheet out;
  out.facts = {"92 % of readers keep the order.", "A reader takes 14 s."};
  out.path = {{{20, 30}, 250, false}, {{40, 20}, 225, true}, {{120, 40}, 300, false}};
  out.rests = out.path;
  out.partings = {{1, 3, 0.31, "stack beside a tall panel"}};
  out.findings = {finding("head height", 1, Severity::Must),
                  finding("tangents", 2, Severity::Should), finding("rhythm", 0, Severity::Look)};
  out.findings[0].tried = {{"step in to a close-up shot", 60, 95, true, "room for copy"}};
  out.findings[1].silencedWhy = "the rope is meant to touch";
  return out;
}

std::string bytesOf(const ReadingSheet& sheet, const std::string& name) {
  const ScratchFolder folder;
  REQUIRE(writeReadingSheet(folder / name, example::rough(0, "A", 6), sheet, 60));
  return readFile(folder / name).value();
}

/// All that is set in type, line after line.
std::string wordsOf(const ReadingSheet& sheet) {
  Recorder surface;
  const Typesetter typesetter;
  drawReadingSheet(surface, example::rough(0, "A", 6), sheet, typesetter);
  std::string out;
  for (const TypeLine& line : surface.words) out += line.text + " ";
  return out;
}

std::size_t countOf(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a reading sheet tells facts, partings, findings with what was tried, and answers") {
  const std::string words = wordsOf(sheet());
  CHECK(holds(words, "92 % of readers keep the order."));
  CHECK(holds(words, "After panel 1, 31 % go to panel 3"));
  CHECK(holds(words, "head height"));
  CHECK(holds(words, "must, panel 1"));
  CHECK(holds(words, "Tried: step in to a close-up shot"));
  CHECK(holds(words, "Silenced: the rope is meant to touch"));
}

TEST_CASE("more findings than the sheet holds are counted, none is drawn over another") {
  ReadingSheet many = sheet();
  for (int i = 0; i < 80; ++i)
    many.findings.push_back(finding("rule " + std::to_string(i), 1 + i % 6, Severity::Look));
  const std::string words = wordsOf(many);
  CHECK(holds(words, "more, numbered as in `tierwright read`"));
  CHECK_FALSE(holds(words, "rule 79"));
}

TEST_CASE(
    "few findings take one column of a narrower paper and second changes go before findings") {
  const auto widthOf = [](const ReadingSheet& sheet) {
    Recorder surface;
    drawReadingSheet(surface, example::rough(0, "A", 6), sheet, Typesetter{});
    return surface.fills.front().points()[2].x;  // the paper's right
  };
  ReadingSheet many = sheet();
  many.findings[0].tried.resize(3, many.findings[0].tried[0]);
  many.findings[0].tried[1].change = "a second change";
  CHECK(holds(wordsOf(many), "a second change"));
  for (int i = 0; i < 22; ++i)
    many.findings.push_back(finding("rule " + std::to_string(i), 1 + i % 6, Severity::Look));
  for (Finding& f : many.findings) f.tried.resize(3, many.findings[0].tried[0]);
  CHECK(widthOf(many) == doctest::Approx(widthOf(sheet()) + 88));
  CHECK(holds(wordsOf(many), "rule 21"));
  CHECK_FALSE(holds(wordsOf(many), "a second change"));
}

TEST_CASE("an entry tells what was measured and the limit and one of a thing in the singular") {
  ReadingSheet one;
  one.findings = {finding("joint cuts", 1, Severity::Should)};
  one.findings[0].measure = "joints that the frame cuts";
  one.findings[0].unit = "joints";
  one.findings[0].limit = 1;
  one.findings[0].tried = {{"step back", 2, 1, true, ""}};
  const std::string words = wordsOf(one);
  CHECK(holds(words, "measured: joints that the frame cuts, limit 1 joint; ours"));
  CHECK(holds(words, "2 joints → 1 joint."));
}

TEST_CASE("the same sheet always gives the same bytes") {
  for (const char* name : {"a.svg", "a.pdf", "a.png"})
    CHECK(bytesOf(sheet(), name) == bytesOf(sheet(), name));
}

TEST_CASE("where eyes rest longer the dots are larger") {
  ReadingSheet one = sheet();
  one.rests = {{{80, 120}, 300, false}};
  ReadingSheet none = sheet();
  none.rests.clear();
  CHECK(countOf(bytesOf(one, "a.svg"), "<path") > countOf(bytesOf(none, "a.svg"), "<path") + 8);
}

}  // namespace tw
