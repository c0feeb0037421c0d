// Reading a look's words.
//
//  1 The text is cut into phrases at commas, full stops and "and".
//  2 Of a phrase the longest mark and the longest place are found. A mark with a place is a mark; a
//    place alone behind a mark is the same mark there too; "off" words take it away.
//  3 "in the left hand" without a mark says where a thing is held; "left-handed" which hand works.
//  4 Everything else is costume, as written.
// Cost: words times four. Does badly: "the left sleeve of the torn coat" (two phrases in one).
#include "job/look_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <nlohmann/json.hpp>
#include <optional>

#include "base/files.h"

namespace tw {

using nlohmann::json;

namespace {

using List = std::vector<std::string>;

bool has(const List& words, std::initializer_list<std::string_view> any) {
  return std::ranges::any_of(
      words, [&](const std::string& word) { return std::ranges::find(any, word) != any.end(); });
}

std::string joined(const List& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

/// The longest phrase of the table in the words, plural endings forgiven; null when there is none.
template <class Table>
const typename Table::mapped_type* longestIn(const Table& table, const List& words) {
  const typename Table::mapped_type* best = nullptr;
  std::size_t most = 0;
  for (std::size_t i = 0; i < words.size(); ++i)
    for (std::size_t n = 1; n <= 2 && i + n <= words.size(); ++n) {
      std::string phrase = n == 1 ? words[i] : words[i] + " " + words[i + 1];
      auto found = table.find(phrase);
      if (found == table.end() && phrase.size() > 3 && phrase.back() == 's') {
        phrase.pop_back();
        found = table.find(phrase);
      }
      if (found == table.end() || n < most) continue;
      best = &found->second;  // the later of two: "arm" of "cut on the arm"
      most = n;
    }
  return best;
}

std::vector<List> phrasesOf(std::string_view text) {
  std::vector<List> out(1);
  for (std::string& word : plainWords(text)) {
    if (word == "," || word == "and")
      out.emplace_back();
    else
      out.back().push_back(std::move(word));
  }
  std::erase_if(out, [](const List& phrase) { return phrase.empty(); });
  return out;
}

std::string sideIn(const List& words) {
  const bool left = has(words, {"left"}), right = has(words, {"right"});
  if (has(words, {"both"}) || (left && right)) return "both";
  return left ? "left" : right ? "right" : "";
}

/// "lantern in the left hand" → "lantern".
std::string thingHeld(const List& words) {
  const auto in = std::ranges::find(words, "in");
  List thing(words.begin(), in);
  std::erase_if(thing, [](const std::string& word) {
    return has({word}, {"the", "a", "an", "her", "his", "their", "holds", "holding", "carries",
                        "carrying", "with", "has", "always", "keeps"});
  });
  return joined(thing);
}

}  // namespace

std::vector<std::string> plainWords(std::string_view text) {
  List out;
  std::string word;
  const auto flush = [&] {
    if (!word.empty()) out.push_back(std::exchange(word, {}));
  };
  for (const char c : text) {
    const auto u = static_cast<unsigned char>(c);
    if (std::isalnum(u) || u >= 0x80 || c == '\'') {
      word += static_cast<char>(std::tolower(u));
    } else {
      flush();
      if (c == ',' || c == ';' || c == '.') out.emplace_back(",");
    }
  }
  flush();
  return out;
}

std::vector<LookItem> LookWords::itemsIn(std::string_view text) const {
  std::vector<LookItem> out;
  for (const List& phrase : phrasesOf(text)) {
    LookItem item;
    List rest = phrase;
    item.off = std::erase_if(rest, [&](const auto& w) { return off_.contains(w); }) > 0;
    item.side = sideIn(rest);
    item.words = joined(rest);
    const MarkEntry* mark = longestIn(marks_, rest);
    const PlaceEntry* place = longestIn(places_, rest);
    const bool again = mark == nullptr && place != nullptr && !out.empty() &&
                       out.back().kind == LookItem::Kind::Mark && rest.size() <= 5;
    if (has(rest, {"handed"}) && !item.side.empty()) {
      item.kind = LookItem::Kind::WorkingHand;
    } else if (mark == nullptr && has(rest, {"hand", "hands"}) && has(rest, {"in"}) &&
               !item.side.empty()) {
      item.kind = LookItem::Kind::Held;
      item.thing = thingHeld(rest);
    } else if (again) {
      const LookItem& before = out.back();
      item.kind = LookItem::Kind::Mark;
      item.mark = before.mark;
      item.lasting = before.lasting;
      item.off = before.off;
    } else if (mark != nullptr && (place != nullptr || !mark->place.empty() || item.off)) {
      item.kind = LookItem::Kind::Mark;
      item.mark = mark->name;
      item.lasting = mark->lasting;
      item.place = mark->place;
    }
    if (item.kind == LookItem::Kind::Mark && place != nullptr) item.place = place->name;
    if (item.kind == LookItem::Kind::Mark)
      for (const auto& [words, entry] : places_)
        if (entry.name == item.place) item.paired = entry.paired;
    if (!item.words.empty()) out.push_back(std::move(item));
  }
  return out;
}

class LookWordsReader {
 public:
  explicit LookWordsReader(const std::string& file) : file_(file) {}

