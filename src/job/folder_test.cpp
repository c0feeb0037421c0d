#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "job/document.h"
#include "job/job.h"

using namespace tw;
namespace fs = std::filesystem;

namespace {

Sheet anySheet() {
  Sheet sheet;
  sheet.name = "mine";
  sheet.source = "made up for this test";
  sheet.trimWidth = 170;
  sheet.trimHeight = 260;
  sheet.bleed = 3;
  sheet.live = {10, 10, 12, 8};
  sheet.gutterAcross = 4;
  sheet.gutterDown = 5;
  return sheet;
}

Page anyPage(int number) {
  Page page;
  page.number = number;
  Beat beat;
  beat.id = "p" + std::to_string(number) + "-1";
  beat.figures.push_back({"mara", "stand", "", ""});
  page.beats.push_back(beat);
  return page;
}

Job anyJob() {
  Job job;
  job.title = "The bell under the water";
  job.sheet = anySheet();
  job.cast.push_back({.id = "mara", .name = "MARA", .aliases = {}, .heightM = 1.68, .note = ""});
  job.pages = {anyPage(1), anyPage(2), anyPage(12)};
  return job;
}

std::string bytesOf(const fs::path& file) {
  return readFile(file).value_or("");
}

/// The former states kept of a file, oldest first: their numbers have as many digits.
std::vector<fs::path> formerStates(const fs::path& folder, const fs::path& file) {
  std::vector<fs::path> states;
  for (const auto& entry : fs::directory_iterator(folder / ".history" / file.parent_path()))
    if (entry.path().stem() == file.filename()) states.push_back(entry.path());
  std::sort(states.begin(), states.end());
  return states;
}

}  // namespace

TEST_CASE("a job that was created is the same job when it is loaded") {
  const ScratchFolder scratch;
  const Job job = anyJob();
  {
    const auto made = JobFolder::create(scratch / "job", job);
    REQUIRE(made);
    CHECK_FALSE(made->readOnly());
  }
  const auto opened = JobFolder::open(scratch / "job");
  REQUIRE(opened);
  const auto loaded = opened->load();
  REQUIRE_MESSAGE(loaded, describe(loaded.error()));
  CHECK(*loaded == job);
  CHECK(fs::exists(scratch / "job/pages/01.json"));
  CHECK(fs::exists(scratch / "job/pages/12.json"));
}

TEST_CASE("a folder that holds a job is never created over") {
  const ScratchFolder scratch;
  REQUIRE(JobFolder::create(scratch / "job", anyJob()));
  const std::string before = bytesOf(scratch / "job/job.json");
  Job other = anyJob();
  other.title = "Another";
  CHECK_FALSE(JobFolder::create(scratch / "job", other));
  CHECK(bytesOf(scratch / "job/job.json") == before);
}

TEST_CASE("a job that is open elsewhere can be read but not written") {
  const ScratchFolder scratch;
  auto first = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(first);
  auto second = JobFolder::open(scratch / "job");
  REQUIRE(second);
  CHECK(second->readOnly());
  CHECK(second->load());
  Page changed = anyPage(1);
  changed.note = "from the second";
  const auto refused = second->savePage(changed);
  REQUIRE_FALSE(refused);
  CHECK(describe(refused.error()).find("has this job open") != std::string::npos);
  CHECK_FALSE(second->save(anyJob()));
  CHECK_FALSE(second->keepScript(scratch / "job/job.json"));
  CHECK(first->savePage(changed));
}

TEST_CASE("the lock is free again when its holder is gone") {
  const ScratchFolder scratch;
  { REQUIRE(JobFolder::create(scratch / "job", anyJob())); }
  const auto next = JobFolder::open(scratch / "job");
  REQUIRE(next);
  CHECK_FALSE(next->readOnly());
}

TEST_CASE("a lock moves with its folder") {
  const ScratchFolder scratch;
  auto made = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(made);
  JobFolder moved = std::move(*made);
  CHECK_FALSE(moved.readOnly());
  CHECK(JobFolder::open(scratch / "job")->readOnly());
}

TEST_CASE("the former state of a page is kept, and no more than the bound") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  for (int i = 0; i < kHistoryKept + 7; ++i) {
    Page page = anyPage(1);
    page.note = std::to_string(i);
    REQUIRE(folder->savePage(page));
  }
  const auto states = formerStates(scratch / "job", "pages/01.json");
  REQUIRE(states.size() == kHistoryKept);
  const auto newest = readPageText(bytesOf(states.back()), "newest");
  const auto oldest = readPageText(bytesOf(states.front()), "oldest");
  REQUIRE(newest);
  REQUIRE(oldest);
  CHECK(newest->note == std::to_string(kHistoryKept + 5));
  CHECK(oldest->note == "6");
}

TEST_CASE("saving what is saved already writes nothing") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  REQUIRE(folder->save(anyJob()));
  CHECK_FALSE(fs::exists(scratch / "job/.history"));
}

