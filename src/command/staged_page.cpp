#include "command/staged_page.h"

#include "command/job_models.h"

namespace tw {

namespace {

std::string roughWanted(const std::string& asked, const Page& page) {
  if (!asked.empty()) return asked;
  if (!page.choice.empty()) return page.choice;
  return page.roughs.empty() ? "A" : page.roughs.front().name;
}

}  // namespace

Result<std::unique_ptr<StagedPage>> stagePage(Job job, std::shared_ptr<const Workshop> workshop,
                                              int page, const std::string& rough,
                                              unsigned threads) {
  const auto numbers = pagesAsked(job, page);
  if (!numbers) return tl::unexpected(numbers.error());
  const Page& asked = *job.page(numbers->front());
  const auto named = roughNamed(asked, roughWanted(rough, asked));
  if (!named) return tl::unexpected(named.error());
  auto lights = LightWords::load();
  if (!lights) return tl::unexpected(lights.error());

  auto out = std::make_unique<StagedPage>(std::move(job), std::move(workshop));
  out->page = numbers->front();
  out->rough = *named;
  out->lights = std::move(*lights);
  auto wishes = pageCaseOf(out->job, out->stored(), out->workshop->letterer);
  if (!wishes) return tl::unexpected(wishes.error());
  out->wishes = std::move(*wishes);
  auto measured = MeasuredPage::of(out->wishes, *out->workshop, out->lights,
                                   out->stored().roughs[*named], threads);
  if (!measured) return tl::unexpected(measured.error());
  out->measured = std::make_unique<MeasuredPage>(std::move(*measured));
  return out;
}

Result<std::unique_ptr<StagedPage>> openStagedPage(const std::filesystem::path& job, int page,
                                                   const std::string& rough, unsigned threads) {
  auto open = openJob(job);
  if (!open) return tl::unexpected(open.error());
  auto workshop = workshopFor(*open);
  if (!workshop) return tl::unexpected(workshop.error());
  auto out = stagePage(std::move(open->job), std::make_shared<const Workshop>(std::move(*workshop)),
                       page, rough, threads);
  if (out) (*out)->folder = std::move(open->folder);
  return out;
}

}  // namespace tw
