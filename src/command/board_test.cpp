#include "command/board.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "command/demo_job.h"

namespace tw {

TEST_CASE(
    "a board shows the chosen rough, is written where asked, and refuses a rough that is not") {
  DemoJob job;
  job.roughs(2);
  BoardRequest request;
  request.job = job.folder();
  request.page = 4;
  request.files = {job.folder() / "out" / "board.svg"};
  REQUIRE(makeBoard(request).has_value());
  const auto first = readFile(request.files[0]);
  REQUIRE(first.has_value());
  request.rough = "B";
  REQUIRE(makeBoard(request).has_value());
  CHECK(*readFile(request.files[0]) != *first);
  request.rough = "Z";
  CHECK_FALSE(makeBoard(request).has_value());
  request.rough.clear();
  request.page = 77;
  CHECK_FALSE(makeBoard(request).has_value());
}

}  // namespace tw
