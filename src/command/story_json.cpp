// The published JSON of `tierwright story --json`: docs/formats/story-output.schema.json.
#include "command/finding_json.h"
#include "command/story.h"
#include "job/field.h"
#include "job/story_time.h"
#include "job/write_json.h"
#include "read/full_figure.h"
#include "read/rhythm.h"
#include "read/size_runs.h"
#include "read/word_spread.h"

namespace tw {

namespace {

/// What only a rough can tell; null where there is none.
OrderedJson seenJson(const StoryPage& page, const StoryPanel& panel) {
  if (!page.measured) return OrderedJson();
  OrderedJson out = {{"shot", std::string(nameOf(panel.shot))},
                     {"area_share", rounded(panel.areaShare, 4)},
                     {"head_mm", rounded(panel.headMm, 2)},
                     {"figures_share", rounded(panel.figureShare, 4)},
                     {"whole_figure_seen", rounded(panel.wholeShown, 4)},
                     {"speakers_in_order", rounded(panel.speakersInOrder, 4)},
                     {"shows_place", showsPlace(panel)}};
  if (panel.axis) out["axis"] = {{"between", panel.axisBetween}, {"side", *panel.axis}};
  return out;
}

OrderedJson panelJson(const StoryTold& told, const StoryPage& page, const StoryPanel& panel,
                      double curve) {
  return {{"panel", panel.number},
          {"beat", panel.beat},
          {"scene", panel.scene},
          {"words", panel.words},
          {"seconds", rounded(panel.seconds, 2)},
          {"seconds_smoothed", rounded(curve, 2)},
          {"share_of_middle", told.tempo.median > 0 ? rounded(curve / told.tempo.median, 3) : 0.0},
          {"enters", panel.enters},
          {"seen", seenJson(page, panel)}};
}

OrderedJson wordsJson(const StoryPage& page) {
  std::vector<int> words;
  for (const StoryPanel& panel : page.panels) words.push_back(panel.words);
  const WordSpread spread = wordSpreadOf(words);
  return {{"total", spread.total},
          {"mean", rounded(spread.mean, 2)},
          {"spread", rounded(spread.spread, 2)},
          {"most", spread.most},
          {"most_at", spread.mostAt},
          {"silent", spread.silent}};
}

/// Shots, areas and sizes of the page; null where it has no rough.
OrderedJson rhythmJson(const StoryPage& page) {
  if (!page.measured) return OrderedJson();
  std::vector<ShotSize> shots;
  std::vector<double> areas, heads;
  for (const StoryPanel& panel : page.panels) {
    shots.push_back(panel.shot);
    areas.push_back(panel.areaShare);
    heads.push_back(panel.headMm);
  }
  const Rhythm rhythm = rhythmOf(shots, areas);
  const SizeRun run = longestSizeRun(heads);
  const FullFigure full = fullFigureOn(page);
  return {{"shot_variety", rounded(rhythm.shotVariety, 4)},
          {"longest_run_of_one_shot", rhythm.longestRun},
          {"area_variety", rounded(rhythm.areaVariety, 4)},
          {"mean_area_share", rounded(pageTempoOf(page).meanAreaShare, 4)},
          {"longest_run_of_one_size", run.length},
          {"full_figure", {{"panel", full.panel}, {"seen", rounded(full.shown, 4)}}}};
}

OrderedJson pagesJson(const StoryTold& told) {
  OrderedJson out = OrderedJson::array();
  std::size_t at = 0;
  for (const StoryPage& page : told.story.pages) {
    OrderedJson panels = OrderedJson::array();
    for (const StoryPanel& panel : page.panels)
      panels.push_back(panelJson(told, page, panel, told.tempo.curve[at++]));
    out.push_back({{"page", page.number},
                   {"spread", page.spread},
                   {"measured", page.measured},
                   {"rough", page.rough},
                   {"stands", std::string(nameOf(pagePlaceOf(page)))},
                   {"seconds", rounded(pageTempoOf(page).seconds, 2)},
                   {"words", wordsJson(page)},
                   {"rhythm", rhythmJson(page)},
                   {"panels", panels}});
  }
  return out;
}

OrderedJson scenesJson(const StoryTold& told) {
  const std::vector<StoryScene> scenes = correctedScenes(told.job);
  OrderedJson out = OrderedJson::array();
  for (const SettingShown& setting : told.settings) {
    std::string heading;
    for (const StoryScene& scene : scenes)
      if (scene.id == setting.scene) heading = titleOf(scene);
    OrderedJson beats = OrderedJson::array();
    for (const StoryPlace at : setting.panels) beats.push_back(panelAt(told.story, at).beat);
    out.push_back(
        {{"scene", setting.scene},
         {"heading", heading},
         {"panels", beats},
         {"measured", setting.measured},
         {"place_shown_at", setting.firstAt ? OrderedJson(*setting.firstAt) : OrderedJson()}});
  }
  return out;
}

OrderedJson revealsJson(const StoryTold& told) {
  OrderedJson out = OrderedJson::array();
  for (const Reveal& reveal : told.reveals)
    out.push_back({{"page", told.story.pages[reveal.at.page].number},
                   {"beat", panelAt(told.story, reveal.at).beat},
                   {"strength", rounded(reveal.strength, 2)},
                   {"why", reveal.why},
                   {"stands", std::string(nameOf(reveal.place))}});
  return out;
}

OrderedJson stretchesJson(const StoryTold& told) {
  OrderedJson out = OrderedJson::array();
  for (const Stretch& stretch : told.tempo.stretches)
    out.push_back({{"from", panelAt(told.story, told.tempo.places[stretch.first]).beat},
                   {"to", panelAt(told.story, told.tempo.places[stretch.last]).beat},
                   {"pace", stretch.slow ? "slow" : "fast"},
                   {"share_of_middle", rounded(stretch.ratio, 3)}});
  return out;
}

}  // namespace

std::string storyJson(const StoryTold& told) {
  return textOf({{"title", told.job.title},
                 {"middle_seconds", rounded(told.tempo.median, 2)},
                 {"pages", pagesJson(told)},
                 {"scenes", scenesJson(told)},
                 {"reveals", revealsJson(told)},
                 {"stretches", stretchesJson(told)},
                 {"findings", findingsJson(told.findings)}});
}

}  // namespace tw
