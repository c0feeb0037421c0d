// Aiming a lead
//
// Idea. The lead of a panel is the focus figure's strongest sign (a limb, its way, its gaze) as it
// falls on the picture. It is measured from joints alone in microseconds, so some thousand stagings
// can simply be looked at, and the best one refined.
//
// Steps. (1) Cameras: as now, mirrored, tilted by 7 or 14°, walked round by 40 or 80°. (2) Under
// each, the focus' body turned by up to kMostBodyTurn and its head by up to kMostGazeDeg, on a
// grid. (3) Price = degrees off the wanted direction, what the lead loses in strength, faces and
// bodies that are seen less, and a little for every change, so that of two equal ones the smaller
// is taken. (4) Body and head of the cheapest are refined by halving steps down to one degree.
//
// Cost: about 1 500 quick measures. Does badly: poses are never changed, so a lead that has to run
// steeply up or down may stay far off; it says how far. The prices are our own.
#include "compose/re_aim.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "compose/staging_moves.h"

namespace tw {

namespace {

constexpr double kMostBodyTurn = 60;  // degrees: farther it is another blocking
constexpr double kBodyStep = 15, kHeadStep = 14;
constexpr double kFinest = 1;    // degree
constexpr double kWeakens = 25;  // degrees that a lead's whole strength is worth
constexpr double kHides = 40;    // degrees that faces, and an uncut focus, are worth
constexpr double kPerBodyDeg = 0.06, kPerHeadDeg = 0.03;
constexpr double kMirrors = 2, kTilts = 3, kWalks = 4;  // degrees that such a change must win

struct CameraTry {
  Staging staging;
  std::string change;
  double price = 0;
};

struct Turned {
  std::size_t camera = 0;
  double body = 0, head = 0;  ///< degrees from the camera's staging
  double price = std::numeric_limits<double>::infinity();
  double offDeg = 180;
};

double angleDeg(Vector a, Vector b) {
  return std::abs(std::atan2(cross(a, b), dot(a, b))) * 180 / std::numbers::pi;
}

class Aiming {
 public:
  Aiming(const MeasuredPage& page, std::size_t panel, std::size_t figure, Vector wanted)
      : page_(page),
        panel_(panel),
        wanted_(wanted),
        now_(page.rough().panels[panel].staging),
        before_(page.quickly(panel, now_)),
        figure_(figure) {
    addCameras();
  }

  std::optional<ReAimed> best() {
    Turned best;
    for (std::size_t camera = 0; camera < cameras_.size(); ++camera)
      for (double body = -kMostBodyTurn; body <= kMostBodyTurn; body += kBodyStep)
        for (double head = -kMostGazeDeg; head <= kMostGazeDeg; head += kHeadStep)
          keepBetter(best, {camera, body, head - gazeOf(camera)});
    for (std::size_t camera = 0; camera < cameras_.size(); ++camera)
      keepBetter(best, {camera, 0, 0});
    refine(best);
    if (!std::isfinite(best.price)) return std::nullopt;
    return ReAimed{stagingOf(best), best.offDeg, words(best)};
  }

 private:
  void addCameras() {
    cameras_.push_back({now_, "", 0});
    cameras_.push_back({mirroredPicture(page_, panel_), "mirror the picture", kMirrors});
    for (const double by : {-14.0, -7.0, 7.0, 14.0})
      if (auto tilted = tiltedPicture(page_, panel_, by))
        cameras_.push_back({std::move(*tilted), tiltInWords(now_, by), kTilts * std::abs(by) / 7});
    if (isStagedByHand(page_, panel_)) return;  // a walk would lose the artist's camera
    for (const double by : {-80.0, -40.0, 40.0, 80.0}) {
      StagingChoice choice = now_.choice;
      choice.sideDeg += by;
      if (std::abs(choice.sideDeg) > 180) continue;
      cameras_.push_back({stagedAs(page_, panel_, choice),
                          fmt::format("walk the camera {:.0f}° round", std::abs(by)),
                          kWalks * std::abs(by) / 40});
    }
  }

