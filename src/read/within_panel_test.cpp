#include "read/within_panel.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <map>

#include "read/eye_pages_test.h"

namespace tw {
namespace {

using namespace test;

/// One panel, read by that reader.
std::vector<EyeFixation> readBy(std::uint64_t number, const SeenPanel& panel) {
  SeenPage page = gridPage(2, 2);
  page.panels[0] = panel;
  const EyePathModel model = shippedEyes();
  const EyePage ready(page, model);
  std::vector<EyeFixation> path;
  const EyeReader reader(7, number, model);
  PanelLooker looker(ready, path);
  looker.restart(reader);
  looker.read(0, false);
  return path;
}

SeenPanel panelWith(int balloons, int words) {
  SeenPanel panel = panelAt(0, 0, 88, 133);
  addCopy(panel, balloons, words);
  addFigure(panel, 0.5);
  return panel;
}

double msOf(const std::vector<EyeFixation>& path) {
  double ms = 0;
  for (const EyeFixation& f : path) ms += f.ms;
  return ms;
}

TEST_CASE("spread keeps the mean and is lopsided upward") {
  Random draws(3);
  double sum = 0, over = 0;
  constexpr int kDraws = 20000;
  for (int i = 0; i < kDraws; ++i) {
    const double factor = spreadFactor(draws.next(), 0.3);
    sum += factor;
    over += factor > 1;
  }
  CHECK(sum / kDraws == doctest::Approx(1).epsilon(0.01));
  CHECK(over / kDraws < 0.47);  // a log-normal's median lies under its mean
  CHECK(spreadFactor(12345, 0) == 1);
}

TEST_CASE("copy is read in its order and before the picture is seen again") {
  for (std::uint64_t reader = 0; reader < 50; ++reader) {
    const std::vector<EyeFixation> path = readBy(reader, panelWith(2, 6));
    bool copyBegun = false, inSecond = false, pictureAgain = false;
    for (const EyeFixation& f : path) {
      if (f.on != SeenKind::Copy) {
        pictureAgain = copyBegun;
        continue;
      }
      CHECK_FALSE(pictureAgain);
      copyBegun = true;
      if (f.element == 1) inSecond = true;
      if (f.element == 0) CHECK_FALSE(inSecond);
    }
    CHECK(inSecond);
  }
}

TEST_CASE("reading goes along the lines and down") {
  const std::vector<EyeFixation> path = readBy(1, panelWith(1, 20));
  const EyeFixation* before = nullptr;
  for (const EyeFixation& f : path) {
    if (f.on != SeenKind::Copy || f.goesBack) continue;
    if (before) CHECK((f.at.y > before->at.y || f.at.x > before->at.x));
    before = &f;
  }
  CHECK(before != nullptr);
}

// Facts on comics: picture-only panels get 1 to 3 fixations of some 280 ms (derived).
TEST_CASE("a picture alone gets one to three looks and some half a second") {
  double looks = 0, ms = 0;
  for (std::uint64_t reader = 0; reader < 400; ++reader) {
    const std::vector<EyeFixation> path = readBy(reader, panelWith(0, 0));
    CHECK(path.size() >= 1);
    CHECK(path.size() <= 3);
    looks += static_cast<double>(path.size()) / 400;
    ms += msOf(path) / 400;
  }
  CHECK(looks > 1.3);
  CHECK(looks < 2.5);
  CHECK(ms > 280);
  CHECK(ms < 1500);  // self-paced, panel by panel: the slow end
}

// About 90 fixations for 100 words; 10 to 15 of a hundred saccades go back (Rayner, from memory).
TEST_CASE("a hundred words take some ninety looks of which an eighth go back") {
  double looks = 0, back = 0;
  for (std::uint64_t reader = 0; reader < 200; ++reader) {
    SeenPanel panel = panelAt(0, 0, 88, 133);
    panel.elements.push_back(copyAt(4, 4, 80, 60, 100));
    panel.elements.front().characters = 420;
    for (const EyeFixation& f : readBy(reader, panel)) {
      looks += f.on == SeenKind::Copy;
      back += f.on == SeenKind::Copy && f.goesBack;
    }
  }
  CHECK(looks / 200 == doctest::Approx(90).epsilon(0.03));
  CHECK(back / looks > 0.10);
  CHECK(back / looks < 0.15);
}

TEST_CASE("added words never shorten a panel for any reader") {
  CHECK(rc::check("time grows", [] {
    const auto reader = *rc::gen::inRange<std::uint64_t>(0, 100000);
    const int words = *rc::gen::inRange(0, 60), more = *rc::gen::inRange(1, 30);
    const int balloons = *rc::gen::inRange(1, 4);
    SeenPanel panel = panelWith(balloons, words), longer = panel;
    longer.elements[0].words += more;
    longer.elements[0].characters += more * *rc::gen::inRange(1, 9);
    RC_ASSERT(msOf(readBy(reader, longer)) >= msOf(readBy(reader, panel)));
  }));
}

TEST_CASE("a face is seen first on the picture more than anything else") {
  int faces = 0, looks = 0;
  for (std::uint64_t reader = 0; reader < 400; ++reader) {
    const std::vector<EyeFixation> path = readBy(reader, panelWith(0, 0));
    ++looks;
    faces += path.front().on == SeenKind::Face;
  }
  CHECK(faces > looks / 2);
}

TEST_CASE("a place just seen is less likely to be seen again") {
  std::map<int, double> first;  // shares of the first look, which nothing inhibits
  int same = 0, three = 0;
  constexpr int kReaders = 1500;
  SeenPanel crowd = panelWith(0, 0);
  addFigure(crowd, 0.2, false);
  addFigure(crowd, 0.8, false);
  for (std::uint64_t reader = 0; reader < kReaders; ++reader) {
    const std::vector<EyeFixation> path = readBy(reader, crowd);
    first[path[0].element] += 1.0 / kReaders;
    if (path.size() < 3) continue;  // the third look comes when inhibition is full
    ++three;
    same += path[2].element == path[0].element;
  }
  double byChance = 0;
  for (const auto& [element, share] : first) byChance += share * share;
  REQUIRE(three > 100);
  CHECK(same / static_cast<double>(three) < 0.75 * byChance);
}

TEST_CASE("two balloons of the same words are not read alike") {
  const SeenPanel panel = panelWith(2, 6);
  int alike = 0;
  for (std::uint64_t reader = 0; reader < 20; ++reader) {
    double ms[2] = {0, 0};
    for (const EyeFixation& f : readBy(reader, panel))
      if (f.on == SeenKind::Copy) ms[f.element] += f.ms;
    alike += ms[0] == ms[1];
  }
  CHECK(alike == 0);
}

TEST_CASE("looks stay inside what they look at") {
  for (std::uint64_t reader = 0; reader < 50; ++reader) {
    const SeenPanel panel = panelWith(2, 12);
    for (const EyeFixation& f : readBy(reader, panel)) {
      const Rect box = f.element < 0 ? bounds(panel.outline)
                                     : panel.elements[static_cast<std::size_t>(f.element)].box;
      CHECK(box.outset(1e-6).contains(f.at));
      CHECK(f.ms > 0);
    }
  }
}

}  // namespace
}  // namespace tw
