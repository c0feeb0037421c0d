#include "job/document.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "job/migrate.h"
#include "job/read_json.h"
#include "job/write_json.h"

namespace tw {

namespace {

/// Takes "format" out of the tree after bringing the tree up to date.
Result<void> bringUpToDate(Json& tree, DocumentKind kind, const std::string& file) {
  if (!tree.is_object())
    return badInput("A JSON object in braces was expected.", {.file = file, .path = "/"});
  const auto format = tree.find("format");
  if (format == tree.end() || !format->is_number_integer() || *format < 1)
    return badInput("The format number is missing or not a whole number from 1.",
                    {.file = file, .path = "/format"},
                    fmt::format("Files of this program start with \"format\": {}.", kFormat));
  if (*format > kFormat)
    return badInput(fmt::format("The file has format {}; this program knows formats up to {}.",
                                format->dump(), kFormat),
                    {.file = file, .path = "/format"}, "Use a newer version of the program.");
  const int from = format->get<int>();
  tree.erase(format);
  migrate(tree, kind, from);
  return {};
}

template <class T>
Result<T> readDocument(std::string_view bytes, const std::string& file, DocumentKind kind,
                       void (*check)(const T&, Reader&)) {
  Result<Json> tree = parseJson(bytes, file);
  if (!tree) return tl::unexpected(std::move(tree.error()));
  if (Result<void> done = bringUpToDate(*tree, kind, file); !done)
    return tl::unexpected(std::move(done.error()));
  Reader reader(file);
  T out;
  reader.object(*tree, "", out);
  if (reader.isSound()) check(out, reader);
  if (!reader.isSound()) return tl::unexpected(reader.take());
  return out;
}

void checkJob(const JobFile& job, Reader& reader) {
  for (const Problem& problem : contradictionsOf(job.sheet))
    reader.complain("/sheet" + problem.place.path, problem.sentence, problem.advice);
  for (std::size_t i = 1; i < job.pages.size(); ++i)
    if (job.pages[i] <= job.pages[i - 1])
      reader.complain(below("/pages", i), "Page numbers must rise and none may stand twice.");
  std::set<std::string> ids;
  for (std::size_t i = 0; i < job.cast.size(); ++i)
    if (!ids.insert(job.cast[i].id).second)
      reader.complain(below(below("/cast", i), "id"),
                      fmt::format("The character id {} stands twice.", job.cast[i].id));
}

void checkPage(const Page& page, Reader& reader) {
  std::set<std::string> ids;
  for (std::size_t i = 0; i < page.beats.size(); ++i)
    if (!ids.insert(page.beats[i].id).second)
      reader.complain(below(below("/beats", i), "id"),
                      fmt::format("The beat id {} stands twice.", page.beats[i].id));
}

template <class T>
OrderedJson documentOf(const T& value) {
  OrderedJson tree = OrderedJson::object();
  tree.push_back({"format", kFormat});
  const OrderedJson fields = objectOf(value);
  for (const auto& [key, item] : fields.items()) tree.push_back({key, item});
  return tree;
}

}  // namespace

Result<JobFile> readJobText(std::string_view bytes, const std::string& fileName) {
  return readDocument<JobFile>(bytes, fileName, DocumentKind::Job, checkJob);
}

Result<Page> readPageText(std::string_view bytes, const std::string& fileName) {
  return readDocument<Page>(bytes, fileName, DocumentKind::Page, checkPage);
}

Result<Sheet> readSheetText(std::string_view bytes, const std::string& fileName) {
  Result<Json> tree = parseJson(bytes, fileName);
  if (!tree) return tl::unexpected(std::move(tree.error()));
  Reader reader(fileName);
  Sheet sheet;
  reader.object(*tree, "", sheet);
  if (reader.isSound())
    for (const Problem& problem : contradictionsOf(sheet))
      reader.complain(problem.place.path, problem.sentence, problem.advice);
  if (!reader.isSound()) return tl::unexpected(reader.take());
  return sheet;
}

std::string writeJobText(const JobFile& job) {
  return textOf(documentOf(job));
}

std::string writePageText(const Page& page) {
  return textOf(documentOf(page));
}

std::string writeSheetText(const Sheet& sheet) {
  return textOf(objectOf(sheet));
}

JobFile jobFileOf(const Job& job) {
  JobFile file{job.title,      job.client, job.due,    job.sheet,       job.cast,
               job.scriptFile, {},         job.scenes, job.sceneChanges};
  for (const Page& page : job.pages) file.pages.push_back(page.number);
  std::sort(file.pages.begin(), file.pages.end());
  return file;
}

}  // namespace tw
