// A revised script against the one at hand.
//
// The idea: a beat is still the same beat when most of its words are, wherever it now stands;
// a beat in the same place may differ more. Words defined: likeness = Dice's coefficient of the
// two bags of words, 2·|common| / (|a| + |b|), from 0 to 1 (Dice 1945, doi:10.2307/1932409).
// Steps: 1. pair beats whose words are the same, nearest pages first; 2. for the rest, list all
// pairs at most two pages apart whose likeness passes the mark; 3. take pairs from the likest
// down, a beat in its old place before one that moved; 4. matched beats take over the old id,
// others get an id that no old beat had; 5. say what changed.
// Cost: step 2 is pages × panels² on a few pages around each; a script of 1 MB stays in seconds.
// What it does badly: a panel split in two keeps its id on the likelier half only.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "script/script.h"
#include "script/tokens.h"

namespace tw {

namespace {

constexpr double kLikeEnough = 0.5;          // for a beat that stands elsewhere
constexpr double kLikeEnoughInPlace = 0.25;  // for one in the same place
constexpr double kInPlaceBonus = 0.2;
constexpr int kPagesApart = 2;
constexpr int kMostCompared = 400;  // five pages of at most eighty panels; more is no comic

using Bag = std::vector<std::string>;

struct Spot {
  int page = 0;
  Beat* beat = nullptr;
  Bag words;
};

Bag bagOf(const Beat& beat) {
  Bag words = phraseOf(beat.description);
  for (const CopyItem& item : beat.copy)
    for (std::string& word : phraseOf(item.text)) words.push_back(std::move(word));
  std::ranges::sort(words);
  return words;
}

double likeness(const Bag& a, const Bag& b) {
  if (a.empty() && b.empty()) return 1;
  Bag common;
  std::ranges::set_intersection(a, b, std::back_inserter(common));
  return 2.0 * static_cast<double>(common.size()) / static_cast<double>(a.size() + b.size());
}

std::vector<Spot> spotsOf(std::vector<ScriptPage>& pages) {
  std::vector<Spot> spots;
  for (ScriptPage& page : pages)
    for (Beat& beat : page.beats) spots.push_back({page.number, &beat, bagOf(beat)});
  return spots;
}

class CarryOver {
 public:
  CarryOver(std::vector<ScriptPage> before, std::vector<ScriptPage>& after)
      : oldPages_(std::move(before)),
        old_(spotsOf(oldPages_)),
        new_(spotsOf(after)),
        oldOf_(new_.size(), kNone),
        newOf_(old_.size(), kNone) {}

  std::vector<ScriptChange> run() {
    pairSameText();
    pairLikeText();
    for (const Spot& spot : old_) takenIds_.insert(spot.beat->id);
    for (std::size_t i = 0; i < new_.size(); ++i) giveId(i);
    report();
    return std::move(changes_);
  }

 private:
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

  void pair(std::size_t oldIndex, std::size_t newIndex) {
    oldOf_[newIndex] = oldIndex;
    newOf_[oldIndex] = newIndex;
  }

  bool inPlace(const Spot& a, const Spot& b) const {
    return a.page == b.page && a.beat->panel == b.beat->panel;
  }

  /// In the old place first, then, for beats with words, anywhere in order.
  void pairSameText() {
    std::map<std::pair<int, int>, std::size_t> byPlace;
    for (std::size_t i = 0; i < old_.size(); ++i)
      byPlace.emplace(std::pair(old_[i].page, old_[i].beat->panel), i);
    for (std::size_t i = 0; i < new_.size(); ++i) {
      const auto found = byPlace.find({new_[i].page, new_[i].beat->panel});
      if (found == byPlace.end() || newOf_[found->second] != kNone) continue;
      if (old_[found->second].words == new_[i].words) pair(found->second, i);
    }
    std::map<Bag, std::vector<std::size_t>> byWords;  // the next candidate last
    for (std::size_t i = old_.size(); i-- > 0;)
      if (newOf_[i] == kNone && !old_[i].words.empty()) byWords[old_[i].words].push_back(i);
    for (std::size_t i = 0; i < new_.size(); ++i) {
      const auto found = byWords.find(new_[i].words);
      if (oldOf_[i] != kNone || found == byWords.end() || found->second.empty()) continue;
      pair(found->second.back(), i);
      found->second.pop_back();
    }
  }

  void pairLikeText() {
    std::multimap<int, std::size_t> byPage;
    for (std::size_t i = 0; i < old_.size(); ++i)
      if (newOf_[i] == kNone) byPage.emplace(old_[i].page, i);
    std::vector<std::tuple<double, std::size_t, std::size_t>> pairs;
    for (std::size_t i = 0; i < new_.size(); ++i) {
      if (oldOf_[i] != kNone) continue;
      const auto begin = byPage.lower_bound(new_[i].page - kPagesApart);
      const auto end = byPage.upper_bound(new_[i].page + kPagesApart);
      int compared = 0;
      for (auto it = begin; it != end && compared < kMostCompared; ++it, ++compared) {
        const Spot& old = old_[it->second];
        const bool same = inPlace(old, new_[i]);
        const double like = likeness(old.words, new_[i].words);
        if (like < (same ? kLikeEnoughInPlace : kLikeEnough)) continue;
        pairs.emplace_back(-(like + (same ? kInPlaceBonus : 0)), i, it->second);
      }
    }
    std::ranges::sort(pairs);
    for (const auto& [cost, newIndex, oldIndex] : pairs)
      if (oldOf_[newIndex] == kNone && newOf_[oldIndex] == kNone) pair(oldIndex, newIndex);
  }