  double gazeOf(std::size_t camera) const {
    return cameras_[camera].staging.figures[figure_].gazeDeg;
  }

  Staging stagingOf(const Turned& t) const {
    Staging staging = cameras_[t.camera].staging;
    staging.figures[figure_].headingDeg += t.body;
    staging.figures[figure_].gazeDeg += t.head;
    return staging;
  }

  void keepBetter(Turned& best, Turned t) const {
    if (std::abs(gazeOf(t.camera) + t.head) > kMostGazeDeg + 1e-9 && t.head != 0) return;
    if (std::abs(t.body) > kMostBodyTurn) return;
    const Variant v = page_.quickly(panel_, stagingOf(t));
    if (v.lead == Vector{}) return;
    t.offDeg = angleDeg(v.lead, wanted_);
    const auto lost = [](double was, double is) { return std::max(0.0, was - is); };
    t.price = t.offDeg + kWeakens * lost(before_.leadStrength, v.leadStrength) +
              kHides * (lost(before_.facesSeen, v.facesSeen) + lost(before_.visible, v.visible) +
                        lost(v.cutCost, before_.cutCost)) +
              kPerBodyDeg * std::abs(t.body) + kPerHeadDeg * std::abs(t.head) +
              cameras_[t.camera].price;
    if (t.price < best.price - 1e-9) best = t;
  }

  void refine(Turned& best) const {
    if (!std::isfinite(best.price)) return;
    for (double step = kBodyStep / 2; step >= kFinest / 2; step /= 2)
      for (int round = 0; round < 3; ++round) {
        const Turned middle = best;
        for (const double by : {-step, step}) {
          keepBetter(best, {middle.camera, middle.body + by, middle.head});
          keepBetter(best, {middle.camera, middle.body, middle.head + by});
        }
        if (best.price == middle.price) break;
      }
  }

  std::string words(const Turned& t) const {
    std::string out = cameras_[t.camera].change;
    const auto add = [&](const std::string& more) { out += (out.empty() ? "" : ", ") + more; };
    if (std::abs(t.body) >= kFinest) add(fmt::format("turn the body {:.0f}°", std::abs(t.body)));
    if (std::abs(t.head) >= kFinest) add(fmt::format("turn the head {:.0f}°", std::abs(t.head)));
    return out.empty() ? "nothing" : out;
  }

  const MeasuredPage& page_;
  std::size_t panel_;
  Vector wanted_;
  const Staging& now_;
  Variant before_;
  std::size_t figure_;
  std::vector<CameraTry> cameras_;
};

/// Index in the staging of whom the panel is about.
std::optional<std::size_t> focusFigure(const MeasuredPage& page, std::size_t panel) {
  const auto& figures = page.rough().panels[panel].staging.figures;
  for (std::size_t i = 0; i < figures.size(); ++i)
    if (figures[i].who == page.page().panels[panel].focus) return i;
  return std::nullopt;
}

}  // namespace

Result<ReAimed> reAimed(const MeasuredPage& page, std::size_t panel, Vector wanted) {
  const int number = static_cast<int>(panel) + 1;
  const auto figure = focusFigure(page, panel);
  if (!figure)
    return badInput(fmt::format("Panel {} shows nobody who could lead the eye.", number),
                    {.panel = number});
  if (wanted == Vector{}) return badInput("A lead has to be aimed somewhere.", {.panel = number});
  auto best = Aiming(page, panel, *figure, wanted.unit()).best();
  if (!best)
    return badInput(fmt::format("No staging of panel {} that was tried leads anywhere.", number),
                    {.panel = number});
  return std::move(*best);
}

Result<ReAimed> reAimedAt(const MeasuredPage& page, std::size_t panel, Point target) {
  return reAimed(page, panel, target - page.rough().panels[panel].focus);
}

}  // namespace tw
