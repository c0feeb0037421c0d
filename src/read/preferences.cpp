#include "read/preferences.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/files.h"
#include "job/read_json.h"

namespace tw {

namespace {

using P = ReaderPreferences;

struct Entry {
  std::string_view section, key;
  double P::*value;
  double least, most;
};

constexpr std::array kEntries{
    Entry{"fitted", "across_at_grid", &P::acrossAtGrid, 0.5, 1},
    Entry{"fitted", "across_at_blockage", &P::acrossAtBlockage, 0, 0.5},
    Entry{"fitted", "down_of_rest", &P::downOfRest, 0.5, 1},
    Entry{"free", "across_at_wide_gap", &P::acrossAtWideGap, 0, 1},
    Entry{"free", "across_at_overlap", &P::acrossAtOverlap, 0, 1},
    Entry{"free", "stagger_middle", &P::staggerMiddle, 0, 1},
    Entry{"free", "stagger_slope", &P::staggerSlope, 0.1, 100},
    Entry{"free", "gap_middle", &P::gapMiddle, 1, 10},
    Entry{"free", "gap_slope", &P::gapSlope, 0.1, 100},
    Entry{"free", "gap_end", &P::gapEnd, 1.5, 20},
    Entry{"free", "overlap_middle", &P::overlapMiddle, 0, 1},
    Entry{"free", "overlap_slope", &P::overlapSlope, 0.1, 100},
    Entry{"free", "across_at_staggered_rows", &P::acrossAtStaggeredRows, 0.5, 1},
    Entry{"free", "across_above_tier", &P::acrossAboveTier, 0.5, 1},
    Entry{"free", "row_habit", &P::rowHabit, 0, 1},
    Entry{"free", "finish_stack", &P::finishStack, 0.5, 1},
    Entry{"free", "plain", &P::plain, 0.5, 1},
    Entry{"free", "stray", &P::stray, 0.0001, 0.1},
    Entry{"free", "entry_at_corner", &P::entryAtCorner, 0.5, 1},
    Entry{"free", "entry_highest", &P::entryHighest, 0, 1},
    Entry{"free", "entry_leftmost", &P::entryLeftmost, 0, 1},
    Entry{"free", "entry_higher_tier", &P::entryHigherTier, 0, 1},
    Entry{"free", "entry_lower_tier", &P::entryLowerTier, 0, 1},
    Entry{"free", "out_of_corner", &P::outOfCorner, 0, 1},
    Entry{"free", "base_first", &P::baseFirst, 0, 1},
    Entry{"free", "base_first_corner_hidden", &P::baseFirstCornerHidden, 0, 1},
    Entry{"free", "across_fold", &P::acrossFold, 0, 0.5},
    Entry{"free", "shared_extent", &P::sharedExtent, 0.01, 1},
    Entry{"free", "aligned", &P::aligned, 0.0001, 0.2},
    Entry{"free", "noticed_gap", &P::noticedGap, 0.0001, 0.1},
    Entry{"free", "noticed_overlap", &P::noticedOverlap, 0, 0.1},
    Entry{"free", "worth_telling", &P::worthTelling, 0, 1},
};

struct Target {
  std::string_view key;
  PublishedShare P::*share;
};
constexpr std::array kTargets{Target{"across_at_grid", &P::gridAcross},
                              Target{"across_at_blockage", &P::blockageAcross},
                              Target{"down_at_blockage", &P::blockageDown}};

const std::vector<std::string_view> kCertainties{
    "read", "abstract", "blog", "2nd-hand", "memory high", "memory medium", "memory low", "ours"};

class PreferencesReader {
 public:
  explicit PreferencesReader(const std::string& file) : reader_(file) {}

  Result<ReaderPreferences> read(const Json& json) {
    ReaderPreferences out;
    if (!json.is_object()) {
      reader_.expected("", "an object in braces", json);
      return tl::unexpected(reader_.take());
    }
    reader_.unknown(json, "", {"published", "fitted", "free"});
    for (const Target& t : kTargets) target(json, t.key, out.*t.share);
    for (const Entry& e : kEntries)
      if (const Json* entry = find(json, e.section, e.key))
        number(*entry, path(e.section, e.key), "value", e.least, e.most, out.*e.value);
    for (const std::string_view section : {"published", "fitted", "free"}) known(json, section);
    if (reader_.isSound()) relations(out);
    if (!reader_.isSound()) return tl::unexpected(reader_.take());
    out.prepare();
    return out;
  }

 private:
  static std::string path(std::string_view section, std::string_view key) {
    return below(below("", section), key);
  }

