#include "job/panel_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "geometry/polygon.h"
#include "job/read_json.h"

namespace tw {

namespace {

constexpr double kFarthest = 1e6;   // px or mm; beyond any page
constexpr double kThinnest = 1e-6;  // of a panel's longer side
constexpr Spec kCoordinate{.least = -kFarthest, .most = kFarthest};
constexpr std::size_t kMostPages = 10000, kMostCorners = 10000, kMostMarks = 1000;
constexpr int kMostWords = 10000;
constexpr const char* kSeeFormat = "`tierwright read --help` shows the format.";

/// Words in a text: runs without blanks.
int countWords(const std::string& text) {
  int count = 0;
  bool inside = false;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (!blank && !inside) ++count;
    inside = !blank;
  }
  return std::min(count, kMostWords);
}

/// Reads the fields of one object; what is wrong goes to the Reader, which knows the file.
class Fields {
 public:
  Fields(Reader& reader, const Json& json, std::string path)
      : reader_(reader), json_(json), path_(std::move(path)) {}

  const Json* find(std::string_view key) const {
    const auto found = json_.find(key);
    return found == json_.end() || found->is_null() ? nullptr : &*found;
  }
  std::string at(std::string_view key) const { return below(path_, key); }
  const std::string& path() const { return path_; }

  template <class T>
  bool value(std::string_view key, const Spec& spec, T& out) {
    const Json* found = find(key);
    if (!found) return false;
    reader_.value(*found, at(key), spec, out);
    return true;
  }

  bool box(const Json& json, const std::string& path, Rect& out);
  void boxes(std::string_view key, std::vector<Rect>& out);
  bool isList(std::string_view key, const Json& json, std::size_t most);
  bool outline(std::string_view key, Polygon& out);

 private:
  Reader& reader_;
  const Json& json_;
  std::string path_;
};

bool Fields::box(const Json& json, const std::string& path, Rect& out) {
  const bool four = json.is_array() && json.size() == 4 &&
                    std::all_of(json.begin(), json.end(), [](const Json& v) {
                      return v.is_number() && std::abs(v.get<double>()) <= kFarthest;
                    });
  if (!four) {
    reader_.expected(path, "four numbers [x0, y0, x1, y1] from -1000000 to 1000000", json);
    return false;
  }
  out = {{json[0].get<double>(), json[1].get<double>()},
         {json[2].get<double>(), json[3].get<double>()}};
  const double thin = kThinnest * std::max(std::abs(out.width()), std::abs(out.height()));
  if (out.width() > thin && out.height() > thin) return true;
  const bool turned = out.width() < -thin || out.height() < -thin;
  reader_.complain(
      path,
      fmt::format("Expected a box [x0, y0, x1, y1] with x0 < x1 and y0 < y1, found {}.",
                  turned ? "one turned inside out" : "one without area"),
      turned ? "Swap its corners: the left top one comes first."
             : "Take it out or give it a size.");
  return false;
}

bool Fields::isList(std::string_view key, const Json& json, std::size_t most) {
  if (!json.is_array()) {
    reader_.expected(at(key), "a list in square brackets", json);
    return false;
  }
  if (json.size() <= most) return true;
  reader_.complain(at(key),
                   fmt::format("Expected at most {} entries, found {}.", most, json.size()));
  return false;
}

void Fields::boxes(std::string_view key, std::vector<Rect>& out) {
  const Json* found = find(key);
  if (!found || !isList(key, *found, kMostMarks)) return;
  for (std::size_t i = 0; i < found->size(); ++i) {
    Rect read;
    if (box((*found)[i], below(at(key), i), read)) out.push_back(read);
  }
}

/// Three or more corners around some area; a crossing outline is taken as it is.
bool Fields::outline(std::string_view key, Polygon& out) {
  const Json& found = *find(key);
  if (!isList(key, found, kMostCorners)) return false;
  Polygon read;
  for (std::size_t i = 0; i < found.size(); ++i) {
    const Json& corner = found[i];
    if (!corner.is_array() || corner.size() != 2) {
      reader_.expected(below(at(key), i), "a corner [x, y]", corner);
      return false;
    }
    Point p;
    reader_.value(corner[0], below(below(at(key), i), std::size_t{0}), kCoordinate, p.x);
    reader_.value(corner[1], below(below(at(key), i), std::size_t{1}), kCoordinate, p.y);
    read.points.push_back(p);
  }
  if (read.points.size() < 3) {
    reader_.complain(at(key),
                     fmt::format("Expected at least 3 corners, found {}.", read.points.size()),
                     "Give the whole outline, or a \"bbox\" instead.");
    return false;
  }
  const Rect around = bounds(read);
  const double side = std::max(around.width(), around.height());
  if (area(hull(read.points)) <= kThinnest * side * side) {
    reader_.complain(at(key), "Expected an outline around some area, found a line or a point.",
                     "Take the panel out or give it a size.");
    return false;
  }
  out = std::move(read);
  return true;
}

MarkedCopy copyOf(Reader& reader, Fields& panel, const Json& json, const std::string& path) {
  MarkedCopy copy;
  if (!json.is_object()) {
    panel.box(json, path, copy.box);
    return copy;
  }
  Fields fields(reader, json, path);
  if (const Json* box = fields.find("bbox"))
    fields.box(*box, fields.at("bbox"), copy.box);
  else
    reader.missing(path, "bbox", "where the lettering stands, [x0, y0, x1, y1]");
  const Json* words = fields.find("words");
  if (words && words->is_number()) {
    fields.value("words", count(0, kMostWords), copy.count);
  } else if (words) {
    fields.value("words", anyText(), copy.words);
    copy.count = countWords(copy.words);
  }
  return copy;
}

MarkedPanel panelOf(Reader& reader, const Json& json, const std::string& path) {
  MarkedPanel panel;
  if (!json.is_object()) {
    reader.expected(path, "a panel in braces", json);
    return panel;
  }
  Fields fields(reader, json, path);
  if (fields.find("polygon")) {
    fields.outline("polygon", panel.outline);
  } else if (fields.find("hull")) {
    fields.outline("hull", panel.outline);
  } else if (const Json* found = fields.find("bbox")) {
    Rect box;
    if (fields.box(*found, fields.at("bbox"), box)) panel.outline = polygonOf(box);
  } else {
    reader.complain(path, "Expected a \"polygon\", a \"hull\" or a \"bbox\", found none of them.",
                    "Add one, such as \"bbox\": [x0, y0, x1, y1].");
  }
  fields.value("order", count(1, kMostMarkedPanels), panel.order);
  fields.value("focus", kCoordinate, panel.focus);
  fields.value("lead", kCoordinate, panel.lead);
  if (panel.lead && panel.lead->length() == 0)
    reader.complain(fields.at("lead"), "Expected a direction [dx, dy], found no length.",
                    "Leave the field out where the panel has no lead.");
  fields.boxes("faces", panel.faces);
  fields.boxes("figures", panel.figures);
  fields.boxes("hands", panel.hands);
  fields.boxes("props", panel.props);
  const Json* copy = fields.find("copy");
  if (copy && fields.isList("copy", *copy, kMostMarks))
    for (std::size_t i = 0; i < copy->size(); ++i)
      panel.copy.push_back(copyOf(reader, fields, (*copy)[i], below(fields.at("copy"), i)));
  return panel;
}

class ListReader {
 public:
  explicit ListReader(std::string file) : file_(std::move(file)) {}

