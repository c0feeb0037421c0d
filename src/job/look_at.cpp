#include "job/look_at.h"

#include <algorithm>

namespace tw {

namespace {

struct Timed {
  std::size_t from = 0;
  const LookNote* note = nullptr;
  bool here = true;  ///< holds in this strand of the story
};

/// Statements that reach the moment, in story order.
std::vector<Timed> reaching(const Character& character, const StoryTime& story,
                            std::size_t moment) {
  std::vector<Timed> out;
  for (const LookNote& note : character.looks) {
    Timed timed{0, &note, true};
    if (!note.from.empty()) {
      const auto from = story.momentOf(note.from);
      if (!from || *from > moment) continue;
      timed = {*from, &note, story.sameStrand(*from, moment)};
    }
    const auto until = note.until.empty() ? std::nullopt : story.momentOf(note.until);
    if (until && *until < moment) continue;
    out.push_back(timed);
  }
  std::ranges::stable_sort(out, {}, &Timed::from);
  return out;
}

void takeMark(const LookItem& item, const LookNote* note, std::vector<BodyMark>& marks) {
  const bool whole = item.place.empty();
  std::erase_if(marks, [&](const BodyMark& mark) {
    const bool sameSide = item.side.empty() || mark.side.empty() || mark.side == item.side;
    return mark.kind == item.mark && (whole || (mark.place == item.place && sameSide));
  });
  if (!item.off)
    marks.push_back({item.mark, item.place, item.side, item.lasting, item.paired, note});
}

void take(const LookItem& item, const LookNote* note, LookHeld& held) {
  switch (item.kind) {
    case LookItem::Kind::Mark:
      return takeMark(item, note, held.marks);
    case LookItem::Kind::WorkingHand:
      held.hand = item.side;
      return;
    case LookItem::Kind::Held:
      held.hands[item.thing] = item.off ? "" : item.side;
      return;
    case LookItem::Kind::Costume:
      if (note != nullptr) held.dressings.push_back({item.words, item.off, false, note});
      return;
  }
}

/// Small, and only held: what is pulled, put on or worked at takes both hands.
bool isHeldLightly(const Prop& prop, const Beat& beat) {
  constexpr double kLargestM = 0.6;
  const bool small = *std::ranges::max_element(prop.sizeM) <= kLargestM;
  return small && std::ranges::none_of(beat.figures, [&](const BeatFigure& figure) {
           return figure.who == prop.heldBy && figure.target == prop.id &&
                  figure.relation != "holds";
         });
}

}  // namespace

LookHeld lookAt(const Character& character, const StoryTime& story, std::size_t moment,
                const LookWords& words) {
  LookHeld held;
  for (const LookItem& item : words.itemsIn(character.note)) take(item, nullptr, held);
  if (!character.hand.empty()) held.hand = character.hand;
  for (const Timed& timed : reaching(character, story, moment)) {
    const std::size_t before = held.dressings.size();
    for (const LookItem& item : words.itemsIn(timed.note->words))
      if (timed.here || item.lasting) take(item, timed.note, held);
    if (timed.note->instead && held.dressings.size() > before)
      held.dressings[before].instead = true;
  }
  return held;
}

void sayHands(Job& job, const LookWords& words) {
  std::map<std::string, std::map<std::string, std::string>> said;  // beat → prop → hand
  const StoryTime story(job);
  for (std::size_t m = 0; m < story.moments().size(); ++m)
    for (const Prop& prop : story.moments()[m].beat->props) {
      const Character* holder = job.character(prop.heldBy);
      if (holder == nullptr) continue;
      const LookHeld held = lookAt(*holder, story, m, words);
      for (const auto& [thing, hand] : held.hands)
        if (!hand.empty() && (thing == prop.name || thing == prop.id))
          said[story.moments()[m].beat->id][prop.id] = hand;
      if (!held.hand.empty() && held.hand != "both" && prop.hand.empty() &&
          isHeldLightly(prop, *story.moments()[m].beat))
        said[story.moments()[m].beat->id].emplace(prop.id, held.hand);
    }
  for (Page& page : job.pages)
    for (Beat& beat : page.beats)
      if (const auto found = said.find(beat.id); found != said.end())
        for (Prop& prop : beat.props)
          if (const auto hand = found->second.find(prop.id); hand != found->second.end())
            prop.hand = hand->second;
}

}  // namespace tw
