#include "job/document.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "base/files.h"
#include "job/arbitrary_test.h"
#include "job/read_json.h"
#include "job/sheet.h"

using namespace tw;

namespace {

const std::string kData = std::string(TIERWRIGHT_SOURCE_DIR) + "/tests/data/";

Page smallPage() {
  Page page;
  page.number = 3;
  Beat beat;
  beat.id = "p3-1";
  beat.figures.push_back({"mara", "stand", "", ""});
  page.beats.push_back(beat);
  Rough rough;
  rough.name = "A";
  RoughPanel panel;
  panel.beat = "p3-1";
  panel.outline.points = {{10, 10}, {100.1234, 10}, {100, 120}};
  panel.staging.figures.push_back({"mara", "stand", false, {}, 0, 0});
  rough.panels.push_back(panel);
  page.roughs.push_back(rough);
  return page;
}

/// The page's JSON with one value replaced, read again; all problems as text.
std::string readWith(const std::string& pointer, const nlohmann::json& value) {
  nlohmann::json tree = nlohmann::json::parse(writePageText(smallPage()));
  tree[nlohmann::json::json_pointer(pointer)] = value;
  const auto page = readPageText(tree.dump(), "pages/03.json");
  return page ? "accepted" : describe(page.error());
}

std::string readBytes(std::string_view bytes) {
  const auto page = readPageText(bytes, "pages/03.json");
  const auto job = readJobText(bytes, "job.json");
  CHECK_FALSE(job);
  return page ? "accepted" : describe(page.error());
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("any rough is equal after it was written and read") {
  CHECK(rc::check("rough: write then read is the identity", [] {
    Page page = smallPage();
    page.roughs = {tests::AnyFields::object<Rough>()};
    const auto back = readPageText(writePageText(page), "page");
    if (!back) RC_LOG() << describe(back.error());
    RC_ASSERT(back.has_value());
    RC_ASSERT(*back == page);
  }));
}

TEST_CASE("any page is equal after it was written and read, and is written the same again") {
  CHECK(rc::check("page: write then read is the identity", [] {
    const Page page = tests::anyPage();
    const std::string text = writePageText(page);
    const auto back = readPageText(text, "page");
    if (!back) RC_LOG() << describe(back.error());
    RC_ASSERT(back.has_value());
    RC_ASSERT(*back == page);
    RC_ASSERT(writePageText(*back) == text);
  }));
}

TEST_CASE("lengths are kept to a ten-thousandth of a millimetre and no further") {
  Page page = smallPage();
  page.roughs[0].panels[0].focus = {1.0 / 3, -0.00001};
  const std::string text = writePageText(page);
  CHECK(has(text, "\"focus\": [0.3333, 0]"));
  const auto stored = readPageText(text, "page");
  REQUIRE(stored);
  CHECK(stored->roughs[0].panels[0].focus == Point{0.3333, 0});
  CHECK(writePageText(*stored) == text);
}

TEST_CASE("files are readable: two spaces, short things on one line, no line over 100 columns") {
  Page page = smallPage();
  page.roughs[0].panels[0].figures.push_back({.who = "mara", .cut = "", .face = {}, .body = {}});
  for (int i = 0; i < 80; ++i)
    page.roughs[0].panels[0].figures[0].face.points.push_back({i * 1.25, i * 0.5});
  const std::string text = writePageText(page);
  CHECK(text.starts_with("{\n  \"format\": 2,\n  \"number\": 3,\n"));
  CHECK(has(text, "\"outline\": [[10, 10], [100.1234, 10], [100, 120]]"));
  std::size_t start = 0;
  for (std::size_t end; (end = text.find('\n', start)) != text.npos; start = end + 1)
    CHECK(end - start <= 100);
}

TEST_CASE("a wrong value is named with its place, what was expected and what was found") {
  CHECK(has(readWith("/beats/0/weight", "heavy"),
            "/beats/0/weight: Expected a number from 0 to 1000, found \"heavy\"."));
  CHECK(has(readWith("/beats/0/panel", 1.5), "Expected a whole number from 1 to 1000, found 1.5"));
  CHECK(has(readWith("/beats/0/shot", "huge"), "one of extreme close-up, close-up"));
  CHECK(has(readWith("/beats/0/dominant", 1), "Expected true or false, found 1"));
  CHECK(has(readWith("/beats", nlohmann::json::object()), "a list in square brackets"));
  CHECK(has(readWith("/brief", 3), "an object in braces, found 3"));
  CHECK(has(readWith("/brief/due", "tomorrow"), "a date such as"));
  CHECK(has(readWith("/roughs/0/panels/0/outline/1", {1, 2, 3}), "a point [x, y]"));
  CHECK(has(readWith("/note", nullptr), "nothing (null)"));
}

TEST_CASE("absurd numbers are refused") {
  CHECK(has(readWith("/roughs/0/panels/0/outline/1/0", 1e300), "from -100000 to 100000"));
  CHECK(has(readWith("/number", 1e9), "from 1 to 10000"));
  CHECK(has(readWith("/number", std::uint64_t(18446744073709551615u)), "from 1 to 10000"));
  CHECK(has(readWith("/beats/0/panel", -1), "from 1 to 1000"));
  CHECK(has(readBytes("{\"format\": 2, \"number\": 1e999}"), "too large"));
  CHECK(has(readWith("/beats/0/figures", std::vector<int>(201, 0)), "at most 200 entries"));
  CHECK(has(readWith("/choice", std::string(300, 'a')), "at most 200 bytes"));
}

TEST_CASE("an unknown field is refused with the nearest known one") {
  CHECK(has(readWith("/beats/0/wieght", 2), "/beats/0/wieght"));
  CHECK(has(readWith("/beats/0/wieght", 2), "Is \"weight\" meant?"));
  CHECK(has(readWith("/qqqqqqqqqqqqqqqq", 2), "Known are: number, spread"));
}

TEST_CASE("a missing field is named") {
  nlohmann::json tree = nlohmann::json::parse(writePageText(smallPage()));
  tree["beats"][0].erase("id");
  const auto page = readPageText(tree.dump(), "pages/03.json");
  REQUIRE_FALSE(page);
  CHECK(has(describe(page.error()), "The field \"id\" is missing"));
}

TEST_CASE("all problems are reported at once, up to a bound") {
  nlohmann::json tree = nlohmann::json::parse(writePageText(smallPage()));
  tree["beats"][0]["weight"] = "x";
  tree["brief"]["most_words"] = -4;
  tree["nonsense"] = 1;
  const auto page = readPageText(tree.dump(), "p");
  REQUIRE_FALSE(page);
  CHECK(page.error().size() == 3);
  tree["overrides"] = nlohmann::json::object();
  for (int i = 0; i < 900; ++i) tree["overrides"]["b" + std::to_string(i)] = 1;
  const auto many = readPageText(tree.dump(), "p");
  REQUIRE_FALSE(many);
  CHECK(many.error().size() == kMostProblems + 1);
}

TEST_CASE("bytes that are no document get a clear sentence") {
  CHECK(has(readBytes(""), "The file is empty"));
  CHECK(has(readBytes("  \n "), "The file is empty"));
  CHECK(has(readBytes("PAGE ONE\nPanel 1"), "not valid JSON"));
  CHECK(has(readBytes("{\"format\": 2,\n \"number\": 3"), "pages/03.json:2"));
  CHECK(has(readBytes("{\"format\": 2, \"title\": \"cut o"), "missing closing quote"));
  CHECK(has(readBytes(std::string_view("{\"a\": \"\0\"}", 10)), "zero byte"));
  CHECK(has(readBytes("{\"format\": 2}\n\n\n{\"b\": \"\xC3\x28\"}"), ":4: The text is not valid"));
  CHECK(has(readBytes("[1, 2]"), "object in braces"));
  CHECK(has(readBytes("3"), "object in braces"));
  CHECK(has(readBytes("{\"format\": 2, \"number\": 1, \"number\": 2}"), "stands twice"));
  CHECK(has(readBytes("{\"number\": 1}"), "format number is missing"));
  CHECK(has(readBytes("{\"format\": \"2\"}"), "format number is missing"));
}

TEST_CASE("hostile nesting and size are refused without a crash") {
  CHECK(has(readBytes(std::string(1000000, '[')), "ends too early"));
  CHECK(has(readBytes(std::string(100000, '[') + std::string(100000, ']')), "nested more than"));
  std::string deep = "{\"format\": 2, \"beats\": ";
  for (int i = 0; i < 50; ++i) deep += "{\"a\": ";
  CHECK(has(readBytes(deep + "1" + std::string(51, '}')), "nested more than"));
  CHECK(has(readBytes(std::string(kLargestTextBytes + 1, ' ')), "at most 16777216"));
}

TEST_CASE("a page cut off anywhere is refused") {
  const std::string whole = writePageText(smallPage());
  for (std::size_t length = 0; length + 2 < whole.size(); length += 7)
    CHECK_FALSE(readPageText(std::string_view(whole).substr(0, length), "p"));
}

// RFC 3629 and the table of well-formed byte sequences in the Unicode Standard (table 3-7), from
// memory.
TEST_CASE("UTF-8 is checked as RFC 3629 asks") {
  CHECK(firstBadUtf8("plain, é, 鐘, 🔔") == std::string::npos);
  CHECK(firstBadUtf8("ab\xC0\xAF") == 2);                        // overlong slash
  CHECK(firstBadUtf8("\xED\xA0\x80") == 0);                      // surrogate
  CHECK(firstBadUtf8("\xF4\x90\x80\x80") == 0);                  // over U+10FFFF
  CHECK(firstBadUtf8("\xE2\x82") == 0);                          // cut off
  CHECK(firstBadUtf8("\xF4\x8F\xBF\xBF") == std::string::npos);  // U+10FFFF
}

TEST_CASE("a newer format is refused with a sentence") {
  const std::string text = readBytes("{\"format\": 99, \"anything\": true}");
  CHECK(has(text, "format 99; this program knows formats up to 2"));
  CHECK(has(text, "newer version"));
}

TEST_CASE("beats, characters and page numbers that stand twice are named") {
  Page page = smallPage();
  page.beats.push_back(page.beats[0]);
  const auto read = readPageText(writePageText(page), "p");
  REQUIRE_FALSE(read);
  CHECK(has(describe(read.error()), "/beats/1/id: The beat id p3-1 stands twice"));
}

TEST_CASE("a script name cannot lead out of the script folder") {
  for (const char* name : {"../job.json", "/etc/passwd", "a\\b", ".."}) {
    JobFile job;
    job.scriptFile = name;
    const auto read = readJobText(writeJobText(job), "job.json");
    REQUIRE_FALSE(read);
    CHECK(has(describe(read.error()), "a file name without folders"));
  }
}

TEST_CASE("a job whose sheet contradicts itself is refused with the place in the document") {
  JobFile job;
  job.sheet.name = "mine";
  job.sheet.source = "mine";
  job.sheet.trimWidth = job.sheet.trimHeight = 200;
  job.sheet.bleed = 90;
  const auto read = readJobText(writeJobText(job), "job.json");
  REQUIRE_FALSE(read);
  CHECK(has(describe(read.error()), "/sheet/bleed"));
}

TEST_CASE("a folder of format 1 is migrated when it is loaded and left as it was on disk") {
  const std::string folder = kData + "job-format-1/";
  const auto jobBytes = readFile(folder + "job.json");
  const auto pageBytes = readFile(folder + "pages/01.json");
  REQUIRE(jobBytes);
  REQUIRE(pageBytes);
  const auto job = readJobText(*jobBytes, "job.json");
  REQUIRE_MESSAGE(job, describe(job ? Problems{} : job.error()));
  CHECK(job->cast.at(0).heightM == doctest::Approx(1.68));
  CHECK(job->sheet.gutterAcross == 4.5);
  CHECK(job->sheet.gutterDown == 4.5);
  const auto page = readPageText(*pageBytes, "pages/01.json");
  REQUIRE_MESSAGE(page, describe(page ? Problems{} : page.error()));
  CHECK(page->brief.direction == ReadingDirection::RightToLeft);
  CHECK(page->brief.leastSmallPanels == 3);
  CHECK(page->brief.mostSmallPanels == 5);
  CHECK(writePageText(*page).starts_with("{\n  \"format\": 2,"));
  CHECK(readPageText(writePageText(*page), "again").value() == *page);
}

TEST_CASE("fields of format 1 are not known in format 2") {
  CHECK(has(readWith("/brief/small_panels", {3, 5}), "not known here"));
}

TEST_CASE("page numbers that fall and character ids that stand twice are named in job.json") {
  JobFile job;
  job.sheet = loadSheet("us-comic-a").value();
  job.cast = {{.id = "mara", .name = "MARA", .aliases = {}, .note = ""},
              {.id = "mara", .name = "MARA THE ELDER", .aliases = {}, .note = ""}};
  job.pages = {1, 3, 2, 2};
  const auto read = readJobText(writeJobText(job), "job.json");
  REQUIRE_FALSE(read);
  const std::string told = describe(read.error());
  CHECK(has(told, "/pages/2"));
  CHECK(has(told, "/pages/3"));
  CHECK(has(told, "/cast/1/id"));
  CHECK(read.error().size() == 3);
}

// RFC 6901, section 3: "~" is written "~0" and "/" is written "~1".
TEST_CASE("a field name with a slash or a tilde keeps its place readable") {
  const std::string told = readWith("/a~1b~0c", 1);
  CHECK(has(told, "/a~1b~0c"));
}

TEST_CASE("more entries than any page has are refused") {
  nlohmann::json overrides = nlohmann::json::object();
  for (int i = 0; i < 1001; ++i) overrides["p3-" + std::to_string(i)] = nlohmann::json::object();
  CHECK(has(readWith("/overrides", overrides), "at most 1000 entries, found 1001"));
}

TEST_CASE("each document of the fuzzer's corpus is read or refused with a sentence") {
  std::set<std::string> accepted;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TIERWRIGHT_SOURCE_DIR) +
                                                               "/tests/fuzz/corpus/document")) {
    const std::string name = entry.path().filename().string();
    CAPTURE(name);
    const std::string bytes = readFile(entry.path()).value();
    const auto job = readJobText(bytes, name);
    const auto page = readPageText(bytes, name);
    const auto sheet = readSheetText(bytes, name);
    if (job || page || sheet) accepted.insert(name);
    for (const Problems& refusal :
         {job ? Problems{} : job.error(), page ? Problems{} : page.error(),
          sheet ? Problems{} : sheet.error()})
      for (const Problem& problem : refusal) CHECK_FALSE(problem.sentence.empty());
  }
  CHECK(accepted == std::set<std::string>{"format-1-job.json", "format-1-page.json", "job.json",
                                          "page.json", "sheet.json"});
}