  std::string freshId(const std::string& wanted) const {
    if (!takenIds_.contains(wanted)) return wanted;
    for (char letter = 'b'; letter <= 'z'; ++letter)
      if (!takenIds_.contains(wanted + letter)) return wanted + letter;
    int n = 2;
    while (takenIds_.contains(fmt::format("{}x{}", wanted, n))) ++n;
    return fmt::format("{}x{}", wanted, n);
  }

  void giveId(std::size_t index) {
    Beat& beat = *new_[index].beat;
    const std::size_t old = oldOf_[index];
    beat.id = old == kNone ? freshId(beat.id) : old_[old].beat->id;
    takenIds_.insert(beat.id);
    giveCopyIds(beat, old == kNone ? nullptr : old_[old].beat);
  }

  /// Items that say the same keep their id; others take a number that was not in use.
  static void giveCopyIds(Beat& beat, const Beat* old) {
    std::set<std::string> taken;
    if (old != nullptr)
      for (const CopyItem& item : old->copy) taken.insert(item.id);
    std::multimap<std::pair<std::string, std::string>, std::string> unused;
    if (old != nullptr)
      for (const CopyItem& item : old->copy)
        unused.emplace(std::pair(item.speaker, item.text), item.id);
    for (CopyItem& item : beat.copy) {
      item.id.clear();
      const auto same = unused.find({item.speaker, item.text});
      if (same == unused.end()) continue;
      item.id = same->second;
      unused.erase(same);
    }
    int n = 1;
    for (CopyItem& item : beat.copy) {
      if (!item.id.empty()) continue;
      while (taken.contains(fmt::format("{}-c{}", beat.id, n))) ++n;
      item.id = fmt::format("{}-c{}", beat.id, n);
      taken.insert(item.id);
    }
  }

  void say(const Spot& spot, std::string what) {
    changes_.push_back({spot.page, spot.beat->panel, std::move(what)});
  }

  void report() {
    for (std::size_t i = 0; i < new_.size(); ++i) {
      if (oldOf_[i] == kNone)
        say(new_[i], "new panel");
      else
        reportPair(old_[oldOf_[i]], new_[i]);
    }
    for (std::size_t i = 0; i < old_.size(); ++i)
      if (newOf_[i] == kNone) say(old_[i], "panel gone");
    std::ranges::stable_sort(changes_, {}, [](const ScriptChange& change) {
      return std::pair(change.page, change.panel);
    });
  }

  void reportPair(const Spot& was, const Spot& is) {
    if (was.page != is.page)
      say(is, fmt::format("moved from page {} panel {}", was.page, was.beat->panel));
    else if (was.beat->panel != is.beat->panel)
      say(is, fmt::format("moved from panel {}", was.beat->panel));
    if (was.beat->description != is.beat->description) say(is, "description changed");
    reportCopy(was, is);
    if (was.beat->dominant != is.beat->dominant)
      say(is, is.beat->dominant ? "now dominant" : "no longer dominant");
  }

  static std::string copyLine(const CopyItem& item) {
    const std::string who = item.speaker.empty() ? std::string(nameOf(item.kind)) : item.speaker;
    return fmt::format("{}: \u201c{}\u201d", who, item.text);
  }

  void reportCopy(const Spot& was, const Spot& is) {
    const auto lines = [](const Beat& beat) {
      std::vector<std::string> out;
      for (const CopyItem& item : beat.copy) out.push_back(copyLine(item));
      return out;
    };
    const std::vector<std::string> before = lines(*was.beat), after = lines(*is.beat);
    if (before == after) return;
    const std::set<std::string> wasThere(before.begin(), before.end());
    const std::set<std::string> isThere(after.begin(), after.end());
    std::string what;
    for (const std::string& line : after)
      if (!wasThere.contains(line)) what += (what.empty() ? "" : "; ") + line;
    for (const std::string& line : before)
      if (!isThere.contains(line))
        what += fmt::format("{}gone: {}", what.empty() ? "" : "; ", line);
    say(is, fmt::format("copy changed: {}", what.empty() ? "order" : what));
  }

  std::vector<ScriptPage> oldPages_;
  std::vector<Spot> old_, new_;
  std::vector<std::size_t> oldOf_, newOf_;
  std::set<std::string> takenIds_;
  std::vector<ScriptChange> changes_;
};

}  // namespace

std::vector<ScriptChange> carryOver(const std::vector<ScriptPage>& before,
                                    std::vector<ScriptPage>& after) {
  return CarryOver(before, after).run();
}

}  // namespace tw
