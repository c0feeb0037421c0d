#include "stage/shot_size.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace tw {
namespace {

struct Band {
  double least, most;
  double cut;
};

// Bands: facts on shot sizes, thresholds between landmarks. Cuts: between joints, never on one.
constexpr std::array<Band, kShotSizes> kBands{{{7.7, 14.0, 0.895},
                                               {4.2, 7.7, 0.800},
                                               {2.9, 4.2, 0.700},
                                               {1.8, 2.9, 0.585},
                                               {1.05, 1.8, 0.370},
                                               {0.5, 1.05, -0.06},
                                               {1.0 / 6, 0.5, -0.5},
                                               {0.05, 1.0 / 6, -1.0}}};
constexpr double kInsideBand = 1.03;

const Band& bandOf(ShotSize shot) {
  return kBands[static_cast<std::size_t>(shot)];
}

double wantedRatio(ShotSize shot, double headRoom) {
  switch (shot) {
    case ShotSize::ExtremeCloseUp:
      return 9.4;
    case ShotSize::VeryLong:
      return 0.36 * (1 - 0.5 * headRoom);
    case ShotSize::ExtremeLong:
      return 0.125;
    default:
      return (1 - headRoom) / (1 - bandOf(shot).cut);
  }
}

}  // namespace

double leastRatio(ShotSize shot) {
  return bandOf(shot).least;
}
double mostRatio(ShotSize shot) {
  return bandOf(shot).most;
}
double usualCut(ShotSize shot) {
  return bandOf(shot).cut;
}

double ratioFor(ShotSize shot, double headRoom) {
  return std::clamp(wantedRatio(shot, headRoom), leastRatio(shot) * kInsideBand,
                    mostRatio(shot) / kInsideBand);
}

ShotSize shotOfRatio(double statureOverFrame) {
  for (int i = 0; i < kShotSizes; ++i) {
    const auto shot = static_cast<ShotSize>(i);
    if (statureOverFrame >= leastRatio(shot)) return shot;
  }
  return ShotSize::ExtremeLong;
}

std::string_view cutName(double heightShare) {
  if (heightShare <= 0) return "whole";
  const CutLine* best = &kCutLines[0];
  for (const CutLine& line : kCutLines) {
    if (std::abs(line.heightShare - heightShare) < std::abs(best->heightShare - heightShare)) {
      best = &line;
    }
  }
  return best->name;
}

bool cutsAtJoint(double heightShare, double tolerance) {
  return std::any_of(kCutLines.begin(), kCutLines.end(), [&](const CutLine& line) {
    return line.joint && std::abs(line.heightShare - heightShare) < tolerance;
  });
}

int stepsBetween(ShotSize a, ShotSize b) {
  return std::abs(static_cast<int>(a) - static_cast<int>(b));
}
int stepsBetween(EyeHeight a, EyeHeight b) {
  return std::abs(static_cast<int>(a) - static_cast<int>(b));
}

}  // namespace tw
