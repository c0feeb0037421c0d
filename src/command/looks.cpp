#include "command/looks.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/job_pages.h"
#include "job/assignment.h"
#include "job/look_at.h"
#include "job/story_time.h"

namespace tw {

namespace {

Result<Character*> characterNamed(Job& job, const std::string& who) {
  for (Character& character : job.cast)
    if (character.id == who) return &character;
  std::vector<std::string> ids;
  for (const Character& character : job.cast) ids.push_back(character.id);
  return badInput(fmt::format("{} is not in the cast.", who), {},
                  fmt::format("The cast is: {}.", fmt::join(ids, ", ")));
}

/// The first or last beat, in story time, that a panel, page or scene by its name holds.
Result<std::string> beatNamed(const StoryTime& story, std::string name, bool last) {
  if (name.starts_with("page ")) name = name.substr(5);
  const auto page = wholeNumber(name);
  std::string found;
  for (std::size_t m = 0; m < story.moments().size(); ++m) {
    const Moment& at = story.moments()[m];
    const bool is =
        at.beat->id == name || story.sceneOf(m).id == name || (page && at.page == *page);
    if (is && (last || found.empty())) found = at.beat->id;
  }
  if (!found.empty()) return found;
  return badInput(fmt::format("There is no panel, page or scene \"{}\".", name), {},
                  "Write a panel such as p6-1, a page such as 6, or a scene such as s4; "
                  "tierwright beats lists them.");
}

Result<void> addStatement(const Job& job, Character& who, const LookStatement& said) {
  const StoryTime story(job);
  LookNote note;
  note.words = said.words;
  note.instead = said.instead;
  note.source = "artist";
  if (!said.from.empty() && said.from != "start") {
    auto from = beatNamed(story, said.from, false);
    if (!from) return tl::unexpected(from.error());
    note.from = *from;
  }
  if (!said.until.empty()) {
    auto until = beatNamed(story, said.until, true);
    if (!until) return tl::unexpected(until.error());
    note.until = *until;
    if (!note.from.empty() && *story.momentOf(note.until) < *story.momentOf(note.from))
      return badInput(fmt::format("{} comes before {} in story time.", said.until, said.from), {},
                      "Exchange the two.");
  }
  who.looks.push_back(std::move(note));
  return {};
}

Result<void> dropStatement(Character& who, int number) {
  const auto count = static_cast<int>(who.looks.size());
  if (number < 1 || number > count)
    return badInput(fmt::format("{} has no statement {}.", who.id, number), {},
                    count == 0 ? "There are none." : fmt::format("They go from 1 to {}.", count));
  who.looks.erase(who.looks.begin() + number - 1);
  return {};
}

Result<void> setHand(Character& who, const std::string& hand) {
  if (hand == "guess") return who.hand.clear(), Result<void>();
  if (hand != "left" && hand != "right" && hand != "both")
    return badInput(fmt::format("\"{}\" is no hand.", hand), {},
                    "Write left, right, both or guess.");
  who.hand = hand;
  return {};
}

Result<void> apply(Job& job, const LookStatement& said) {
  auto who = characterNamed(job, said.who);
  if (!who) return tl::unexpected(who.error());
  if (said.drop)
    if (auto done = dropStatement(**who, *said.drop); !done) return done;
  if (said.hand)
    if (auto done = setHand(**who, *said.hand); !done) return done;
  if (!said.words.empty())
    if (auto done = addStatement(job, **who, said); !done) return done;
  return {};
}

}  // namespace

Result<Job> changeLooks(const std::filesystem::path& folder, const LookStatement& said) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  const bool changes = !said.words.empty() || said.hand || said.drop;
  if (!changes) {
    if (!said.who.empty())
      if (auto known = characterNamed(open->job, said.who); !known)
        return tl::unexpected(known.error());
    return std::move(open->job);
  }
  if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
  if (auto done = apply(open->job, said); !done) return tl::unexpected(done.error());
  const auto words = LookWords::load();
  if (!words) return tl::unexpected(words.error());
  sayHands(open->job, *words);
  if (auto saved = open->folder.save(open->job); !saved) return tl::unexpected(saved.error());
  return std::move(open->job);
}

}  // namespace tw
