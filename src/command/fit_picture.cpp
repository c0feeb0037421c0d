// From the three answers to the sheet that shows them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "command/fit.h"
#include "command/fit_room.h"
#include "geometry/polygon.h"
#include "press/fit_art.h"
#include "press/page_art.h"

namespace tw {

namespace {

// A larger figure is inked with a heavier pen, but not in proportion; as drawPanel does.
constexpr double kPenGrows = 0.42;
constexpr double kInkBeyondMm = 0.5;  // half a heavy line

Region placedRegion(const Region& region, const Fit& fit) {
  Region out;
  for (const Polygon& polygon : region) out.push_back(fit.placed(polygon));
  return out;
}

Drawing placedDrawing(const Drawing& drawing, const Fit& fit, double headMm) {
  Drawing out = drawing;
  out.clip = placedRegion(drawing.clip, fit);
  for (Tone& tone : out.tones) tone.region = placedRegion(tone.region, fit);
  const double pen = std::pow(headMm / kDrawnHeadMm, kPenGrows);
  for (Stroke& stroke : out.strokes) {
    for (Point& p : stroke.points) p = fit.placed(p);
    for (double& width : stroke.widths) width *= pen;
  }
  return out;
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

FitColumn columnOf(std::string heading, const std::string& sentence) {
  FitColumn out;
  out.heading = std::move(heading);
  // The sheet's heading already says which of the three it is.
  const std::size_t colon = sentence.find(": ");
  out.sentence = capitalised(colon == std::string::npos ? sentence : sentence.substr(colon + 2));
  return out;
}

void put(FitColumn& column, const FitAnswers& a, const Fit& fit, double headMm) {
  column.placed = true;
  column.number = fmt::format("head {:.1f} mm", headMm);
  column.silhouette = placedRegion(a.figure.silhouette, fit);
  column.drawing = placedDrawing(a.figure.drawing, fit, headMm);
}

FitPicture fitPictureOf(const FitAnswers& a) {
  FitPicture out;
  out.title = fmt::format("How large can {} be?", capitalised(a.figure.who));
  out.about =
      fmt::format("page {} · rough {} · panel {} · head {:.1f} mm as staged{}", a.page, a.rough,
                  a.panel, a.figure.headMm,
                  a.wantedHeadMm > 0 ? fmt::format(" · {:.0f} mm wanted", a.wantedHeadMm) : "");
  out.sheet = a.sheet;
  const auto home = static_cast<std::size_t>(a.panel - 1);
  std::vector<std::size_t> place(a.roughPage.panels.size());
  for (const std::size_t i : paintingOrder(a.roughPage)) {
    place[i] = out.panels.size();
    out.panels.push_back(a.roughPage.panels[i].outline);
    if (i == home) continue;
    for (const SeenFigure& f : a.roughPage.panels[i].figures)
      for (Polygon& face : common({f.face}, {a.roughPage.panels[i].outline}))
        out.faces.push_back(std::move(face));
    for (const PlacedBalloon& b : a.roughPage.panels[i].balloons)
      if (!b.outline.points.empty()) out.balloons.push_back(b.outline);
  }
  out.own = place[home];
  const std::vector<std::string> sentences = fitSentences(a);
  FitColumn whole = columnOf("Whole", sentences[0]);
  if (a.whole) put(whole, a, a.whole->fit, a.whole->headMm);
  FitColumn cut = columnOf("Cut", sentences[1]);
  if (a.cut) {
    const CutOption& best = a.cut->options[a.cut->best];
    cut.heading = "Cut at the " + best.line;
    put(cut, a, best.fit, best.headMm);
    cut.shownIn = visibleOutline(a.roughPage, home);
  }
  FitColumn over = columnOf("Over the border", sentences[2]);
  if (a.over) {
    put(over, a, a.over->fit, a.over->headMm);
    if (!a.figure.hauled.empty()) {
      // The border cuts what it hauls, never the figure itself.
      over.above = placedRegion(a.figure.ownShapes, a.over->fit);
      Region shown = visibleOutline(a.roughPage, home);
      const Region inked = offset(over.above, kInkBeyondMm);
      shown.insert(shown.end(), inked.begin(), inked.end());
      over.shownIn = united(shown);
    }
    for (const CoveredPanel& c : a.over->covered)
      over.entered.push_back(place[static_cast<std::size_t>(c.panel - 1)]);
  }
  out.columns = {std::move(whole), std::move(cut), std::move(over)};
  return out;
}

}  // namespace

Result<void> drawFitPng(const std::filesystem::path& file, const FitAnswers& answers) {
  return writeFitPng(file, fitPictureOf(answers));
}

Result<void> drawFitSvg(const std::filesystem::path& file, const FitAnswers& answers) {
  return writeFitSvg(file, fitPictureOf(answers));
}

}  // namespace tw
