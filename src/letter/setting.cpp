// Setting copy for a balloon.
//
// Idea. A balloon is a superellipse; its lines must be short–long–short. For every number of lines
// we fix how high the superellipse stands over the block, which fixes the profile of line
// lengths; the breaker fits the copy to the profile; then the width is the least at which every
// line, with its padding, lies inside.
// Steps. 1. split into chunks that may not be broken; 2. for 1, 2, 3… lines: half height b so that
// the outermost line's corner stands at a given share of the full width (`kEndShare`), profile
// from the superellipse, break, half width a = max over lines of (half line + padding) / share;
// 3. cost = raggedness + departure of a / b from a pleasing ratio.
// Cost: a few dozen microseconds for a long balloon, and cached by the Letterer.
// Badly done: proportions are a matter of taste; ours are chosen by eye.
// Source: rectangle in a superellipse, facts on lettering (computed); breaking see there.

#include "letter/setting.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/polygon.h"
#include "letter/line_breaking.h"

namespace tw {
namespace {

constexpr double kMmPerPt = 25.4 / 72;
/// How wide the balloon still is at the outermost line's outer corner, by number of lines.
constexpr double kEndShare[] = {0.88, 0.86, 0.74, 0.68, 0.64, 0.62};
/// Padding above and below the block, as a share of that at its sides; the curve adds its own.
constexpr double kPaddingDown = 0.65;
/// Width over height of a balloon that pleases, and how much a departure costs; by eye.
constexpr double kPleasingBalloon = 1.5, kPleasingCaption = 2.6, kProportionCost = 0.6;
constexpr std::size_t kMostLines = 14;
constexpr std::size_t kMostChunks = 300;  ///< no balloon has so many words
/// Bumps of a cloud and spikes of a burst, in cap heights.
constexpr double kBumpCaps = 0.55, kSpikeCaps = 0.9;
/// Sizes of free copy, as multiples of the balloon type.
constexpr double kSfxSizes[] = {4.0, 3.2, 2.5, 2.0, 1.6}, kTitleSizes[] = {2.6, 2.1, 1.7, 1.4};
constexpr double kMostTurnDeg = 12;

double endShare(std::size_t lines) {
  return kEndShare[std::min(lines, std::size(kEndShare)) - 1];
}

Setting blank(CopyKind kind, double sizePt, const LetterStyle& style, const TypeMeasure& type) {
  Setting setting;
  setting.sizePt = sizePt;
  setting.lineStep = style.leadingPt * sizePt / style.sizePt * kMmPerPt;
  setting.capHeight = type.capHeightEm() * sizePt * kMmPerPt;
  setting.shape.kind = kind;
  if (kind == CopyKind::Thought) setting.shape.reach = kBumpCaps * setting.capHeight;
  if (kind == CopyKind::Shout) setting.shape.reach = kSpikeCaps * setting.capHeight;
  return setting;
}

/// Outer edge of a line above or below the block's middle, padding included.
double outerEdge(const Setting& s, std::size_t line, std::size_t lines, double padding) {
  const double middle =
      (static_cast<double>(line) - (static_cast<double>(lines) - 1) / 2) * s.lineStep;
  return std::abs(middle) + s.capHeight / 2 + padding * kPaddingDown;
}

std::vector<double> profileOf(const Setting& s, std::size_t lines, double b, double padding) {
  std::vector<double> profile;
  for (std::size_t i = 0; i < lines; ++i) {
    profile.push_back(s.shape.isBalloon() ? halfWidthAt(outerEdge(s, i, lines, padding), 1, b) : 1);
  }
  return profile;
}

double halfHeightFor(const Setting& s, std::size_t lines, double padding) {
  const double edge = outerEdge(s, lines - 1, lines, padding);
  if (!s.shape.isBalloon()) return edge;
  const double share = endShare(lines);
  return edge / std::pow(1 - std::pow(share, kBalloonExponent), 1 / kBalloonExponent);
}

double proportionCost(const BalloonShape& shape) {
  const double pleasing = shape.isBalloon() ? kPleasingBalloon : kPleasingCaption;
  const double off = std::log(shape.halfWidth() / shape.halfHeight() / pleasing);
  return kProportionCost * off * off;
}

/// The copy in that many lines, if it can be broken so.
std::optional<Setting> inLines(const Setting& base, const std::vector<Chunk>& chunks,
                               std::size_t lines, double padding, const TypeMeasure& type) {
  Setting s = base;
  s.shape.b = halfHeightFor(s, lines, padding);
  const std::vector<double> profile = profileOf(s, lines, s.shape.b, padding);
  std::optional<BrokenLines> broken = breakLines(chunks, type.spaceEm(), profile);
  if (!broken) return std::nullopt;
  s.lines = std::move(broken->lines);
  for (std::size_t i = 0; i < lines; ++i) {
    s.lineWidths.push_back(type.widthEm(s.lines[i]) * s.sizePt * kMmPerPt);
    s.shape.a = std::max(s.shape.a, (s.lineWidths[i] / 2 + padding) / profile[i]);
  }
  s.shape.a = std::max(s.shape.a, s.shape.b * 0.9);  // a balloon never stands like an egg
  s.cost = broken->raggedness + proportionCost(s.shape);
  return s;
}

/// Every number of lines that stays within the width, chunks wider than `mostEm` split.
Settings withinWidth(const Setting& base, const std::vector<Chunk>& whole, double mostWidth,
                     double mostEm, double padding, const TypeMeasure& type) {
  const std::vector<Chunk> chunks =
      joinedTo(withOverlongSplit(whole, mostEm, type), kMostChunks, type.spaceEm());
  double totalEm = 0;
  for (const Chunk& chunk : chunks) totalEm += chunk.widthEm;
  // Fewer lines than this cannot stay within the width.
  const std::size_t most = std::min(chunks.size(), kMostLines);
  const double least = totalEm * base.sizePt * kMmPerPt / std::max(mostWidth, 1.0);
  const std::size_t first = least < 1 ? 1 : static_cast<std::size_t>(least);
  Settings result;
  for (std::size_t lines = std::min(first, most); lines <= most; ++lines) {
    if (lines == 0) break;
    std::optional<Setting> s = inLines(base, chunks, lines, padding, type);
    if (s && 2 * s->shape.halfWidth() <= mostWidth) result.push_back(std::move(*s));
  }
  return result;
}

Settings balloonSettings(const Setting& base, const std::string& text, double mostWidth,
                         const LetterStyle& style, const TypeMeasure& type) {
  const double padding = style.paddingMm * base.sizePt / style.sizePt;
  const std::vector<Chunk> chunks = type.chunks(text);
  const double room = mostWidth - 2 * (padding + base.shape.reach);
  const double roomEm = std::max(0.0, room * 0.98) / (base.sizePt * kMmPerPt);
  // Long words are split only as far as needed: near a balloon's ends there is less room.
  for (const double share : {1.0, 0.85, 0.7, 0.55}) {
    Settings result = withinWidth(base, chunks, mostWidth, roomEm * share, padding, type);
    if (!result.empty()) return result;
  }
  constexpr double kAnyWidth = 1e9;  // wider than asked, but set
  Settings result = withinWidth(base, chunks, kAnyWidth, roomEm, padding, type);
  if (result.size() > 1) result.erase(result.begin(), result.end() - 1);
  return result;
}

/// A slight turn for a sound effect, one way or the other by its text.
double turnOf(const std::string& text) {
  const double t = static_cast<double>(seedOf(text) % 1000) / 999;
  const double turn = kMostTurnDeg * (2 * t - 1);
  return std::abs(turn) < 4 ? std::copysign(4, turn) : turn;
}

/// Half sides of the box around the turned one.
void turnShape(BalloonShape& shape, double turnDeg) {
  const double t = std::abs(turnDeg) * M_PI / 180, a = shape.a, b = shape.b;
  shape.turnDeg = turnDeg;
  shape.a = a * std::cos(t) + b * std::sin(t);
  shape.b = a * std::sin(t) + b * std::cos(t);
}

Settings freeSettings(const std::string& text, CopyKind kind, double sizePt, double mostWidth,
                      const LetterStyle& style, const TypeMeasure& type) {
  Settings result;
  const auto add = [&](double size) {
    Setting s = blank(kind, size, style, type);
    const std::vector<Chunk> chunks = type.chunks(text);
    const std::size_t most = kind == CopyKind::Sfx ? 1 : std::min<std::size_t>(3, chunks.size());
    for (std::size_t lines = 1; lines <= most; ++lines) {
      std::optional<Setting> set = inLines(s, chunks, lines, style.paddingMm, type);
      if (!set) continue;
      turnShape(set->shape, kind == CopyKind::Sfx ? turnOf(text) : 0);
      // Larger is better as long as it fits; proportions hardly matter.
      set->cost = 0.15 * static_cast<double>(result.size());
      if (2 * set->shape.a <= mostWidth) result.push_back(std::move(*set));
    }
  };
  if (kind == CopyKind::Sfx) {
    for (const double k : kSfxSizes) add(sizePt * k);
  } else {
    for (const double k : kTitleSizes) add(sizePt * k);
  }
  if (result.empty()) add(sizePt);
  return result;
}

}  // namespace

double Setting::baselineAt(std::size_t line) const {
  const double middle =
      (static_cast<double>(line) - (static_cast<double>(lines.size()) - 1) / 2) * lineStep;
  return middle + capHeight / 2;
}

Setting settingOf(const PlacedBalloon& placed, const LetterStyle& style, const TypeMeasure& type) {
  Setting s = blank(placed.kind, placed.sizePt, style, type);
  for (const CopyLine& line : placed.lines) {
    s.lines.push_back(lettered(line.text, false));
    s.lineWidths.push_back(type.widthEm(s.lines.back()) * s.sizePt * kMmPerPt);
  }
  if (placed.outline.points.size() > 2) {
    const Rect box = bounds(placed.outline);
    s.shape.a = std::max(0.1, box.width() / 2 - s.shape.reach);
    s.shape.b = std::max(0.1, box.height() / 2 - s.shape.reach);
  } else {
    for (const double width : s.lineWidths)
      s.shape.a = std::max(s.shape.a, width / 2 + style.paddingMm);
    const std::size_t lines = std::max<std::size_t>(1, s.lines.size());
    s.shape.b = outerEdge(s, lines - 1, lines, style.paddingMm);
    turnShape(s.shape, placed.turnDeg);
  }
  s.strips = stripsOf(s.shape);
  return s;
}

std::uint64_t seedOf(const std::string& text) {
  std::uint64_t hash = 0xcbf29ce484222325u;  // FNV-1a, public domain
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  return hash;
}

Settings settingsOf(const std::string& letteredText, CopyKind kind, double sizePt, double mostWidth,
                    const LetterStyle& style, const TypeMeasure& type) {
  Settings result;
  if (kind == CopyKind::Sfx || kind == CopyKind::Title) {
    result = freeSettings(letteredText, kind, sizePt, mostWidth, style, type);
  }
  if (result.empty()) {
    result =
        balloonSettings(blank(kind, sizePt, style, type), letteredText, mostWidth, style, type);
  }
  if (result.empty()) {  // no letters at all: an empty balloon says so
    Setting s = blank(kind, sizePt, style, type);
    s.shape.a = s.shape.b = style.paddingMm * 2;
    result.push_back(std::move(s));
  }
  for (Setting& s : result) {
    s.shape.seed = seedOf(letteredText);
    s.strips = stripsOf(s.shape);
  }
  return result;
}

}  // namespace tw