  Result<std::vector<MarkedPage>> read(const Json& json);

 private:
  MarkedPage page(const Json& json, const std::string& path, std::size_t number);
  void head(Fields& fields, Reader& reader, MarkedPage& page);
  void panels(const Json& json, const std::string& path, MarkedPage& page);
  void checkOrders(const std::string& path, const MarkedPage& page);
  void keep(Reader& reader, const std::string& where, int panel);

  std::string file_;
  Problems problems_;
};

/// Takes over what a Reader found, with the page and panel as a person would call them.
void ListReader::keep(Reader& reader, const std::string& where, int panel) {
  for (Problem& problem : reader.take()) {
    if (problems_.size() >= kMostProblems) return;
    const std::string who = panel > 0 ? fmt::format("{}, panel {}", where, panel) : where;
    if (!who.empty()) problem.sentence = who + ": " + problem.sentence;
    if (problem.advice.empty()) problem.advice = kSeeFormat;
    problems_.push_back(std::move(problem));
  }
}

Result<std::vector<MarkedPage>> ListReader::read(const Json& json) {
  std::vector<MarkedPage> pages;
  Reader reader(file_);
  if (json.is_object()) {
    pages.push_back(page(json, "", 1));
  } else if (!json.is_array()) {
    reader.expected("", "a list of pages in square brackets, or one page in braces", json);
  } else if (json.empty()) {
    reader.complain("", "Expected at least one page, found an empty list.",
                    "Each page is an object with a list \"panels\".");
  } else if (json.size() > kMostPages) {
    reader.complain("",
                    fmt::format("Expected at most {} pages, found {}.", kMostPages, json.size()),
                    "Split the file.");
  } else {
    for (std::size_t i = 0; i < json.size() && problems_.size() < kMostProblems; ++i)
      pages.push_back(page(json[i], below("", i), i + 1));
  }
  keep(reader, "", 0);
  if (!problems_.empty()) return tl::unexpected(std::move(problems_));
  return pages;
}

MarkedPage ListReader::page(const Json& json, const std::string& path, std::size_t number) {
  MarkedPage page;
  page.name = std::to_string(number);
  Reader reader(file_);
  if (!json.is_object()) {
    reader.expected(path, "a page in braces", json);
    keep(reader, fmt::format("Page {}", page.name), 0);
    return page;
  }
  Fields fields(reader, json, path);
  head(fields, reader, page);
  const Json* list = fields.find("panels");
  if (!list) reader.missing(path, "panels", "the list of the page's panels");
  const bool sound = list && fields.isList("panels", *list, kMostCorners);
  if (sound && list->size() > kMostMarkedPanels)
    reader.complain(fields.at("panels"),
                    fmt::format("The page has {} panels; pages of up to {} are read.", list->size(),
                                kMostMarkedPanels),
                    "Nothing was read. Split the page in two, or take out what is no panel.");
  const bool few = sound && list->size() <= kMostMarkedPanels;
  keep(reader, fmt::format("Page \"{}\"", page.name), 0);
  if (few) panels(*list, fields.at("panels"), page);
  return page;
}

void ListReader::head(Fields& fields, Reader& reader, MarkedPage& page) {
  const Json* name = fields.find("page");
  if (name && name->is_number_integer())
    page.name = name->dump();
  else
    fields.value("page", Spec{.mostLength = 1000}, page.name);
  for (const auto& [key, side] : {std::pair{"width", &page.width}, {"height", &page.height}}) {
    const Json* given = fields.find(key);
    fields.value(key, Spec{.least = 0, .most = kFarthest}, *side);
    if (given != nullptr && given->is_number() && given->get<double>() == 0)
      reader.complain(fields.at(key), "Expected more than 0, found 0.",
                      "Leave the field out where the page's size is not known.");
  }
  fields.value("picture", Spec{.mostLength = 1000}, page.picture);
  const Json* direction = fields.find("direction");
  if (!direction) return;
  const std::string said = direction->is_string() ? direction->get<std::string>() : "";
  if (said == "ltr" || said == nameOf(ReadingDirection::LeftToRight))
    page.direction = ReadingDirection::LeftToRight;
  else if (said == "rtl" || said == nameOf(ReadingDirection::RightToLeft))
    page.direction = ReadingDirection::RightToLeft;
  else
    reader.expected(fields.at("direction"), "ltr, rtl, left-to-right or right-to-left", *direction);
}

void ListReader::panels(const Json& json, const std::string& path, MarkedPage& page) {
  for (std::size_t i = 0; i < json.size(); ++i) {
    Reader reader(file_);
    page.panels.push_back(panelOf(reader, json[i], below(path, i)));
    keep(reader, fmt::format("Page \"{}\"", page.name), static_cast<int>(i) + 1);
  }
  checkOrders(path, page);
}

/// Where every panel has an order, they must be 1 to n, each once.
void ListReader::checkOrders(const std::string& path, const MarkedPage& page) {
  std::set<int> seen;
  for (std::size_t i = 0; i < page.panels.size(); ++i) {
    const std::optional<int> order = page.panels[i].order;
    if (!order || seen.insert(*order).second) continue;
    Reader reader(file_);
    reader.complain(below(below(path, i), "order"),
                    fmt::format("The order {} stands at two panels.", *order),
                    "Give each panel its own, from 1, or none at all.");
    keep(reader, fmt::format("Page \"{}\"", page.name), static_cast<int>(i) + 1);
  }
}

}  // namespace

Result<std::vector<MarkedPage>> readPanelList(std::string_view bytes, const std::string& fileName) {
  const Result<Json> json = parseJson(bytes, fileName);
  if (!json) return tl::unexpected(json.error());
  return ListReader(fileName).read(*json);
}

std::optional<std::vector<int>> intendedOrder(const MarkedPage& page) {
  std::vector<std::pair<int, int>> numbered;
  for (std::size_t i = 0; i < page.panels.size(); ++i) {
    if (!page.panels[i].order) return std::nullopt;
    numbered.emplace_back(*page.panels[i].order, static_cast<int>(i));
  }
  std::sort(numbered.begin(), numbered.end());
  std::vector<int> order;
  for (const auto& [place, panel] : numbered) {
    if (!order.empty() && place == numbered[order.size() - 1].first) return std::nullopt;
    order.push_back(panel);
  }
  if (order.empty()) return std::nullopt;
  return order;
}

}  // namespace tw
