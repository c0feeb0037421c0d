#include "stage/light.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cctype>
#include <cmath>
#include <nlohmann/json.hpp>

#include "base/files.h"

namespace tw {

namespace {

using Json = nlohmann::json;

std::string lowered(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

bool isLetter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

/// The word or phrase stands in the text as such, not inside of another word.
bool says(const std::string& text, const std::string& phrase) {
  for (std::size_t at = text.find(phrase); at != std::string::npos;
       at = text.find(phrase, at + 1)) {
    const std::size_t end = at + phrase.size();
    if ((at == 0 || !isLetter(text[at - 1])) && (end == text.size() || !isLetter(text[end])))
      return true;
  }
  return false;
}

double lambert(const Lamp& lamp, const Camera& camera, const Vec3& normal) {
  return lamp.strength * std::max(0.0, normal.dot(towardLamp(lamp, camera)));
}

/// Reads one light and says what is wrong with it.
class LightReader {
 public:
  LightReader(const std::string& file, Problems& problems) : file_(file), problems_(problems) {}

  Lighting read(const Json& json, const std::string& path) {
    Lighting light;
    light.name = text(json, "name", path);
    light.title = text(json, "title", path);
    for (const auto& [key, lamp] :
         {std::pair{"key", &light.key}, {"fill", &light.fill}, {"rim", &light.rim}})
      if (json.contains(key)) readLamp(json[key], path + "/" + key, *lamp);
    if (json.contains("ambient")) light.ambient = share(json["ambient"], path + "/ambient");
    return light;
  }

  std::vector<std::string> words(const Json& json, const std::string& path) {
    std::vector<std::string> out;
    if (!json.contains("words")) return out;
    for (const Json& word : json["words"]) {
      if (word.is_string() && !word.get<std::string>().empty())
        out.push_back(lowered(word.get<std::string>()));
      else
        complain(path + "/words", "Expected words, each a text.");
    }
    return out;
  }

 private:
  void complain(const std::string& path, std::string sentence) {
    problems_.push_back({Cause::BadInput, std::move(sentence), {file_, 0, path, 0, 0}, {}});
  }

  std::string text(const Json& json, const char* key, const std::string& path) {
    if (json.contains(key) && json[key].is_string()) return json[key].get<std::string>();
    complain(path + "/" + key, "Expected a text.");
    return {};
  }

  double share(const Json& json, const std::string& path) {
    if (json.is_number() && json.get<double>() >= 0 && json.get<double>() <= 4)
      return json.get<double>();
    complain(path, "Expected a strength from 0 to 4.");
    return 0;
  }

  void readLamp(const Json& json, const std::string& path, Lamp& lamp) {
    if (json.contains("strength")) lamp.strength = share(json["strength"], path + "/strength");
    if (!json.contains("from")) return;
    const Json& from = json["from"];
    const bool sound = from.is_array() && from.size() == 3 &&
                       std::all_of(from.begin(), from.end(), [](auto& n) { return n.is_number(); });
    const Vec3 direction =
        sound ? Vec3(from[0].get<double>(), from[1].get<double>(), from[2].get<double>())
              : Vec3::Zero();
    if (direction.norm() < 1e-6)
      complain(path + "/from", "Expected three numbers: right, up, toward the camera.");
    else
      lamp.from = direction.normalized();
  }

  const std::string& file_;
  Problems& problems_;
};

}  // namespace

Vec3 towardLamp(const Lamp& lamp, const Camera& camera) {
  const Vec3 right = camera.rotation().row(0).transpose();
  const Vec3 forward = camera.rotation().row(2).transpose();
  Vec3 away(forward.x(), 0, forward.z());
  // Looking straight down or up there is no level forward; take the world's.
  away = away.norm() > 1e-6 ? Vec3(away.normalized()) : Vec3(0, 0, 1);
  Vec3 across(right.x(), 0, right.z());
  across = across.norm() > 1e-6 ? Vec3(across.normalized()) : Vec3(1, 0, 0);
  return (lamp.from.x() * across + lamp.from.y() * Vec3::UnitY() - lamp.from.z() * away)
      .normalized();
}

Lighting mirrored(Lighting light) {
  for (Lamp* lamp : {&light.key, &light.fill, &light.rim}) lamp->from.x() = -lamp->from.x();
  return light;
}

double illuminance(const Lighting& light, const Camera& camera, const Vec3& normal,
                   double keyShare) {
  return light.ambient + keyShare * lambert(light.key, camera, normal) +
         lambert(light.fill, camera, normal) + lambert(light.rim, camera, normal);
}

std::optional<double> shadowLength(double height, const Vec3& towardLamp) {
  if (towardLamp.y() <= 0) return std::nullopt;
  return height * std::hypot(towardLamp.x(), towardLamp.z()) / towardLamp.y();
}

Result<LightWords> LightWords::read(std::string_view bytes, const std::string& fileName) {
  const Json json = Json::parse(bytes, nullptr, false);
  if (json.is_discarded() || !json.is_object() || !json.contains("lights") ||
      !json["lights"].is_array())
    return badInput("Expected a list of lights.", {.file = fileName});
  LightWords out;
  Problems problems;
  LightReader reader(fileName, problems);
  for (std::size_t i = 0; i < json["lights"].size(); ++i) {
    const std::string path = "/lights/" + std::to_string(i);
    const Json& entry = json["lights"][i];
    out.entries_.push_back({reader.read(entry, path), reader.words(entry, path)});
  }
  if (!problems.empty()) return tl::unexpected(problems);
  return out;
}

Result<LightWords> LightWords::load() {
  const auto path = presetPath("lexicon/light.json");
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  return read(*bytes, path->string());
}

const Lighting* LightWords::saidIn(std::string_view words) const {
  const std::string text = lowered(words);
  for (const Entry& entry : entries_)
    for (const std::string& word : entry.words)
      if (says(text, word)) return &entry.light;
  return nullptr;
}

const Lighting& LightWords::lightFor(std::string_view words) const {
  const Lighting* said = saidIn(words);
  return said ? *said : ordinary_;
}

const Lighting* LightWords::find(std::string_view name) const {
  for (const Entry& entry : entries_)
    if (entry.light.name == name) return &entry.light;
  return nullptr;
}

const Lighting& LightWords::lightFor(const Beat& beat) const {
  const Lighting& own = lightFor(beat.description);
  return &own == &ordinary_ ? lightFor(beat.setting) : own;
}

}  // namespace tw
