#include "command/continuity.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/job_pages.h"
#include "job/shown_rough.h"
#include "stage/held_props.h"
#include "stage/staging.h"

namespace tw {

namespace {

std::string handOf(const BusyHands& busy) {
  if (busy.left && busy.right) return "both";
  return busy.left ? "left" : busy.right ? "right" : "";
}

/// Who holds one thing only: the hand that is busy is the hand it is in.
void addHands(const Beat& beat, const RoughPanel& panel, const Stager& stager,
              std::vector<StagedHand>& out) {
  const Scene scene = stager.sceneOf(panel.staging, beat);
  for (std::size_t i = 0; i < beat.figures.size() && i < scene.actors.size(); ++i) {
    const std::string& who = beat.figures[i].who;
    std::vector<std::string> held;
    for (const Prop& prop : beat.props)
      if (prop.heldBy == who) held.push_back(prop.id);
    if (held.size() != 1 || scene.actors[i].set.who != who) continue;
    out.push_back({beat.id, who, held.front(), handOf(busyHands(beat, scene, i))});
  }
}

std::vector<StagedHand> stagedHands(const Job& job, const Stager& stager) {
  std::vector<StagedHand> out;
  for (const Page& page : job.pages) {
    const Rough* rough = shownRough(page);
    if (rough == nullptr) continue;
    const std::vector<Beat> beats = page.correctedBeats();
    for (const RoughPanel& panel : rough->panels) {
      const auto beat = std::ranges::find(beats, panel.beat, &Beat::id);
      if (beat != beats.end()) addHands(*beat, panel, stager, out);
    }
  }
  return out;
}

LookShown lookShown(const Character& who, const StoryTime& story, std::size_t moment,
                    const LookHeld& held, const Wardrobe& wardrobe) {
  LookShown out{who.id, story.sceneOf(moment).id, story.moments()[moment].beat->id, {}, {}, {}};
  out.worn = wardrobe.wornBy(who, held);
  for (const BodyMark& mark : held.marks)
    out.marks.push_back(fmt::format("{} on the {}{}{}", mark.kind, mark.side,
                                    mark.side.empty() ? "" : " ", mark.place));
  for (const auto& [thing, hand] : held.hands)
    if (!hand.empty()) out.hands.push_back(fmt::format("{}: {}", thing, hand));
  return out;
}

/// One entry per scene in which the character is seen; one more where the look changes within it.
void addLooks(const Character& who, const StoryTime& story, const LookWords& words,
              const Wardrobe& wardrobe, std::vector<LookShown>& out) {
  const LooksAlong looks(who, story, words);
  bool first = true;
  for (std::size_t m = 0; m < story.moments().size(); ++m) {
    const Beat& beat = *story.moments()[m].beat;
    if (std::ranges::find(beat.figures, who.id, &BeatFigure::who) == beat.figures.end()) continue;
    LookShown shown = lookShown(who, story, m, looks.at(m), wardrobe);
    const bool seen = !first && out.back().scene == shown.scene;
    shown.changed = first || out.back().worn != shown.worn || out.back().marks != shown.marks;
    if (seen && !shown.changed) continue;
    out.push_back(std::move(shown));
    first = false;
  }
}

}  // namespace

Result<StoryContinuity> storyContinuity(const std::filesystem::path& folder) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  const auto words = LookWords::load();
  if (!words) return tl::unexpected(words.error());
  const auto wardrobe = Wardrobe::load();
  if (!wardrobe) return tl::unexpected(wardrobe.error());
  const auto stager = Stager::make(open->job);
  if (!stager) return tl::unexpected(stager.error());
  StoryContinuity out;
  out.job = std::move(open->job);
  const StoryTime story(out.job);
  out.scenes = story.scenes();
  for (const Character& who : out.job.cast) addLooks(who, story, *words, *wardrobe, out.looks);
  out.findings = continuityOf(out.job, story, *words, *wardrobe);
  for (ContinuityFinding& finding :
       stagedHandsOf(out.job, story, *words, stagedHands(out.job, *stager)))
    out.findings.push_back(std::move(finding));
  std::ranges::stable_sort(out.findings, {}, &ContinuityFinding::severity);
  return out;
}

}  // namespace tw
