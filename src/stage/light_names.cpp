#include "stage/light_names.h"

#include <nlohmann/json.hpp>

#include "base/files.h"

namespace tw {

Result<std::vector<LightName>> lightNames() {
  const auto path = presetPath("lexicon/light.json");
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  const auto json = nlohmann::json::parse(*bytes, nullptr, false);
  if (!json.is_object() || !json.contains("lights") || !json["lights"].is_array())
    return badInput("Expected a list of lights.", {.file = path->string()});
  std::vector<LightName> out;
  for (const auto& light : json["lights"])
    if (light.is_object() && light.contains("name") && light["name"].is_string())
      out.push_back(
          {light["name"].get<std::string>(), light.contains("title") && light["title"].is_string()
                                                 ? light["title"].get<std::string>()
                                                 : std::string()});
  return out;
}

}  // namespace tw
