#include "job/sheet.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "job/document.h"
#include "job/read_json.h"

namespace tw {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kSpreadEnding = "-spread";

bool isPath(const std::string& nameOrPath) {
  return nameOrPath.find('/') != nameOrPath.npos || nameOrPath.ends_with(".json");
}

Result<Sheet> loadSheetFile(const fs::path& path, const std::string& shown) {
  Result<std::string> bytes = readFile(path);
  if (!bytes) return tl::unexpected(std::move(bytes.error()));
  return readSheetText(*bytes, shown);
}

tl::unexpected<Problems> noSuchSheet(const std::string& name,
                                     const std::vector<std::string>& names) {
  const std::string_view near = nearest(name, {names.begin(), names.end()});
  return badInput(
      fmt::format("There is no sheet named \"{}\".", name), {},
      near.empty() ? fmt::format("Known are: {}.", fmt::join(names, ", "))
                   : fmt::format("Is \"{}\" meant? Known are: {}.", near, fmt::join(names, ", ")));
}

}  // namespace

Rect Sheet::liveRect(bool rightHand) const {
  const double left = spread || !rightHand ? live.outer : live.inner;
  const double right = spread || rightHand ? live.outer : live.inner;
  return {{left, live.top}, {trimWidth - right, trimHeight - live.bottom}};
}

Rect Sheet::foldRect() const {
  const double half = spread ? live.inner : 0;
  return {{trimWidth / 2 - half, 0}, {trimWidth / 2 + half, trimHeight}};
}

Result<Sheet> loadSheet(const std::string& nameOrPath) {
  if (isPath(nameOrPath)) return loadSheetFile(nameOrPath, nameOrPath);
  const std::vector<std::string> names = sheetNames();
  const auto known = [&](const std::string& name) {
    return std::binary_search(names.begin(), names.end(), name);
  };
  const bool spread = !known(nameOrPath) && nameOrPath.ends_with(kSpreadEnding);
  const std::string name =
      spread ? nameOrPath.substr(0, nameOrPath.size() - kSpreadEnding.size()) : nameOrPath;
  if (!known(name)) return noSuchSheet(nameOrPath, names);
  const std::string file = "sheets/" + name + ".json";
  Result<fs::path> path = presetPath(file);
  if (!path) return tl::unexpected(std::move(path.error()));
  Result<Sheet> sheet = loadSheetFile(*path, file);
  if (!sheet || !spread) return sheet;
  if (sheet->spread)
    return badInput(fmt::format("The sheet {} is a spread already.", name), {}, "Use its name.");
  return spreadOf(*sheet);
}

std::vector<std::string> sheetNames() {
  std::vector<std::string> names;
  const Result<fs::path> folder = presetPath("sheets");
  if (!folder) return names;
  std::error_code error;
  for (fs::directory_iterator entry(*folder, error), end; !error && entry != end;
       entry.increment(error))
    if (entry->path().extension() == ".json") names.push_back(entry->path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

Sheet spreadOf(const Sheet& single) {
  Sheet out = single;
  out.name = single.name + std::string(kSpreadEnding);
  out.title = single.title + ", spread";
  out.spread = true;
  out.pageWidth = single.trimWidth;
  out.trimWidth = 2 * single.trimWidth;
  out.canvas = {};  // stated for one page only
  if (single.boardWidth > 0) {
    const Rect printed = printedBoardArea(out);
    out.boardWidth = printed.width() / out.reduction;
    out.boardHeight = printed.height() / out.reduction;
  }
  return out;
}

}  // namespace tw
