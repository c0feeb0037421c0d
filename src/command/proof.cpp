#include "command/proof.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <functional>

#include "base/parallel.h"
#include "command/continuity.h"
#include "command/dominant_sheets.h"
#include "command/job_models.h"
#include "command/job_pages.h"
#include "command/pictures.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

constexpr Overlays kAllOverlays{.order = true, .leads = true, .live = true, .card = true};

std::string pageName(const RoughPicture& picture) {
  if (!picture.sheet.spread) return fmt::format("page-{:02}", picture.page);
  return fmt::format("page-{:02}-{:02}", picture.page, picture.page + 1);
}

Result<void> writeFiles(const fs::path& stem, const RoughPicture& picture) {
  const auto file = [&](const char* extension) { return fs::path(stem.string() + extension); };
  if (auto done = writePdf(file(".pdf"), {picture}, kAllOverlays); !done) return done;
  if (auto done = writeSvg(file(".svg"), picture, kAllOverlays); !done) return done;
  return writePng(file(".png"), picture, kAllOverlays);
}

Result<void> writeContactFiles(const fs::path& stem, const std::vector<RoughPicture>& roughs) {
  for (const char* extension : {".pdf", ".svg", ".png"})
    if (auto done = writeContactSheet(fs::path(stem.string() + extension), roughs); !done)
      return done;
  return {};
}

using Work = std::function<Result<void>()>;

/// Runs all, gathers every problem.
Result<void> runAll(const std::vector<Work>& work, unsigned threads, Progress& progress) {
  std::vector<Problems> problems(work.size());
  std::atomic<std::size_t> done{0};
  parallelFor(work.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    if (auto result = work[i](); !result) problems[i] = result.error();
    progress.tell("printing", static_cast<double>(++done) / static_cast<double>(work.size()));
  });
  if (progress.isStopped()) return stopped();
  Problems all;
  for (const Problems& some : problems) all.insert(all.end(), some.begin(), some.end());
  if (!all.empty()) return tl::unexpected(all);
  return {};
}

/// A job opened for drawing.
struct ReadyToDraw {
  OpenJob open;
  std::vector<int> pages;
  Stager stager;
};

Result<ReadyToDraw> readyToDraw(const fs::path& folder, std::optional<int> page) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  auto pages = pagesAsked(open->job, page);
  if (!pages) return tl::unexpected(pages.error());
  auto stager = stagerFor(*open);
  if (!stager) return tl::unexpected(stager.error());
  return ReadyToDraw{std::move(*open), std::move(*pages), std::move(*stager)};
}

/// Everything that the proof shows.
struct Shown {
  std::vector<std::vector<RoughPicture>> pages;
  std::vector<DominantPanel> dominant;
};

Result<Shown> allPictures(const ProofRequest& request, Progress& progress) {
  const auto ready = readyToDraw(request.job, request.page);
  if (!ready) return tl::unexpected(ready.error());
  const Job& job = ready->open.job;
  Shown out;
  out.dominant = dominantPanels(job, ready->pages);
  for (int number : ready->pages) {
    const Page& page = *job.page(number);
    if (page.roughs.empty()) continue;
    auto pictures = picturesOf(job, page, ready->stager, request.threads, progress);
    if (!pictures) return tl::unexpected(pictures.error());
    out.pages.push_back(std::move(*pictures));
    progress.tell("drawing",
                  static_cast<double>(out.pages.size()) / static_cast<double>(ready->pages.size()));
  }
  if (out.pages.empty())
    return badInput("There are no roughs to print.", {.file = request.job.string()},
                    "Make them first: tierwright roughs JOB.");
  return out;
}

/// The chart of the whole story.
Result<void> writeContinuityFiles(const ProofRequest& request) {
  const auto story = storyContinuity(request.job);
  if (!story) return tl::unexpected(story.error());
  ContinuitySheetRequest sheet;
  for (const char* extension : {".pdf", ".svg", ".png"})
    sheet.files.push_back(request.out / (std::string("continuity") + extension));
  sheet.threads = 1;
  Progress quiet;
  return writeContinuitySheets(request.job, *story, sheet, quiet);
}

}  // namespace

Result<ProofFiles> makeProof(const ProofRequest& request, Progress& progress) {
  const auto shown = allPictures(request, progress);
  if (!shown) return tl::unexpected(shown.error());
  ProofFiles out;
  out.book = request.out / "proof.pdf";
  std::vector<Work> work;
  work.push_back([&] { return writeProof(out.book, shown->pages); });
  for (const auto& roughs : shown->pages) {
    const fs::path stem = request.out / (pageName(roughs.front()) + "-roughs");
    out.contact.push_back(stem.string() + ".png");
    work.push_back([stem, &roughs] { return writeContactFiles(stem, roughs); });
    for (const RoughPicture& rough : roughs) {
      if (!request.sheetFiles) continue;
      const fs::path file = request.out / (pageName(rough) + "-" + rough.rough.name);
      work.push_back([file, &rough] { return writeFiles(file, rough); });
      ++out.sheets;
    }
  }
  for (const DominantPanel& about : shown->dominant) {
    if (!request.sheetFiles) continue;
    const fs::path stem = request.out / fmt::format("page-{:02}-{}", about.page, about.rough);
    for (const char* what : {"fit", "variants", "values", "grid"})
      out.dominant.push_back(stem.string() + "-" + what + ".png");
    work.push_back([&request, &about, stem] {
      const auto done = writeDominantSheets(request.job, about, stem);
      return done ? Result<void>() : tl::unexpected(done.error());
    });
  }
  if (request.sheetFiles && !request.page) {
    out.continuity = request.out / "continuity.pdf";
    work.push_back([&request] { return writeContinuityFiles(request); });
  }
  if (auto done = runAll(work, request.threads, progress); !done)
    return tl::unexpected(done.error());
  return out;
}

Result<void> showRough(const ShowRequest& request) {
  const auto ready = readyToDraw(request.job, request.page);
  if (!ready) return tl::unexpected(ready.error());
  const Job& job = ready->open.job;
  const auto picture =
      pictureOf(job, *job.page(ready->pages.front()), request.rough, ready->stager);
  if (!picture) return tl::unexpected(picture.error());
  if (request.pdf)
    if (auto done = writePdf(*request.pdf, {*picture}, request.overlays); !done) return done;
  if (request.svg)
    if (auto done = writeSvg(*request.svg, *picture, request.overlays); !done) return done;
  if (request.png)
    if (auto done = writePng(*request.png, *picture, request.overlays, request.dpi); !done)
      return done;
  return {};
}

Result<void> chooseRough(const fs::path& job, int number, const std::string& rough) {
  auto open = openJob(job);
  if (!open) return tl::unexpected(open.error());
  if (auto writable = mustBeWritable(*open); !writable) return writable;
  const auto numbers = pagesAsked(open->job, number);
  if (!numbers) return tl::unexpected(numbers.error());
  Page& page = *open->job.page(numbers->front());
  if (!rough.empty())
    if (auto known = roughNamed(page, rough); !known) return tl::unexpected(known.error());
  page.choice = rough;
  return open->folder.savePage(page);
}

}  // namespace tw
