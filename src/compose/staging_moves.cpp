// Keeping the hand's work
//
// A staging follows from its choice. What differs from that was set by hand: it is found by solving
// the present choice again and comparing, and put on what another choice is solved to. A camera
// that was set by hand cannot be carried over to another choice; then the picture is mirrored
// and tilted as it stands, without solving. Cost: two solvings, far below a millisecond. Does
// badly: places of figures that were set by hand are kept by mirroring and tilting only.
#include "compose/staging_moves.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "stage/blocking.h"

namespace tw {

namespace {

constexpr double kSame = 1e-3;  // degrees, metres, millimetres of focal length
constexpr double kLevel = 0.05;

bool same(double a, double b) {
  return std::abs(a - b) < kSame;
}

bool same(const Place3& a, const Place3& b) {
  return same(a.x, b.x) && same(a.y, b.y) && same(a.z, b.z);
}

bool same(const CameraPlace& a, const CameraPlace& b) {
  return same(a.eye, b.eye) && same(a.panDeg, b.panDeg) && same(a.pitchDeg, b.pitchDeg) &&
         same(a.rollDeg, b.rollDeg) && same(a.focalMm, b.focalMm) && same(a.offsetX, b.offsetX) &&
         same(a.offsetY, b.offsetY);
}

bool samePose(const SetFigure& a, const SetFigure& b) {
  return a.pose == b.pose && std::ranges::equal(a.turnsDeg, b.turnsDeg, [](auto& x, auto& y) {
           return x.first == y.first &&
                  std::ranges::equal(x.second, y.second,
                                     [](double p, double q) { return same(p, q); });
         });
}

bool same(const SetFigure& a, const SetFigure& b) {
  return a.who == b.who && samePose(a, b) && a.poseMirrored == b.poseMirrored && same(a.at, b.at) &&
         same(a.headingDeg, b.headingDeg) && same(a.gazeDeg, b.gazeDeg);
}

bool same(const SetProp& a, const SetProp& b) {
  return a.prop == b.prop && same(a.at, b.at) && same(a.headingDeg, b.headingDeg);
}

template <class T>
bool sameAll(const std::vector<T>& a, const std::vector<T>& b) {
  return std::ranges::equal(a, b, [](const T& x, const T& y) { return same(x, y); });
}

/// What the hand did to `own` against `solved`, done to `next`.
void carryOver(SetFigure& next, const SetFigure& own, const SetFigure& solved) {
  const double sense = next.poseMirrored == solved.poseMirrored ? 1 : -1;
  if (!samePose(own, solved)) {
    next.pose = own.pose;
    next.turnsDeg = own.turnsDeg;
  }
  if (own.poseMirrored != solved.poseMirrored) next.poseMirrored = !next.poseMirrored;
  if (!same(own.gazeDeg, solved.gazeDeg)) next.gazeDeg = sense * own.gazeDeg;
  if (!same(own.headingDeg, solved.headingDeg))
    next.headingDeg += sense * (own.headingDeg - solved.headingDeg);
}

const SetFigure* figureOf(const Staging& staging, const std::string& who) {
  const auto found = std::ranges::find(staging.figures, who, &SetFigure::who);
  return found == staging.figures.end() ? nullptr : &*found;
}

/// The camera stays and only rolls.
Staging rolled(Staging staging, double byDeg) {
  staging.choice.tiltDeg += byDeg;
  staging.camera.rollDeg += runsLeftward(staging) ? -byDeg : byDeg;
  return staging;
}

Staging tiltedTo(const MeasuredPage& page, std::size_t panel, double tiltDeg) {
  const Staging& before = page.rough().panels[panel].staging;
  if (isStagedByHand(page, panel)) return rolled(before, tiltDeg - before.choice.tiltDeg);
  StagingChoice choice = before.choice;
  choice.tiltDeg = tiltDeg;
  return stagedAs(page, panel, choice);
}

}  // namespace

bool isStagedByHand(const MeasuredPage& page, std::size_t panel) {
  const Staging& own = page.rough().panels[panel].staging;
  const Staging solved = page.solved(panel, own.choice);
  return !same(own.camera, solved.camera) || !sameAll(own.figures, solved.figures) ||
         !sameAll(own.props, solved.props);
}

Staging stagedAs(const MeasuredPage& page, std::size_t panel, const StagingChoice& choice) {
  const Staging& own = page.rough().panels[panel].staging;
  const Staging solved = page.solved(panel, own.choice);
  Staging next = page.solved(panel, choice);
  for (SetFigure& figure : next.figures) {
    const SetFigure *mine = figureOf(own, figure.who), *asSolved = figureOf(solved, figure.who);
    if (mine && asSolved) carryOver(figure, *mine, *asSolved);
  }
  next.light = own.light;
  return next;
}

Staging inLookingGlass(Staging staging) {
  staging.choice.mirrored = !staging.choice.mirrored;
  CameraPlace& camera = staging.camera;
  camera.eye.x = -camera.eye.x;
  camera.panDeg = -camera.panDeg;
  camera.rollDeg = -camera.rollDeg;
  camera.offsetX = -camera.offsetX;
  for (SetFigure& figure : staging.figures) {
    figure.at.x = -figure.at.x;
    figure.headingDeg = -figure.headingDeg;
    figure.gazeDeg = -figure.gazeDeg;
    figure.poseMirrored = !figure.poseMirrored;
  }
  for (SetProp& prop : staging.props) {
    prop.at.x = -prop.at.x;
    prop.headingDeg = -prop.headingDeg;
  }
  return staging;
}

Staging mirroredPicture(const MeasuredPage& page, std::size_t panel) {
  const Staging& before = page.rough().panels[panel].staging;
  if (isStagedByHand(page, panel)) return inLookingGlass(before);
  StagingChoice choice = before.choice;
  choice.mirrored = !choice.mirrored;
  return stagedAs(page, panel, choice);
}

std::optional<Staging> tiltedPicture(const MeasuredPage& page, std::size_t panel, double byDeg) {
  const double tilt = page.rough().panels[panel].staging.choice.tiltDeg + byDeg;
  if (std::abs(tilt) > kMostTiltDeg) return std::nullopt;
  return tiltedTo(page, panel, std::abs(tilt) < kLevel ? 0 : tilt);
}

std::string tiltInWords(const Staging& staging, double byDeg) {
  const bool falls = (byDeg > 0) != runsLeftward(staging);
  return fmt::format("tilt the horizon {:.0f}°, {} side down", std::abs(byDeg),
                     falls ? "right" : "left");
}

Staging levelPicture(const MeasuredPage& page, std::size_t panel) {
  return tiltedTo(page, panel, 0);
}

}  // namespace tw
