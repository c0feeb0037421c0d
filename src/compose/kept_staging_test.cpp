#include "compose/kept_staging.h"

#include "compose/layout_of.h"
#include "compose/small_page.h"
#include "compose/staging_table.h"

namespace tw {

TEST_CASE("a staging kept for another shape keeps what the hand set and frames anew") {
  SmallPage page;
  Staging kept = page.rough.panels[1].staging;
  kept.choice.lensMm = 35;
  kept.figures[0].turnsDeg["left-shoulder"] = {10, 20, 0};
  kept.figures[0].gazeDeg = 25;
  kept.light->key.strength = 0.4;
  StageRequest request = stageRequest(page.wishes(), 1, layoutOf(page.rough, page.wishes()));
  request.aspect = 0.5;
  const Staging tall = fitted(page.workshop().stager, request, kept);
  request.aspect = 2.5;
  const Staging wide = fitted(page.workshop().stager, request, kept);
  for (const Staging* one : {&tall, &wide}) {
    CHECK(one->choice == kept.choice);
    CHECK(one->figures[0].turnsDeg == kept.figures[0].turnsDeg);
    CHECK(one->figures[0].gazeDeg == 25);
    CHECK(one->light == kept.light);
  }
  CHECK(tall.camera != wide.camera);
}

TEST_CASE("somebody whom the kept staging does not show is staged as solved") {
  SmallPage page;
  const StageRequest request = stageRequest(page.wishes(), 1, layoutOf(page.rough, page.wishes()));
  Staging kept = page.rough.panels[1].staging;
  REQUIRE(kept.figures.size() == 2);
  kept.figures.pop_back();
  const Staging out = fitted(page.workshop().stager, request, kept);
  CHECK(out.figures.size() == 2);
  CHECK(out.figures[1] == page.workshop().stager.solved(request, kept.choice).figures[1]);
}

TEST_CASE("quick measures of a kept staging follow the hand") {
  SmallPage page;
  const Stager& stager = page.workshop().stager;
  const StageRequest request = stageRequest(page.wishes(), 0, layoutOf(page.rough, page.wishes()));
  Staging kept = page.rough.panels[0].staging;
  const Variant before = quickVariant(stager, request, kept);
  CHECK(before.choice == kept.choice);
  const auto aside = [](const Variant& v) { return v.lead.x * v.leadStrength; };
  kept.figures[0].gazeDeg += kept.figures[0].gazeDeg > 0 ? -60 : 60;
  CHECK(aside(quickVariant(stager, request, kept)) != doctest::Approx(aside(before)));
}

}  // namespace tw
