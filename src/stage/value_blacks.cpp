// Spotting blacks.
//
// Words: a candidate is an area that an inker could fill without lying about the picture: dark
// cloth and hair, the shadow side of a thing, a cast shadow, the set or its shadow side, a dark
// sky. Apart: the share of the focus's outline across which the value changes.
//
//  1 List the candidates with their cells; small ones are left out.
//  2 Try each alone: how much more of the focus's outline stands apart, how much black it adds.
//  3 Take the best, fill it, try the others again; stop when nothing helps the focus and the panel
//    has its share of black, or the share would be too great.
// The amounts are common practice, no source. Cost: candidates squared times the focus's outline.
// Does badly: it knows nothing of the page; two neighbouring panels may both go black.
#include "stage/value_blacks.h"

#include <algorithm>
#include <array>
#include <map>

namespace tw {

namespace {

constexpr double kLeastShare = 0.004;  // of the panel: less is a detail, not a spot
constexpr double kEnoughBlack = 0.12;  // up to here blacks that merely do no harm are welcome
constexpr double kMostBlack = 0.38;
constexpr double kHarm = -0.02;  // loss of standing that is let pass
constexpr double kOthers = 0.5;  // weight of the other figures beside the focus
// A lit wall filled black is a decision, not an observation: only when it frees the figures.
constexpr double kWallGain = 0.15;
constexpr double kDarkCloth = 0.16;  // own luminance under which cloth may be spotted
constexpr double kShiftCost = 0.08;  // of a ground moved by a step from what the light says
constexpr double kGroundMm = 3;
constexpr double kLeastBorderMm = 3;
constexpr double kAlike = 0.6;

constexpr auto kBlack = static_cast<std::uint8_t>(ValueStep::Black);

template <class Visit>
void eachNeighbours(const Cells& cells, const Visit& visit) {
  const auto w = static_cast<std::size_t>(cells.width);
  std::size_t i = 0;
  for (int y = 0; y < cells.height; ++y)
    for (std::size_t x = 0; x < w; ++x, ++i) {
      if (!cells.isInside(i)) continue;
      if (x > 0 && cells.isInside(i - 1)) visit(i, i - 1);
      if (y > 0 && cells.isInside(i - w)) visit(i, i - w);
    }
}

bool isFigure(const Cells& cells, const std::vector<Solid>& solids, std::size_t i) {
  return cells.who[i] >= 0 && solids[static_cast<std::size_t>(cells.who[i])].figure >= 0;
}

struct Candidate {
  SpottedBlack black;
  double worth = 0;
  std::vector<std::uint32_t> cells;
};

/// What the cell would be blackened as, or nothing.
std::optional<BlackOf> blackAt(const Cells& cells, const LitScene& scene, std::size_t i) {
  const std::int16_t who = cells.who[i];
  const bool dark = cells.lit[i] < kInShadow;
  if (who == Cells::kGround && dark) return BlackOf::CastShadow;
  if (who < 0) return cells.local[i] < kDarkCloth ? std::optional(BlackOf::Sky) : std::nullopt;
  const Solid& solid = scene.solids[static_cast<std::size_t>(who)];
  if (solid.isSet) return dark ? BlackOf::SetShadow : BlackOf::Set;
  if (solid.figure >= 0 && cells.local[i] < kDarkCloth) return BlackOf::Costume;
  // The focus keeps its shadow side as a tone: its form has to be read.
  if (dark && !solid.isFocus) return BlackOf::ShadowSide;
  return std::nullopt;
}

std::vector<Candidate> candidates(const Cells& cells, const LitScene& scene, double least) {
  std::map<std::pair<BlackOf, int>, Candidate> found;
  Candidate* last = nullptr;
  for (std::size_t i = 0; i < cells.count(); ++i) {
    if (!cells.isInside(i)) continue;
    const auto what = blackAt(cells, scene, i);
    if (!what) continue;
    const int solid = std::max<int>(cells.who[i], -1);
    // Neighbours are mostly of one candidate.
    if (last == nullptr || last->black.what != *what || last->black.solid != solid) {
      last = &found[{*what, solid}];
      last->black = {*what, solid, 0, 0};
    }
    last->cells.push_back(static_cast<std::uint32_t>(i));
  }
  std::vector<Candidate> out;
  for (auto& [key, c] : found)
    if (static_cast<double>(c.cells.size()) >= least) out.push_back(std::move(c));
  return out;
}

double shareOf(const Cells& cells, std::uint8_t step, double inside) {
  double count = 0;
  for (std::size_t i = 0; i < cells.count(); ++i)
    count += cells.isInside(i) && cells.step[i] == step ? 1 : 0;
  return count / inside;
}

}  // namespace

FocusBorder::FocusBorder(const Cells& cells, const std::vector<Solid>& solids) {
  const auto isFocus = [&](std::size_t i) {
    return cells.who[i] >= 0 && solids[static_cast<std::size_t>(cells.who[i])].isFocus;
  };
  Field mask = fieldOver({0, 0, cells.width, cells.height});
  for (std::size_t i = 0; i < cells.count(); ++i)
    if (isFocus(i)) {
      mask.value[i] = 1;
      body_.push_back(static_cast<std::uint32_t>(i));
    }
  inside_ = body_.size();
  eachNeighbours(cells, [&](std::size_t a, std::size_t b) {
    if (cells.who[a] == cells.who[b]) return;
    if (isFigure(cells, solids, a) || isFigure(cells, solids, b))
      figures_.push_back({static_cast<std::uint32_t>(a), static_cast<std::uint32_t>(b)});
    if (isFocus(a) == isFocus(b)) return;
    pairs_.push_back({static_cast<std::uint32_t>(isFocus(a) ? a : b),
                      static_cast<std::uint32_t>(isFocus(a) ? b : a)});
  });
  if (inside_ == 0) return;
  const int reach = std::max(1, static_cast<int>(kGroundMm / 2 / cells.mmPerCell));
  mask = blurred(mask, reach);
  for (std::size_t i = 0; i < cells.count(); ++i)
    if (mask.value[i] > 1e-4f && cells.isInside(i) && !isFocus(i))
      around_.push_back(static_cast<std::uint32_t>(i));
}

Standing FocusBorder::standing(const Cells& cells, const std::vector<std::uint8_t>& black) const {
  const auto step = [&](std::uint32_t i) {
    return !black.empty() && black[i] ? kBlack : cells.step[i];
  };
  const auto mean = [&](const std::vector<std::uint32_t>& places) {
    double sum = 0;
    for (const std::uint32_t i : places) sum += lightnessOf(static_cast<ValueStep>(step(i)));
    return places.empty() ? 0 : sum / static_cast<double>(places.size());
  };
  const auto apart = [&](const std::vector<Pair>& pairs) {
    double differ = 0;
    for (const Pair& p : pairs) differ += step(p.in) != step(p.out) ? 1 : 0;
    return pairs.empty() ? 1 : differ / static_cast<double>(pairs.size());
  };
  return {mean(body_), mean(around_), apart(pairs_), apart(figures_)};
}

namespace {

/// Those whose value is a choice, then those whose value is given.
enum Group : std::uint8_t { kSky, kGround, kSet, kThings, kFocus, kOtherFigures, kGroups };
constexpr std::size_t kChosen = kFocus;

Group groupAt(const Cells& cells, const std::vector<Solid>& solids, std::size_t i) {
  if (cells.who[i] < 0) return cells.who[i] == Cells::kGround ? kGround : kSky;
  const Solid& solid = solids[static_cast<std::size_t>(cells.who[i])];
  if (solid.isFocus) return kFocus;
  return solid.figure >= 0 ? kOtherFigures : solid.isSet ? kSet : kThings;
}

/// How much a border between the two matters.
double importance(Group a, Group b) {
  const auto either = [&](Group g) { return a == g || b == g; };
  if (either(kFocus)) return 1;
  if (either(kOtherFigures)) return 0.5;
  if (either(kThings)) return 0.4;
  return either(kSet) ? 0.3 : 0.15;  // the horizon
}

/// Lengths of the borders between groups, by both sides' steps.
using GroupBorders =
    std::array<std::array<std::array<std::array<double, kValueSteps>, kValueSteps>, kGroups>,
               kGroups>;

int shiftedStep(int step, int by) {
  // Nothing becomes black by a shift, and what is black stays.
  return step == 3 ? 3 : std::clamp(step + by, 0, 2);
}

using Shifts = std::array<int, kChosen>;

double worthOf(const GroupBorders& borders, const Shifts& shifts) {
  const auto shiftOf = [&](std::size_t g) { return g < kChosen ? shifts[g] : 0; };
  double worth = 0;
  for (std::size_t a = 0; a < kGroups; ++a)
    for (std::size_t b = a + 1; b < kGroups; ++b) {
      double all = 0, apart = 0;
      for (std::size_t s = 0; s < kValueSteps; ++s)
        for (std::size_t t = 0; t < kValueSteps; ++t) {
          const double length = borders[a][b][s][t];
          all += length;
          if (shiftedStep(static_cast<int>(s), shiftOf(a)) !=
              shiftedStep(static_cast<int>(t), shiftOf(b)))
            apart += length;
        }
      if (all > 0) worth += importance(static_cast<Group>(a), static_cast<Group>(b)) * apart / all;
    }
  for (const int by : shifts) worth -= kShiftCost * std::abs(by);
  return worth;
}

}  // namespace

void chooseGrounds(Cells& cells, const std::vector<Solid>& solids) {
  GroupBorders borders{};
  eachNeighbours(cells, [&](std::size_t a, std::size_t b) {
    if (cells.who[a] == cells.who[b]) return;
    if (groupAt(cells, solids, a) > groupAt(cells, solids, b)) std::swap(a, b);
    borders[groupAt(cells, solids, a)][groupAt(cells, solids, b)][cells.step[a]][cells.step[b]] +=
        1;
  });
  Shifts best{}, shifts{};
  double most = worthOf(borders, best);
  for (int code = 0; code < 81; ++code) {
    for (std::size_t g = 0, rest = static_cast<std::size_t>(code); g < kChosen; ++g, rest /= 3)
      shifts[g] = static_cast<int>(rest % 3) - 1;
    // Sky, water and ground never get lighter than the scene's mood: the deep stays deep.
    if (shifts[kSky] < 0 || shifts[kGround] < 0) continue;
    const double worth = worthOf(borders, shifts);
    if (worth <= most) continue;
    most = worth;
    best = shifts;
  }
  for (std::size_t i = 0; i < cells.count(); ++i) {
    const Group group = groupAt(cells, solids, i);
    if (group < kChosen)
      cells.step[i] = static_cast<std::uint8_t>(shiftedStep(cells.step[i], best[group]));
  }
}

std::vector<SpottedBlack> spotBlacks(Cells& cells, const LitScene& scene,
                                     const FocusBorder& border) {
  double inside = 0;
  for (std::size_t i = 0; i < cells.count(); ++i) inside += cells.isInside(i) ? 1 : 0;
  if (inside == 0) return {};
  std::vector<Candidate> left = candidates(cells, scene, kLeastShare * inside);
  std::vector<SpottedBlack> out;
  double share = shareOf(cells, kBlack, inside);
  while (!left.empty()) {
    const Standing now = border.standing(cells, {});
    std::size_t best = left.size();
    for (std::size_t k = 0; k < left.size(); ++k) {
      std::vector<std::uint8_t> black(cells.count(), 0);
      double added = 0;
      for (const std::uint32_t i : left[k].cells) {
        black[i] = 1;
        added += cells.step[i] != kBlack ? 1 : 0;
      }
      SpottedBlack& b = left[k].black;
      b.share = static_cast<double>(left[k].cells.size()) / inside;
      const Standing then = border.standing(cells, black);
      b.apartGain = border.hasFocus() ? then.apart - now.apart : 0;
      const double othersGain = then.figuresApart - now.figuresApart;
      left[k].worth = b.apartGain + kOthers * othersGain;
      const bool fits = share + added / inside <= kMostBlack || added == 0;
      const bool helps = b.apartGain > 0.01 || share < kEnoughBlack || added == 0;
      if (!fits || !helps || std::min(b.apartGain, othersGain) < kHarm) continue;
      if (b.what == BlackOf::Set && left[k].worth < kWallGain) continue;
      if (best == left.size() || left[k].worth > left[best].worth) best = k;
    }
    if (best == left.size()) break;
    for (const std::uint32_t i : left[best].cells) cells.step[i] = kBlack;
    share = shareOf(cells, kBlack, inside);
    out.push_back(left[best].black);
    left.erase(left.begin() + static_cast<std::ptrdiff_t>(best));
  }
  return out;
}

std::vector<RunTogether> runningTogether(const Cells& cells, const std::vector<Solid>& solids) {
  const auto named = [&](std::size_t i) {
    const std::int16_t who = cells.who[i];
    return who >= 0 && !solids[static_cast<std::size_t>(who)].isSet ? static_cast<int>(who) : -1;
  };
  std::map<std::pair<int, int>, std::array<double, 2>> borders;  // all, alike
  eachNeighbours(cells, [&](std::size_t a, std::size_t b) {
    const int p = std::max(named(a), named(b)), q = std::min(named(a), named(b));
    if (p == q) return;
    auto& border = borders[{p, q}];
    border[0] += 1;
    border[1] += cells.step[a] == cells.step[b] ? 1 : 0;
  });
  std::vector<RunTogether> out;
  for (const auto& [pair, border] : borders)
    if (border[0] * cells.mmPerCell >= kLeastBorderMm && border[1] >= kAlike * border[0])
      out.push_back({pair.first, pair.second, border[1] / border[0]});
  return out;
}

}  // namespace tw
