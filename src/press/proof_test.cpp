#include "press/proof.h"

#include <doctest/doctest.h>

#include "press/example_rough.h"

using namespace tw;

TEST_CASE("look") {
  const std::string out = "/tmp/tw/press/";
  std::vector<RoughPicture> all;
  for (int i = 0; i < 6; ++i) all.push_back(example::rough(i % 3, std::string(1, char('A' + i))));
  const Overlays on{true, true, true, true};
  for (int i = 0; i < 3; ++i) {
    CHECK(writePng(out + "r" + std::to_string(i) + ".png", all[i], {}, 150));
    CHECK(writePng(out + "r" + std::to_string(i) + "on.png", all[i], on, 150));
    CHECK(writeSvg(out + "r" + std::to_string(i) + ".svg", all[i], on));
  }
  CHECK(writePdf(out + "r.pdf", all, on));
  CHECK(writeContactSheet(out + "c.png", all));
  CHECK(writeProof(out + "proof.pdf", {all, all}));
}
