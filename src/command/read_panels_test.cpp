#include "command/read_panels.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>

#include "../../tests/json_schema_check.h"
#include "base/files.h"

namespace tw {
namespace {

namespace fs = std::filesystem;

/// A file of panels that is taken away again.
class ListFile {
 public:
  explicit ListFile(const std::string& text)
      : path_(fs::temp_directory_path() / ("read-panels-" + std::to_string(getpid()) + ".json")) {
    REQUIRE(writeFileAtomically(path_, text));
  }
  ~ListFile() { fs::remove(path_); }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

/// A stack beside a tall panel, the tall one first in the file; and the grid, mirrored.
const char* const kTwoPages = R"([
  {"page": "stack", "panels": [{"bbox": [54, 0, 104, 124]}, {"bbox": [0, 64, 50, 124]},
                               {"bbox": [0, 0, 50, 60]}]},
  {"page": "grid", "direction": "rtl", "panels": [
     {"bbox": [54, 0, 104, 60], "order": 1}, {"bbox": [0, 0, 50, 60], "order": 2},
     {"bbox": [54, 64, 104, 124], "order": 4}, {"bbox": [0, 64, 50, 124], "order": 3}]}])";

TEST_CASE("panels in any order are read as readers take them") {
  const ListFile file(kTwoPages);
  const auto pages = readPanels({file.path(), {}});
  REQUIRE(pages);
  REQUIRE(pages->size() == 2);
  const ReadMarkedPage& stack = pages->front();
  CHECK(stack.reading.order == std::vector<int>{2, 1, 0});
  CHECK(stack.direction == ReadingDirection::LeftToRight);
  CHECK(!stack.intended);
  const ReadMarkedPage& grid = pages->back();
  CHECK(grid.direction == ReadingDirection::RightToLeft);
  CHECK(grid.reading.order == std::vector<int>{0, 1, 2, 3});
  REQUIRE(grid.intended);
  CHECK(grid.intended->order == std::vector<int>{0, 1, 3, 2});
  CHECK(grid.intended->followed < 0.05);
}

TEST_CASE("a direction that is asked for goes before the file's") {
  const ListFile file(kTwoPages);
  const auto pages = readPanels({file.path(), ReadingDirection::LeftToRight});
  REQUIRE(pages);
  CHECK(pages->back().direction == ReadingDirection::LeftToRight);
  CHECK(pages->back().reading.order == std::vector<int>{1, 0, 3, 2});
}

TEST_CASE("the printed JSON follows its published schema") {
  const ListFile file(kTwoPages);
  const auto pages = readPanels({file.path(), {}});
  REQUIRE(pages);
  const auto schema =
      readFile(TIERWRIGHT_SOURCE_DIR "/docs/formats/read-panels-output.schema.json");
  REQUIRE(schema);
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  const nlohmann::json printed = nlohmann::json::parse(readPanelsJson(*pages));
  for (const std::string& finding : check.findings(printed)) FAIL_CHECK(finding);
  CHECK(printed[0]["steps"][0]["from"].is_null());
  CHECK(printed[1].contains("intended"));
}

TEST_CASE("the artist is told where readers part and why") {
  const ListFile file(kTwoPages);
  const auto pages = readPanels({file.path(), {}});
  REQUIRE(pages);
  std::string told;
  for (const std::string& sentence : readPanelsSentences(pages->front())) told += sentence + "\n";
  CHECK(told.find("3, 2, 1") != told.npos);
  CHECK(told.find("After panel 3") != told.npos);
  CHECK(told.find("stack beside a tall panel") != told.npos);
  std::string grid;
  for (const std::string& sentence : readPanelsSentences(pages->back())) grid += sentence + "\n";
  CHECK(grid.find("You mean 1, 2, 4, 3") != grid.npos);
}

TEST_CASE("a page without panels is told so") {
  const ListFile file(R"({"panels": []})");
  const auto pages = readPanels({file.path(), {}});
  REQUIRE(pages);
  CHECK(pages->front().reading.order.empty());
  CHECK(readPanelsSentences(pages->front()).front() == "The page has no panels.");
}

TEST_CASE("a missing or faulty file is bad input") {
  CHECK(!readPanels({"no-such-file.json", {}}));
  const ListFile file("[{\"panels\": 3}]");
  const auto pages = readPanels({file.path(), {}});
  REQUIRE(!pages);
  CHECK(pages.error().front().cause == Cause::BadInput);
}

}  // namespace
}  // namespace tw
