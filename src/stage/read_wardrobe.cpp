#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/files.h"
#include "stage/look_fields.h"
#include "stage/wardrobe.h"

namespace tw {

using Json = nlohmann::json;

/// Reads the wardrobe's file and gathers what is wrong with it.
class WardrobeReader {
 public:
  explicit WardrobeReader(const std::string& file) : file_(file) {}

  Result<Wardrobe> read(const Json& json) {
    readValues(json);
    readShades(json);
    for (const std::string& word : texts(json, "denials", "/denials"))
      out_.denials_.push_back(word);
    readGarments(json);
    const Json& everyday = member(json, "everyday", "/everyday");
    readOutfits(everyday, "her", out_.hers_);
    readOutfits(everyday, "him", out_.his_);
    readOutfits(everyday, "child", out_.childs_);
    if (!problems_.empty()) return tl::unexpected(problems_);
    return std::move(out_);
  }

 private:
  void complain(const std::string& path, std::string sentence) {
    problems_.push_back({Cause::BadInput, std::move(sentence), {file_, 0, path, 0, 0}, {}});
  }

  /// The member, or an empty list and a complaint.
  const Json& member(const Json& json, const char* key, const std::string& path) {
    static const Json kNone = Json::array();
    if (json.is_object() && json.contains(key)) return json[key];
    complain(path, "Expected it, and it is not there.");
    return kNone;
  }

  std::vector<std::string> texts(const Json& json, const char* key, const std::string& path) {
    std::vector<std::string> out;
    const Json& list = member(json, key, path);
    if (!list.is_array()) complain(path, "Expected a list of words.");
    if (!list.is_array()) return out;
    for (const Json& item : list) {
      const bool sound = item.is_string() && !item.get<std::string>().empty();
      if (sound) out.push_back(item.get<std::string>());
      if (!sound) complain(path, "Expected words, each a text.");
    }
    return out;
  }

  void readValues(const Json& json) {
    const Json& values = member(json, "values", "/values");
    if (!values.is_object()) return complain("/values", "Expected names with numbers 0 to 1.");
    for (const auto& [name, value] : values.items()) {
      if (isShare(value, 1))
        out_.values_[name] = value.get<double>();
      else
        complain("/values/" + name, "Expected a number from 0 (paper) to 1 (black).");
    }
  }

  void readShades(const Json& json) {
    const Json& shades = member(json, "shades", "/shades");
    if (!shades.is_object()) return complain("/shades", "Expected words with names of values.");
    for (const auto& [word, value] : shades.items()) {
      if (value.is_string() && out_.values_.contains(value.get<std::string>()))
        out_.shades_[word] = value.get<std::string>();
      else
        complain("/shades/" + word, "Expected the name of a value.");
    }
  }

  void readGarments(const Json& json) {
    const Json& garments = member(json, "garments", "/garments");
    if (!garments.is_array()) return complain("/garments", "Expected a list of garments.");
    for (std::size_t i = 0; i < garments.size(); ++i) {
      const std::string path = "/garments/" + std::to_string(i);
      Garment garment;
      garment.words = texts(garments[i], "words", path + "/words");
      garment.changes = changes(member(garments[i], "wear", path + "/wear"), path + "/wear");
      out_.garments_.push_back(std::move(garment));
    }
  }

  void readOutfits(const Json& everyday, const char* whose,
                   std::vector<std::vector<LookChange>>& out) {
    const std::string path = std::string("/everyday/") + whose;
    const Json& list = member(everyday, whose, path);
    if (!list.is_array() || list.empty()) return complain(path, "Expected at least one outfit.");
    for (std::size_t i = 0; i < list.size(); ++i)
      out.push_back(changes(list[i], path + "/" + std::to_string(i)));
  }

  std::vector<LookChange> changes(const Json& wear, const std::string& path) {
    std::vector<LookChange> out;
    if (!wear.is_object()) complain(path, "Expected fields of a look.");
    if (!wear.is_object()) return out;
    for (const auto& [name, value] : wear.items()) {
      LookChange change{name, {}, 0};
      const LookField* field = lookFieldNamed(name);
      if (!field)
        complain(path + "/" + name, "“" + name + "” is not a field of a look.");
      else if (fill(change, *field, value, path + "/" + name))
        out.push_back(std::move(change));
    }
    return out;
  }

  bool fill(LookChange& change, const LookField& field, const Json& value,
            const std::string& path) {
    if (value.is_string()) change.word = value.get<std::string>();
    if (value.is_boolean()) change.number = value.get<bool>() ? 1 : 0;
    if (value.is_number()) change.number = value.get<double>();
    switch (field.kind) {
      case LookFieldKind::Value:
        return must(value.is_string() && out_.values_.contains(change.word), path,
                    "Expected the name of a value.");
      case LookFieldKind::Number:
        return must(isShare(value, field.most), path, "Expected a number from 0 on, at most 1.");
      case LookFieldKind::Flag:
        return must(value.is_boolean(), path, "Expected true or false.");
      case LookFieldKind::Choice:
        break;
    }
    const auto& known = field.choices;
    std::string sentence = "Expected one of:";
    for (const std::string_view choice : known) sentence += " " + std::string(choice);
    return must(
        value.is_string() && std::find(known.begin(), known.end(), change.word) != known.end(),
        path, sentence + ".");
  }

  bool must(bool sound, const std::string& path, const std::string& sentence) {
    if (!sound) complain(path, sentence);
    return sound;
  }

  static bool isShare(const Json& value, double most) {
    return value.is_number() && value.get<double>() >= 0 && value.get<double>() <= most;
  }

  std::string file_;
  Problems problems_;
  Wardrobe out_;
};

Result<Wardrobe> Wardrobe::read(std::string_view bytes, const std::string& fileName) {
  const Json json = Json::parse(bytes, nullptr, false);
  if (json.is_discarded()) return badInput("This is not JSON.", {fileName, 0, {}, 0, 0});
  return WardrobeReader(fileName).read(json);
}

Result<Wardrobe> Wardrobe::load() {
  const auto path = presetPath("wardrobe/garments.json");
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  return read(*bytes, path->string());
}

}  // namespace tw
