// From panel to panel: the place shown early in each scene, the camera kept on its side of the
// line between two figures, who speaks first on the side that is read first, and stretches of slow
// or fast telling. For the axis and the speakers the mirrored panel is tried.
#include <fmt/format.h>

#include <algorithm>

#include "job/story_time.h"
#include "read/setting_shown.h"
#include "read/tempo.h"
#include "review/called.h"
#include "review/costs.h"
#include "review/story_findings.h"

namespace tw {

namespace {

constexpr int kShownBy = 3;  // in the scene's first three panels: common practice

const StoryScene* sceneNamed(const std::vector<StoryScene>& scenes, const std::string& id) {
  const auto found = std::ranges::find(scenes, id, &StoryScene::id);
  return found == scenes.end() ? nullptr : &*found;
}

/// The same place was the story's before that scene.
bool isKnownPlace(const std::vector<StoryScene>& scenes, const std::vector<SettingShown>& told,
                  std::size_t index) {
  const StoryScene* scene = sceneNamed(scenes, told[index].scene);
  if (scene == nullptr || scene->place.empty()) return false;
  for (std::size_t i = 0; i < index; ++i) {
    const StoryScene* before = sceneNamed(scenes, told[i].scene);
    if (before != nullptr && before->place == scene->place && told[i].firstAt) return true;
  }
  return false;
}

std::string settingReason(const SettingShown& told, const std::string& title, bool known) {
  const std::string again = known ? " The reader knows the place from an earlier scene." : "";
  if (told.firstAt)
    return fmt::format("The scene {} shows its place only in its panel {} of {}.{}", title,
                       *told.firstAt, told.panels.size(), again);
  return fmt::format("The scene {} never shows its place in {} panel{}.{}", title,
                     told.panels.size(), told.panels.size() == 1 ? "" : "s", again);
}

void addSettings(const Job& job, const SeenStory& story, std::vector<Finding>& out) {
  const std::vector<StoryScene> scenes = correctedScenes(job);
  const std::vector<SettingShown> told = settingsShown(story);
  for (std::size_t i = 0; i < told.size(); ++i) {
    if (!told[i].certain || told[i].measured == 0) continue;
    if (told[i].firstAt && *told[i].firstAt <= kShownBy) continue;
    const StoryPlace first = told[i].panels.front();
    const StoryScene* scene = sceneNamed(scenes, told[i].scene);
    const bool known = isKnownPlace(scenes, told, i);
    const bool isShort = told[i].panels.size() < kShownBy;
    Finding finding =
        findingAt(story.pages[first.page], &panelAt(story, first), "setting shown early",
                  known || isShort ? Severity::Look : Severity::Should);
    finding.measure = "panel of the scene that first shows the place; 0: none";
    finding.value = told[i].firstAt.value_or(0);
    finding.limit = kShownBy;
    finding.unit = "panels";
    finding.reason =
        settingReason(told[i], scene == nullptr ? "without a heading" : titleOf(*scene), known);
    finding.remedy =
        "Open one of its first panels to a very long shot, or give a long shot more set than "
        "figures.";
    out.push_back(std::move(finding));
  }
}

/// The axis is crossed between these two panels.
double crossed(const StoryPanel& a, const StoryPanel& b) {
  if (!a.axis || !b.axis || a.axisBetween != b.axisBetween || a.scene != b.scene) return 0;
  return cost::axisKept(*a.axis, *b.axis);
}

StoryPanel mirrored(StoryPanel panel) {
  if (panel.axis) *panel.axis = -*panel.axis;
  panel.speakersInOrder = 1 - panel.speakersInOrder;
  return panel;
}

/// A panel with its neighbours in the story.
class Neighbours {
 public:
  Neighbours(const SeenStory& story, const std::vector<StoryPlace>& places, std::size_t at)
      : own(panelAt(story, places[at])),
        before_(at > 0 ? &panelAt(story, places[at - 1]) : nullptr),
        after_(at + 1 < places.size() ? &panelAt(story, places[at + 1]) : nullptr) {}

  double crossings(const StoryPanel& panel) const {
    return (before_ != nullptr ? crossed(*before_, panel) : 0) +
           (after_ != nullptr ? crossed(panel, *after_) : 0);
  }
  double crossedInto() const { return before_ != nullptr ? crossed(*before_, own) : 0; }

