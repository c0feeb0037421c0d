#include "stage/handles.h"

#include "stage/staged_panel_test.h"

namespace tw {

TEST_CASE("every figure has nine handles and every thing one where the camera sees them") {
  const StagedPanel& panel = panelOfTwo();
  const Staging staging = plainStaging();
  const std::vector<Handle> handles = handlesOf(panel, staging);
  CHECK(handles.size() == 2 * 9 + 2);
  const Camera camera = panel.cameraOf(staging);
  for (const Handle& handle : handles) {
    const Point seen = panel.pageFrom(*camera.project(handle.world));
    CHECK((seen - handle.page).length() < 1e-9);
    CHECK(handle.outside == !panel.frame.contains(handle.page));
  }
}

TEST_CASE("left and right hands are the figure's own also when its pose is mirrored") {
  Staging staging = plainStaging();
  staging.figures[1].headingDeg = 0;
  staging.camera = CameraPlace{{0, 1.4, -6}, 0, 0, 0, 50, 0, 0};
  for (const bool mirrored : {false, true}) {
    staging.figures[1].poseMirrored = mirrored;
    const Handle left = handleOf(panelOfTwo(), staging, Grab::LeftHand, 1);
    const Handle right = handleOf(panelOfTwo(), staging, Grab::RightHand, 1);
    CHECK(left.page.x > right.page.x);  // he faces the camera
  }
}

TEST_CASE("a thing in a hand names its holder and one on the floor nobody") {
  const Staging staging = plainStaging();
  CHECK(handleOf(panelOfTwo(), staging, Grab::Thing, 0).figure == 0);
  CHECK(handleOf(panelOfTwo(), staging, Grab::Thing, 1).figure == -1);
}

TEST_CASE("who stands behind somebody is marked as hidden and who stands free is not") {
  const StagedPanel& panel = panelOfTwo();
  Staging staging = plainStaging();
  staging.camera = CameraPlace{{0, 1.2, -5}, 0, 0, 0, 50, 0, 0};
  staging.figures[0].at = {0, 0, 0.8};
  staging.figures[1].at = {0, 0, 0};
  staging.props[1].at = {3, 0, 3};
  std::vector<Handle> handles = handlesOf(panel, staging);
  markHidden(panel, staging, handles);
  const auto hidden = [&](Grab grab, int figure) {
    for (const Handle& h : handles)
      if (h.grab == grab && h.figure == figure) return h.hidden;
    return false;
  };
  CHECK(hidden(Grab::Pelvis, 0));
  CHECK_FALSE(hidden(Grab::Pelvis, 1));
  CHECK_FALSE(hidden(Grab::Head, 1));
}

TEST_CASE("what is behind the eye says so") {
  Staging staging = plainStaging();
  staging.camera.panDeg += 180;
  for (const Handle& handle : handlesOf(panelOfTwo(), staging)) {
    CHECK(handle.behindEye);
    CHECK(handle.outside);
  }
}

}  // namespace tw
