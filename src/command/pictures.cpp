#include "command/pictures.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/parallel.h"
#include "command/job_pages.h"
#include "job/missing_things.h"
#include "review/page_case.h"

namespace tw {

namespace {

const Beat* beatOf(const std::vector<Beat>& beats, const std::string& id) {
  const auto found =
      std::find_if(beats.begin(), beats.end(), [&](const Beat& b) { return b.id == id; });
  return found == beats.end() ? nullptr : &*found;
}

Result<RoughPicture> blankPicture(const Job& job, const Page& page, const Rough& rough,
                                  const std::vector<Beat>& beats) {
  for (const RoughPanel& panel : rough.panels)
    if (beatOf(beats, panel.beat) == nullptr)
      return badInput(fmt::format("Rough {} shows panel {}, which is no longer in the script.",
                                  rough.name, panel.beat),
                      {.page = page.number}, "Make new roughs for the page.");
  RoughPicture out;
  out.sheet = job.sheetFor(page);
  out.rightHand = Job::isRightHand(page);
  out.page = page.number;
  out.jobTitle = job.title;
  out.direction = page.brief.direction;
  out.rough = rough;
  out.keepClear = page.brief.keepClear;
  out.notDrawn = thingsNotDrawn(beats);
  out.panels.resize(rough.panels.size());
  out.grids.resize(rough.panels.size());
  return out;
}

}  // namespace

Result<RoughPicture> blankPictureOf(const Job& job, const Page& page, const Rough& rough) {
  return blankPicture(job, page, rough, page.correctedBeats());
}

Drawing drawnPanel(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                   const Brief& brief, int width) {
  DrawOptions options;
  options.setting = beat.setting;
  options.width = width;
  return stager.draw(panel, beat, focusOf(beat, brief), options);
}

Result<std::vector<RoughPicture>> picturesOf(const Job& job, const Page& page, const Stager& stager,
                                             unsigned threads, Progress& progress) {
  const std::vector<Beat> beats = page.correctedBeats();
  std::vector<RoughPicture> out;
  std::vector<std::pair<std::size_t, std::size_t>> work;
  for (const Rough& rough : page.roughs) {
    auto picture = blankPicture(job, page, rough, beats);
    if (!picture) return tl::unexpected(picture.error());
    for (std::size_t i = 0; i < rough.panels.size(); ++i) work.emplace_back(out.size(), i);
    out.push_back(std::move(*picture));
  }
  parallelFor(work.size(), threads, [&](std::size_t w) {
    if (progress.isStopped()) return;
    const auto [rough, i] = work[w];
    const RoughPanel& panel = out[rough].rough.panels[i];
    out[rough].grids[i] = stager.grid(panel, focusOf(*beatOf(beats, panel.beat), page.brief));
    out[rough].panels[i] = drawnPanel(stager, panel, *beatOf(beats, panel.beat), page.brief);
  });
  if (progress.isStopped()) return stopped();
  return out;
}

Result<RoughPicture> pictureOf(const Job& job, const Page& page, const std::string& rough,
                               const Stager& stager) {
  const auto found = roughNamed(page, rough);
  if (!found) return tl::unexpected(found.error());
  Page only = page;
  only.roughs = {page.roughs[*found]};
  Progress progress;
  auto pictures = picturesOf(job, only, stager, 0, progress);
  if (!pictures) return tl::unexpected(pictures.error());
  return std::move(pictures->front());
}

}  // namespace tw
