#include "job/brief_keys.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "job/assignment.h"
#include "job/field.h"
#include "job/read_json.h"

namespace tw {

namespace {

constexpr int kMostSmallPanels = 100;
constexpr double kLargestHeadMm = 1000;

std::string numberText(double value) {
  return fmt::format("{:.6g}", value);
}

std::string yesNo(bool value) {
  return value ? "yes" : "no";
}

std::string orNone(const std::string& text) {
  return text.empty() ? "none" : text;
}

using SetResult = Result<void>;

SetResult setSwitch(bool& field, const Assignment& a) {
  const std::optional<bool> value = yesOrNo(a.value);
  if (!value) return wrongValue(a, "yes or no");
  field = *value;
  return {};
}

SetResult setNumber(double& field, const Assignment& a, double most) {
  const std::optional<double> value = a.value == "none" ? 0 : decimalNumber(a.value);
  if (!value || *value < 0 || *value > most)
    return wrongValue(a, fmt::format("a number from 0 to {}", most));
  field = *value;
  return {};
}

SetResult setId(std::string& field, const Assignment& a) {
  if (!isWord(a.value)) return wrongValue(a, "an id without spaces");
  field = a.value == "none" ? "" : std::string(a.value);
  return {};
}

SetResult setSmallPanels(Brief& brief, const Assignment& a) {
  if (a.value == "none") {
    brief.leastSmallPanels = brief.mostSmallPanels = std::nullopt;
    return {};
  }
  const std::size_t dash = a.value.find('-');
  const auto least = wholeNumber(trimmed(a.value.substr(0, dash)));
  const auto most = dash == a.value.npos ? least : wholeNumber(trimmed(a.value.substr(dash + 1)));
  if (!least || !most || *least < 0 || *most < *least || *most > kMostSmallPanels)
    return wrongValue(a, "a number or a range such as 3-5, the smaller number first,");
  brief.leastSmallPanels = least;
  brief.mostSmallPanels = most;
  return {};
}

std::string smallPanelsText(const Brief& brief) {
  if (!brief.leastSmallPanels && !brief.mostSmallPanels) return "none";
  const int least = brief.leastSmallPanels.value_or(0);
  const int most = brief.mostSmallPanels.value_or(kMostSmallPanels);
  return least == most ? fmt::format("{}", least) : fmt::format("{}-{}", least, most);
}

SetResult setWords(int& field, const Assignment& a) {
  const std::optional<int> value = wholeNumber(a.value);
  if (!value || *value < 0 || *value > 100000)
    return wrongValue(a, "a whole number from 0 to 100000");
  field = *value;
  return {};
}

SetResult setDirection(ReadingDirection& field, const Assignment& a) {
  const auto value = readingDirectionFrom(a.value);
  if (!value) return wrongValue(a, "left-to-right or right-to-left");
  field = *value;
  return {};
}

SetResult setDue(std::string& field, const Assignment& a) {
  if (a.value != "none" && !isDate(a.value)) return wrongValue(a, "a date such as 2027-01-15");
  field = a.value == "none" ? "" : std::string(a.value);
  return {};
}

/// "10,20,30,40" as x, y, width, height.
std::optional<Rect> rectIn(std::string_view text) {
  std::vector<double> numbers;
  while (numbers.size() < 5) {
    const std::size_t comma = text.find(',');
    const auto number = decimalNumber(trimmed(text.substr(0, comma)));
    if (!number || std::abs(*number) > kLargestMm) return std::nullopt;
    numbers.push_back(*number);
    if (comma == text.npos) break;
    text.remove_prefix(comma + 1);
  }
  if (numbers.size() != 4 || numbers[2] <= 0 || numbers[3] <= 0) return std::nullopt;
  return Rect{{numbers[0], numbers[1]}, {numbers[0] + numbers[2], numbers[1] + numbers[3]}};
}

/// "none", "NAME:none" or "NAME:x,y,w,h".
SetResult setKeepClear(std::vector<KeepClear>& zones, const Assignment& a) {
  if (a.value == "none") {
    zones.clear();
    return {};
  }
  const std::size_t colon = a.value.rfind(':');
  const std::string name(trimmed(a.value.substr(0, colon)));
  const std::string_view place = colon == a.value.npos ? "" : trimmed(a.value.substr(colon + 1));
  const std::optional<Rect> rect = rectIn(place);
  if (name.empty() || (!rect && place != "none"))
    return wrongValue(a, "NAME:x,y,width,height in mm, or none,");
  std::erase_if(zones, [&](const KeepClear& zone) { return zone.name == name; });
  if (rect) zones.push_back({name, *rect});
  return {};
}

std::string keepClearText(const std::vector<KeepClear>& zones) {
  if (zones.empty()) return "none";
  std::vector<std::string> parts;
  for (const auto& [name, r] : zones)
    parts.push_back(fmt::format("{}:{},{},{},{}", name, numberText(r.min.x), numberText(r.min.y),
                                numberText(r.width()), numberText(r.height())));
  return fmt::format("{}", fmt::join(parts, " "));
}

struct Key {
  std::string_view name, meaning;
  std::function<SetResult(Brief&, const Assignment&)> set;
  std::function<std::string(const Brief&)> text;
};

/// The keys, in the order in which they are shown.
const std::vector<Key>& keys() {
  using A = Assignment;
  static const std::vector<Key> kKeys = {
      {"small-panels", "panels beside the dominant one",
       [](Brief& b, const A& a) { return setSmallPanels(b, a); },
       [](const Brief& b) { return smallPanelsText(b); }},
      {"dominant", "beat that must dominate the page",
       [](Brief& b, const A& a) { return setId(b.dominantBeat, a); },
       [](const Brief& b) { return orNone(b.dominantBeat); }},
      {"dominant-share", "its least share of all panels' area, 0 to 1",
       [](Brief& b, const A& a) { return setNumber(b.leastDominantShare, a, 1); },
       [](const Brief& b) { return numberText(b.leastDominantShare); }},
      {"focus", "character the page is about",
       [](Brief& b, const A& a) { return setId(b.focus, a); },
       [](const Brief& b) { return orNone(b.focus); }},
      {"head-mm", "least height of the focus's head in every panel, mm in print",
       [](Brief& b, const A& a) { return setNumber(b.leastHeadMm, a, kLargestHeadMm); },
       [](const Brief& b) { return numberText(b.leastHeadMm); }},
      {"largest", "the focus is the largest figure wherever it appears",
       [](Brief& b, const A& a) { return setSwitch(b.largestInPanel, a); },
       [](const Brief& b) { return yesNo(b.largestInPanel); }},
      {"whole", "the dominant panel's figure is not cropped",
       [](Brief& b, const A& a) { return setSwitch(b.wholeFigure, a); },
       [](const Brief& b) { return yesNo(b.wholeFigure); }},
      {"liftable", "the dominant panel's figure is neither cropped nor covered",
       [](Brief& b, const A& a) { return setSwitch(b.liftable, a); },
       [](const Brief& b) { return yesNo(b.liftable); }},
      {"bleeds", "panels may run off the page",
       [](Brief& b, const A& a) { return setSwitch(b.bleeds, a); },
       [](const Brief& b) { return yesNo(b.bleeds); }},
      {"words", "most words on the page",
       [](Brief& b, const A& a) { return setWords(b.mostWords, a); },
       [](const Brief& b) { return fmt::format("{}", b.mostWords); }},
      {"direction", "reading direction",
       [](Brief& b, const A& a) { return setDirection(b.direction, a); },
       [](const Brief& b) { return std::string(nameOf(b.direction)); }},
      {"due", "date on which the page is due",
       [](Brief& b, const A& a) { return setDue(b.due, a); },
       [](const Brief& b) { return orNone(b.due); }},
      {"keep-clear", "areas to be left free, NAME:x,y,width,height in mm",
       [](Brief& b, const A& a) { return setKeepClear(b.keepClear, a); },
       [](const Brief& b) { return keepClearText(b.keepClear); }},
  };
  return kKeys;
}

}  // namespace

Result<void> setBriefKey(Brief& brief, std::string_view assignment) {
  const Result<Assignment> split = assignmentIn(assignment);
  if (!split) return tl::unexpected(split.error());
  std::vector<std::string_view> names;
  for (const Key& key : keys()) {
    if (key.name == split->key) return key.set(brief, *split);
    names.push_back(key.name);
  }
  const std::string_view near = nearest(split->key, names);
  return badInput(fmt::format("The brief has no key \"{}\".", split->key), {},
                  near.empty() ? fmt::format("Known are: {}.", fmt::join(names, ", "))
                               : fmt::format("Is \"{}\" meant?", near));
}

std::vector<BriefEntry> describeBrief(const Brief& brief) {
  std::vector<BriefEntry> entries;
  for (const Key& key : keys())
    entries.push_back({std::string(key.name), key.text(brief), std::string(key.meaning)});
  return entries;
}

std::string briefTable(const Brief& brief) {
  const std::vector<BriefEntry> entries = describeBrief(brief);
  std::size_t widest = 0;
  for (const BriefEntry& entry : entries) widest = std::max(widest, entry.value.size());
  widest = std::min<std::size_t>(widest, 24);
  std::string out;
  for (const auto& [key, value, meaning] : entries)
    out += fmt::format("{:<15} {:<{}}  {}\n", key, value, widest, meaning);
  return out;
}

}  // namespace tw
