#include "read/proposed_focus.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

namespace {

struct Drawn {
  GreyPicture picture = paper(300, 200, 0.8f);
  Polygon outline = wholeOf(picture);

  PanelAttention attention() const { return attentionOf(picture, outline, {}, {}); }
};

/// A strong dark figure at the left, a fainter thing at the right.
Drawn twoThings() {
  Drawn d;
  paintEllipse(d.picture, {{40, 50}, {110, 160}}, 0.05f);
  paintEllipse(d.picture, {{60, 65}, {90, 95}}, 0.6f);
  paintBox(d.picture, {{230, 80}, {262, 112}}, 0.35f);
  return d;
}

}  // namespace

TEST_CASE("the focus is the strongest place that is no copy and the lead goes to the next") {
  Drawn d = twoThings();
  const PanelAttention attention = d.attention();
  const ProposedFocus focus = focusOf(attention, d.outline);
  CHECK(Rect{{35, 45}, {115, 165}}.contains(focus.at));
  CHECK(focus.sure <= kSurestFocus);
  CHECK_FALSE(focus.marked);
  const ProposedLead lead = leadOf(attention, focus);
  CHECK(lead.lead.strength <= kSurestLead);
  CHECK(lead.lead.direction.length() == doctest::Approx(1));
}

TEST_CASE("copy is never the focus while there is something else") {
  Drawn d = twoThings();
  paintBalloon(d.picture, {{140, 10}, {290, 70}}, true);
  const PanelAttention attention = d.attention();
  REQUIRE(attention.spots.front().kind == SeenKind::Copy);
  CHECK(Rect{{35, 45}, {115, 165}}.contains(focusOf(attention, d.outline).at));
}

TEST_CASE("a mark always wins and is sure") {
  const Drawn d = twoThings();
  const PanelAttention attention = d.attention();
  const MarkedFocus marked{.focus = Point{250, 30}, .lead = Vector{0, 3}};
  const ProposedFocus focus = focusOf(attention, d.outline, marked);
  CHECK(focus.at == Point{250, 30});
  CHECK(focus.marked);
  CHECK(focus.sure == 1);
  const ProposedLead lead = leadOf(attention, focus, marked);
  CHECK(lead.marked);
  CHECK(lead.lead.direction == Vector{0, 1});
  CHECK(lead.lead.strength == 1);
  CHECK(lead.lead.from == Point{250, 30});
}

TEST_CASE("a panel with nothing in it proposes its middle without being sure") {
  const Drawn d;
  const ProposedFocus focus = focusOf(PanelAttention{}, d.outline);
  CHECK(focus.at == Point{150, 100});
  CHECK(focus.sure == 0);
  CHECK(leadOf(PanelAttention{}, focus).lead.strength == 0);
}

}  // namespace tw
