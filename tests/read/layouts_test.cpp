// Layouts made from the manipulations of published experiments with empty pages (tests/read/
// layouts.json says which, from which source and how sure): the order that most readers take, and
// where a share is published, that share.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "base/files.h"
#include "geometry/polygon.h"
#include "read/page_reading.h"

namespace tw {
namespace {

using nlohmann::json;

json layouts() {
  const auto bytes = readFile(TIERWRIGHT_SOURCE_DIR "/tests/read/layouts.json");
  REQUIRE(bytes);
  return json::parse(*bytes).at("layouts");
}

std::vector<Polygon> panelsOf(const json& layout) {
  std::vector<Polygon> panels;
  for (const json& panel : layout.at("panels")) {
    if (panel[0].is_number()) {
      panels.push_back(polygonOf(Rect{{panel[0], panel[1]}, {panel[2], panel[3]}}));
      continue;
    }
    Polygon outline;
    for (const json& corner : panel) outline.points.push_back({corner[0], corner[1]});
    panels.push_back(std::move(outline));
  }
  return panels;
}

ReadingDirection directionOf(const json& layout) {
  return layout.at("direction") == "rtl" ? ReadingDirection::RightToLeft
                                         : ReadingDirection::LeftToRight;
}

/// Every panel moved by a little, the same every time.
std::vector<Polygon> ragged(std::vector<Polygon> panels, double by) {
  int turn = 0;
  for (Polygon& panel : panels)
    for (Point& p : panel.points) {
      p.x += by * (((turn * 37) % 11) / 5.0 - 1);
      p.y += by * (((turn * 53) % 13) / 6.0 - 1);
      ++turn;
    }
  return panels;
}

TEST_CASE("there are at least sixty layouts and each names its manipulation and source") {
  const json all = layouts();
  CHECK(all.size() >= 60);
  std::set<std::string> names;
  for (const json& layout : all) {
    names.insert(layout.at("name").get<std::string>());
    CHECK(!layout.at("manipulation").get<std::string>().empty());
    CHECK(!layout.at("source").get<std::string>().empty());
    CHECK(!layout.at("certainty").get<std::string>().empty());
    CHECK(layout.at("order").size() == layout.at("panels").size());
  }
  CHECK(names.size() == all.size());
}

TEST_CASE("every layout is read in the order that most readers take") {
  for (const json& layout : layouts()) {
    INFO(layout.at("name").get<std::string>());
    std::vector<int> expected = layout.at("order");
    for (int& panel : expected) --panel;
    CHECK(readPage(panelsOf(layout), directionOf(layout)).order == expected);
  }
}

TEST_CASE("uneven outlines do not change the order") {
  for (const json& layout : layouts()) {
    INFO(layout.at("name").get<std::string>());
    std::vector<int> expected = layout.at("order");
    for (int& panel : expected) --panel;
    const auto panels = ragged(panelsOf(layout), 0.25);
    CHECK(readPage(panels, directionOf(layout)).order == expected);
  }
}

TEST_CASE("where a share is published readers part as published") {
  int checked = 0;
  for (const json& layout : layouts()) {
    if (!layout.contains("share")) continue;
    INFO(layout.at("name").get<std::string>());
    const json& share = layout.at("share");
    CHECK(!share.at("source").get<std::string>().empty());
    const int from = share.at("from").is_null() ? -1 : share.at("from").get<int>() - 1;
    const int to = share.at("to").get<int>() - 1;
    double found = 0;
    for (const Move& move : readPage(panelsOf(layout), directionOf(layout)).moves)
      if (move.from == from && move.to == to) found = move.share;
    CHECK(found >= share.at("least").get<double>());
    CHECK(found <= share.at("most").get<double>());
    ++checked;
  }
  CHECK(checked >= 10);
}

}  // namespace
}  // namespace tw
