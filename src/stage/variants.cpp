// The list of choices.
//
// Idea: shot × side × eye × tilt × placement × mirror is a thousand choices; a page search can use
// about fifty per panel. So the axes are walked at once with strides that share no factor with
// their lengths: every short prefix of the walk already holds several values of every axis.
//
// 1. The wanted shot takes every second place, its neighbours share the rest.
// 2. Sides, placements and eye heights step along with the counter; tilt comes rarely.
// 3. Each choice is followed by its mirror image.
// 4. A lens or a roll that the beat asks for is every choice's.
// Cost: nothing. Does badly: it knows nothing of the neighbours on the page; the search does.
#include "stage/variants.h"

#include <algorithm>
#include <cstdlib>

#include "stage/set_pieces.h"

namespace tw {
namespace {

template <class E>
std::optional<E> stepped(E value, int by, int count) {
  const int i = static_cast<int>(value) + by;
  if (i < 0 || i >= count) return std::nullopt;
  return static_cast<E>(i);
}

std::vector<ShotSize> shotsFor(const StageRequest& request) {
  const ShotSize wanted = wantedShot(request);
  std::vector<ShotSize> shots{wanted};
  const auto add = [&](std::optional<ShotSize> shot) {
    if (shot && std::find(shots.begin(), shots.end(), *shot) == shots.end()) shots.push_back(*shot);
  };
  if (request.wholeFigure) {
    for (const ShotSize shot : {ShotSize::Long, ShotSize::VeryLong}) add(shot);
    return shots;
  }
  add(stepped(wanted, 1, kShotSizes));
  if (wanted != ShotSize::CloseUp) add(stepped(wanted, -1, kShotSizes));
  if (request.beat->shot) return shots;
  if (request.beat->figures.empty()) return shots;
  for (const ShotSize shot : {ShotSize::CloseUp, ShotSize::Long, ShotSize::MediumCloseUp}) {
    add(shot);
  }
  return shots;
}

std::vector<EyeHeight> eyesFor(const StageRequest& request) {
  const EyeHeight wanted = wantedEye(request);
  std::vector<EyeHeight> eyes{wanted};
  for (const int by : {1, -1}) {
    if (by < 0 && isAboard(*request.beat)) continue;  // the hull would hide everybody
    if (const auto eye = stepped(wanted, by, 5)) eyes.push_back(*eye);
  }
  return eyes;
}

std::vector<double> sidesFor(const Beat& beat) {
  if (beat.figures.size() < 2) return {12, -22, 40, -48, 0};
  return {0, 26, -26, 50, -50};
}

template <class T>
const T& at(const std::vector<T>& values, std::size_t i) {
  return values[i % values.size()];
}

/// 0, 1, 0, 2, 0, 1, …: the wanted value every second time, the others in turn.
std::size_t everySecond(std::size_t k, std::size_t count) {
  if (count < 2 || k % 2 == 0) return 0;
  return 1 + (k / 2) % (count - 1);
}

/// The wanted value twice of three times.
std::size_t mostly(std::size_t k, std::size_t count) {
  if (count < 2 || k % 3 != 2) return 0;
  return 1 + (k / 3) % (count - 1);
}

double tiltAt(std::size_t k) {
  return k % 9 == 5 ? 9 : k % 9 == 7 ? -8 : 0;
}

}  // namespace

ShotSize wantedShot(const StageRequest& request) {
  if (request.beat->shot) return *request.beat->shot;
  const Beat& beat = *request.beat;
  if (request.wholeFigure || beat.dominant) return ShotSize::Long;
  if (beat.figures.empty()) return beat.props.empty() ? ShotSize::Long : ShotSize::Medium;
  const bool moves = std::any_of(beat.figures.begin(), beat.figures.end(), [](const auto& f) {
    return f.pose == "run" || f.pose == "leap" || f.pose == "fall" || f.pose == "walk";
  });
  const BeatFigure* first = beat.figures.empty() ? nullptr : &beat.figures[0];
  if (first && (first->pose == "swim" || first->pose == "lie" || first->pose == "float")) {
    return ShotSize::Long;
  }
  const bool folded =
      first && (first->pose == "kneel" || first->pose == "crouch" || first->pose == "mourn");
  if (folded && beat.figures.size() == 1) {
    return beat.copy.empty() || !first->relation.empty() ? ShotSize::Long : ShotSize::MediumLong;
  }
  if (moves) return beat.figures.size() > 1 ? ShotSize::Long : ShotSize::MediumLong;
  if (beat.figures.size() > 3) return ShotSize::MediumLong;
  if (beat.figures.size() > 1 && request.aspect < 0.6 * static_cast<double>(beat.figures.size())) {
    return ShotSize::MediumLong;
  }
  const bool onlyTalks = first && first->relation.empty() && beat.figures.size() == 1;
  return onlyTalks && !beat.copy.empty() ? ShotSize::MediumCloseUp : ShotSize::Medium;
}

EyeHeight wantedEye(const StageRequest& request) {
  return request.beat->eye.value_or(EyeHeight::Level);
}

std::vector<StagingChoice> choicesFor(const StageRequest& request, std::size_t most) {
  const auto shots = shotsFor(request);
  const auto eyes = eyesFor(request);
  const auto sides = sidesFor(*request.beat);
  const auto placements = static_cast<std::size_t>(placementsFor(*request.beat));
  std::vector<StagingChoice> all;
  const auto add = [&](StagingChoice c) {
    c.lensMm = request.beat->lensMm.value_or(0);
    if (const auto roll = request.beat->rollDeg)  // the artist's own is not mirrored
      c.tiltDeg = runsLeftward(request, c) ? -*roll : *roll;
    if (all.size() < most && std::find(all.begin(), all.end(), c) == all.end()) all.push_back(c);
  };
  const std::size_t rounds = shots.size() * eyes.size() * sides.size() * placements * 9;
  for (std::size_t k = 0; k < rounds && all.size() < most; ++k) {
    StagingChoice c;
    c.shot = at(shots, everySecond(k, shots.size()));
    c.eye = at(eyes, mostly(k, eyes.size()));
    c.sideDeg = at(sides, k + k / sides.size());
    c.placement = static_cast<int>((k + k / 7) % placements);
    c.tiltDeg = tiltAt(k);
    add(c);
    c.mirrored = true;
    add(c);
  }
  return all;
}

}  // namespace tw
