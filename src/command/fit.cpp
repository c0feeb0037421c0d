#include "command/fit.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/fit_room.h"
#include "command/job_models.h"
#include "command/job_pages.h"
#include "geometry/polygon.h"
#include "review/page_case.h"
#include "stage/light_wish.h"

namespace tw {

namespace {

struct Staged {
  const Page* page = nullptr;
  const Rough* rough = nullptr;
  const RoughPanel* panel = nullptr;
  Beat beat;
};

Result<Staged> findStaged(const Job& job, const FitRequest& request) {
  Staged out;
  const auto numbers = pagesAsked(job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  out.page = job.page(numbers->front());
  const auto rough = roughNamed(*out.page, request.rough);
  if (!rough) return tl::unexpected(rough.error());
  out.rough = &out.page->roughs[*rough];
  const auto panel = panelNumbered(*out.page, *out.rough, request.panel);
  if (!panel) return tl::unexpected(panel.error());
  out.panel = &out.rough->panels[*panel];
  auto beat = beatShown(*out.page, *out.rough, *panel);
  if (!beat) return tl::unexpected(beat.error());
  out.beat = std::move(*beat);
  return out;
}

Result<std::size_t> findFigure(const Staged& staged, const std::string& asked) {
  const auto& figures = staged.panel->staging.figures;
  const Place page{.page = staged.page->number};
  if (figures.empty())
    return badInput(fmt::format("Nobody stands in panel {}.", staged.panel->beat), page,
                    "Ask for a panel with a figure.");
  const std::string who = asked.empty() ? focusOf(staged.beat, staged.page->brief) : asked;
  for (std::size_t i = 0; i < figures.size(); ++i)
    if (figures[i].who == who) return i;
  if (asked.empty()) return 0;
  std::string names;
  for (const SetFigure& f : figures) names += (names.empty() ? "" : ", ") + f.who;
  return badInput(fmt::format("\"{}\" is not in panel {}.", who, staged.panel->beat), page,
                  fmt::format("In it: {}.", names));
}

}  // namespace

Region visibleOutline(const Rough& rough, std::size_t panel) {
  Region out{rough.panels[panel].outline};
  if (!rough.panels[panel].ground) return out;
  std::vector<Polygon> above;
  for (const RoughPanel& each : rough.panels)
    if (!each.ground) above.push_back(each.outline);
  return above.empty() ? out : without(out, united(above));
}

Region roomFor(const Rough& rough, std::size_t panel, const Rect& live) {
  const Region seen = visibleOutline(rough, panel);
  return rough.panels[panel].bleeds ? common(seen, {polygonOf(live)}) : seen;
}

double silhouetteArea(const std::vector<Polygon>& shapes) {
  double sum = 0;
  for (const Polygon& shape : shapes) sum += area(shape);
  return sum;
}

std::vector<Polygon> placedShapes(const std::vector<Polygon>& shapes, const Fit& fit) {
  std::vector<Polygon> out;
  for (const Polygon& shape : shapes) out.push_back(fit.placed(shape));
  return out;
}

std::optional<WholeAnswer> fitWhole(const FitAnswers& asked, const FitRequest& request) {
  if (asked.room.empty()) return {};
  const Fit fit = largestFit({.figure = asked.figure.shapes,
                              .region = asked.room,
                              .margin = request.marginMm,
                              .mayMirror = request.mayMirror});
  if (fit.scale <= 0) return {};
  const double covered = silhouetteArea(asked.figure.shapes) * fit.scale * fit.scale;
  WholeAnswer out{fit, fit.scale * asked.figure.headMm, covered / area(asked.room), {}};
  if (!asked.figure.hauled.empty())
    out.alone = largestFit({.figure = asked.figure.ownShapes,
                            .region = asked.room,
                            .margin = request.marginMm,
                            .mayMirror = request.mayMirror});
  return out;
}

Result<FitAnswers> fitFigure(const FitRequest& request) {
  const auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  const auto stager = stagerFor(*open);
  if (!stager) return tl::unexpected(stager.error());
  const auto lights = LightWords::load();
  if (!lights) return tl::unexpected(lights.error());
  return fitFigure(open->job, *stager, *lights, request);
}

Result<FitAnswers> fitFigure(const Job& job, const Stager& stager, const LightWords& lights,
                             const FitRequest& request) {
  if (!(request.marginMm >= 0 && request.marginMm <= 100))
    return badInput("A margin goes from 0 to 100 mm.");
  const auto staged = findStaged(job, request);
  if (!staged) return tl::unexpected(staged.error());
  const auto index = findFigure(*staged, request.who);
  if (!index) return tl::unexpected(index.error());
  const Page& page = *staged->page;
  const std::string& who = staged->panel->staging.figures[*index].who;
  FitAnswers out;
  out.page = page.number;
  out.rough = request.rough;
  out.panel = request.panel;
  out.marginMm = request.marginMm;
  out.sheet = job.sheetFor(page);
  out.rightHand = Job::isRightHand(page);
  out.roughPage = *staged->rough;
  if (page.brief.focus.empty() || page.brief.focus == who)
    out.wantedHeadMm = page.brief.leastHeadMm;
  out.figure =
      wholeFigure(stager, *staged->panel, staged->beat, stager.bodyOf(who, staged->beat.id), *index,
                  lightOf(staged->panel->staging, staged->beat, lights));
  out.room = roomFor(out.roughPage, static_cast<std::size_t>(request.panel - 1),
                     out.sheet.liveRect(out.rightHand));
  out.whole = fitWhole(out, request);
  out.cut = fitCut(out, request);
  out.over = fitOver(out, request, page.brief.keepClear);
  const Rect box = bounds(Region(out.figure.ownShapes));
  const Rect live = out.sheet.liveRect(out.rightHand).inset(request.marginMm);
  const double most = std::min(live.width() / box.width(), live.height() / box.height());
  out.roomOnPage = !out.whole || most > out.whole->fit.scale * kNoGain;
  return out;
}

namespace {

std::string percent(double share) {
  if (share < 0.01) return "less than 1 %";
  return fmt::format("{:.0f} %", 100 * share);
}
std::string times(double scale) {
  return fmt::format("{:.2f} times as large as staged", scale);
}
std::string turned(const Fit& fit) {
  return fit.mirrored ? ", turned about" : "";
}
std::string sureness(const Fit& fit) {
  return fit.within > 0 ? fmt::format(" (within {:.2g} % of the largest)", 100 * fit.within) : "";
}

std::string wholeSentence(const FitAnswers& a) {
  if (!a.whole) return "Whole: there is no room in the panel inside that margin.";
  std::string alone;
  if (a.whole->alone)
    alone = fmt::format(" Head {:.1f} mm if the border may cut what it hauls.",
                        a.whole->alone->scale * a.figure.headMm);
  return fmt::format("Whole: {}{}{}, head {:.1f} mm; fills {} of the panel.{}",
                     times(a.whole->fit.scale), turned(a.whole->fit), sureness(a.whole->fit),
                     a.whole->headMm, percent(a.whole->filled), alone);
}

std::string cutSentence(const FitAnswers& a) {
  if (!a.cut) return "Cut: no line of the body meets a border without falling on a joint.";
  const CutOption& o = a.cut->options[a.cut->best];
  return fmt::format("Cut at the {}: {}{}, head {:.1f} mm; {} of the figure is lost{}. {}.", o.line,
                     times(o.fit.scale), turned(o.fit), o.headMm, percent(o.lost),
                     o.handsIn ? "" : ", a hand with it", a.cut->why);
}

std::string overSentence(const FitAnswers& a) {
  if (!a.over && !a.roomOnPage)
    return "Over the border: no gain, it is as large as the live area lets it be.";
  if (!a.over)
    return "Over the border: no gain without covering a face, a balloon or more than a fifth of a "
           "neighbour.";
  std::string entered;
  for (const CoveredPanel& c : a.over->covered)
    entered += fmt::format("{}{} of panel {}", entered.empty() ? "covers " : ", ", percent(c.share),
                           c.panel);
  if (entered.empty()) entered = "covers only gutter and margin";
  std::string cut;
  if (!a.figure.hauled.empty() && a.over->hauledShare < 0.995)
    cut = fmt::format("; the border cuts what it hauls, {} of it shows",
                      percent(a.over->hauledShare));
  return fmt::format("Over the border: {}{}, head {:.1f} mm; {}; {} of it stays at home{}. {}.",
                     times(a.over->fit.scale), turned(a.over->fit), a.over->headMm, entered,
                     percent(a.over->ownShare), cut, a.over->why);
}

/// Sentences that end in a reason get a capital there.
std::string capitalised(std::string text) {
  for (std::size_t i = 2; i < text.size(); ++i)
    if (text[i - 2] == '.' && text[i - 1] == ' ' && text[i] >= 'a' && text[i] <= 'z')
      text[i] = static_cast<char>(text[i] - 'a' + 'A');
  return text;
}

}  // namespace

std::vector<std::string> fitSentences(const FitAnswers& a) {
  return {capitalised(wholeSentence(a)), capitalised(cutSentence(a)), capitalised(overSentence(a))};
}

}  // namespace tw
