#include "command/board.h"

#include "command/job_models.h"
#include "command/pictures.h"

namespace tw {

Result<void> makeBoard(const BoardRequest& request) {
  const auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  const auto numbers = pagesAsked(open->job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  const Page& page = *open->job.page(numbers->front());
  std::string rough = request.rough.empty() ? page.choice : request.rough;
  if (rough.empty()) rough = page.roughs.empty() ? "A" : page.roughs.front().name;
  const auto stager = stagerFor(*open);
  if (!stager) return tl::unexpected(stager.error());
  const auto picture = pictureOf(open->job, page, rough, *stager);
  if (!picture) return tl::unexpected(picture.error());
  for (const auto& file : request.files)
    if (auto done = writeBoard(file, *picture, request.board, request.dpi); !done) return done;
  return {};
}

}  // namespace tw
