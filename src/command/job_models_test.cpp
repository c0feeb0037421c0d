#include "command/job_models.h"

#include <algorithm>

#include "base/files.h"
#include "command/demo_job.h"
#include "stage/held_props.h"

namespace tw {

namespace fs = std::filesystem;

namespace {

/// A box of 2 × 3 × 1, its corner at the origin.
const std::string kBox =
    "v 0 0 0\nv 2 0 0\nv 2 3 0\nv 0 3 0\nv 0 0 1\nv 2 0 1\nv 2 3 1\nv 0 3 1\n"
    "f 4 3 2 1\nf 5 6 7 8\nf 1 2 6 5\nf 3 4 8 7\nf 2 3 7 6\nf 1 5 8 4\n";

void putModel(const DemoJob& job, const std::string& name, const std::string& text = kBox) {
  REQUIRE(writeFileAtomically(job.folder() / "art/models" / name, text).has_value());
}

Prop propOf(const DemoJob& job, const std::string& beat, const std::string& id) {
  const auto open = openJob(job.folder());
  REQUIRE(open.has_value());
  for (const Page& page : open->job.pages)
    for (const Beat& b : page.correctedBeats())
      if (b.id == beat)
        for (const Prop& prop : b.props)
          if (prop.id == id) return prop;
  FAIL("no such thing");
  return {};
}

std::string refusalOf(const Result<void>& result) {
  REQUIRE_FALSE(result.has_value());
  return describe(result.error());
}

}  // namespace

TEST_CASE("a thing that only a model knows is put in as large as its model") {
  const DemoJob job;
  CHECK(refusalOf(changeBeats(job.folder(), {"p1-2.prop.add=tram"})).find("No thing is called") !=
        std::string::npos);
  putModel(job, "Tram.OBJ");
  REQUIRE(changeBeats(job.folder(), {"p1-2.prop.add=tram"}).has_value());
  const Prop tram = propOf(job, "p1-2", "tram");
  CHECK(tram.sizeM == std::array<double, 3>{2, 3, 1});
}

TEST_CASE("a job is staged with its models and the file is left as it is") {
  const DemoJob job;
  putModel(job, "boat.obj");
  const auto open = openJob(job.folder());
  REQUIRE(open.has_value());
  const auto models = modelsOf(job.folder(), open->job);
  REQUIRE(models.has_value());
  CHECK(models->contains("boat"));
  const auto stager = stagerFor(*open);
  REQUIRE(stager.has_value());
  const Beat beat = open->job.pages[0].correctedBeats()[0];
  StageRequest request;
  request.beat = &beat;
  const StagingChoice choice = stager->variants(request, 4).front().choice;
  const auto solids = stager->solidsOf(stager->solved(request, choice), beat, 1);
  const auto boat = std::ranges::find(solids, 0, &Solid::prop);
  REQUIRE(boat != solids.end());
  CHECK(boat->mesh.triangles.size() == 12);
  CHECK(readFile(job.folder() / "art/models/boat.obj") == kBox);
}

TEST_CASE("a faulty or missing model is refused with its file") {
  const DemoJob job;
  putModel(job, "boat.obj", "v 0 0 0\nv 1 0 inf\n");
  Progress progress;
  const auto made = makeRoughs({job.folder(), 1, {.keep = 1}, {}}, progress);
  REQUIRE_FALSE(made.has_value());
  CHECK(describe(made.error()).find("boat.obj:2: \"inf\" is no number") != std::string::npos);
  putModel(job, "boat.obj");
  CHECK(refusalOf(changeBeats(job.folder(), {"p1-2.prop.lantern.model=lamp"}))
            .find("no model \"lamp\"") != std::string::npos);
  REQUIRE(changeBeats(job.folder(), {"p1-2.prop.lantern.model=boat"}).has_value());
  fs::remove(job.folder() / "art/models/boat.obj");
  const auto open = openJob(job.folder());
  CHECK(describe(stagerFor(*open).error()).find("no model \"boat\"") != std::string::npos);
}

TEST_CASE("roughs tell what the script names and nothing shows") {
  DemoJob job;
  Progress progress;
  const auto made = makeRoughs({job.folder(), 1, {.keep = 1}, {}}, progress);
  REQUIRE(made.has_value());
  CHECK(made->front().notDrawn.at("p1-4") == std::vector<std::string>{"rail"});
  CHECK(roughsJson(*made).find("\"not_drawn\"") != std::string::npos);
  putModel(job, "rail.obj");
  REQUIRE(changeBeats(job.folder(), {"p1-4.prop.add=rail"}).has_value());
  const auto open = openJob(job.folder());
  CHECK(open->job.pages[0].correctedBeats()[3].notDrawn.empty());
}

}  // namespace tw
