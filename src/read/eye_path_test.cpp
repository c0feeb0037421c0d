#include "read/eye_path.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <set>

#include "read/eye_pages_test.h"

namespace tw {
namespace {

using namespace test;

/// A grid of up to nine panels with copy, figures and leads here and there.
SeenPage anyPage() {
  SeenPage page = gridPage(*rc::gen::inRange(1, 4), *rc::gen::inRange(1, 4));
  for (SeenPanel& panel : page.panels) {
    addCopy(panel, *rc::gen::inRange(0, 3), *rc::gen::inRange(1, 30));
    for (int figures = *rc::gen::inRange(0, 3); figures > 0; --figures)
      addFigure(panel, figures / 3.0, figures == 1);
    panel.continues = *rc::gen::arbitrary<bool>();
    if (*rc::gen::arbitrary<bool>()) panel.lead = {panel.focus, {0.8, 0.6}, 0.7, "points"};
    for (SeenElement& e : panel.elements) {  // whole millimetres
      e.box = {{std::round(e.box.min.x), std::round(e.box.min.y)},
               {std::round(e.box.max.x), std::round(e.box.max.y)}};
    }
    panel.focus = {std::round(panel.focus.x), std::round(panel.focus.y)};
    panel.lead.from = panel.focus;
  }
  return page;
}

EyePath pathOn(const SeenPage& page, std::uint64_t reader) {
  return eyePathOf(page, shippedEyes(), 5, reader);
}

bool sameLooks(const EyePath& a, const EyePath& b) {
  if (a.panels != b.panels || a.ms != b.ms || a.fixations.size() != b.fixations.size())
    return false;
  for (std::size_t i = 0; i < a.fixations.size(); ++i) {
    const EyeFixation &f = a.fixations[i], &g = b.fixations[i];
    if (f.ms != g.ms || f.panel != g.panel || f.element != g.element || f.on != g.on) return false;
  }
  return true;
}

TEST_CASE("a reader walks a page the same way each time and others walk it otherwise") {
  SeenPage page = gridPage(3, 2);
  for (SeenPanel& panel : page.panels) addCopy(panel, 1, 8);
  CHECK(sameLooks(pathOn(page, 3), pathOn(page, 3)));
  CHECK_FALSE(sameLooks(pathOn(page, 3), pathOn(page, 4)));
  CHECK_FALSE(sameLooks(pathOn(page, 3), eyePathOf(page, shippedEyes(), 6, 3)));
}

TEST_CASE("every panel is seen once for the first time or passed over and left") {
  CHECK(rc::check("each panel once", [] {
    const SeenPage page = anyPage();
    const EyePath path = pathOn(page, *rc::gen::inRange<std::uint64_t>(0, 1000));
    std::multiset<int> met(path.panels.begin(), path.panels.end());
    for (const int panel : path.passedOver) met.insert(panel);
    for (const int panel : path.cameBackTo) {
      RC_ASSERT(std::count(path.passedOver.begin(), path.passedOver.end(), panel) == 1);
      met.erase(met.find(panel));
    }
    RC_ASSERT(met.size() == page.panels.size());
    RC_ASSERT(std::set<int>(met.begin(), met.end()).size() == page.panels.size());
  }));
}

TEST_CASE("a mirrored page read the other way is walked in a mirror") {
  CHECK(rc::check("mirror", [] {
    const SeenPage page = anyPage();
    const auto reader = *rc::gen::inRange<std::uint64_t>(0, 1000);
    const EyePath right = pathOn(page, reader), left = pathOn(mirrorOf(page), reader);
    RC_ASSERT(sameLooks(right, left));
    for (std::size_t i = 0; i < right.fixations.size(); ++i) {
      const Point a = right.fixations[i].at, b = left.fixations[i].at;
      RC_ASSERT(b.y == a.y);
      RC_ASSERT(std::abs(page.page.max.x - b.x - a.x) < 1e-9);
    }
  }));
}

TEST_CASE("the size of a page changes nothing but distances") {
  CHECK(rc::check("scale", [] {
    const SeenPage page = anyPage();
    const double scale = *rc::gen::elementOf(std::vector<double>{0.5, 2, 4});
    SeenPage scaled = page;
    const auto grow = [&](Rect r) {
      return Rect{{r.min.x * scale, r.min.y * scale}, {r.max.x * scale, r.max.y * scale}};
    };
    scaled.page = grow(page.page);
    for (SeenPanel& panel : scaled.panels) {
      for (Point& p : panel.outline.points) p = {p.x * scale, p.y * scale};
      for (SeenElement& e : panel.elements) e.box = grow(e.box);
      panel.focus = {panel.focus.x * scale, panel.focus.y * scale};
      panel.lead.from = {panel.lead.from.x * scale, panel.lead.from.y * scale};
    }
    const auto reader = *rc::gen::inRange<std::uint64_t>(0, 1000);
    const EyePath small = pathOn(page, reader), large = pathOn(scaled, reader);
    RC_ASSERT(sameLooks(small, large));
    for (std::size_t i = 0; i < small.fixations.size(); ++i) {
      const Point a = small.fixations[i].at, b = large.fixations[i].at;
      RC_ASSERT(std::abs(a.x * scale - b.x) + std::abs(a.y * scale - b.y) < 1e-9 * scale);
    }
  }));
}

double timeAt(const EyePath& path, int panel) {
  double ms = 0;
  for (const EyeFixation& f : path.fixations)
    if (f.panel == panel) ms += f.ms;
  return ms;
}

TEST_CASE("words added to a panel's copy never shorten its time for any reader") {
  CHECK(rc::check("panel's time grows", [] {
    const SeenPage page = anyPage();
    const auto reader = *rc::gen::inRange<std::uint64_t>(0, 1000);
    const int panel = *rc::gen::inRange(0, static_cast<int>(page.panels.size()));
    SeenPage longer = page;
    for (SeenElement& e : longer.panels[static_cast<std::size_t>(panel)].elements) {
      if (e.kind != SeenKind::Copy) continue;
      e.words += 12;
      e.characters += 50;
    }
    RC_ASSERT(timeAt(pathOn(longer, reader), panel) >= timeAt(pathOn(page, reader), panel));
  }));
}

}  // namespace
}  // namespace tw
