#include "command/dominant_sheets.h"

#include <algorithm>

#include "command/fit.h"
#include "command/proof.h"
#include "command/values.h"
#include "command/variants.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

const Rough& shownRough(const Page& page) {
  const auto chosen = std::ranges::find(page.roughs, page.choice, &Rough::name);
  return chosen == page.roughs.end() ? page.roughs.front() : *chosen;
}

struct Files {
  fs::path png, svg;
};
Files filesOf(const fs::path& stem, const char* what) {
  const std::string name = stem.string() + "-" + what;
  return {name + ".png", name + ".svg"};
}

Result<void> writeFit(const fs::path& job, const DominantPanel& about, const Files& files) {
  const auto answers =
      fitFigure({.job = job, .page = about.page, .rough = about.rough, .panel = about.panel});
  if (!answers) return tl::unexpected(answers.error());
  if (auto done = drawFitPng(files.png, *answers); !done) return done;
  return drawFitSvg(files.svg, *answers);
}

Result<void> writeVariants(const fs::path& job, const DominantPanel& about, const Files& files) {
  VariantsRequest request;
  request.job = job;
  request.page = about.page;
  request.rough = about.rough;
  request.panel = about.panel;
  request.pictures = {files.png, files.svg};
  const auto made = makeVariants(request);
  return made ? Result<void>() : tl::unexpected(made.error());
}

Result<void> writeValues(const fs::path& job, const DominantPanel& about, const Files& files) {
  ValuesRequest request;
  request.job = job;
  request.page = about.page;
  request.rough = about.rough;
  request.png = files.png;
  request.svg = files.svg;
  const auto values = valuesOf(request);
  return values ? Result<void>() : tl::unexpected(values.error());
}

Result<void> writeGrid(const fs::path& job, const DominantPanel& about, const Files& files) {
  ShowRequest request;
  request.job = job;
  request.page = about.page;
  request.rough = about.rough;
  request.overlays.grid = true;
  request.png = files.png;
  request.svg = files.svg;
  return showRough(request);
}

}  // namespace

std::vector<DominantPanel> dominantPanels(const Job& job, const std::vector<int>& pages) {
  std::vector<DominantPanel> out;
  for (const int number : pages) {
    const Page* page = job.page(number);
    if (page == nullptr || page->roughs.empty()) continue;
    const Rough& rough = shownRough(*page);
    for (std::size_t i = 0; i < rough.panels.size(); ++i)
      if (rough.panels[i].dominant && !rough.panels[i].staging.figures.empty())
        out.push_back({number, rough.name, static_cast<int>(i) + 1});
  }
  return out;
}

Result<std::vector<fs::path>> writeDominantSheets(const fs::path& job, const DominantPanel& about,
                                                  const fs::path& stem) {
  using Writer = Result<void> (*)(const fs::path&, const DominantPanel&, const Files&);
  constexpr std::pair<const char*, Writer> kSheets[] = {
      {"fit", writeFit}, {"variants", writeVariants}, {"values", writeValues}, {"grid", writeGrid}};
  std::vector<fs::path> out;
  for (const auto& [what, write] : kSheets) {
    const Files files = filesOf(stem, what);
    if (auto done = write(job, about, files); !done) return tl::unexpected(done.error());
    out.insert(out.end(), {files.png, files.svg});
  }
  return out;
}

}  // namespace tw