  /// The entry, with its meaning, source and certainty looked at; or nothing.
  const Json* find(const Json& json, std::string_view section, std::string_view key) {
    const auto part = json.find(section);
    if (part == json.end() || !part->is_object()) {
      reader_.missing("", section, "a group of preferences, in braces");
      return nullptr;
    }
    const auto entry = part->find(key);
    if (entry == part->end()) {
      reader_.missing(below("", section), key, "a preference of the reader");
      return nullptr;
    }
    if (!entry->is_object()) {
      reader_.expected(path(section, key), "an object in braces", *entry);
      return nullptr;
    }
    evidence(*entry, path(section, key));
    return &*entry;
  }

  void evidence(const Json& entry, const std::string& at) {
    for (const std::string_view key : {"meaning", "source"}) {
      const auto text = entry.find(key);
      if (text == entry.end() || !text->is_string() || text->get_ref<const std::string&>().empty())
        reader_.missing(at, key, "a number without it is worth nothing");
    }
    const auto certainty = entry.find("certainty");
    const bool sound = certainty != entry.end() && certainty->is_string() &&
                       std::find(kCertainties.begin(), kCertainties.end(),
                                 certainty->get_ref<const std::string&>()) != kCertainties.end();
    if (!sound)
      reader_.missing(at, "certainty", fmt::format("one of: {}", fmt::join(kCertainties, ", ")));
  }

  void number(const Json& entry, const std::string& at, std::string_view key, double least,
              double most, double& out) {
    const auto value = entry.find(key);
    if (value == entry.end()) return reader_.missing(at, key, "a number");
    reader_.value(*value, below(at, key), Spec{.least = least, .most = most}, out);
  }

  void target(const Json& json, std::string_view key, PublishedShare& out) {
    const Json* entry = find(json, "published", key);
    if (!entry) return;
    const std::string at = path("published", key);
    number(*entry, at, "value", 0, 1, out.value);
    number(*entry, at, "least", 0, 1, out.least);
    number(*entry, at, "most", 0, 1, out.most);
    if (out.least > out.value || out.value > out.most)
      reader_.complain(at, "Expected least <= value <= most.");
  }

  void known(const Json& json, std::string_view section) {
    std::vector<std::string_view> names;
    for (const Target& t : kTargets)
      if (section == "published") names.push_back(t.key);
    for (const Entry& e : kEntries)
      if (section == e.section) names.push_back(e.key);
    const auto part = json.find(section);
    if (part != json.end() && part->is_object()) reader_.unknown(*part, below("", section), names);
  }

  /// Shares that cannot hold together.
  void relations(const ReaderPreferences& p) {
    if (p.entryHighest + p.entryLeftmost > 1)
      reader_.complain("/free/entry_highest", "With entry_leftmost it makes more than 1.");
    if (p.entryHigherTier + p.entryLowerTier > 1)
      reader_.complain("/free/entry_higher_tier", "With entry_lower_tier it makes more than 1.");
    if (p.gapMiddle >= p.gapEnd)
      reader_.complain("/free/gap_middle", "It must be less than gap_end.");
    for (const double floor : {p.acrossAtWideGap, p.acrossAtOverlap, p.acrossAtBlockage})
      if (floor > p.acrossAtGrid)
        reader_.complain("/fitted/across_at_grid", "No other share across may be above it.");
  }

  Reader reader_;
};

}  // namespace

RisingCurve::RisingCurve(double from, double to, double middle, double slope)
    : from_(from), to_(to), middle_(middle), slope_(slope) {
  low_ = raw(from);
  span_ = raw(to) - low_;
}

double RisingCurve::at(double x) const {
  if (x <= from_) return 0;
  if (x >= to_) return 1;
  return (raw(x) - low_) / span_;
}

void ReaderPreferences::prepare() {
  stagger = {0, 1, staggerMiddle, staggerSlope};
  gap = {1, gapEnd, gapMiddle, gapSlope};
  overlap = {0, 1, overlapMiddle, overlapSlope};
}

Result<ReaderPreferences> readPreferencesText(std::string_view bytes, const std::string& fileName) {
  const Result<Json> json = parseJson(bytes, fileName);
  if (!json) return tl::unexpected(json.error());
  return PreferencesReader(fileName).read(*json);
}

Result<ReaderPreferences> loadPreferences() {
  const auto path = presetPath("read/preferences.json");
  if (!path) return tl::unexpected(path.error());
  const Result<std::string> bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  return readPreferencesText(*bytes, path->string());
}

const ReaderPreferences& shippedPreferences() {
  static const ReaderPreferences shipped = [] {
    const Result<ReaderPreferences> read = loadPreferences();
    if (!read) ensure(false, describe(read.error()));
    return *read;
  }();
  return shipped;
}

}  // namespace tw
