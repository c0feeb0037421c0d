#include "command/read_page.h"

#include <doctest/doctest.h>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"
#include "command/silence.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

/// The demo's page 4, once it has a rough.
struct Page4 {
  DemoJob job;
  ReadPageRequest request;

  Page4() {
    job.roughs(1);
    request.job = job.folder();
    request.page = 4;
    request.readers = 60;
    request.tryRemedies = false;
  }
  PageRead read() const {
    Progress progress;
    auto made = readStagedPage(request, progress);
    REQUIRE_MESSAGE(made.has_value(), (made ? std::string() : describe(made.error())));
    return *made;
  }
};

}  // namespace

TEST_CASE("a staged page is read whole, and its JSON follows the published schema") {
  Page4 page;
  page.request.tryRemedies = true;
  const PageRead read = page.read();
  CHECK(read.readings.eyes.readers == 60);
  CHECK(read.readings.eyes.panels.size() == 5);
  CHECK(read.readings.order.order.size() == 5);
  CHECK_FALSE(read.findings.empty());
  const auto schema =
      readFile(fs::path(TIERWRIGHT_SOURCE_DIR) / "docs/formats/read-output.schema.json");
  REQUIRE(schema.has_value());
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  for (const std::string& finding : check.findings(nlohmann::json::parse(pageReadJson(read))))
    FAIL_CHECK(finding);
}

TEST_CASE("one thread and many read alike, byte for byte") {
  Page4 page;
  page.request.tryRemedies = true;
  page.request.threads = 1;
  const std::string one = pageReadJson(page.read());
  page.request.threads = 3;
  CHECK(pageReadJson(page.read()) == one);
}

TEST_CASE("findings stand in order of their level") {
  const PageRead read = Page4().read();
  for (std::size_t i = 1; i < read.findings.size(); ++i)
    CHECK(read.findings[i - 1].severity <= read.findings[i].severity);
}

TEST_CASE("a finding that is answered goes to the end with its reason, and comes back") {
  Page4 page;
  const Finding first = page.read().findings.front();
  SilenceRequest answer{page.job.folder(), 4, first.rule, first.panel, "agreed with Ines", false};
  REQUIRE(silenceFinding(answer));
  const Finding last = page.read().findings.back();
  CHECK(last.rule == first.rule);
  CHECK(last.silencedWhy == "agreed with Ines");
  answer.reason.clear();
  answer.back = true;
  REQUIRE(silenceFinding(answer));
  CHECK(page.read().findings.front() == first);
}

TEST_CASE("reading sheets are written as the files asked for") {
  Page4 page;
  const ScratchFolder scratch;
  for (const char* name : {"a.png", "a.svg", "a.pdf"})
    page.request.sheets.push_back(scratch / name);
  page.request.dpi = 40;
  page.read();
  for (const fs::path& file : page.request.sheets) CHECK(fs::file_size(file) > 1000);
}

TEST_CASE("a page or a rough that is not there is refused by name") {
  Page4 page;
  Progress progress;
  page.request.rough = "Z";
  const auto rough = readStagedPage(page.request, progress);
  REQUIRE_FALSE(rough);
  CHECK(describe(rough.error()).find("\"Z\"") != std::string::npos);
  page.request.page = 900;
  CHECK_FALSE(readStagedPage(page.request, progress));
}

}  // namespace tw
