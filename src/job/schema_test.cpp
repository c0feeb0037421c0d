#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cstdlib>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "job/arbitrary_test.h"
#include "job/document.h"
#include "job/output_json.h"
#include "job/schema_json.h"

using namespace tw;

namespace {

const std::string kFormats = std::string(TIERWRIGHT_SOURCE_DIR) + "/docs/formats/";

nlohmann::json schemaOnDisk(const std::string& name) {
  return nlohmann::json::parse(readFile(kFormats + name).value());
}

std::string findingsIn(const std::string& schema, const nlohmann::json& document) {
  tests::SchemaCheck check(schemaOnDisk(schema));
  std::string out;
  for (const std::string& finding : check.findings(document)) out += finding + "\n";
  return out;
}

nlohmann::json parsed(const std::string& text) {
  return nlohmann::json::parse(text);
}

}  // namespace

// To accept a change of the fields: TIERWRIGHT_ACCEPT=1 job_test, then look at the difference.
TEST_CASE("the published schemas are those of the fields that the readers accept") {
  for (const PublishedSchema& schema : publishedSchemas()) {
    CAPTURE(schema.file);
    if (std::getenv("TIERWRIGHT_ACCEPT"))
      REQUIRE(writeFileAtomically(kFormats + schema.file, schema.text));
    CHECK(readFile(kFormats + schema.file).value_or("") == schema.text);
  }
}

TEST_CASE("any page that is written follows its schema") {
  tests::SchemaCheck check(schemaOnDisk("page.schema.json"));
  CHECK(rc::check("page follows schema", [&] {
    const auto findings = check.findings(parsed(writePageText(tests::anyPage())));
    for (const std::string& finding : findings) RC_LOG() << finding << "\n";
    RC_ASSERT(findings.empty());
  }));
}

TEST_CASE("any job that is written follows its schema") {
  tests::SchemaCheck check(schemaOnDisk("job.schema.json"));
  CHECK(rc::check("job follows schema", [&] {
    const auto job = tests::AnyFields::object<JobFile>();
    const auto findings = check.findings(parsed(writeJobText(job)));
    for (const std::string& finding : findings) RC_LOG() << finding << "\n";
    RC_ASSERT(findings.empty());
  }));
}

TEST_CASE("every sheet that ships follows the schema") {
  for (const std::string& name : sheetNames()) {
    CAPTURE(name);
    const auto path = presetPath("sheets/" + name + ".json");
    CHECK(findingsIn("sheet.schema.json", parsed(readFile(path.value()).value())) == "");
  }
}

TEST_CASE("what the terminal prints as JSON follows its schema and names every field") {
  CHECK(rc::check("beats and brief follow their schemas", [] {
    const Page page = tests::anyPage();
    const auto beats = parsed(beatsJson({&page}));
    RC_ASSERT(findingsIn("beats-output.schema.json", beats) == "");
    const auto brief = parsed(briefJson(page, Job{}));
    RC_ASSERT(findingsIn("brief-output.schema.json", brief) == "");
    RC_ASSERT(brief["brief"].contains("most_words"));
    for (const auto& beat : beats["pages"][0]["beats"]) RC_ASSERT(beat.contains("dominant"));
  }));
}

// The output itself is checked where it is made; here the schema is checked against a document
// written by hand from the description of the output.
TEST_CASE("the schema of roughs --json takes one page or several, and no unknown field") {
  nlohmann::json page = parsed(R"({"page": 3,
    "arrangements": {"counted": 22, "sized": 22, "staged": 6}, "seconds": 0.5,
    "roughs": [{"name": "A", "score": 1.5,
      "card": [{"rule": "order", "cost": 1.5, "reason": "staggered", "panel": 0}],
      "panels": [{"beat": "p3-1", "outline": [[0, 0], [9, 0], [9, 9]], "dominant": true,
        "shot": "long", "tilt_deg": 0, "mirrored": false, "focus": [4, 4],
        "lead": {"from": [4, 4], "direction": [1, 0], "strength": 1, "why": "looks"},
        "figures": [{"who": "mara", "visible": 1, "head_mm": 9.5, "cut": "whole"}],
        "balloons": [{"outline": [], "item": "p3-1-c1"}]}],
      "reading": {"order": [1], "followed": 1, "handed_on": 0}}]})");
  CHECK(findingsIn("roughs-output.schema.json", page) == "");
  CHECK(findingsIn("roughs-output.schema.json", {{"pages", {page, page}}}) == "");
  page["roughs"][0]["panels"][0]["tilt"] = 1;
  CHECK(findingsIn("roughs-output.schema.json", page) != "");
}

TEST_CASE("the schema refuses what the reader refuses") {
  Page page;
  page.beats.push_back({});
  page.beats[0].id = "p1-1";
  nlohmann::json tree = parsed(writePageText(page));
  CHECK(findingsIn("page.schema.json", tree) == "");
  const auto refusedByBoth = [&](const char* pointer, const nlohmann::json& value) {
    nlohmann::json changed = tree;
    changed[nlohmann::json::json_pointer(pointer)] = value;
    CAPTURE(pointer);
    CHECK(findingsIn("page.schema.json", changed) != "");
    CHECK_FALSE(readPageText(changed.dump(), "p"));
  };
  refusedByBoth("/format", 3);
  refusedByBoth("/number", 0);
  refusedByBoth("/beats/0/weight", -1);
  refusedByBoth("/beats/0/id", "two words");
  refusedByBoth("/beats/0/id", "");
  refusedByBoth("/beats/0/shot", "huge");
  refusedByBoth("/beats/0/figures", {{{"pose", "stand"}}});
  refusedByBoth("/beats/0/unknown", true);
  refusedByBoth("/brief/due", "tomorrow");
  refusedByBoth("/brief/keep_clear", {{{"name", "logo"}, {"rect", {1, 2, 3}}}});
}