  const StoryPanel& own;

 private:
  const StoryPanel *before_, *after_;
};

TriedRemedy mirroredForAxis(const Neighbours& at) {
  const StoryPanel turned = mirrored(at.own);
  TriedRemedy out{"mirror the panel", at.crossings(at.own), at.crossings(turned), false, {}};
  out.helps = out.after < out.before;
  if (turned.speakersInOrder < at.own.speakersInOrder)
    out.aside = "its speakers would stand against the order of their balloons";
  return out;
}

TriedRemedy mirroredForSpeakers(const Neighbours& at) {
  const StoryPanel turned = mirrored(at.own);
  TriedRemedy out{
      "mirror the panel", at.own.speakersInOrder * 100, turned.speakersInOrder * 100, false, {}};
  out.helps = out.after > out.before;
  if (at.crossings(turned) > at.crossings(at.own)) out.aside = "it would cross the axis";
  return out;
}

std::string pairInWords(const Job& job, const std::string& between) {
  const std::size_t gap = between.find(" and ");
  if (gap == between.npos) return between;
  return calledIn(job, between.substr(0, gap)) + " and " + calledIn(job, between.substr(gap + 5));
}

void addStaging(const Job& job, const SeenStory& story, std::vector<Finding>& out) {
  const std::vector<StoryPlace> places = placesOf(story);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const StoryPage& page = story.pages[places[i].page];
    const Neighbours at(story, places, i);
    if (at.crossedInto() > 0) {
      Finding finding = findingAt(page, &at.own, "axis kept", Severity::Should);
      finding.measure = "crossings of the axis to the panels before and after";
      finding.value = at.crossings(at.own);
      finding.unit = "crossings";
      finding.reason = fmt::format(
          "Between {} and {} the camera crosses the line between {}: they change sides.",
          inWords(story, places[i - 1]), inWords(story, places[i]),
          pairInWords(job, at.own.axisBetween));
      finding.remedy = "Stay on one side of the two, or go over by a view along the line.";
      finding.tried = {mirroredForAxis(at)};
      out.push_back(std::move(finding));
    }
    if (page.measured && at.own.speakersInOrder < 1) {
      Finding finding = findingAt(page, &at.own, "speakers in order", Severity::Should);
      finding.measure = "share of the speakers who stand in the order in which they speak";
      finding.value = at.own.speakersInOrder * 100;
      finding.limit = 100;
      finding.unit = "%";
      finding.reason = "Who speaks first stands on the side that is read last.";
      finding.remedy = "Mirror the panel, or let the other one speak first.";
      finding.tried = {mirroredForSpeakers(at)};
      out.push_back(std::move(finding));
    }
  }
}

void addTempo(const SeenStory& story, std::vector<Finding>& out) {
  const Tempo tempo = tempoOf(story);
  for (const Stretch& stretch : tempo.stretches) {
    const StoryPlace first = tempo.places[stretch.first], last = tempo.places[stretch.last];
    Finding finding =
        findingAt(story.pages[first.page], &panelAt(story, first), "tempo", Severity::Look);
    finding.evidence = Evidence::Ours;
    finding.source = {};
    finding.measure = "reading time of a panel there against the story's middle panel";
    finding.value = stretch.ratio * 100;
    finding.limit = stretch.slow ? 150 : 67;
    finding.unit = "%";
    finding.reason =
        fmt::format("From {} to {} the story runs {}: {:.1f} s a panel against {:.1f} s.",
                    inWords(story, first), inWords(story, last), stretch.slow ? "slow" : "fast",
                    stretch.ratio * tempo.median, tempo.median);
    finding.remedy = stretch.slow
                         ? "If that is not meant: fewer words, or more panels for them."
                         : "If that is not meant: fewer panels, or words that slow the reader.";
    out.push_back(std::move(finding));
  }
}

}  // namespace

std::vector<Finding> sceneFindings(const Job& job, const SeenStory& story) {
  std::vector<Finding> out;
  addSettings(job, story, out);
  addStaging(job, story, out);
  addTempo(story, out);
  return out;
}

}  // namespace tw
