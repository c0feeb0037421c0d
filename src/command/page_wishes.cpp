#include "command/page_wishes.h"

#include <algorithm>
#include <set>

#include "command/job_models.h"
#include "command/job_pages.h"
#include "command/letter_again.h"
#include "job/brief_keys.h"
#include "job/override_keys.h"
#include "script/breakdown.h"
#include "script/count_words.h"
#include "stage/figure.h"
#include "stage/light_wish.h"
#include "stage/solid_shapes.h"

namespace tw {

namespace {

std::string beatIn(const std::string& setting) {
  return setting.substr(0, setting.find('.'));
}

bool retypes(const std::string& setting) {
  return setting.substr(0, setting.find('=')).find(".copy.") != std::string::npos;
}

Result<void> letterAll(Job& job, const std::set<std::string>& beats) {
  if (beats.empty()) return {};
  const auto letterer = Letterer::make();
  if (!letterer) return tl::unexpected(letterer.error());
  for (Page& page : job.pages)
    for (const Beat& beat : page.beats)
      if (beats.contains(beat.id))
        if (auto done = letterAgain(page, job, beat.id, *letterer); !done) return done;
  return {};
}

/// The page that the beat id before the first dot belongs to.
Result<Page*> pageOfSetting(Job& job, const std::string& setting) {
  const std::string beat = beatIn(setting);
  for (Page& page : job.pages)
    for (const Beat& b : page.beats)
      if (b.id == beat) return &page;
  return badInput("No panel is called \"" + beat + "\".", {},
                  "A correction reads PANEL.KEY=VALUE, for example p3-2.shot=close-up; "
                  "`tierwright beats JOB` lists the panels.");
}

/// A thing that no word describes but a model does: as large as the model is.
Result<std::optional<Prop>> modelledThing(const std::filesystem::path& job,
                                          const std::string& name) {
  const std::vector<std::string> models = modelNames(job);
  if (std::ranges::find(models, modelNameOf(name)) == models.end()) return std::nullopt;
  const auto model = readModel(job, name);
  if (!model) return tl::unexpected(model.error());
  Beat beat;
  beat.props = {{name, name}};
  return sizedByModels(beat, {{modelNameOf(name), *model}}).props[0];
}

}  // namespace

Result<KnownWords> knownWordsOf(const std::filesystem::path& job) {
  const auto poses = PoseLibrary::load();
  if (!poses) return tl::unexpected(poses.error());
  auto lexicon = loadLexicon();
  if (!lexicon) return tl::unexpected(lexicon.error());
  KnownWords known;
  known.poses = poses->names();
  known.relations = relationsOf(*lexicon);
  auto lights = LightWords::load();
  if (!lights) return tl::unexpected(lights.error());
  known.light = [named = std::move(*lights)](std::string_view text) -> Result<void> {
    if (auto light = lightAsked(text, named); !light) return tl::unexpected(light.error());
    return {};
  };
  known.words = [](std::string_view text) { return WordCounter().count(text); };
  known.shapes = shapeNames();
  known.models = modelNames(job);
  known.thing = [words = std::move(*lexicon),
                 job](std::string_view name) -> Result<std::optional<Prop>> {
    if (std::optional<Prop> thing = thingNamed(name, words)) return thing;
    return modelledThing(job, std::string(name));
  };
  return known;
}

Result<BriefShown> changeBrief(const std::filesystem::path& folder, int number,
                               const std::vector<std::string>& settings) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  const auto numbers = pagesAsked(open->job, number);
  if (!numbers) return tl::unexpected(numbers.error());
  Page& page = *open->job.page(numbers->front());
  Problems problems;
  for (const std::string& setting : settings)
    if (auto set = setBriefKey(page.brief, setting); !set)
      problems.insert(problems.end(), set.error().begin(), set.error().end());
  if (problems.empty() && !settings.empty()) problems = unknownNamesIn(page.brief, page, open->job);
  if (!problems.empty()) return tl::unexpected(problems);
  if (!settings.empty()) {
    if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
    if (auto saved = open->folder.savePage(page); !saved) return tl::unexpected(saved.error());
  }
  Problems contradictions = contradictionsOf(page.brief, page, open->job);
  return BriefShown{open->job, page, std::move(contradictions)};
}

Result<void> changeBeats(const std::filesystem::path& folder,
                         const std::vector<std::string>& settings) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  if (auto writable = mustBeWritable(*open); !writable) return writable;
  const auto known = knownWordsOf(open->folder.path());
  if (!known) return tl::unexpected(known.error());
  Problems problems;
  std::set<std::string> retyped;
  for (const std::string& setting : settings) {
    if (retypes(setting)) retyped.insert(beatIn(setting));
    const auto page = pageOfSetting(open->job, setting);
    const auto set = page ? setOverrideKey(**page, open->job, setting, *known)
                          : Result<void>(tl::unexpected(page.error()));
    if (!set) problems.insert(problems.end(), set.error().begin(), set.error().end());
  }
  if (!problems.empty()) return tl::unexpected(problems);
  if (auto lettered = letterAll(open->job, retyped); !lettered) return lettered;
  if (auto models = modelsOf(open->folder.path(), open->job); !models)
    return tl::unexpected(models.error());
  return open->folder.save(open->job);
}

}  // namespace tw
