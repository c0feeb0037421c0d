// The first fixation in a panel falls mostly on the picture although copy is read first
// (Rasamimanana et al.; Dunst et al. 2016): so a short landing look, then all copy, then the
// picture. Parts of the picture are chosen by weight, a part just seen less so (inhibition of
// return). Copy is read in steps along its lines, some of them going back.
// The number of steps in a balloon is its mean number plus one draw, rounded down: more words never
// mean fewer steps for the same reader, and the steps before the added ones stay as they were.

#include "read/within_panel.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tw {
namespace {

/// Looks stray this far from what they aim at, in shares of its box; our choice.
constexpr double kStray = 0.2;
/// Type stays this share away from a balloon's edge; our choice.
constexpr double kPadding = 0.15;
/// Height of a line of type over the width of a letter; common practice, no source.
constexpr double kLineOverLetter = 2.2;
/// Interest in pictures runs evenly from 1 − this to 1 + this; our choice.
constexpr double kInterest = 0.4;
/// Chances and the like are drawn for so many purposes at a panel before balloons begin.
constexpr std::uint64_t kPurposes = 256;
constexpr double kNever = -1e300;

double unit(std::uint64_t bits32) {
  return static_cast<double>(bits32 & 0xFFFFFFFFu) * 0x1.0p-32;
}

/// A place about the aim, inside the box, from one draw.
Point strayed(const EyePart& part, std::uint64_t draw) {
  const double x = (unit(draw) + unit(draw >> 16) - 1) * kStray * part.box.width();
  const double y = (unit(draw >> 32) + unit(draw >> 24) - 1) * kStray * part.box.height();
  return {std::clamp(part.aim.x + x, part.box.min.x, part.box.max.x),
          std::clamp(part.aim.y + y, part.box.min.y, part.box.max.y)};
}

/// The place in a balloon where this share of its copy has been read.
Point inCopy(const EyePart& copy, double share) {
  const double width = copy.box.width(), height = copy.box.height();
  const double letters = copy.looks * 5;  // only for the number of lines
  const double letter = std::sqrt(width * height / letters / kLineOverLetter);
  const double lines = std::max(1.0, std::round(height / std::max(letter * kLineOverLetter, 1e-9)));
  const double along = std::min(share, 1 - 1e-9) * lines;
  const double line = std::floor(along);
  const double inner = 1 - 2 * kPadding;
  return {copy.box.min.x + width * (kPadding + inner * (along - line)),
          copy.box.min.y + height * (kPadding + inner * (line + 0.5) / lines)};
}

/// The mean number with its fraction drawn.
int drawnCount(double mean, double draw) {
  return static_cast<int>(std::floor(mean + draw));
}

}  // namespace

double spreadFactor(std::uint64_t draw, double deviation) {
  // Four evenly drawn numbers make a nearly normal one (Irwin and Hall).
  const auto part = [&](int shift) {
    return static_cast<double>((draw >> shift) & 0xFFFF) * 0x1.0p-16;
  };
  const double normal = (part(0) + part(16) + part(32) + part(48) - 2) * std::numbers::sqrt3;
  return std::exp(deviation * normal - deviation * deviation / 2);
}

EyeReader::EyeReader(std::uint64_t seedOfAll, std::uint64_t number, const EyePathModel& model) {
  Random draws(Random(seedOfAll).next() + number);
  seed = draws.next();
  copyPace = spreadFactor(draws.next(), model.spreadOfReaders);
  picturePace = spreadFactor(draws.next(), model.spreadOfReaders);
  interest = 1 - kInterest + 2 * kInterest * draws.uniform();
}

Random drawsFor(const EyeReader& reader, int panel, Draw purpose, int balloon) {
  const std::uint64_t place = static_cast<std::uint64_t>(panel) * kPurposes +
                              static_cast<std::uint64_t>(purpose) +
                              static_cast<std::uint64_t>(balloon);
  return Random(Random(reader.seed ^ (place << 1)).next());
}

void PanelLooker::restart(const EyeReader& reader) {
  reader_ = &reader;
  now_ = 0;
}

void PanelLooker::fixate(int panel, const EyePart& part, Point at, double ms, bool goesBack) {
  path_.push_back({page_.onPage(at), ms, panel, part.element, part.kind, goesBack});
  now_ += ms + page_.model().saccadeMs;
}

/// 0…1: how much of a place's pull is left after a look that ended then.
double PanelLooker::inhibited(double lastMs) const {
  const EyePathModel& m = page_.model();
  const double since = now_ - lastMs;
  if (since <= m.returnInhibitedFromMs || since >= m.returnInhibitedUntilMs) return 1;
  const double rise = m.returnInhibitedFullyMs - m.returnInhibitedFromMs;
  const double in = rise > 0 ? (since - m.returnInhibitedFromMs) / rise : 1;
  const double out =
      (m.returnInhibitedUntilMs - since) / (m.returnInhibitedUntilMs - m.returnInhibitedFullyMs);
  return 1 - m.returnInhibition * std::min({1.0, in, out});
}