  Result<LookWords> read(const json& tree) {
    if (!tree.is_object()) return badInput("A file of marks is a JSON object.", {.file = file_});
    for (const json& mark : listOf(tree, "marks"))
      for (const std::string& phrase : textsOf(mark, "words", "/marks"))
        out_.marks_[phrase] = {text(mark, "name"), flag(mark, "lasting"), text(mark, "place")};
    for (const json& place : listOf(tree, "places"))
      for (const std::string& phrase : textsOf(place, "words", "/places"))
        out_.places_[phrase] = {text(place, "name"), flag(place, "paired")};
    const auto words = [&](const char* key) {
      const List list = textsOf(tree, key, "");
      return LookWords::Words(list.begin(), list.end());
    };
    out_.off_ = words("off");
    out_.causes = words("causes");
    out_.handOver = words("hand_over");
    out_.lostBy = words("lost_by");
    out_.isLost = words("is_lost");
    out_.found = words("found");
    if (!problems_.empty()) return tl::unexpected(problems_);
    return std::move(out_);
  }

 private:
  void complain(std::string path, std::string sentence) {
    problems_.push_back(
        {Cause::BadInput, std::move(sentence), {.file = file_, .path = std::move(path)}, {}});
  }
  const json& listOf(const json& tree, const char* key) {
    static const json kNone = json::array();
    if (tree.contains(key) && tree[key].is_array()) return tree[key];
    complain(fmt::format("/{}", key), "Expected a list of objects.");
    return kNone;
  }
  std::string text(const json& from, const char* key) {
    const auto found = from.find(key);
    return found != from.end() && found->is_string() ? found->get<std::string>() : std::string();
  }
  bool flag(const json& from, const char* key) {
    const auto found = from.find(key);
    return found != from.end() && *found == true;
  }
  List textsOf(const json& from, const char* key, const std::string& path) {
    List out;
    const bool sound = from.is_object() && from.contains(key) && from[key].is_array() &&
                       std::ranges::all_of(from[key], [](const json& j) { return j.is_string(); });
    if (!sound) {
      complain(fmt::format("{}/{}", path, key), "Expected a list of words.");
      return out;
    }
    for (const json& word : from[key]) out.push_back(word.get<std::string>());
    return out;
  }

  std::string file_;
  LookWords out_;
  Problems problems_;
};

Result<LookWords> LookWords::read(std::string_view bytes, const std::string& fileName) {
  return LookWordsReader(fileName).read(json::parse(bytes, nullptr, /*allow_exceptions=*/false));
}

Result<LookWords> LookWords::load() {
  const auto path = presetPath("wardrobe/marks.json");
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  return read(*bytes, path->string());
}

}  // namespace tw
