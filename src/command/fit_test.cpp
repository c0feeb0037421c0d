#include "command/fit.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"
#include "command/fit_room.h"
#include "command/job_models.h"
#include "command/job_pages.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

/// The demo's page 4 with two roughs, its dominant panel found.
class StagedJob {
 public:
  explicit StagedJob(const std::vector<std::string>& corrections = {}) {
    REQUIRE(changeBeats(job_.folder(), corrections).has_value());
    const PageRoughs made = job_.roughs(2);
    const Rough& first = made.composed.roughs.front();
    panels_ = static_cast<int>(first.panels.size());
    for (std::size_t i = 0; i < first.panels.size(); ++i) {
      if (first.panels[i].dominant && !first.panels[i].staging.figures.empty())
        request_.panel = static_cast<int>(i) + 1;
    }
    request_.job = job_.folder();
    request_.page = 4;
  }

  FitRequest request() const { return request_; }
  FitAnswers answers(const FitRequest& request) const {
    auto answers = fitFigure(request);
    REQUIRE_MESSAGE(answers.has_value(), (answers ? std::string() : describe(answers.error())));
    return std::move(*answers);
  }
  /// The answers for the first panel whose figure gains by running over its border.
  FitAnswers overTheBorder() const {
    FitRequest request = request_;
    for (request.panel = 1; request.panel <= panels_; ++request.panel) {
      auto answers = fitFigure(request);
      if (answers && answers->over && !answers->over->covered.empty()) return std::move(*answers);
    }
    FAIL("no figure of the page gains by running over its border");
    return {};
  }
  void brief(const std::vector<std::string>& settings) { job_.brief(settings); }

 private:
  DemoJob job_;
  FitRequest request_;
  int panels_ = 0;
};

double outside(const std::vector<Polygon>& figure, const Region& room) {
  return area(without(figure, room)) / silhouetteArea(figure);
}

}  // namespace

TEST_CASE("the whole answer lies in the panel, and no margin gives no smaller one") {
  const StagedJob job;
  FitRequest request = job.request();
  const FitAnswers a = job.answers(request);
  REQUIRE(a.whole.has_value());
  CHECK(outside(placedShapes(a.figure.shapes, a.whole->fit), a.room) < 1e-6);
  CHECK(a.whole->headMm == doctest::Approx(a.whole->fit.scale * a.figure.headMm));
  CHECK(a.whole->fit.within < 0.001);
  request.marginMm = 0;
  CHECK(job.answers(request).whole->fit.scale >= a.whole->fit.scale);
  request.mayMirror = true;
  CHECK(job.answers(request).whole->fit.scale >= a.whole->fit.scale);
}

TEST_CASE("a cut keeps the head, falls on no joint and gives a larger head than the whole figure") {
  const StagedJob job;
  const FitAnswers a = job.answers(job.request());
  REQUIRE(a.cut.has_value());
  REQUIRE(a.whole.has_value());
  for (const CutOption& o : a.cut->options) {
    CHECK(o.fit.scale > 0);
    CHECK(o.lost > 0);
    CHECK(o.lost < 1);
    const auto beyond = [&](Point p) {
      const Point at = o.fit.placed(p);
      return dot(at - Point{}, o.border.normal) - o.border.at;
    };
    for (const Point& p : a.figure.face.points) CHECK(beyond(p) < 0);
    const double tolerance = 0.018 * a.figure.statureMm * o.fit.scale * 0.999;
    for (const Point& joint : a.figure.joints) CHECK(std::abs(beyond(joint)) > tolerance);
    // What is left reaches the border that cuts it.
    CHECK(outside(o.kept, a.room) < 0.2);
    double reach = -1e9;
    for (const Polygon& shape : o.kept)
      for (const Point& p : shape.points)
        reach = std::max(reach, dot(p - Point{}, o.border.normal) - o.border.at);
    CHECK(reach == doctest::Approx(0).epsilon(0.01));
  }
  CHECK(a.cut->options[a.cut->best].headMm > a.whole->headMm);
}

TEST_CASE("a figure over the border covers no face and no balloon and a fifth of a panel at most") {
  const StagedJob job;
  const FitAnswers a = job.overTheBorder();
  REQUIRE(a.over.has_value());
  CHECK(a.over->headMm > a.whole->headMm);
  CHECK(a.over->ownShare >= kLeastAtHome - 0.01);
  CHECK_FALSE(a.over->covered.empty());
  for (const CoveredPanel& c : a.over->covered) {
    CHECK(c.panel != a.panel);
    CHECK(c.share <= kMostOfNeighbour + 0.01);
    CHECK(c.facesMm2 == 0);
    CHECK(c.copyMm2 == 0);
  }
}

