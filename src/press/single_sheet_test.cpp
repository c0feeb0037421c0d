#include "press/single_sheet.h"

#include <doctest/doctest.h>

#include <cstdlib>

#include "base/files.h"
#include "base/scratch_folder.h"

namespace tw {
namespace {

SingleSheet dot() {
  return {"A dot", {{0, 0}, {40, 20}}, [](Surface& surface) {
            surface.openGroup("dot", "Dot", true);
            surface.closeGroup();
          }};
}

std::string written(const std::string& name) {
  const ScratchFolder folder;
  const Typesetter typesetter;
  REQUIRE(writeSingleSheet(folder / name, dot(), typesetter, 50.8));
  return readFile(folder / name, 1 << 20).value();
}

}  // namespace

TEST_CASE("the name's ending says what kind of file a sheet becomes") {
  CHECK(written("a.png").starts_with("\x89PNG"));
  CHECK(written("a.pdf").starts_with("%PDF"));
  CHECK(written("a.svg").find("<svg") != std::string::npos);
}

TEST_CASE("a PNG sheet is as many dots wide as its paper at that resolution") {
  const std::string png = written("a.png");  // 40 mm at 50.8 dpi: 80 dots (PNG, 11.2.2: IHDR)
  CHECK(static_cast<unsigned char>(png[19]) == 80);
  CHECK(static_cast<unsigned char>(png[23]) == 40);
}

TEST_CASE("another ending is refused by name and nothing is written") {
  const ScratchFolder folder;
  const Typesetter typesetter;
  const auto done = writeSingleSheet(folder / "a.gif", dot(), typesetter, 100);
  REQUIRE_FALSE(done);
  CHECK(describe(done.error()).find("a.gif") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(folder / "a.gif"));
}

}  // namespace tw
