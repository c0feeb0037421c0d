// The eye path.
//
// Idea. Nobody has published a full model of reading comics, but many single facts: outlines decide
// the order of panels; copy takes most of the time and is read first, after a short look at the
// picture; faces and figures come first in pictures; panels without copy, panels that go on from
// the one before, the panel before dense copy and the lower one of a stack beside a tall panel are
// passed over more often, and sometimes gone back to. This simulates single readers who behave so,
// with published constants where there are any (eye_path.json), and counts.
//
// Words. *Look*: one fixation. *Landing*: the first look in a panel. *Passed over*: a panel whose
// turn came and which the eye did not enter then. *Glance*: one look back at the panel before.
//
// Steps for each reader:
//   1. draw what makes her differ: pace of reading, pace and number of looks at pictures;
//   2. draw the order of the panels step by step (reading_moves.cpp: layout, then copy and leads);
//   3. at each panel draw whether it is passed over (eye_page.cpp has the chance);
//   4. if not, look at it (within_panel.cpp), sometimes glance at the panel before, and perhaps
//   come
//      back to what was passed over since the last panel read;
//   5. time is the sum of the looks and of the jumps between them.
//
// What holds by construction. Every draw belongs to a reader, a panel and a purpose, never to a
// place in a sequence. So with the same seed: words added to copy that is there never shorten the
// time of that panel for any reader. They can make the panel before it passed over by a few more
// readers, so that the page's time grows for all readers together and not for each. All lengths are
// in page heights and x runs in the reading direction, so scale and mirror change nothing else.
//
// Cost: some 25 ns a look; one reader of a page of six panels a few microseconds.
//
// Badly done: no whole-page glances at the beginning and end of a page, which do occur; a panel
// that was passed over still sends its lead; copy is read whole or not at all; hands are known only
// on pages that mark them; nothing of what happens in the story enters but `continues`. Rates of
// passing over and of going back are ours: only what raises them is published.
//
// Sources: presets/read/eye_path.json, constant by constant.

#include "read/eye_path.h"

namespace tw {

void EyePath::clear() {
  fixations.clear();
  panels.clear();
  passedOver.clear();
  cameBackTo.clear();
  ms = 0;
}

EyeWalker::EyeWalker(const EyePage& page)
    : page_(page), moves_(page), looker_(page, path_.fixations) {}

void EyeWalker::look(int panel, bool cameBack) {
  path_.panels.push_back(panel);
  looker_.read(panel, cameBack);
}

/// Goes back to some of the panels passed over since the last one read.
void EyeWalker::comeBack(const EyeReader& reader) {
  for (const int panel : waiting_) {
    Random draws = drawsFor(reader, panel, Draw::PassOver);
    draws.next();  // whether it was passed over
    if (draws.uniform() >= page_.panels()[static_cast<std::size_t>(panel)].cameBack) continue;
    path_.cameBackTo.push_back(panel);
    look(panel, true);
  }
  waiting_.clear();
}

void EyeWalker::comeTo(int panel, const EyeReader& reader) {
  Random draws = drawsFor(reader, panel, Draw::PassOver);
  if (draws.uniform() < page_.panels()[static_cast<std::size_t>(panel)].passedOver) {
    path_.passedOver.push_back(panel);
    waiting_.push_back(panel);
    return;
  }
  const int before = path_.panels.empty() ? -1 : path_.panels.back();
  look(panel, false);
  draws.next();  // whether she would have come back
  if (before >= 0 && draws.uniform() < page_.model().glanceBack) looker_.glance(before);
  comeBack(reader);
}

const EyePath& EyeWalker::walk(std::uint64_t seed, std::uint64_t number) {
  path_.clear();
  waiting_.clear();
  moves_.restart();
  const EyeReader reader(seed, number, page_.model());
  looker_.restart(reader);
  Random order = drawsFor(reader, static_cast<int>(kMostPanels), Draw::PassOver);
  for (int panel = moves_.next(order.uniform()); panel >= 0; panel = moves_.next(order.uniform()))
    comeTo(panel, reader);
  comeBack(reader);
  for (const EyeFixation& fixation : path_.fixations)
    path_.ms += fixation.ms + page_.model().saccadeMs;
  return path_;
}

EyePath eyePathOf(const SeenPage& page, const EyePathModel& model, std::uint64_t seed,
                  std::uint64_t reader) {
  const EyePage ready(page, model);
  return EyeWalker(ready).walk(seed, reader);
}

}  // namespace tw
