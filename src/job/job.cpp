#include "job/job.h"

#include <algorithm>

namespace tw {

namespace {

void apply(const BeatOverride& change, Beat& beat) {
  if (change.shot) beat.shot = change.shot;
  if (change.eye) beat.eye = change.eye;
  if (change.lensMm) beat.lensMm = change.lensMm;
  if (change.rollDeg) beat.rollDeg = change.rollDeg;
  if (change.light) beat.light = *change.light;
  if (change.dominant) beat.dominant = *change.dominant;
  if (change.weight) beat.weight = *change.weight;
  if (change.setting) beat.setting = *change.setting;
  if (change.scene) beat.scene = *change.scene;
}

bool isIn(const std::vector<BeatFigure>& figures, const std::string& who) {
  return std::any_of(figures.begin(), figures.end(),
                     [&](const BeatFigure& figure) { return figure.who == who; });
}

void applyProps(const BeatOverride& change, Beat& beat) {
  for (const Prop& prop : change.addProps)
    if (std::ranges::find(beat.props, prop.id, &Prop::id) == beat.props.end())
      beat.props.push_back(prop);
  for (const Prop& prop : change.addProps)
    std::erase_if(beat.notDrawn,
                  [&](const std::string& name) { return name == prop.id || name == prop.name; });
  for (const std::string& id : change.dropProps) {
    std::erase_if(beat.props, [&](const Prop& prop) { return prop.id == id; });
    for (BeatFigure& figure : beat.figures)
      if (figure.target == id) figure.relation = figure.target = "";
  }
}

void apply(const PropOverride& change, Prop& prop) {
  if (change.hand) prop.hand = *change.hand == "any" ? "" : *change.hand;
  if (change.shape) prop.shape = *change.shape;
  if (change.model) prop.model = *change.model;
  if (change.up) prop.up = *change.up;
  if (change.sizeM) {
    prop.sizeM = *change.sizeM;
    prop.heightM = prop.sizeM[1];
  }
  if (change.placeM) prop.placeM = change.placeM;
  if (change.turnDeg) prop.turnDeg = change.turnDeg;
}

/// Who holds a thing has it in the hand; who does something else has put it down.
void applyDoing(const std::string& words, Beat& beat, BeatFigure& figure) {
  const Doing doing = doingIn(words, beat);
  for (Prop& prop : beat.props) {
    if (prop.heldBy == figure.who) prop.heldBy.clear();
    if (doing.relation == "holds" && prop.id == doing.target) prop.heldBy = figure.who;
  }
  figure.relation = doing.relation;
  figure.target = doing.target;
}

void applyCopy(const BeatOverride& change, Beat& beat) {
  for (CopyItem& item : beat.copy)
    if (const auto own = change.copy.find(item.id); own != change.copy.end()) {
      item.text = own->second.text;
      item.words = own->second.words;
    }
  std::erase_if(beat.copy, [&](const CopyItem& item) {
    return item.text.empty() && change.copy.contains(item.id);
  });
}

}  // namespace

Doing doingIn(std::string_view words, const Beat& beat) {
  if (words == "nothing") return {};
  const std::size_t space = words.rfind(' ');
  const std::string last(space == std::string_view::npos ? words : words.substr(space + 1));
  const bool known = isIn(beat.figures, last) ||
                     std::ranges::find(beat.props, last, &Prop::id) != beat.props.end();
  if (!known || space == std::string_view::npos) return {std::string(words), {}};
  return {std::string(words.substr(0, space)), last};
}

Beat withOverride(Beat beat, const BeatOverride& change) {
  apply(change, beat);
  applyProps(change, beat);
  for (Prop& prop : beat.props)
    if (const auto own = change.props.find(prop.id); own != change.props.end())
      apply(own->second, prop);
  applyCopy(change, beat);
  for (const std::string& who : change.addFigures)
    if (!isIn(beat.figures, who)) beat.figures.push_back({who, "stand", "", ""});
  for (const std::string& who : change.dropFigures)
    std::erase_if(beat.figures, [&](const BeatFigure& figure) { return figure.who == who; });
  for (BeatFigure& figure : beat.figures)
    if (const auto pose = change.poses.find(figure.who); pose != change.poses.end())
      figure.pose = pose->second;
  for (BeatFigure& figure : beat.figures)
    if (const auto does = change.does.find(figure.who); does != change.does.end())
      applyDoing(does->second, beat, figure);
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
