#include "stage/slots.h"

#include <algorithm>
#include <cmath>

#include "stage/held_props.h"

namespace tw {
namespace {

constexpr double kTalkingM = 1.2;  // between two who talk
constexpr double kRunningM = 2.6;  // between one who runs and whom he runs to

}  // namespace

bool has(const std::string& text, std::string_view word) {
  return text.find(word) != std::string::npos;
}

bool movesToward(const BeatFigure& f) {
  const bool talks = has(f.relation, "talks") || has(f.relation, "calls");
  return !talks && (has(f.relation, "run") || has(f.relation, "s to"));
}
bool turnsAway(const BeatFigure& f) {
  return has(f.relation, " from") && !has(f.relation, "takes");
}

bool restsOn(const BeatFigure& f) {
  return has(f.relation, "sits on") || has(f.relation, "sits in") || has(f.relation, "lies") ||
         has(f.relation, "stands on");
}
bool touches(const BeatFigure& f) {
  for (const char* word : {"push", "open", "climb", "lean", "touch", "works", "writes", "sits at",
                           "pull", "reach", "strike", "carries", "kneels"}) {
    if (has(f.relation, word)) return true;
  }
  return false;
}

int figureIndexOf(const Beat& beat, const std::string& who) {
  for (std::size_t i = 0; i < beat.figures.size(); ++i) {
    if (beat.figures[i].who == who) return static_cast<int>(i);
  }
  return -1;
}

int propIndexOf(const Beat& beat, const std::string& id) {
  for (std::size_t i = 0; i < beat.props.size(); ++i) {
    if (!id.empty() && beat.props[i].id == id) return static_cast<int>(i);
  }
  return -1;
}

namespace {
bool isInHandOf(const Beat& beat, const BeatFigure& f) {
  const int prop = propIndexOf(beat, f.target);
  return prop >= 0 && isInHand(beat, static_cast<std::size_t>(prop));
}

}  // namespace

std::vector<int> readingOrderOf(const Beat& beat) {
  std::vector<int> order;
  const auto add = [&](int i) {
    if (i >= 0 && std::find(order.begin(), order.end(), i) == order.end()) order.push_back(i);
  };
  for (const std::string& who : speakersOf(beat)) add(figureIndexOf(beat, who));
  for (std::size_t i = 0; i < beat.figures.size(); ++i) {
    const BeatFigure& f = beat.figures[i];
    if (movesToward(f)) add(static_cast<int>(i));  // whoever comes enters from the reading side
  }
  for (std::size_t i = 0; i < beat.figures.size(); ++i) {
    const BeatFigure& f = beat.figures[i];
    const bool outward = propIndexOf(beat, f.target) >= 0 && !isInHandOf(beat, f);
    if (!outward) add(static_cast<int>(i));  // whoever points out of the group stands at its end
  }
  for (std::size_t i = 0; i < beat.figures.size(); ++i) add(static_cast<int>(i));
  return order;
}

namespace {
Slots pairSlots(int placement, int focusRank) {
  const double half = kTalkingM / 2;
  const auto deep = [&](double zFocus, double zOther, double x0, double x1) {
    return std::vector<Vec3>{{x0, 0, focusRank == 0 ? zFocus : zOther},
                             {x1, 0, focusRank == 0 ? zOther : zFocus}};
  };
  switch (placement) {
    case 1:
      return {{{-0.48, 0, 0}, {0.48, 0, 0.06}}, 0.0};
    case 2:
      return {deep(-0.5, 0.55, -0.46, 0.5), 0.45};
    case 3:
      return {deep(0.55, -0.8, -0.34, 0.34), 0.1};
    default:
      return {{{-half, 0, 0.05}, {half, 0, 0}}, 0.4};
  }
}

/// From −1 at the first figure to +1 at the last.
double across(std::size_t i, std::size_t n) {
  return n < 2 ? 0 : 2.0 * static_cast<double>(i) / static_cast<double>(n - 1) - 1;
}

Slots groupSlots(std::size_t n, int placement, std::size_t focusRank) {
  Slots slots;
  const double halfWidth = 0.42 * static_cast<double>(n - 1);
  for (std::size_t i = 0; i < n; ++i) {
    const double u = across(i, n);
    const double step = i % 2 == 0 ? 0.0 : 0.55;
    const bool isFocus = i == focusRank;
    switch (placement) {
      case 1:  // wedge, the focus at its tip
        slots.at.emplace_back(u * halfWidth, 0, isFocus ? -0.7 : 0.35 + 0.5 * step);
        break;
      case 2:  // a diagonal into the depth
        slots.at.emplace_back(u * halfWidth * 0.85, 0, 0.62 * static_cast<double>(i) - 0.5);
        break;
      case 3:  // a ring with the focus on its far side
        slots.at.emplace_back(u * halfWidth * 1.1, 0, isFocus ? 0.8 : -0.1 - 0.5 * std::abs(u));
        break;
      default:  // an arc, every second one deeper
        slots.at.emplace_back(u * halfWidth, 0, step - 0.25 * std::abs(u));
    }
  }
  return slots;
}

}  // namespace

Slots slotsFor(const Beat& beat, const std::vector<int>& order, int placement, int focus) {
  const std::size_t n = order.size();
  const auto found = std::find(order.begin(), order.end(), focus);
  const auto rank = static_cast<std::size_t>(found - order.begin());
  Slots slots = n < 2    ? Slots{{{0, 0, 0}}, 0.3}
                : n == 2 ? pairSlots(placement, static_cast<int>(rank))
                         : groupSlots(n, placement, rank);
  for (std::size_t i = 0; i < n; ++i) {
    const BeatFigure& f = beat.figures[static_cast<std::size_t>(order[i])];
    if (movesToward(f) && figureIndexOf(beat, f.target) >= 0) {
      for (Vec3& at : slots.at) at.x() *= kRunningM / kTalkingM;
      slots.opened = 0.15;
      break;
    }
  }
  return slots;
}

}  // namespace tw
