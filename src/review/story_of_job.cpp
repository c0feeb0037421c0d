#include "review/story_of_job.h"

#include <algorithm>
#include <set>

#include "geometry/polygon.h"
#include "job/axis_side.h"
#include "job/shown_rough.h"
#include "read/page_turns.h"
#include "read/reading_time.h"
#include "review/page_case.h"
#include "stage/set_words.h"

namespace tw {

namespace {

const Beat* beatNamed(const std::vector<Beat>& beats, const std::string& id) {
  const auto found = std::ranges::find(beats, id, &Beat::id);
  return found == beats.end() ? nullptr : &*found;
}

/// Letters, digits and marks: what is not a space, counted as characters of UTF-8.
int lettersIn(const std::string& text) {
  return static_cast<int>(std::ranges::count_if(text, [](char c) {
    const bool isContinued = (static_cast<unsigned char>(c) & 0xC0) == 0x80;
    return !isContinued && c != ' ' && c != '\n' && c != '\t';
  }));
}

double secondsFor(const Beat& beat) {
  double seconds = reading_time::kWordlessPanel;
  for (const CopyItem& item : beat.copy) seconds += copySeconds(item.words, lettersIn(item.text));
  return seconds;
}

StoryPanel scripted(const Beat& beat, int number) {
  StoryPanel out;
  out.beat = beat.id;
  out.scene = beat.scene;
  out.number = number;
  out.words = beat.words();
  out.seconds = secondsFor(beat);
  for (const BeatFigure& figure : beat.figures) out.who.push_back(figure.who);
  out.revealWord = revealWordIn(beat.description);
  out.dominant = beat.dominant;
  out.isSet = !says(beat.setting, {"none"});
  return out;
}

/// Speakers of the panel's copy in the order in which they first speak.
std::vector<std::string> speakersOf(const Beat& beat) {
  std::vector<std::string> out;
  for (const CopyItem& item : beat.copy) {
    const bool isVoice = item.speaker.empty() || item.offPanel || item.kind == CopyKind::Caption;
    if (!isVoice && std::ranges::find(out, item.speaker) == out.end()) out.push_back(item.speaker);
  }
  return out;
}

/// Share of the speakers in sight who stand on the far side of the one that speaks before them.
double speakersInOrder(const RoughPanel& seen, const Beat& beat, ReadingDirection direction) {
  std::vector<double> mouths;
  for (const std::string& who : speakersOf(beat)) {
    const auto figure = std::ranges::find(seen.figures, who, &SeenFigure::who);
    if (figure != seen.figures.end() && figure->visible > 0) mouths.push_back(figure->mouth.x);
  }
  if (mouths.size() < 2) return 1;
  const double sign = direction == ReadingDirection::LeftToRight ? 1 : -1;
  double kept = 0;
  for (std::size_t i = 1; i < mouths.size(); ++i)
    kept += sign * (mouths[i] - mouths[i - 1]) > 0 ? 1 : 0;
  return kept / static_cast<double>(mouths.size() - 1);
}

/// The line of action runs between the two figures whose names come first, so that the same pair
/// is compared from panel to panel.
void measureAxis(const Staging& staging, StoryPanel& out) {
  std::vector<const SetFigure*> figures;
  for (const SetFigure& figure : staging.figures) figures.push_back(&figure);
  if (figures.size() < 2) return;
  std::ranges::stable_sort(figures, {}, [](const SetFigure* f) { return f->who; });
  out.axis = axisSide(figures[0]->at, figures[1]->at, staging.camera.eye);
  out.axisBetween = figures[0]->who + " and " + figures[1]->who;
}

void measure(const RoughPanel& seen, const Beat& beat, const Brief& brief, double trimArea,
             StoryPanel& out) {
  out.dominant = seen.dominant;
  out.shot = seen.staging.choice.shot;
  out.areaShare = area(seen.outline) / trimArea;
  out.speakersInOrder = speakersInOrder(seen, beat, brief.direction);
  const std::string focus = focusOf(beat, brief);
  for (const SeenFigure& figure : seen.figures) {
    out.figureShare = std::min(1.0, out.figureShare + figure.share);
    if (figure.who == focus && figure.visible > 0) out.headMm = figure.headMm;
    if (figure.cut == "whole") out.wholeShown = std::max(out.wholeShown, figure.visible);
  }
  measureAxis(seen.staging, out);
}

StoryPage pageOf(const Job& job, const Page& page) {
  StoryPage out{page.number, page.spread, false, {}, {}};
  const std::vector<Beat> beats = page.correctedBeats();
  const Rough* rough = measuredRoughOf(page);
  if (rough == nullptr) {
    for (const Beat& beat : beats) {
      StoryPanel panel = scripted(beat, static_cast<int>(out.panels.size()) + 1);
      if (!page.brief.dominantBeat.empty()) panel.dominant = beat.id == page.brief.dominantBeat;
      out.panels.push_back(std::move(panel));
    }
    return out;
  }
  out.measured = true;
  out.rough = rough->name;
  const double trimArea = job.sheetFor(page).trimRect().area();
  for (const RoughPanel& seen : rough->panels) {
    const Beat& beat = *beatNamed(beats, seen.beat);
    StoryPanel panel = scripted(beat, static_cast<int>(out.panels.size()) + 1);
    measure(seen, beat, page.brief, trimArea, panel);
    out.panels.push_back(std::move(panel));
  }
  return out;
}

void findEntrances(SeenStory& story) {
  std::set<std::string> seen;
  for (StoryPage& page : story.pages)
    for (StoryPanel& panel : page.panels)
      for (const std::string& who : panel.who)
        if (seen.insert(who).second) panel.enters.push_back(who);
}

}  // namespace

const Rough* measuredRoughOf(const Page& page) {
  const Rough* rough = shownRough(page);
  if (rough == nullptr) return nullptr;
  const std::vector<Beat> beats = page.correctedBeats();
  const bool isOfThisDraft = std::ranges::all_of(rough->panels, [&](const RoughPanel& panel) {
    return beatNamed(beats, panel.beat) != nullptr;
  });
  return isOfThisDraft ? rough : nullptr;
}

SeenStory storyOf(const Job& job) {
  SeenStory out;
  if (!job.pages.empty()) out.direction = job.pages.front().brief.direction;
  for (const Page& page : job.pages) out.pages.push_back(pageOf(job, page));
  findEntrances(out);
  return out;
}

}  // namespace tw
