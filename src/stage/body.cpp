// Lengths: Drillis R, Contini R (1966) Body Segment Parameters, Tech. Rep. 1166.03, New York
// University, as reproduced in Winter (2009) Fig. 4.1; fractions of stature.
// Breadths and depths: Gordon CC et al. (2014) ANSUR II, NATICK/TR-15/007; means of value over
// stature per sex. Head counts of children: US Navy, Illustrator Draftsman, NAVEDTRA 14262 p. 3-34.
// What a build does to breadths is common practice, no source.
#include <algorithm>
#include <array>
#include <utility>

#include "stage/figure.h"

namespace tw {
namespace {

constexpr double kHead = 0.130;  // crown to chin
constexpr double kNeck = 0.052;  // chin to shoulder
constexpr double kShoulderToHip = 0.288;
constexpr double kUpperArm = 0.186;
constexpr double kForearm = 0.146;
constexpr double kHand = 0.108;
constexpr double kThigh = 0.245;
constexpr double kShank = 0.246;
constexpr double kAnkle = 0.039;  // ankle to sole
constexpr double kFootLength = 0.152;

struct Breadths {
  double biacromial, chest, chestDepth, waist, hip, head, headDepth, foot;
};
constexpr Breadths kMale{0.2368, 0.1649, 0.1446, 0.1860, 0.1970, 0.0880, 0.1137, 0.0580};
constexpr Breadths kFemale{0.2244, 0.1655, 0.1520, 0.1842, 0.2174, 0.0909, 0.1167, 0.0570};

/// Factors on the breadths above.
struct Build {
  double shoulder, chest, waist, hip, heft, muscle;
};
constexpr Build kMedium{1, 1, 1, 1, 1, 1};
constexpr Build kSlight{0.96, 0.93, 0.90, 0.94, 0.86, 0.85};
constexpr Build kHeavy{1.04, 1.15, 1.30, 1.12, 1.24, 1.0};
constexpr Build kHeroic{1.15, 1.14, 0.98, 0.98, 1.06, 1.25};
constexpr Build kIdeal{1.04, 1.02, 0.97, 0.98, 1.0, 1.1};
constexpr Build kChild{0.93, 1.0, 1.0, 0.88, 0.94, 0.7};

constexpr double kIdealHeads = 8, kHeroicHeads = 8.5;  // common practice
constexpr double kGrownUpAge = 16;
// From this age on the back bends, by so much a year up to the most. Common practice, no source.
constexpr double kStoopFromAge = 65, kStoopPerYear = 0.8, kMostStoopDeg = 16;

Build buildOf(const std::string& name) {
  if (name == "slight") return kSlight;
  if (name == "heavy") return kHeavy;
  if (name == "heroic") return kHeroic;
  if (name == "ideal") return kIdeal;
  if (name == "child") return kChild;
  return kMedium;
}

/// A straight line through the points, held level before the first and after the last.
template <std::size_t N>
double between(const std::array<std::pair<double, double>, N>& points, double at) {
  if (at <= points.front().first) return points.front().second;
  for (std::size_t i = 1; i < N; ++i) {
    const auto [x0, y0] = points[i - 1];
    const auto [x1, y1] = points[i];
    if (at <= x1) return y0 + (y1 - y0) * (at - x0) / (x1 - x0);
  }
  return points.back().second;
}

double headsAtAge(double years) {
  return between<4>({{{1, 4.5}, {8, 6.25}, {12, 7}, {kGrownUpAge, 7.5}}}, years);
}

/// For a child of no stated age: ages 1, 8 and 12 are about 0.75, 1.28 and 1.50 m, from memory.
double headsOfChild(double stature) {
  return between<3>({{{0.75, 4.5}, {1.28, 6.25}, {1.50, 7}}}, stature);
}

double headShare(const Character& character) {
  if (character.heads > 0) return 1 / std::clamp(character.heads, 3.0, 12.0);
  if (character.ageYears > 0 && character.ageYears < kGrownUpAge)
    return 1 / headsAtAge(character.ageYears);
  if (character.build == "child") return 1 / headsOfChild(character.heightM);
  if (character.build == "heroic") return 1 / kHeroicHeads;
  if (character.build == "ideal") return 1 / kIdealHeads;
  return kHead;
}

double stoopOf(double years) {
  return std::clamp((years - kStoopFromAge) * kStoopPerYear, 0.0, kMostStoopDeg);
}

void setLengths(Body& body, double head) {
  const double h = body.stature;
  const double rest = h * (1 - head) / (1 - kHead);  // all but the head scales alike
  body.headHeight = h * head;
  body.neck = rest * kNeck;
  body.shoulderToHip = rest * kShoulderToHip;
  body.upperArm = rest * kUpperArm;
  body.forearm = rest * kForearm;
  body.hand = rest * kHand;
  body.thigh = rest * kThigh;
  body.shank = rest * kShank;
  body.ankleHeight = rest * kAnkle;
  body.footLength = rest * kFootLength;
}

void setBreadths(Body& body, const Breadths& of, const Build& build, double head) {
  const double h = body.stature;
  body.shoulderBreadth = h * of.biacromial * build.shoulder;
  body.chestBreadth = h * of.chest * build.chest;
  body.chestDepth = h * of.chestDepth * build.chest;
  body.waistBreadth = h * of.waist * build.waist;
  body.hipBreadth = h * of.hip * build.hip;
  body.footBreadth = h * of.foot;
  body.headBreadth = h * of.head * head / kHead;
  body.headDepth = h * of.headDepth * head / kHead;
}

}  // namespace

Body bodyOf(const Character& character) {
  Body body;
  body.stature = std::clamp(character.heightM, 0.3, 4.0);
  body.sex = character.sex;
  const Build build = buildOf(character.build);
  body.heft = build.heft;
  body.muscle = build.muscle;
  body.stoopDeg = stoopOf(character.ageYears);
  const double head = headShare(character);
  setLengths(body, head);
  setBreadths(body, body.sex == Sex::Male ? kMale : kFemale, build, head);
  return body;
}

}  // namespace tw
