// The map filled: pictures of the pages as they stand, numbers below them, findings on them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "command/job_models.h"
#include "command/pictures.h"
#include "command/story.h"
#include "job/story_time.h"
#include "press/story_map.h"
#include "review/story_of_job.h"

namespace tw {

namespace {

std::string headOf(const StoryMapPage& page, const Finding& finding) {
  const std::string where = page.spread ? fmt::format("pages {}–{}", page.number, page.number + 1)
                                        : fmt::format("page {}", page.number);
  if (finding.panel == 0) return fmt::format("{}: {}", where, finding.rule);
  return fmt::format("{} panel {}: {}", where, finding.panel, finding.rule);
}

/// The best of what was tried, when it helps.
std::string triedIn(const Finding& finding) {
  if (finding.tried.empty() || !finding.tried.front().helps) return {};
  const TriedRemedy& tried = finding.tried.front();
  return fmt::format("Tried: {}: {:.0f} → {:.0f} {}{}{}.", tried.change, tried.before, tried.after,
                     finding.unit, tried.aside.empty() ? "" : ", but ", tried.aside);
}

class MapMaker {
 public:
  explicit MapMaker(const StoryTold& told) : told_(told) {}

  Result<StoryMap> make(const Stager& stager, unsigned threads, Progress& progress) {
    map_.title = told_.job.title;
    map_.pageWide = told_.job.sheet.trimWidth;
    map_.pageHigh = told_.job.sheet.trimHeight;
    map_.direction = told_.story.direction;
    map_.middleSeconds = told_.tempo.median;
    map_.about = aboutIt();
    addScenes();
    for (const StoryPage& page : told_.story.pages) addPage(page);
    addTempo();
    for (const Reveal& reveal : told_.reveals) panelAt(reveal.at).reveal = true;
    for (const Finding& finding : told_.findings) addFinding(finding);
    for (std::size_t p = 0; p < map_.pages.size(); ++p) {
      progress.tell("drawing pages",
                    static_cast<double>(p) / static_cast<double>(map_.pages.size()));
      if (auto drawn = addPicture(p, stager, threads, progress); !drawn)
        return tl::unexpected(drawn.error());
    }
    return std::move(map_);
  }

 private:
  StoryMapPanel& panelAt(StoryPlace at) { return map_.pages[at.page].panels[at.panel]; }

  std::string aboutIt() const {
    double seconds = 0;
    int words = 0;
    for (const StoryPlace at : told_.tempo.places) words += tw::panelAt(told_.story, at).words;
    for (const double s : told_.tempo.seconds) seconds += s;
    const int whole = static_cast<int>(std::lround(seconds));
    return fmt::format("{} pages · {} panels · {} words · about {} min {:02} s of reading", pages(),
                       told_.tempo.places.size(), words, whole / 60, whole % 60);
  }

  int pages() const {
    int count = 0;
    for (const StoryPage& page : told_.story.pages) count += page.spread ? 2 : 1;
    return count;
  }

  void addScenes() {
    const std::vector<StoryScene> scenes = correctedScenes(told_.job);
    for (const SettingShown& setting : told_.settings) {
      scenes_[setting.scene] = map_.scenes.size();
      const auto found = std::ranges::find(scenes, setting.scene, &StoryScene::id);
      map_.scenes.push_back(found == scenes.end() ? "" : titleOf(*found));
    }
  }

  void addPage(const StoryPage& page) {
    StoryMapPage out{.number = page.number, .spread = page.spread};
    for (const StoryPanel& panel : page.panels)
      out.panels.push_back({.scene = scenes_.at(panel.scene),
                            .words = panel.words,
                            .seconds = panel.seconds,
                            .shot = panel.shot,
                            .areaShare = panel.areaShare,
                            .dominant = panel.dominant});
    map_.pages.push_back(std::move(out));
  }

  void addTempo() {
    for (std::size_t i = 0; i < told_.tempo.places.size(); ++i)
      panelAt(told_.tempo.places[i]).curve = told_.tempo.curve[i];
    for (const Stretch& stretch : told_.tempo.stretches)
      for (std::size_t i = stretch.first; i <= stretch.last; ++i)
        panelAt(told_.tempo.places[i]).pace = stretch.slow ? 1 : -1;
  }

  void addFinding(const Finding& finding) {
    // What has no rough is seen to have none.
    if (finding.rule == "not measured") return;
    const auto page = std::ranges::find(map_.pages, finding.page, &StoryMapPage::number);
    if (page == map_.pages.end()) return;
    const std::size_t index = map_.findings.size();
    map_.findings.push_back({finding.severity, headOf(*page, finding), finding.reason,
                             finding.remedy, triedIn(finding), finding.page, finding.silencedWhy});
    if (finding.rule == "tempo")
      page->panels[static_cast<std::size_t>(finding.panel - 1)].paceFinding = index;
    else if (finding.panel > 0)
      page->panels[static_cast<std::size_t>(finding.panel - 1)].findings.push_back(index);
    else
      page->findings.push_back(index);
  }

  Result<void> addPicture(std::size_t index, const Stager& stager, unsigned threads,
                          Progress& progress) {
    const Page* page = told_.job.page(map_.pages[index].number);
    const Rough* rough = page == nullptr ? nullptr : measuredRoughOf(*page);
    if (rough == nullptr) return {};
    Page only = *page;
    only.roughs = {*rough};
    auto pictures = picturesOf(told_.job, only, stager, threads, progress);
    if (!pictures) return tl::unexpected(pictures.error());
    map_.pages[index].picture = std::move(pictures->front());
    return {};
  }

  const StoryTold& told_;
  StoryMap map_;
  std::map<std::string, std::size_t> scenes_;
};

}  // namespace

Result<void> writeStoryMaps(const std::filesystem::path& job, const StoryTold& told,
                            const StoryMapRequest& request, Progress& progress) {
  auto models = modelsOf(job, told.job);
  if (!models) return tl::unexpected(models.error());
  const auto stager = Stager::make(told.job, std::move(*models));
  if (!stager) return tl::unexpected(stager.error());
  const auto map = MapMaker(told).make(*stager, request.threads, progress);
  if (!map) return tl::unexpected(map.error());
  for (const std::filesystem::path& file : request.files)
    if (auto done = writeStoryMap(file, *map, request.dpi); !done) return done;
  return {};
}

}  // namespace tw
