#include "read/seen_page_of_rough.h"

#include <algorithm>
#include <numbers>
#include <set>

#include "geometry/polygon.h"
#include "read/prop_place.h"

namespace tw {
namespace {

constexpr double kMmPerPoint = 25.4 / 72;
/// Width and height of one capital in type sizes, for lettering set free; our choice.
constexpr double kCapWidth = 0.62, kCapHeight = 0.72;
/// What insets hide to this share is not seen; our choice.
constexpr double kHiddenShare = 0.75;
/// The focus may stand this far beside the box of what it is on, mm; our choice.
constexpr double kNearMm = 1;

const Beat* beatOf(const RoughPanel& panel, const std::vector<Beat>& beats) {
  const auto found = std::find_if(beats.begin(), beats.end(),
                                  [&](const Beat& beat) { return beat.id == panel.beat; });
  return found == beats.end() ? nullptr : &*found;
}

/// Letters of UTF-8 text that are not spaces: bytes that do not go on with a letter.
int lettersIn(const std::string& text) {
  return static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80 && c != ' ' && c != '\t';
  }));
}

int wordsIn(const std::string& text) {
  int words = 0;
  bool inside = false;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\t' || c == '\n';
    if (!space && !inside) ++words;
    inside = !space;
  }
  return words;
}

/// The box around lettering that stands without an outline, estimated from its lines.
Rect boxOfLines(const PlacedBalloon& balloon) {
  const double em = balloon.sizePt * kMmPerPoint;
  const double turn = balloon.turnDeg * std::numbers::pi / 180;
  const Vector along{std::cos(turn), std::sin(turn)}, up{std::sin(turn), -std::cos(turn)};
  std::vector<Point> corners;
  for (const CopyLine& line : balloon.lines) {
    const Vector half = along * (lettersIn(line.text) * kCapWidth * em / 2);
    for (const Point end : {line.baselineMiddle - half, line.baselineMiddle + half}) {
      corners.push_back(end);
      corners.push_back(end + up * (kCapHeight * em));
    }
  }
  return bounds(corners);
}

SeenElement copyOf(const PlacedBalloon& balloon, const Beat* beat) {
  SeenElement copy;
  copy.kind = SeenKind::Copy;
  copy.name = balloon.item;
  copy.box = balloon.outline.points.empty() ? boxOfLines(balloon) : bounds(balloon.outline);
  for (const CopyLine& line : balloon.lines) {
    copy.words += wordsIn(line.text);
    copy.characters += lettersIn(line.text);
  }
  if (!beat) return copy;
  for (const CopyItem& item : beat->copy) {
    if (item.id == balloon.item && item.words > 0) copy.words = item.words;  // lines may hyphenate
  }
  return copy;
}

std::optional<Rect> cutAt(const Rect& box, const Rect& panel) {
  const Rect cut{{std::max(box.min.x, panel.min.x), std::max(box.min.y, panel.min.y)},
                 {std::min(box.max.x, panel.max.x), std::min(box.max.y, panel.max.y)}};
  if (cut.width() <= 0 || cut.height() <= 0) return std::nullopt;
  return cut;
}

void addFigures(SeenPanel& seen, const RoughPanel& panel, const Rect& frame) {
  const auto add = [&](SeenKind kind, const Rect& box, const std::string& who) {
    const auto cut = cutAt(box, frame);
    if (cut) seen.elements.push_back({kind, *cut, who, 0, 0, false});
  };
  for (const SeenFigure& figure : panel.figures) {
    if (figure.visible <= 0 && figure.body.empty()) continue;
    if (!figure.face.points.empty()) add(SeenKind::Face, bounds(figure.face), figure.who);
    if (!figure.body.empty()) add(SeenKind::Figure, bounds(figure.body), figure.who);
  }
}

void addProps(SeenPanel& seen, const RoughPanel& panel, const Beat& beat, const Rect& frame) {
  for (const SetProp& set : panel.staging.props) {
    const auto prop = std::find_if(beat.props.begin(), beat.props.end(),
                                   [&](const Prop& p) { return p.id == set.prop; });
    if (prop == beat.props.end()) continue;
    const auto box = propPlace(set, *prop, panel.staging.camera, frame);
    if (box) seen.elements.push_back({SeenKind::Prop, *box, set.prop, 0, 0, false});
  }
}

/// The smallest part of the picture that the focus stands on.
void markFocus(SeenPanel& seen) {
  SeenElement* best = nullptr;
  for (SeenElement& e : seen.elements) {
    if (e.kind == SeenKind::Copy || !e.box.outset(kNearMm).contains(seen.focus)) continue;
    if (!best || e.box.area() < best->box.area()) best = &e;
  }
  if (best) best->isFocus = true;
}

double hiddenShare(const Rect& box, const std::vector<Rect>& insets) {
  double hidden = 0;
  for (const Rect& inset : insets) {
    const auto common = cutAt(box, inset);
    if (common) hidden += common->area();
  }
  return hidden / std::max(box.area(), 1e-9);
}

std::vector<Rect> insetsOf(const Rough& rough) {
  std::vector<Rect> insets;
  for (const RoughPanel& panel : rough.panels)
    if (!panel.ground) insets.push_back(bounds(panel.outline));
  return insets;
}

std::set<std::string> castOf(const Beat& beat) {
  std::set<std::string> cast;
  for (const BeatFigure& figure : beat.figures) cast.insert(figure.who);
  return cast;
}

/// The same figures in the same scene; with nobody in the picture nothing shows that it goes on.
bool goesOn(const Beat* before, const Beat* now) {
  if (!before || !now || now->scene.empty() || before->scene != now->scene) return false;
  const std::set<std::string> cast = castOf(*now);
  return !cast.empty() && cast == castOf(*before);
}

SeenPanel seenPanelOf(const RoughPanel& panel, const Beat* beat) {
  SeenPanel seen;
  seen.outline = panel.outline;
  seen.focus = panel.focus;
  seen.lead = panel.lead;
  const Rect frame = bounds(panel.outline);
  for (const PlacedBalloon& balloon : panel.balloons) {
    if (!balloon.lines.empty()) seen.elements.push_back(copyOf(balloon, beat));
  }
  addFigures(seen, panel, frame);
  if (beat) addProps(seen, panel, *beat, frame);
  return seen;
}

}  // namespace

SeenPage seenPageOf(const Rough& rough, const std::vector<Beat>& beats, Rect trim,
                    ReadingDirection direction) {
  SeenPage page;
  page.page = trim;
  page.direction = direction;
  const bool hasGround = std::any_of(rough.panels.begin(), rough.panels.end(),
                                     [](const RoughPanel& panel) { return panel.ground; });
  const std::vector<Rect> insets = hasGround ? insetsOf(rough) : std::vector<Rect>{};
  const Beat* before = nullptr;
  for (const RoughPanel& panel : rough.panels) {
    const Beat* beat = beatOf(panel, beats);
    SeenPanel seen = seenPanelOf(panel, beat);
    if (panel.ground) {
      std::erase_if(seen.elements, [&](const SeenElement& e) {
        return e.kind != SeenKind::Copy && hiddenShare(e.box, insets) > kHiddenShare;
      });
    }
    markFocus(seen);
    seen.layer = hasGround && !panel.ground ? 1 : 0;
    seen.continues = goesOn(before, beat);
    before = beat;
    page.panels.push_back(std::move(seen));
  }
  return page;
}

}  // namespace tw
