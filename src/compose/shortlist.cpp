#include "compose/shortlist.h"

#include <algorithm>
#include <array>
#include <set>

#include "compose/choose_different.h"

namespace tw {

namespace {

struct Ranked {
  const StagedLayout* page = nullptr;
  double cost = 0;
};

double nearestTo(const StagedLayout& page, const Layout& layout, const ToBeUnlike& unlike) {
  double nearest = 1;
  for (const Measured& other : *unlike.roughs)
    nearest = std::min(nearest, unlikeness(layout, page.choices, other, *unlike.sheet));
  return nearest;
}

std::vector<Ranked> ranked(const std::vector<StagedLayout>& staged, const LayoutSearch& search,
                           const ToBeUnlike& unlike) {
  std::vector<Ranked> out;
  for (const StagedLayout& one : staged) {
    Ranked& r = out.emplace_back(Ranked{&one, one.cost});
    if (!unlike.roughs->empty())
      r.cost -= unlike.spread * nearestTo(one, search.kept[one.layout].layout, unlike);
  }
  std::ranges::stable_sort(out, {}, &Ranked::cost);
  return out;
}

}  // namespace

std::vector<StagedLayout> shortlist(const std::vector<StagedLayout>& staged,
                                    const LayoutSearch& search, std::size_t most,
                                    const ToBeUnlike& unlike) {
  const auto treatmentOf = [&](const StagedLayout& one) {
    return static_cast<std::size_t>(search.kept[one.layout].layout.treatment);
  };
  std::set<std::size_t> treatments;
  for (const StagedLayout& one : staged) treatments.insert(treatmentOf(one));
  std::vector<StagedLayout> out;
  std::array<std::size_t, 4> taken{};
  for (const Ranked& r : ranked(staged, search, unlike)) {
    std::size_t& mine = taken[treatmentOf(*r.page)];
    if (out.size() == most || (treatments.size() > 1 && mine * 2 >= most)) continue;
    ++mine;
    out.push_back(*r.page);
  }
  return out;
}

}  // namespace tw
