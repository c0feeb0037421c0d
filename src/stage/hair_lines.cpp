// Strands: a few lines laid on the mass of hair, so that it reads as hair and not as a cap. On dark
// hair they are the shine, left as paper where the light falls; on light hair they are ink.
// A strand runs from near the whorl down the shell of hair_mesh.cpp, a little aside as it goes.
// Where and how long they are is common practice of drawing schools, no source.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"
#include "stage/garment_lines.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;

/// A strand: its angle round the head (0 front, 90 the figure's left) and its heights in heads.
struct Strand {
  double angle, from, to, aside;
};

// The shine: a band of short streaks round the crown, bunched, no two of a length.
constexpr Strand kShine[] = {
    {14, 0.945, 0.87, 8},   {24, 0.955, 0.82, 10},  {33, 0.94, 0.85, 9},   {58, 0.93, 0.78, 10},
    {67, 0.945, 0.72, 12},  {77, 0.92, 0.80, 9},    {112, 0.93, 0.77, 8},  {124, 0.91, 0.70, 10},
    {158, 0.92, 0.76, 6},   {172, 0.93, 0.70, 6},   {-20, 0.95, 0.86, -8}, {-31, 0.94, 0.80, -10},
    {-52, 0.93, 0.76, -10}, {-63, 0.945, 0.71, -9}, {-98, 0.92, 0.79, -8}, {-110, 0.93, 0.70, -9},
    {-148, 0.92, 0.75, -6}, {-160, 0.91, 0.69, -6}};
// What hangs below the ears of long hair.
constexpr Strand kHanging[] = {
    {60, 0.42, 0.08, 6},    {84, 0.50, -0.10, 4},   {118, 0.45, 0.0, 3},
    {150, 0.50, -0.12, 2},  {178, 0.42, -0.05, 0},  {-66, 0.46, 0.05, -6},
    {-92, 0.42, -0.12, -4}, {-125, 0.50, 0.02, -3}, {-155, 0.44, -0.1, -2}};

class Comb {
 public:
  Comb(const Body& body, const Skeleton& skeleton)
      : sculpt_{body, skeleton, finenessOf(1), 1, {}}, shell_(hairShell(body.look.hairCut)) {}

  template <class Strands>
  void draw(const Strands& strands) {
    for (const Strand& strand : strands)
      if (strand.to > shell_.front().up && strand.from < shell_.back().up)
        lines_.push_back(line(strand));
  }
  std::vector<GarmentLine> taken() { return std::move(lines_); }

 private:
  GarmentLine line(const Strand& strand) const {
    constexpr int kSteps = 7;
    constexpr double kLeastHeadMm = 6;
    GarmentLine out;
    out.parts = 1u << static_cast<unsigned>(BodyPart::Hair);
    out.leastHeadMm = kLeastHeadMm;
    out.weight = 0.9;
    for (int i = 0; i <= kSteps; ++i) {
      const double t = double(i) / kSteps;
      const double up = strand.from + t * (strand.to - strand.from);
      add(out, up, (strand.angle + strand.aside * t * t) * kDeg);
    }
    return out;
  }

  void add(GarmentLine& line, double up, double angle) const {
    const Ring ring = headRing(sculpt_, sliceAt(up));
    const double x = -std::sin(angle), z = std::cos(angle);
    const Vec3 by = x * (x > 0 ? ring.toRight : ring.toLeft) * ring.right +
                    z * (z > 0 ? ring.toFront : ring.toBack) * ring.front;
    line.at.push_back(ring.centre + by);
    const Vec3 crown = sculpt_.skeleton.frameOf(Joint::Head).col(1);
    line.out.push_back((by.normalized() + std::max(0.0, 3 * (up - 0.7)) * crown).normalized());
  }

  HeadSlice sliceAt(double up) const {
    const auto above = std::find_if(shell_.begin() + 1, shell_.end() - 1,
                                    [&](const HeadSlice& s) { return s.up >= up; });
    const HeadSlice &a = *(above - 1), &b = *above;
    const double t = std::clamp((up - a.up) / (b.up - a.up), 0.0, 1.0);
    const auto mix = [&](double p, double q) { return p + t * (q - p); };
    return {up, mix(a.half, b.half), mix(a.front, b.front), mix(a.back, b.back), 0};
  }

  Sculpt sculpt_;
  std::vector<HeadSlice> shell_;
  std::vector<GarmentLine> lines_;
};

}  // namespace

std::vector<GarmentLine> hairLines(const Body& body, const Skeleton& skeleton) {
  const Look& look = body.look;
  const bool hidden = look.hatKind == Hat::Helmet || look.hatKind == Hat::Hood;
  if (look.hairCut == Hair::Bald || look.hairCut == Hair::Curly || hidden) return {};
  Comb comb(body, skeleton);
  comb.draw(kShine);
  if (look.hairCut == Hair::Long || look.hairCut == Hair::Bob) comb.draw(kHanging);
  return comb.taken();
}

}  // namespace tw
