#include "arrange/layout.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "arrange/compare_layouts.h"
#include "base/random.h"
#include "geometry/polygon.h"
#include "job/brief_keys.h"

namespace tw {
namespace {

constexpr std::array kTreatments{Treatment::Plain, Treatment::Bled, Treatment::Ground,
                                 Treatment::Slanted};

Sheet sheetForTests() {
  Sheet sheet;
  sheet.trimWidth = 168;
  sheet.trimHeight = 260;
  sheet.bleed = 3;
  sheet.live = {10, 10, 14, 9};
  sheet.gutterAcross = 3;
  sheet.gutterDown = 4;
  sheet.leastPanelWidth = 20;
  sheet.leastPanelHeight = 22;
  return sheet;
}

ArrangeRequest requestFor(std::size_t panels, std::optional<std::size_t> dominant = {}) {
  ArrangeRequest request;
  request.sheet = sheetForTests();
  request.wishes.resize(panels);
  request.dominant = dominant;
  if (dominant) request.wishes[*dominant].weight = 3;
  return request;
}

std::vector<PackedTree> treesOf(std::size_t panels) {
  Progress progress;
  return enumerateTrees(static_cast<int>(panels), progress).trees;
}

/// A request and a tree drawn from a seed.
struct Case {
  ArrangeRequest request;
  PackedTree tree;       ///< over all panels
  PackedTree insetTree;  ///< over all but one
  const PackedTree& treeFor(Treatment t) const { return t == Treatment::Ground ? insetTree : tree; }
};

Case randomCase(std::uint64_t seed, bool maySpread = true) {
  Random random(seed);
  const std::size_t n = 2 + random.next() % 5;
  Case c{requestFor(n), {}, {}};
  for (PanelWish& wish : c.request.wishes) wish.weight = 0.5 + 2 * random.uniform();
  c.request.dominant = random.next() % n;
  c.request.wishes[*c.request.dominant].weight += 2;
  c.request.leastDominantShare = random.next() % 2 ? 0.2 + 0.3 * random.uniform() : 0;
  c.request.rightHand = random.next() % 2;
  if (random.next() % 2) c.request.direction = ReadingDirection::RightToLeft;
  if (maySpread && random.next() % 4 == 0) {
    c.request.sheet.spread = true;
    c.request.sheet.trimWidth *= 2;
  }
  const std::vector<PackedTree> all = treesOf(n), insets = treesOf(n - 1);
  c.tree = all[random.next() % all.size()];
  c.insetTree = insets[random.next() % insets.size()];
  return c;
}

/// Runs a law over all treatments of random pages; `law` makes the assertions.
template <class Law>
bool holdsForAll(const char* name, Law law, bool maySpread = true) {
  return rc::check(name, [&](std::uint64_t seed) {
    const Case c = randomCase(seed, maySpread);
    for (const Treatment treatment : kTreatments)
      if (const auto layout = layOut(c.request, c.treeFor(treatment), treatment)) law(c, *layout);
  });
}

double apart(const Polygon& a, const Polygon& b) {
  double least = 1e9;
  for (const Point p : a.points) least = std::min(least, distanceToOutline(b, p));
  for (const Point p : b.points) least = std::min(least, distanceToOutline(a, p));
  return least;
}

TEST_CASE("panels are convex and inside the bleed") {
  CHECK(holdsForAll("convex, inside", [](const Case& c, const Layout& layout) {
    RC_ASSERT(layout.panels.size() == c.request.wishes.size());
    const Rect bleed = c.request.sheet.bleedRect().outset(1e-9);
    for (const LayoutPanel& panel : layout.panels) {
      RC_ASSERT(isConvex(panel.outline));
      RC_ASSERT(panel.outline.points.size() >= 3u);
      for (const Point p : panel.outline.points) RC_ASSERT(bleed.contains(p));
    }
  }));
}

TEST_CASE("panels keep their gutters and lie on nothing but the ground") {
  CHECK(holdsForAll("gutters", [](const Case& c, const Layout& layout) {
    const double gutter = std::min(c.request.sheet.gutterAcross, c.request.sheet.gutterDown);
    for (std::size_t i = 0; i < layout.panels.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) {
        const LayoutPanel &a = layout.panels[i], &b = layout.panels[j];
        if (a.ground || b.ground) continue;
        RC_ASSERT(area(common({a.outline}, {b.outline})) < 1e-6);
        RC_ASSERT(apart(a.outline, b.outline) >= gutter - 1e-6);
      }
  }));
}

TEST_CASE("only a bled panel or the ground leaves the live area, and then to the bleed") {
  CHECK(holdsForAll("live area", [](const Case& c, const Layout& layout) {
    const Rect live = c.request.sheet.liveRect(c.request.rightHand).outset(1e-6);
    const Rect bleed = c.request.sheet.bleedRect();
    for (const LayoutPanel& panel : layout.panels) {
      const Rect box = bounds(panel.outline);
      const bool inside = live.contains(box.min) && live.contains(box.max);
      RC_ASSERT(inside == !panel.bleeds);
      RC_ASSERT((box.min.x > live.min.x || box.min.x == bleed.min.x || !panel.bleeds));
      RC_ASSERT((box.max.x < live.max.x || box.max.x == bleed.max.x || !panel.bleeds));
      RC_ASSERT((box.min.y > live.min.y || box.min.y == bleed.min.y || !panel.bleeds));
      RC_ASSERT((box.max.y < live.max.y || box.max.y == bleed.max.y || !panel.bleeds));
    }
  }));
}

Polygon flipped(const Polygon& outline, double width) {
  return mirrored(outline, width / 2);
}

TEST_CASE("a mirrored page read the other way gives the mirrored layout") {
  CHECK(holdsForAll("mirror", [](const Case& c, const Layout& layout) {
    ArrangeRequest other = c.request;
    other.rightHand = !other.rightHand;
    other.direction = other.direction == ReadingDirection::LeftToRight
                          ? ReadingDirection::RightToLeft
                          : ReadingDirection::LeftToRight;
    auto turned = layOut(other, c.treeFor(layout.treatment), layout.treatment);
    RC_ASSERT(turned.has_value());
    for (LayoutPanel& panel : turned->panels)
      panel.outline = flipped(panel.outline, other.sheet.trimWidth);
    RC_ASSERT(sameLayout(layout, *turned, 1e-6));
  }));
}

TEST_CASE("scaling sheet, gutters and least sizes scales the layout") {
  const auto law = [](const Case& c, const Layout& layout) {
    ArrangeRequest large = c.request;
    Sheet& s = large.sheet;
    for (double* length :
         {&s.trimWidth, &s.trimHeight, &s.bleed, &s.live.top, &s.live.bottom, &s.live.inner,
          &s.live.outer, &s.gutterAcross, &s.gutterDown, &s.leastPanelWidth, &s.leastPanelHeight})
      *length *= 2;
    auto scaled = layOut(large, c.treeFor(layout.treatment), layout.treatment);
    RC_ASSERT(scaled.has_value());
    for (LayoutPanel& panel : scaled->panels)
      for (Point& p : panel.outline.points) p = {p.x / 2, p.y / 2};
    RC_ASSERT(sameLayout(layout, *scaled, 1e-5));
    RC_ASSERT(std::abs(layout.dominantShare - scaled->dominantShare) < 1e-7);
  };
  CHECK(holdsForAll("scale", law, /*maySpread=*/false));  // the fold's zone is in mm
}

/// 0 when the middle lies outside, which no convex outline's does.
double lengthThroughMiddle(const Polygon& outline, Vector along) {
  const Point middle = centroid(outline);
  const auto ahead = firstHit({middle, along}, outline), back = firstHit({middle, -along}, outline);
  return ahead && back ? *ahead + *back : 0;
}

TEST_CASE("without shortfall the dominant panel has its share and least sizes are kept") {
  int met = 0;
  CHECK(holdsForAll("kept", [&](const Case& c, const Layout& layout) {
    if (layout.shortfall > 0) return;
    ++met;
    RC_ASSERT(layout.dominantShare >= c.request.leastDominantShare * (1 - 1e-8));
    for (const LayoutPanel& panel : layout.panels) {
      const double width = lengthThroughMiddle(panel.outline, {1, 0});
      const double height = lengthThroughMiddle(panel.outline, {0, 1});
      RC_ASSERT(width >= c.request.sheet.leastPanelWidth - 1e-6);
      RC_ASSERT(height >= c.request.sheet.leastPanelHeight - 1e-6);
    }
  }));
  CHECK(met > 100);
}

TEST_CASE("no border falls near the fold of a spread unless its gutter is there") {
  int spreads = 0;
  CHECK(holdsForAll("fold", [&](const Case& c, const Layout& layout) {
    if (!c.request.sheet.spread || layout.shortfall > 0) return;
    ++spreads;
    const double fold = c.request.sheet.trimWidth / 2;
    for (const LayoutPanel& panel : layout.panels) {
      const Rect box = bounds(panel.outline);
      for (const double away : {box.min.x - fold, fold - box.max.x}) {
        const bool gutterOnFold = std::abs(away - c.request.sheet.gutterAcross / 2) < 1e-6;
        RC_ASSERT((std::abs(away) >= 4 - 1e-9 || gutterOnFold));
      }
    }
  }));
  CHECK(spreads > 20);
}

TEST_CASE("insets read before the ground stand above or before those read after it") {
  for (const ReadingDirection direction :
       {ReadingDirection::LeftToRight, ReadingDirection::RightToLeft}) {
    ArrangeRequest request = requestFor(6, 3);
    request.direction = direction;
    const double sign = direction == ReadingDirection::LeftToRight ? 1 : -1;
    for (const PackedTree& tree : treesOf(5)) {
      const auto layout = layOut(request, tree, Treatment::Ground);
      REQUIRE(layout);
      CHECK(layout->panels[3].ground);
      for (std::size_t before = 0; before < 3; ++before)
        for (std::size_t after = 4; after < 6; ++after) {
          const Rect a = bounds(layout->panels[before].outline);
          const Rect b = bounds(layout->panels[after].outline);
          CHECK((a.max.y < b.min.y || sign * (b.centre().x - a.centre().x) > 0));
        }
    }
  }
}

TEST_CASE("the ground keeps most of the page free") {
  for (const std::size_t dominant : {0u, 2u, 4u}) {
    const ArrangeRequest request = requestFor(5, dominant);
    for (const PackedTree& tree : treesOf(4)) {
      const auto layout = layOut(request, tree, Treatment::Ground);
      REQUIRE(layout);
      CHECK(layout->dominantShare > 0.55);
      double insets = 0;
      for (const LayoutPanel& panel : layout->panels)
        if (!panel.ground) insets += area(panel.outline);
      CHECK(area(freeGround(*layout)) ==
            doctest::Approx(request.sheet.bleedRect().area() - insets).epsilon(1e-6));
    }
  }
}

TEST_CASE("slanted pages have a turned cut, and no cut is turned by more than six degrees") {
  const ArrangeRequest request = requestFor(5, 2);
  int slanted = 0;
  for (const PackedTree& tree : treesOf(5)) {
    const auto layout = layOut(request, tree, Treatment::Slanted);
    if (!layout) continue;
    ++slanted;
    double most = 0;
    for (const LayoutPanel& panel : layout->panels)
      for (std::size_t i = 0; i < panel.outline.points.size(); ++i) {
        const auto& points = panel.outline.points;
        const Vector side = points[(i + 1) % points.size()] - points[i];
        if (side.length() < 0.5) continue;
        const double tilt = std::atan2(std::min(std::abs(side.x), std::abs(side.y)),
                                       std::max(std::abs(side.x), std::abs(side.y)));
        most = std::max(most, tilt * 180 / 3.14159265358979);
      }
    CHECK(most > 2.4);
    CHECK(most < 6.01);
  }
  CHECK(slanted > 60);
}

TEST_CASE("only the dominant panel bleeds, or all on the page's edge when there is none") {
  const TreeNode leaf;
  const TreeNode page{false, {leaf, TreeNode{true, {leaf, leaf, leaf}}, leaf}};
  const auto bled = [](const std::optional<Layout>& layout) {
    std::string out;
    for (const LayoutPanel& panel : layout->panels) out += panel.bleeds ? '1' : '0';
    return out;
  };
  CHECK(bled(layOut(requestFor(5, 1), packed(page), Treatment::Bled)) == "01000");
  CHECK(bled(layOut(requestFor(5), packed(page), Treatment::Bled)) == "11011");
}

TEST_CASE("treatments that do not apply give nothing") {
  const TreeNode leaf;
  const TreeNode tier{true, {leaf, leaf, leaf}}, page{false, {leaf, tier, leaf}};
  ArrangeRequest request = requestFor(5, 2);
  CHECK_FALSE(layOut(request, packed(page), Treatment::Bled));  // the dominant touches no edge
  request.dominant = 0;
  CHECK(layOut(request, packed(page), Treatment::Bled));
  request.bleeds = false;
  CHECK_FALSE(layOut(request, packed(page), Treatment::Bled));
  request.dominant.reset();
  CHECK_FALSE(layOut(request, packed(tier), Treatment::Ground));
  CHECK_FALSE(layOut(request, packed(tier), Treatment::Plain));  // 3 leaves for 5 panels
  CHECK_FALSE(layOut(requestFor(1), packed(leaf), Treatment::Slanted));
  CHECK_FALSE(layOut(requestFor(0), packed(leaf), Treatment::Plain));
}

TEST_CASE("where bleeds are forbidden the ground ends at the trim") {
  ArrangeRequest request = requestFor(4, 1);
  request.bleeds = false;
  const auto layout = layOut(request, treesOf(3).front(), Treatment::Ground);
  REQUIRE(layout);
  CHECK(bounds(layout->panels[1].outline) == request.sheet.trimRect());
  CHECK_FALSE(layout->panels[1].bleeds);
}

TEST_CASE("demands that cannot be met give the nearest page and say by how much") {
  const TreeNode page{false, std::vector<TreeNode>(4)};
  ArrangeRequest request = requestFor(4);
  request.sheet.leastPanelHeight = 100;  // 4 × 100 + 3 × 4 gutters in 240 mm
  const auto layout = layOut(request, packed(page), Treatment::Plain);
  REQUIRE(layout);
  CHECK(layout->shortfall == doctest::Approx(1 - (240.0 - 12) / 400));

  request = requestFor(4, 0);
  request.sheet.leastPanelHeight = 40;
  request.leastDominantShare = 0.8;  // 108 of 228 mm at most
  const auto crowded = layOut(request, packed(page), Treatment::Plain);
  REQUIRE(crowded);
  CHECK(crowded->dominantShare == doctest::Approx(108.0 / 228));
  CHECK(crowded->shortfall == doctest::Approx((0.8 - 108.0 / 228) / 0.8));
}

/// What the brief's check says to a share of that page's dominant panel.
std::string objectionTo(double share, const ArrangeRequest& request) {
  Job job;
  job.sheet = request.sheet;
  Page page;
  for (std::size_t i = 0; i < request.wishes.size(); ++i) {
    Beat& beat = page.beats.emplace_back();
    beat.id = std::to_string(i);
    beat.panel = static_cast<int>(i) + 1;
    beat.dominant = i == *request.dominant;
  }
  job.pages.push_back(page);
  return describe(contradictionsOf({.leastDominantShare = share}, page, job));
}

bool keepsLeastSizes(const Layout& layout, const Sheet& sheet) {
  return std::ranges::all_of(layout.panels, [&](const LayoutPanel& panel) {
    const Rect box = bounds(panel.outline);
    return box.width() > sheet.leastPanelWidth - 1e-6 &&
           box.height() > sheet.leastPanelHeight - 1e-6;
  });
}

TEST_CASE("a share that some layout reaches with least sizes kept is not objected to") {
  CHECK(rc::check("shares reached", [](std::uint64_t seed) {
    ArrangeRequest request = randomCase(seed, false).request;
    request.leastDominantShare = 0.4 + 0.6 * Random(seed + 1).uniform();
    const std::size_t n = request.wishes.size();
    double most = 0;
    for (const Treatment treatment : kTreatments)
      for (const PackedTree& tree : treesOf(treatment == Treatment::Ground ? n - 1 : n)) {
        const auto layout = layOut(request, tree, treatment);
        if (layout && keepsLeastSizes(*layout, request.sheet))
          most = std::max(most, layout->dominantShare);
      }
    RC_LOG() << "reached " << most << " of " << request.leastDominantShare;
    RC_ASSERT(objectionTo(most, request) == "");
    RC_CLASSIFY(most > 0.9, "more than nine tenths");
  }));
}

TEST_CASE("a page of sixteen panels is laid out") {
  Progress progress;
  ArrangeRequest request = requestFor(16, 5);
  for (const PackedTree& tree : enumerateTrees(16, progress, 50).trees)
    CHECK(layOut(request, tree, Treatment::Plain)->panels.size() == 16);
}

}  // namespace

TEST_CASE("what is cut off at the trim does not count for the dominant share") {
  // Two equal panels that run to the bleed: each shows the same part inside the trim.
  const TreeNode leaf;
  const auto layout = layOut(requestFor(2), packed(TreeNode{false, {leaf, leaf}}), Treatment::Bled);
  REQUIRE(layout);
  CHECK(layout->dominantShare == 0);  // none is dominant
  ArrangeRequest request = requestFor(2, 0);
  const auto bled = layOut(request, packed(TreeNode{false, {leaf, leaf}}), Treatment::Bled);
  REQUIRE(bled);
  const Rect trim = request.sheet.trimRect();
  const auto shown = [&](std::size_t i) {
    return area(common({bled->panels[i].outline}, {polygonOf(trim)}));
  };
  CHECK(bled->dominantShare == doctest::Approx(shown(0) / (shown(0) + shown(1))).epsilon(1e-4));
  CHECK(area(bled->panels[0].outline) > shown(0) + 1);
}

TEST_CASE("every treatment has a name of its own") {
  std::set<std::string_view> names;
  for (const Treatment treatment : kTreatments) names.insert(nameOf(treatment));
  CHECK(names == std::set<std::string_view>{"plain", "bled", "ground", "slanted"});
}

}  // namespace tw