TEST_CASE("beside a long chain all three answers are there and over the border the chain is cut") {
  const StagedJob job({"p4-5.prop.drop=bell"});  // nothing at its end: all of the chain shows
  const FitAnswers a = job.answers(job.request());
  REQUIRE_FALSE(a.figure.hauled.empty());
  REQUIRE(a.whole.has_value());
  REQUIRE(a.cut.has_value());
  REQUIRE(a.over.has_value());
  // The chain is no part of what must stay within the page, the figure is.
  const Region live{polygonOf(a.sheet.liveRect(a.rightHand))};
  CHECK(outside(placedShapes(a.figure.ownShapes, a.over->fit), live) < 1e-6);
  CHECK(outside(placedShapes(a.figure.hauled, a.over->fit), a.room) > 0.05);
  CHECK(a.over->hauledShare >= kLeastHauled - 0.02);
  CHECK(a.over->hauledShare < 0.95);
  // Without the chain the figure fits larger, and no figure passes the proven bound.
  REQUIRE(a.whole->alone.has_value());
  CHECK(a.whole->alone->scale > a.whole->fit.scale);
  CHECK(outside(placedShapes(a.figure.ownShapes, *a.whole->alone), a.room) < 1e-6);
  CHECK(a.over->headMm > a.whole->headMm);
  CHECK(a.over->largestScale <= a.over->boundScale);
  CHECK(a.over->boundScale >= a.whole->alone->scale);
}

TEST_CASE("the brief's head height is met, not passed, over the border and by the mildest cut") {
  StagedJob job;
  const FitAnswers before = job.overTheBorder();
  const double wanted = std::floor(10 * (before.whole->headMm + before.over->headMm) / 2) / 10;
  job.brief({fmt::format("head-mm={}", wanted), "focus=" + before.figure.who});
  FitRequest request = job.request();
  request.panel = before.panel;
  const FitAnswers after = job.answers(request);
  CHECK(after.wantedHeadMm == doctest::Approx(wanted));
  REQUIRE(after.over.has_value());
  CHECK(after.over->headMm == doctest::Approx(wanted).epsilon(0.02));
  REQUIRE(after.cut.has_value());
  const CutOption& best = after.cut->options[after.cut->best];
  CHECK(best.headMm >= wanted);
  for (const CutOption& o : after.cut->options)
    if (o.lost < best.lost && o.handsIn >= best.handsIn) CHECK(o.headMm < wanted);
}

TEST_CASE("the JSON of a fit follows its published schema") {
  const StagedJob job;
  const auto schema =
      readFile(fs::path(TIERWRIGHT_SOURCE_DIR) / "docs/formats/fit-output.schema.json");
  REQUIRE(schema.has_value());
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  const auto findings = check.findings(nlohmann::json::parse(fitJson(job.answers(job.request()))));
  for (const std::string& finding : findings) FAIL_CHECK(finding);
}

TEST_CASE("a job in memory has the same answers as its folder") {
  const StagedJob job;
  const auto open = openJob(job.request().job);
  REQUIRE(open.has_value());
  const auto stager = stagerFor(*open);
  const auto lights = LightWords::load();
  REQUIRE(stager.has_value());
  REQUIRE(lights.has_value());
  const auto answers = fitFigure(open->job, *stager, *lights, job.request());
  REQUIRE(answers.has_value());
  CHECK(fitJson(*answers) == fitJson(job.answers(job.request())));
}

TEST_CASE("what is not there is refused with what is") {
  const StagedJob job;
  FitRequest request = job.request();
  request.panel = 40;
  auto answer = fitFigure(request);
  REQUIRE_FALSE(answer.has_value());
  CHECK(describe(answer.error()).find("go from 1 to") != std::string::npos);
  request = job.request();
  request.rough = "Z";
  CHECK(describe(fitFigure(request).error()).find("no rough \"Z\"") != std::string::npos);
  request = job.request();
  request.who = "nobody";
  CHECK(describe(fitFigure(request).error()).find("In it:") != std::string::npos);
}

}  // namespace tw
