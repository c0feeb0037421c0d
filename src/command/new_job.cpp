#include "command/new_job.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "command/job_pages.h"
#include "job/look_at.h"

namespace tw {

namespace {

Page pageOf(const ScriptPage& from) {
  Page page;
  page.number = from.number;
  page.spread = from.spread;
  page.title = from.title;
  page.note = from.note;
  page.beats = from.beats;
  return page;
}

ScriptPage scriptPageOf(const Page& from) {
  ScriptPage page;
  page.number = page.lastNumber = from.number;
  page.spread = from.spread;
  if (from.spread) ++page.lastNumber;
  page.beats = from.beats;
  return page;
}

/// The character as it was, with the looks that the revised script tells and the artist's own.
Character withOwnLooks(Character known, std::vector<LookNote> told) {
  std::erase_if(known.looks, [](const LookNote& note) { return note.source != "artist"; });
  known.looks.insert(known.looks.begin(), told.begin(), told.end());
  return known;
}

/// The new cast, with what the artist set on characters that stay.
std::vector<Character> carriedCast(const std::vector<Character>& before,
                                   std::vector<Character> after) {
  for (Character& character : after)
    for (const Character& known : before)
      if (known.id == character.id) character = withOwnLooks(known, std::move(character.looks));
  return after;
}

std::vector<ScriptChange> castChanges(const std::vector<Character>& before,
                                      const std::vector<Character>& after) {
  std::vector<ScriptChange> out;
  const auto has = [](const std::vector<Character>& cast, const std::string& id) {
    return std::any_of(cast.begin(), cast.end(), [&](const Character& c) { return c.id == id; });
  };
  for (const Character& c : after)
    if (!has(before, c.id)) out.push_back({0, 0, fmt::format("new in the cast: {}", c.name)});
  for (const Character& c : before)
    if (!has(after, c.id)) out.push_back({0, 0, fmt::format("no longer in the cast: {}", c.name)});
  return out;
}

int beatsInCommon(const Page& was, const ScriptPage& is) {
  const auto known = [&](const Beat& beat) {
    return std::any_of(was.beats.begin(), was.beats.end(),
                       [&](const Beat& other) { return other.id == beat.id; });
  };
  return static_cast<int>(std::count_if(is.beats.begin(), is.beats.end(), known));
}

/// For each revised page the page it was before, or nothing: the one with most beats in common, of
/// equals the one of its number. A page that was slips along when another is put in before it.
std::vector<const Page*> originsOf(const std::vector<Page>& before,
                                   const std::vector<ScriptPage>& after) {
  std::vector<std::tuple<int, bool, std::size_t, std::size_t>> pairs;
  for (std::size_t is = 0; is < after.size(); ++is)
    for (std::size_t was = 0; was < before.size(); ++was) {
      const int common = beatsInCommon(before[was], after[is]);
      const bool otherNumber = before[was].number != after[is].number;
      if (common > 0 || !otherNumber) pairs.emplace_back(-common, otherNumber, is, was);
    }
  std::sort(pairs.begin(), pairs.end());
  std::vector<const Page*> origins(after.size());
  std::set<std::size_t> taken;
  for (const auto& [cost, otherNumber, is, was] : pairs)
    if (origins[is] == nullptr && taken.insert(was).second) origins[is] = &before[was];
  return origins;
}

/// Corrections go with their beats, also onto another page; those of beats that are gone stay.
void carryOverrides(const std::vector<Page>& before, std::vector<Page>& pages) {
  std::map<std::string, BeatOverride> all;
  for (const Page& old : before) all.insert(old.overrides.begin(), old.overrides.end());
  for (Page& page : pages)
    for (const Beat& beat : page.beats) {
      const auto found = all.find(beat.id);
      if (found == all.end()) continue;
      for (Page& other : pages) other.overrides.erase(beat.id);
      page.overrides.insert(*found);
    }
}

/// So do answered findings; those on whole pages stay with the page.
void carrySilenced(std::vector<Page>& pages) {
  for (Page& from : pages) {
    std::vector<Silenced> stays;
    for (Silenced& answered : from.silenced) {
      const auto now = std::ranges::find_if(pages, [&](const Page& page) {
        return std::ranges::find(page.beats, answered.beat, &Beat::id) != page.beats.end();
      });
      const bool moves = !answered.beat.empty() && now != pages.end() && &*now != &from;
      (moves ? now->silenced : stays).push_back(std::move(answered));
    }
    from.silenced = std::move(stays);
  }
}

/// The revised pages with brief, overrides, roughs and notes of the pages before.
std::vector<Page> carriedPages(const std::vector<Page>& before,
                               const std::vector<ScriptPage>& after) {
  const std::vector<const Page*> origins = originsOf(before, after);
  std::vector<Page> out;
  for (std::size_t i = 0; i < after.size(); ++i) {
    Page page = pageOf(after[i]);
    if (const Page* old = origins[i]) {
      page.overrides = old->overrides;
      page.brief = old->brief;
      page.roughs = old->roughs;
      page.choice = old->choice;
      page.silenced = old->silenced;
      if (!old->note.empty()) page.note = old->note;
    }
    out.push_back(std::move(page));
  }
  carryOverrides(before, out);
  carrySilenced(out);
  return out;
}

/// The script's scenes, and those that the artist opened and still uses.
std::vector<StoryScene> carriedScenes(const std::vector<StoryScene>& before,
                                      std::vector<StoryScene> after,
                                      const std::vector<Page>& pages) {
  const auto isUsed = [&](const std::string& id) {
    return std::ranges::any_of(pages, [&](const Page& page) {
      return std::ranges::any_of(page.overrides,
                                 [&](const auto& change) { return change.second.scene == id; });
    });
  };
  for (const StoryScene& scene : before)
    if (std::ranges::find(after, scene.id, &StoryScene::id) == after.end() && isUsed(scene.id))
      after.push_back(scene);
  return after;
}

std::vector<std::string> beatIds(const std::vector<ScriptPage>& pages) {
  std::vector<std::string> out;
  for (const ScriptPage& page : pages)
    for (const Beat& beat : page.beats) out.push_back(beat.id);
  return out;
}

/// Looks follow their beats when these take over the ids they had.
void renameLooks(const std::vector<std::string>& from, const std::vector<std::string>& to,
                 std::vector<Character>& cast) {
  std::map<std::string, std::string> names;
  for (std::size_t i = 0; i < from.size(); ++i) names.emplace(from[i], to[i]);
  const auto rename = [&](std::string& id) {
    if (const auto found = names.find(id); found != names.end()) id = found->second;
  };
  for (Character& character : cast)
    for (LookNote& note : character.looks) rename(note.from), rename(note.until);
}

Result<void> sayHands(Job& job) {
  const auto words = LookWords::load();
  if (!words) return tl::unexpected(words.error());
  tw::sayHands(job, *words);
  return {};
}

}  // namespace

Result<Imported> newJob(const NewJobRequest& request) {
  const auto script = readScriptFile(request.script);
  if (!script) return tl::unexpected(script.error());
  const auto sheet = loadSheet(request.sheet);
  if (!sheet) return tl::unexpected(sheet.error());
  Imported out;
  out.warnings = script->warnings;
  out.job.title = !request.title.empty()   ? request.title
                  : !script->title.empty() ? script->title
                                           : request.script.stem().string();
  out.job.client = request.client;
  out.job.sheet = *sheet;
  out.job.cast = script->cast;
  for (const ScriptPage& page : script->pages) out.job.pages.push_back(pageOf(page));
  out.job.scenes = script->scenes;
  if (auto said = sayHands(out.job); !said) return tl::unexpected(said.error());
  auto folder = JobFolder::create(request.folder, out.job);
  if (!folder) return tl::unexpected(folder.error());
  auto kept = folder->keepScript(request.script);
  if (!kept) return tl::unexpected(kept.error());
  out.job.scriptFile = *kept;
  if (auto saved = folder->save(out.job); !saved) return tl::unexpected(saved.error());
  return out;
}

Result<Imported> reviseJob(const std::filesystem::path& folder,
                           const std::filesystem::path& scriptFile) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
  auto script = readScriptFile(scriptFile);
  if (!script) return tl::unexpected(script.error());
  std::vector<ScriptPage> before;
  for (const Page& page : open->job.pages) before.push_back(scriptPageOf(page));
  Imported out;
  out.warnings = script->warnings;
  const std::vector<std::string> written = beatIds(script->pages);
  out.changes = carryOver(before, script->pages);
  renameLooks(written, beatIds(script->pages), script->cast);
  carryScenesOver(open->job.scenes, before, script->scenes, script->pages);
  const auto cast = castChanges(open->job.cast, script->cast);
  out.changes.insert(out.changes.end(), cast.begin(), cast.end());
  out.job = open->job;
  out.job.cast = carriedCast(open->job.cast, script->cast);
  out.job.pages = carriedPages(open->job.pages, script->pages);
  out.job.scenes = carriedScenes(open->job.scenes, script->scenes, out.job.pages);
  if (auto said = sayHands(out.job); !said) return tl::unexpected(said.error());
  auto kept = open->folder.keepScript(scriptFile);
  if (!kept) return tl::unexpected(kept.error());
  out.job.scriptFile = *kept;
  if (auto saved = open->folder.save(out.job); !saved) return tl::unexpected(saved.error());
  return out;
}

}  // namespace tw