std::size_t PanelLooker::choosePart(const EyePanel& panel, double draw) const {
  double sum = 0;
  for (std::size_t i = 0; i < panel.picture.size(); ++i)
    sum += panel.picture[i].weight * inhibited(lastSeen_[i]);
  double left = draw * sum;
  for (std::size_t i = 0; i < panel.picture.size(); ++i) {
    left -= panel.picture[i].weight * inhibited(lastSeen_[i]);
    if (left < 0) return i;
  }
  return panel.picture.size() - 1;
}

void PanelLooker::lookAtPart(int panel, std::size_t part, std::uint64_t draw, double ms,
                             bool goesBack) {
  const EyePart& seen = page_.panels()[static_cast<std::size_t>(panel)].picture[part];
  fixate(panel, seen, strayed(seen, draw), ms, goesBack);
  lastSeen_[part] = now_;
}

void PanelLooker::landOn(int panel, bool cameBack) {
  const EyePathModel& m = page_.model();
  const EyePanel& seen = page_.panels()[static_cast<std::size_t>(panel)];
  Random draws = drawsFor(*reader_, panel, Draw::Landing);
  const double landing = draws.uniform();
  if (!seen.copy.empty() && landing >= m.landingOnPicture) return;
  const double ms =
      m.landingFixationMs * reader_->picturePace * spreadFactor(draws.next(), m.spreadOfFixations);
  const std::size_t part = choosePart(seen, draws.uniform());
  lookAtPart(panel, part, draws.next(), ms, cameBack);
}

void PanelLooker::readCopy(int panel, std::size_t balloon, bool cameBack) {
  const EyePathModel& m = page_.model();
  const EyePart& copy = page_.panels()[static_cast<std::size_t>(panel)].copy[balloon];
  Random draws = drawsFor(*reader_, panel, Draw::Copy, static_cast<int>(balloon));
  const int steps = std::max(1, drawnCount(copy.looks, draws.uniform()));
  const double back = m.readingRegressions / (1 - m.readingRegressions);
  const double mean = m.readingFixationMs * reader_->copyPace;
  for (int i = 0; i < steps; ++i) {
    const double share = (i + draws.uniform()) / steps;
    const double ms = mean * spreadFactor(draws.next(), m.spreadOfFixations);
    fixate(panel, copy, inCopy(copy, share), ms, cameBack);
    const double turn = draws.uniform();
    const std::uint64_t again = draws.next();
    if (turn >= back) continue;
    const Point earlier = inCopy(copy, share * (turn / std::max(back, 1e-9)));
    fixate(panel, copy, earlier, mean * spreadFactor(again, m.spreadOfFixations), true);
  }
}

void PanelLooker::lookAtPicture(int panel, bool cameBack) {
  const EyePathModel& m = page_.model();
  const EyePanel& seen = page_.panels()[static_cast<std::size_t>(panel)];
  Random draws = drawsFor(*reader_, panel, Draw::Picture);
  const int looks = drawnCount(seen.looks * reader_->interest, draws.uniform());
  const double mean =
      (seen.copy.empty() ? m.pictureFixationMs : m.pictureFixationByCopyMs) * reader_->picturePace;
  for (int i = 0; i < looks; ++i) {
    const double ms = mean * spreadFactor(draws.next(), m.spreadOfFixations);
    const std::size_t part = choosePart(seen, draws.uniform());
    lookAtPart(panel, part, draws.next(), ms, cameBack);
  }
}

void PanelLooker::read(int panel, bool cameBack) {
  const EyePanel& seen = page_.panels()[static_cast<std::size_t>(panel)];
  lastSeen_.assign(seen.picture.size(), kNever);
  landOn(panel, cameBack);
  for (std::size_t i = 0; i < seen.copy.size(); ++i) readCopy(panel, i, cameBack);
  lookAtPicture(panel, cameBack);
}

void PanelLooker::glance(int panel) {
  const EyePathModel& m = page_.model();
  const EyePanel& seen = page_.panels()[static_cast<std::size_t>(panel)];
  Random draws = drawsFor(*reader_, panel, Draw::Glance);
  const bool picture = seen.copy.empty() || draws.uniform() < m.glanceOnPicture;
  const double factor = spreadFactor(draws.next(), m.spreadOfFixations);
  if (picture) {
    lastSeen_.assign(seen.picture.size(), kNever);
    const std::size_t part = choosePart(seen, draws.uniform());
    const double ms = m.pictureFixationByCopyMs * reader_->picturePace * factor;
    return lookAtPart(panel, part, draws.next(), ms, true);
  }
  const EyePart& copy = seen.copy[static_cast<std::size_t>(draws.next() % seen.copy.size())];
  fixate(panel, copy, copy.aim, m.readingFixationMs * reader_->copyPace * factor, true);
}

}  // namespace tw
