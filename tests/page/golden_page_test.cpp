// Golden pages: what an editor is shown of the demo's dominant picture, held to pictures that
// somebody has looked at. Each has a sentence of what to see (docs/how-to/keep-golden-pages.md).
#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <string>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "command/job_pages.h"
#include "command/proof.h"
#include "command/roughs.h"
#include "grey_picture.h"

namespace tw {

namespace {

namespace fs = std::filesystem;
using tests::Difference;
using tests::GreyPicture;

constexpr int kThumbPx = 360;

fs::path goldenFolder() {
  return fs::path(TIERWRIGHT_SOURCE_DIR) / "tests/page/low-bell-page-4";
}
bool accepts() {
  return std::getenv("TIERWRIGHT_ACCEPT") != nullptr;
}

/// The demo with a rough of page 4.
class Page4 {
 public:
  Page4() {
    fs::copy(fs::path(TIERWRIGHT_SOURCE_DIR) / "demo/the-low-bell", job_,
             fs::copy_options::recursive);
    Progress progress;
    const auto made = makeRoughs({job_, 4, {.keep = 1, .seed = 1}, {}}, progress);
    REQUIRE_MESSAGE(made.has_value(), (made ? std::string() : describe(made.error())));
  }

  const fs::path& job() const { return job_; }
  /// The folder of its proof.
  fs::path proof() const {
    ProofRequest request;
    request.job = job_;
    request.page = 4;
    request.out = scratch_ / "proof";
    Progress progress;
    const auto files = makeProof(request, progress);
    REQUIRE_MESSAGE(files.has_value(), (files ? std::string() : describe(files.error())));
    CHECK(fs::file_size(files->book) > 10000);
    CHECK(fs::exists(request.out / "page-04-A.png"));
    return request.out;
  }

 private:
  ScratchFolder scratch_;
  fs::path job_ = scratch_ / "job";
};

const Page4& page4() {
  static const Page4 made;
  return made;
}

struct Golden {
  const char* name;  ///< of the files beside this test
  const char* file;  ///< of the proof, after the page and rough; nothing: the bare page
};
constexpr Golden kGoldens[] = {{"rough", nullptr},
                               {"fit", "-fit"},
                               {"variants", "-variants"},
                               {"values", "-values"},
                               {"grid", "-grid"}};

GreyPicture golden(const Golden& g) {
  return tests::readGreyPng(goldenFolder() / (std::string(g.name) + ".png"));
}

/// The pictures that differ are left for whoever has to look at them.
fs::path leave(const Golden& g, const GreyPicture& now, const Difference& d) {
  const fs::path folder = fs::temp_directory_path() / "tierwright-golden";
  fs::create_directories(folder);
  const fs::path file = folder / (std::string(g.name) + ".out.png");
  tests::writeGreyPng(file, now);
  tests::writeGreyPng(folder / (std::string(g.name) + ".diff.png"), d.map);
  return file;
}

/// Page 4's rough with its dominant panel's staging changed, drawn anew.
template <class Change>
GreyPicture roughAfter(const Change& change) {
  const ScratchFolder scratch;
  const fs::path job = scratch / "job", png = scratch / "changed.png";
  fs::copy(page4().job(), job, fs::copy_options::recursive);
  {
    auto open = openJob(job);
    REQUIRE(open.has_value());
    Page& page = *open->job.page(4);
    for (RoughPanel& panel : page.roughs.front().panels)
      if (panel.dominant) change(panel.staging);
    REQUIRE(open->folder.savePage(page).has_value());
  }
  ShowRequest request;
  request.job = job;
  request.page = 4;
  request.png = png;
  REQUIRE(showRough(request).has_value());
  return tests::thumbnail(tests::readGreyPng(png), kThumbPx);
}

GreyPicture pictureNow(const Golden& g, const fs::path& proof) {
  if (g.file == nullptr) return roughAfter([](Staging&) {});
  return tests::thumbnail(tests::readGreyPng(proof / ("page-04-A" + std::string(g.file) + ".png")),
                          kThumbPx);
}

}  // namespace

TEST_CASE("page 4 of the demo looks as it did when somebody last looked at it") {
  const fs::path proof = page4().proof();
  for (const Golden& g : kGoldens) {
    const GreyPicture now = pictureNow(g, proof);
    const fs::path picture = goldenFolder() / (std::string(g.name) + ".png");
    if (accepts()) tests::writeGreyPng(picture, now);
    const auto sentence = readFile(goldenFolder() / (std::string(g.name) + ".txt"));
    REQUIRE_MESSAGE(sentence.has_value(),
                    "a golden picture has a sentence of what to see: ", g.name);
    CHECK(sentence->size() > 40);
    const Difference d = tests::difference(golden(g), now);
    if (tests::looksAlike(d)) continue;
    FAIL_CHECK("To see: ", *sentence, "Golden: ", picture.string(),
               "\nNow, and where it differs: ", leave(g, now, d).string(), " and .diff.png (mean ",
               d.mean, ", worst square ", d.worst, ")\nAccept with TIERWRIGHT_ACCEPT=1.");
  }
}

TEST_CASE("a golden page without its chain fails") {
  const GreyPicture now = roughAfter([](Staging& staging) {
    std::erase_if(staging.props, [](const SetProp& p) { return p.prop == "chain"; });
  });
  CHECK_FALSE(tests::looksAlike(tests::difference(golden(kGoldens[0]), now)));
}

TEST_CASE("a golden page whose figure stands mirrored fails") {
  const GreyPicture now = roughAfter([](Staging& staging) {
    SetFigure& ines = staging.figures.front();
    ines.poseMirrored = !ines.poseMirrored;
    ines.headingDeg = -ines.headingDeg;
  });
  CHECK_FALSE(tests::looksAlike(tests::difference(golden(kGoldens[0]), now)));
}

TEST_CASE("a golden page whose figure is a tenth of its height away fails") {
  const GreyPicture now =
      roughAfter([](Staging& staging) { staging.figures.front().at.x += 0.17; });
  CHECK_FALSE(tests::looksAlike(tests::difference(golden(kGoldens[0]), now)));
}

TEST_CASE("every golden sheet differs from itself turned about") {
  for (const Golden& g : kGoldens) {
    const GreyPicture as = golden(g);
    CHECK(tests::looksAlike(tests::difference(as, as)));
    CHECK_FALSE(tests::looksAlike(tests::difference(as, tests::mirrored(as))));
  }
}

}  // namespace tw
