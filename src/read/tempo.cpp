// 1 Each panel's expected reading time, in the order of the pages.
// 2 Smoothed: c_i = Σ_j w(i−j) t_j / Σ_j w(i−j) with w(d) = exp(−d² / 2·width²), d in panels, cut
//   at three widths. Near the ends the sum simply has fewer members, so a constant stays constant.
// 3 A stretch is a row of panels whose curve lies over 1.5 times, or under two thirds of, the
//   median of the curve. Neighbours that are so slow (or fast) themselves join it; from its ends
//   those panels are taken that are only blurred into it. Three panels or more must be left.
//
// Cost: panels × six widths. Does badly: a story of one tempo with a single long speech has no
// stretch, which is right, and a story that slows down evenly has its slow end named only when it
// is half as slow again as its middle.
#include "read/tempo.h"

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

constexpr double kSlow = 1.5, kFast = 2.0 / 3;
constexpr std::size_t kLeastPanels = 3;

double medianOf(std::vector<double> values) {
  if (values.empty()) return 0;
  std::ranges::sort(values);
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

int paceOf(double ratio) {
  return ratio >= kSlow ? 1 : ratio <= kFast ? -1 : 0;
}

/// The stretch with neighbours that are as slow or fast themselves, without ends that only their
/// neighbours make so.
Stretch fitted(Stretch stretch, const std::vector<double>& seconds, double median) {
  const auto isOfIt = [&](std::size_t i) {
    return paceOf(seconds[i] / median) == (stretch.slow ? 1 : -1);
  };
  while (stretch.first > 0 && isOfIt(stretch.first - 1)) --stretch.first;
  while (stretch.last + 1 < seconds.size() && isOfIt(stretch.last + 1)) ++stretch.last;
  while (stretch.first < stretch.last && !isOfIt(stretch.first)) ++stretch.first;
  while (stretch.last > stretch.first && !isOfIt(stretch.last)) --stretch.last;
  double sum = 0;
  for (std::size_t i = stretch.first; i <= stretch.last; ++i) sum += seconds[i];
  stretch.ratio = sum / static_cast<double>(stretch.last - stretch.first + 1) / median;
  return stretch;
}

std::vector<Stretch> stretchesOf(const Tempo& tempo) {
  std::vector<Stretch> out;
  if (tempo.median <= 0) return out;
  const auto pace = [&](std::size_t i) { return paceOf(tempo.curve[i] / tempo.median); };
  for (std::size_t i = 0, end = 0; i < tempo.curve.size(); i = end) {
    for (end = i; end < tempo.curve.size() && pace(end) == pace(i);) ++end;
    if (pace(i) == 0) continue;
    const Stretch stretch = fitted({i, end - 1, pace(i) > 0}, tempo.seconds, tempo.median);
    const bool isTold = !out.empty() && out.back().last >= stretch.first;
    if (!isTold && stretch.last - stretch.first + 1 >= kLeastPanels) out.push_back(stretch);
  }
  return out;
}

}  // namespace

std::vector<double> smoothed(const std::vector<double>& values, double width) {
  const int n = static_cast<int>(values.size()), reach = static_cast<int>(std::ceil(3 * width));
  std::vector<double> out(values.size());
  for (int i = 0; i < n; ++i) {
    double sum = 0, weights = 0;
    for (int j = std::max(0, i - reach); j <= std::min(n - 1, i + reach); ++j) {
      const double d = (i - j) / width, weight = std::exp(-d * d / 2);
      sum += weight * values[static_cast<std::size_t>(j)];
      weights += weight;
    }
    out[static_cast<std::size_t>(i)] = sum / weights;
  }
  return out;
}

Tempo tempoOf(const SeenStory& story) {
  Tempo out;
  out.places = placesOf(story);
  for (const StoryPlace at : out.places) out.seconds.push_back(panelAt(story, at).seconds);
  out.curve = smoothed(out.seconds);
  out.median = medianOf(out.curve);
  out.stretches = stretchesOf(out);
  return out;
}

PageTempo pageTempoOf(const StoryPage& page) {
  PageTempo out;
  out.panels = static_cast<int>(page.panels.size());
  for (const StoryPanel& panel : page.panels) {
    out.seconds += panel.seconds;
    out.words += panel.words;
    out.wordless += panel.words == 0 ? 1 : 0;
    out.meanAreaShare += page.measured ? panel.areaShare : 0;
  }
  if (out.panels == 0) return out;
  out.wordless /= out.panels;
  out.meanAreaShare /= out.panels;
  return out;
}

}  // namespace tw
