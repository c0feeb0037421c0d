#include "job/job.h"

#include <algorithm>

namespace tw {

namespace {

void apply(const BeatOverride& change, Beat& beat) {
  if (change.shot) beat.shot = change.shot;
  if (change.eye) beat.eye = change.eye;
  if (change.dominant) beat.dominant = *change.dominant;
  if (change.weight) beat.weight = *change.weight;
  if (change.setting) beat.setting = *change.setting;
}

bool isIn(const std::vector<BeatFigure>& figures, const std::string& who) {
  return std::any_of(figures.begin(), figures.end(),
                     [&](const BeatFigure& figure) { return figure.who == who; });
}

}  // namespace

Beat withOverride(Beat beat, const BeatOverride& change) {
  apply(change, beat);
  for (const std::string& who : change.addFigures)
    if (!isIn(beat.figures, who)) beat.figures.push_back({who, "stand", "", ""});
  for (const std::string& who : change.dropFigures)
    std::erase_if(beat.figures, [&](const BeatFigure& figure) { return figure.who == who; });
  for (BeatFigure& figure : beat.figures)
    if (const auto pose = change.poses.find(figure.who); pose != change.poses.end())
      figure.pose = pose->second;
  return beat;
}

std::vector<Beat> Page::correctedBeats() const {
  std::vector<Beat> corrected = beats;
  bool named = false;
  for (Beat& beat : corrected) {
    const auto change = overrides.find(beat.id);
    if (change == overrides.end()) continue;
    beat = withOverride(std::move(beat), change->second);
    named = named || change->second.dominant == true;
  }
  if (named)  // only one panel can dominate: the artist's word beats the breakdown's guess
    for (Beat& beat : corrected) {
      const auto change = overrides.find(beat.id);
      if (change == overrides.end() || change->second.dominant != true) beat.dominant = false;
    }
  return corrected;
}

const Page* Job::page(int number) const {
  const auto found = std::find_if(pages.begin(), pages.end(),
                                  [&](const Page& page) { return page.number == number; });
  return found == pages.end() ? nullptr : &*found;
}

Page* Job::page(int number) {
  return const_cast<Page*>(std::as_const(*this).page(number));
}

const Character* Job::character(const std::string& id) const {
  const auto found =
      std::find_if(cast.begin(), cast.end(), [&](const Character& c) { return c.id == id; });
  return found == cast.end() ? nullptr : &*found;
}

Sheet Job::sheetFor(const Page& page) const {
  return page.spread && !sheet.spread ? spreadOf(sheet) : sheet;
}

}  // namespace tw
