#include "job/output_json.h"

#include "job/brief_keys.h"
#include "job/write_json.h"

namespace tw {

std::string beatsJson(const std::vector<const Page*>& pages) {
  BeatsOutput out;
  for (const Page* page : pages)
    out.pages.push_back({page->number, page->spread, page->title, page->correctedBeats()});
  return textOf(objectOf(out, true));
}

std::string briefJson(const Page& page, const Job& job) {
  BriefOutput out{page.number, page.spread, page.brief, {}};
  for (const Problem& problem : contradictionsOf(page.brief, page, job))
    out.problems.push_back(describe(problem));
  return textOf(objectOf(out, true));
}

}  // namespace tw
