#include "job/look_at.h"

#include <algorithm>

namespace tw {

namespace {

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

LooksAlong::LooksAlong(const Character& character, const StoryTime& story, const LookWords& words)
    : character_(character), story_(story), usual_(words.itemsIn(character.note)) {
  for (const LookNote& note : character.looks) {
    Statement said{0, {}, &note, words.itemsIn(note.words)};
    if (!note.from.empty()) {
      const auto from = story.momentOf(note.from);
      if (!from) continue;  // its panel is gone from the script
      said.from = *from;
    }
    if (!note.until.empty()) said.until = story.momentOf(note.until);
    statements_.push_back(std::move(said));
  }
  std::ranges::stable_sort(statements_, {}, &Statement::from);
}

LookHeld LooksAlong::at(std::size_t moment) const {
  LookHeld held;
  for (const LookItem& item : usual_) take(item, nullptr, held);
  if (!character_.hand.empty()) held.hand = character_.hand;
  for (const Statement& said : statements_) {
    if (said.from > moment) break;
    if (said.until && *said.until < moment) continue;
    const bool here = said.note->from.empty() || story_.sameStrand(said.from, moment);
    const std::size_t before = held.dressings.size();
    for (const LookItem& item : said.items)
      if (here || item.lasting) take(item, said.note, held);
    if (said.note->instead && held.dressings.size() > before) held.dressings[before].instead = true;
  }
  return held;
}

LookHeld lookAt(const Character& character, const StoryTime& story, std::size_t moment,
                const LookWords& words) {
  return LooksAlong(character, story, words).at(moment);
}

void sayHands(Job& job, const LookWords& words) {
  std::map<std::string, std::map<std::string, std::string>> said;  // beat → prop → hand
  const StoryTime story(job);
  std::map<std::string, LooksAlong> looks;
  for (const Character& who : job.cast) looks.try_emplace(who.id, who, story, words);
  for (std::size_t m = 0; m < story.moments().size(); ++m)
    for (const Prop& prop : story.moments()[m].beat->props) {
      const auto holder = looks.find(prop.heldBy);
      if (holder == looks.end()) continue;
      const LookHeld held = holder->second.at(m);
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
