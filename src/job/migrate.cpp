// Format 1 differed from format 2 in four things:
//   1. job.json gave a character's height in centimetres ("height_cm");
//   2. a brief gave the reading direction as "ltr" or "rtl";
//   3. a brief gave the number of small panels as one list, "small_panels": [3, 5];
//   4. a sheet gave one "gutter" for both directions.
#include "job/migrate.h"

namespace tw {

namespace {

/// Renames a field unless the new name is taken; returns the value or null.
Json* renamed(Json& object, const char* from, const char* to) {
  if (!object.is_object() || !object.contains(from) || object.contains(to)) return nullptr;
  Json value = std::move(object[from]);
  object.erase(from);
  return &(object[to] = std::move(value));
}

void heightsToMetres(Json& job) {
  if (!job.contains("cast") || !job["cast"].is_array()) return;
  for (Json& character : job["cast"])
    if (Json* height = renamed(character, "height_cm", "height_m"))
      if (height->is_number()) *height = height->get<double>() / 100;
}

void gutterToBoth(Json& job) {
  if (!job.contains("sheet")) return;
  Json& sheet = job["sheet"];
  if (const Json* across = renamed(sheet, "gutter", "gutter_across")) {
    const Json value = *across;
    sheet.emplace("gutter_down", value);
  }
}

void spellDirection(Json& brief) {
  const auto direction = brief.find("direction");
  if (direction == brief.end()) return;
  if (*direction == "ltr") *direction = "left-to-right";
  if (*direction == "rtl") *direction = "right-to-left";
}

void splitSmallPanels(Json& brief) {
  const auto range = brief.find("small_panels");
  if (range == brief.end() || !range->is_array() || range->size() != 2) return;
  const Json least = (*range)[0];
  const Json most = (*range)[1];
  brief.erase("small_panels");
  brief.emplace("least_small_panels", least);
  brief.emplace("most_small_panels", most);
}

void fromFormat1(Json& tree, DocumentKind kind) {
  if (kind == DocumentKind::Job) {
    heightsToMetres(tree);
    gutterToBoth(tree);
  } else if (tree.contains("brief") && tree["brief"].is_object()) {
    spellDirection(tree["brief"]);
    splitSmallPanels(tree["brief"]);
  }
}

}  // namespace

void migrate(Json& tree, DocumentKind kind, int from) {
  if (from <= 1) fromFormat1(tree, kind);
}

}  // namespace tw
