// The rough of a page that stands for it wherever one must be shown: the artist's choice, else the
// best ranked.
#pragma once

#include <algorithm>

#include "job/job.h"

namespace tw {

/// Null when the page has none yet.
inline const Rough* shownRough(const Page& page) {
  if (page.roughs.empty()) return nullptr;
  const auto chosen = std::ranges::find(page.roughs, page.choice, &Rough::name);
  return chosen == page.roughs.end() ? &page.roughs.front() : &*chosen;
}

}  // namespace tw
