#include "review/called.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("names are written as one writes them, unknown ids stay") {
  Job job;
  Character who;
  who.id = "mara";
  who.name = "MARA VAN-OS";
  job.cast = {who};
  CHECK(calledIn(job, "mara") == "Mara Van-Os");
  CHECK(calledIn(job, "gull") == "gull");
}

}  // namespace tw
