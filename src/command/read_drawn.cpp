#include "command/read_drawn.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "ink/read_picture.h"
#include "job/field.h"

namespace tw {

namespace {

/// Larger pictures are averaged down to this while they are read; a panel is looked at in 256 px.
constexpr int kPictureSide = 1600;
/// A picture whose sides stand to each other otherwise than the page's, by more than this share,
/// is the picture of something else.
constexpr double kOtherShape = 0.05;
constexpr double kDoubtfulShape = 0.03;  // here panels and drawing drift apart visibly
constexpr double kDoubtfulFocus = 0.25, kLost = 0.5;

OrderedJson placeJson(Point p) {
  return {rounded(p.x, 3), rounded(p.y, 3)};
}

OrderedJson boxJson(const Rect& r) {
  return {rounded(r.min.x, 3), rounded(r.min.y, 3), rounded(r.max.x, 3), rounded(r.max.y, 3)};
}

OrderedJson shareJson(double value) {
  return rounded(value, 4);
}

OrderedJson spotJson(const Spot& spot, const FileScale& scale) {
  return {{"at", placeJson(scale.inFile(spot.at))},
          {"box", boxJson(scale.inFile(spot.box))},
          {"strength", shareJson(spot.strength)},
          {"what", spot.what},
          {"marked", spot.marked}};
}

OrderedJson attentionJson(const DrawnPanel& panel, const FileScale& scale) {
  OrderedJson spots = OrderedJson::array(), copy = OrderedJson::array();
  for (const Spot& spot : panel.attention.spots) spots.push_back(spotJson(spot, scale));
  for (const SeenElement& e : panel.attention.proposed)
    copy.push_back(boxJson(scale.inFile(e.box)));
  const ProposedFocus& f = panel.focus;
  const ProposedLead& l = panel.lead;
  return {{"focus",
           {{"at", placeJson(scale.inFile(f.at))},
            {"box", boxJson(scale.inFile(f.box))},
            {"sure", shareJson(f.sure)},
            {"marked", f.marked},
            {"why", f.why}}},
          {"lead",
           {{"direction", placeJson({l.lead.direction.x, l.lead.direction.y})},
            {"sure", shareJson(l.lead.strength)},
            {"marked", l.marked},
            {"why", l.lead.why}}},
          {"spots", spots},
          {"proposed_copy", copy}};
}

OrderedJson squintJson(const Squint& squint, const FileScale& scale) {
  OrderedJson elsewhere = nullptr;
  if (squint.elsewhere > 0) elsewhere = placeJson(scale.inFile(squint.elsewhereAt));
  return {{"strength", shareJson(squint.strength)},
          {"elsewhere", shareJson(squint.elsewhere)},
          {"elsewhere_at", elsewhere},
          {"rank", squint.rank},
          {"holds", shareJson(squint.holds)},
          {"contrast", shareJson(squint.contrast)}};
}

OrderedJson pictureJson(const DrawnPage& page) {
  const OnePicture& one = page.onePicture;
  OrderedJson panels = OrderedJson::array(), centres = OrderedJson::array();
  OrderedJson fights = OrderedJson::array(), strongest = nullptr;
  for (const PanelInPicture& p : one.panels)
    panels.push_back({{"strength", shareJson(p.strength)},
                      {"black", shareJson(p.black)},
                      {"light", shareJson(p.light)}});
  for (const Peak& peak : one.centres)
    centres.push_back({{"at", placeJson(page.scale.inFile(peak.at))},
                       {"strength", shareJson(peak.strength)},
                       {"lighter", peak.lighter}});
  for (const FocusFight& fight : one.fights)
    fights.push_back({{"panels", {fight.a, fight.b}},
                      {"apart", rounded(fight.apartMm / page.scale.mmPerUnit, 3)}});
  if (one.strongest >= 0) strongest = one.strongest;
  OrderedJson black = OrderedJson::array();
  for (const double share : one.black) black.push_back(shareJson(share));
  return {{"strongest", strongest},
          {"panels", panels},
          {"centres", centres},
          {"black", black},
          {"balance", {shareJson(one.balance.x), shareJson(one.balance.y)}},
          {"fights", fights},
          {"brightness", shareJson(page.complexity.brightness)},
          {"entropy_bits", shareJson(page.complexity.entropyBits)},
          {"shapes", page.complexity.shapes}};
}

OrderedJson handedOnJson(const PageHandedOn& handedOn) {
  OrderedJson panels = OrderedJson::array();
  for (const PanelHandedOn& p : handedOn.panels)
    panels.push_back({{"next", shareJson(p.arrival.next)},
                      {"other", shareJson(p.arrival.other)},
                      {"off", shareJson(p.arrival.off)},
                      {"turn_degrees", rounded(p.turnDeg, 1)}});
  return {{"mean", shareJson(handedOn.mean)}, {"panels", panels}};
}

/// "left", "upper right", "middle" … of a box.
std::string whereIn(const Rect& box, Point p) {
  const double x = (p.x - box.min.x) / box.width(), y = (p.y - box.min.y) / box.height();
  const std::string down = y < 1.0 / 3 ? "upper" : y > 2.0 / 3 ? "lower" : "";
  const std::string across = x < 1.0 / 3 ? "left" : x > 2.0 / 3 ? "right" : "";
  if (down.empty() && across.empty()) return "in the middle";
  if (across.empty()) return fmt::format("at the {}", down == "upper" ? "top" : "bottom");
  return fmt::format("at the {}{}{}", down, down.empty() ? "" : " ", across);
}

std::string focusSentence(const DrawnPanel& panel, std::size_t number) {
  const Rect box = bounds(panel.outline);
  std::string out =
      fmt::format("Panel {}: focus {} {}", number, panel.focus.marked ? "as marked" : "proposed",
                  whereIn(box, panel.focus.at));
  if (!panel.focus.marked && panel.focus.sure < kDoubtfulFocus) out += ", a guess";
  if (panel.squint.holds < kLost && panel.squint.rank > 1)
    return out +
           fmt::format("; small and blurred the strongest place is {}, the focus is number {}.",
                       whereIn(box, panel.squint.elsewhereAt), panel.squint.rank);
  return out + "; it holds when small and blurred.";
}

std::string centresSentence(const DrawnPage& page) {
  const std::size_t count = page.onePicture.centres.size();
  const std::string strongest = page.onePicture.strongest < 0
                                    ? ""
                                    : fmt::format(" The strongest panel at arm's length is {}.",
                                                  page.onePicture.strongest + 1);
  if (count == 0) return "At arm's length the page is even.";
  if (count == 1) return "At arm's length the page has one centre." + strongest;
  return fmt::format("At arm's length {} places compete for the page.", count) + strongest;
}

/// By how much the picture is wider for its height than the page, as a share.
double widened(const MarkedPage& page, const GreyPicture& picture) {
  return static_cast<double>(picture.width) / picture.height / (page.width / page.height) - 1;
}

}  // namespace

std::string shapeNote(const MarkedPage& page, const GreyPicture& picture) {
  if (page.width <= 0 || page.height <= 0) return {};
  const double by = widened(page, picture);
  if (std::abs(by) <= kDoubtfulShape) return {};
  return fmt::format(
      "For its height the picture is {:.0f} % {} than the page: panels may not match the drawing.",
      100 * std::abs(by), by > 0 ? "wider" : "narrower");
}

Result<DrawnPage> readDrawn(const ReadMarkedPage& page, const std::filesystem::path& picture,
                            const AttentionWeights& weights) {
  auto grey = readPictureFile(picture, {.mostSide = kPictureSide});
  if (!grey) return tl::unexpected(grey.error());
  const MarkedPage& marked = page.page;
  if (marked.width > 0 && marked.height > 0) {
    if (std::abs(widened(marked, *grey)) > kOtherShape)
      return badInput(fmt::format("Page {} is {} wide and {} high, but its picture has other "
                                  "proportions.",
                                  marked.name, marked.width, marked.height),
                      {.file = picture.filename().string()},
                      "Give the picture of the whole page, or the page's own width and height.");
  }
  const std::vector<int>& order = page.intended ? page.intended->order : page.reading.order;
  return measureDrawnPage(marked, std::move(*grey), order, page.direction, weights);
}

void addDrawn(OrderedJson& json, const DrawnPage& page) {
  OrderedJson attention = OrderedJson::array(), squint = OrderedJson::array();
  for (const DrawnPanel& panel : page.panels) {
    attention.push_back(attentionJson(panel, page.scale));
    squint.push_back(squintJson(panel.squint, page.scale));
  }
  json["attention"] = attention;
  json["squint"] = squint;
  json["picture"] = pictureJson(page);
  json["handed_on"] = handedOnJson(page.handedOn);
}

std::vector<std::string> drawnSentences(const DrawnPage& page) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < page.panels.size(); ++i)
    out.push_back(focusSentence(page.panels[i], i + 1));
  out.push_back(centresSentence(page));
  for (const FocusFight& fight : page.onePicture.fights)
    out.push_back(fmt::format("The focuses of panels {} and {} stand in one glance and fight.",
                              fight.a + 1, fight.b + 1));
  return out;
}

}  // namespace tw