TEST_CASE("a page that cannot be read is never overwritten") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  const std::string damaged = "{ \"format\": 2, \"number\": ";
  REQUIRE(writeFileAtomically(scratch / "job/pages/01.json", damaged));
  CHECK_FALSE(folder->load());
  CHECK_FALSE(folder->savePage(anyPage(1)));
  CHECK_FALSE(folder->save(anyJob()));
  CHECK(bytesOf(scratch / "job/pages/01.json") == damaged);
}

TEST_CASE("loading names every damaged page, not only the first") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  REQUIRE(writeFileAtomically(scratch / "job/pages/01.json", "[1, 2"));
  fs::remove(scratch / "job/pages/12.json");
  const auto loaded = folder->load();
  REQUIRE_FALSE(loaded);
  REQUIRE(loaded.error().size() == 2);
  CHECK(loaded.error()[0].place.file.ends_with("pages/01.json"));
  CHECK(loaded.error()[1].place.file.ends_with("pages/12.json"));
}

TEST_CASE("a value that could not be read back is not saved") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  Page page = anyPage(1);
  page.beats[0].weight = std::nan("");
  const std::string before = bytesOf(scratch / "job/pages/01.json");
  const auto refused = folder->savePage(page);
  REQUIRE_FALSE(refused);
  CHECK(refused.error()[0].cause == Cause::OurFault);
  CHECK(refused.error()[0].place.path == "/beats/0/weight");
  CHECK(bytesOf(scratch / "job/pages/01.json") == before);
}

TEST_CASE("pages that left the job go to the history") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  Job shorter = anyJob();
  shorter.pages.pop_back();
  REQUIRE(folder->save(shorter));
  CHECK_FALSE(fs::exists(scratch / "job/pages/12.json"));
  CHECK(formerStates(scratch / "job", "pages/12.json").size() == 1);
  CHECK(*folder->load() == shorter);
}

TEST_CASE("a script is kept byte for byte and never overwrites another") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  const std::string received = "PAGE ONE\r\n\xFF latin, \t tabs and no last newline";
  REQUIRE(writeFileAtomically(scratch / "in/story.txt", received));
  CHECK(*folder->keepScript(scratch / "in/story.txt") == "story.txt");
  CHECK(bytesOf(scratch / "job/script/story.txt") == received);
  CHECK(*folder->keepScript(scratch / "in/story.txt") == "story.txt");
  REQUIRE(writeFileAtomically(scratch / "in/story.txt", "PAGE ONE, revised"));
  CHECK(*folder->keepScript(scratch / "in/story.txt") == "story-2.txt");
  CHECK(bytesOf(scratch / "job/script/story.txt") == received);
}

TEST_CASE("what is not a job folder is refused with a sentence") {
  const ScratchFolder scratch;
  CHECK_FALSE(JobFolder::open(scratch / "nowhere"));
  fs::create_directories(scratch / "empty");
  const auto opened = JobFolder::open(scratch / "empty");
  REQUIRE_FALSE(opened);
  CHECK(opened.error()[0].sentence.find("job.json is missing") != std::string::npos);
  CHECK_FALSE(fs::exists(scratch / "empty/.lock"));
}

TEST_CASE("a page file under another page's name is refused, not taken for that page") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  fs::copy_file(scratch / "job/pages/01.json", scratch / "job/pages/02.json",
                fs::copy_options::overwrite_existing);
  const auto loaded = folder->load();
  REQUIRE_FALSE(loaded);
  CHECK(loaded.error()[0].sentence == "The file holds page 1 but its name says page 2.");
  CHECK(loaded.error()[0].place.path == "/number");
}

TEST_CASE("a job cannot be made where a file stands in the way, and nothing is left there") {
  const ScratchFolder scratch;
  REQUIRE(writeFileAtomically(scratch / "job", "a file"));
  const auto made = JobFolder::create(scratch / "job", anyJob());
  REQUIRE_FALSE(made);
  CHECK(made.error()[0].cause == Cause::BadInput);
  CHECK(bytesOf(scratch / "job") == "a file");
}

TEST_CASE("a stray file in the history neither counts nor goes") {
  const ScratchFolder scratch;
  auto folder = JobFolder::create(scratch / "job", anyJob());
  REQUIRE(folder);
  for (const char* stray : {"01.json", "01.json.old", "01.jsonx.0001", "notes"})
    REQUIRE(writeFileAtomically(scratch / "job/.history/pages" / stray, "mine"));
  for (int i = 0; i < kHistoryKept + 2; ++i) {
    Page page = anyPage(1);
    page.note = std::to_string(i);
    REQUIRE(folder->savePage(page));
  }
  for (const char* stray : {"01.json", "01.json.old", "01.jsonx.0001", "notes"})
    CHECK(bytesOf(scratch / "job/.history/pages" / stray) == "mine");
  CHECK(fs::exists(scratch / "job/.history/pages/01.json.0003"));
  CHECK_FALSE(fs::exists(scratch / "job/.history/pages/01.json.0001"));
}

TEST_CASE("pages and characters are found by number and id, or not at all") {
  Job job = anyJob();
  CHECK(job.page(12)->beats[0].id == "p12-1");
  CHECK(job.page(3) == nullptr);
  CHECK(job.character("mara")->name == "MARA");
  CHECK(job.character("MARA") == nullptr);
}
