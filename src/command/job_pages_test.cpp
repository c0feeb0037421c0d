#include "command/job_pages.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

/// Page 1, the spread 2–3 and page 4, which has roughs A and C.
Job threePages() {
  Job job;
  for (const int number : {1, 2, 4}) {
    Page page;
    page.number = number;
    page.spread = number == 2;
    job.pages.push_back(page);
  }
  for (const char* name : {"A", "C"}) {
    Rough rough;
    rough.name = name;
    rough.panels.resize(3);
    job.pages[2].roughs.push_back(rough);
  }
  return job;
}

}  // namespace

TEST_CASE("all pages are meant when none is asked for, and a spread by either of its numbers") {
  const Job job = threePages();
  CHECK(*pagesAsked(job, std::nullopt) == std::vector<int>{1, 2, 4});
  CHECK(*pagesAsked(job, 2) == std::vector<int>{2});
  CHECK(*pagesAsked(job, 3) == std::vector<int>{2});
}

TEST_CASE("a page that is not there is refused with those that are") {
  const auto refused = pagesAsked(threePages(), 77);
  REQUIRE_FALSE(refused);
  CHECK(describe(refused.error()) == "The job has no page 77. Its pages are 1, 2, 4.\n");
  CHECK_FALSE(pagesAsked(Job{}, std::nullopt));
}

TEST_CASE(
    "a rough is found by its name, and one that is not there is refused with those that are") {
  const Job job = threePages();
  CHECK(*roughNamed(job.pages[2], "C") == 1);
  const auto refused = roughNamed(job.pages[2], "B");
  REQUIRE_FALSE(refused);
  CHECK(refused.error()[0].sentence == "There is no rough \"B\".");
  CHECK(refused.error()[0].advice == "The page has A, C.");
  CHECK(refused.error()[0].place.page == 4);
  CHECK(roughNamed(job.pages[0], "A").error()[0].advice.find("first") != std::string::npos);
}

TEST_CASE("panels are counted from one") {
  const Job job = threePages();
  const Rough& rough = job.pages[2].roughs[0];
  CHECK(*panelNumbered(job.pages[2], rough, 1) == 0);
  CHECK(*panelNumbered(job.pages[2], rough, 3) == 2);
  for (const int number : {0, 4, -1}) CHECK_FALSE(panelNumbered(job.pages[2], rough, number));
}

}  // namespace tw
