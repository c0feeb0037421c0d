#include "review/panel_rules.h"

#include <doctest/doctest.h>

namespace tw {
namespace {

PanelCase talk() {
  PanelCase panel;
  panel.beat.figures = {{"ada", "stand", "", ""}, {"bo", "stand", "", ""}};
  panel.focus = "ada";
  CopyItem said;
  said.speaker = "bo";
  said.text = "Here.";
  panel.beat.copy = {said};
  return panel;
}

double facesSeen(const PanelCase& panel, double speakerVisible) {
  RoughPanel seen;
  SeenFigure ada, bo;
  ada.who = "ada";
  ada.visible = 0.4;
  bo.who = "bo";
  bo.visible = speakerVisible;
  seen.figures = {ada, bo};
  Variant variant;
  variant.choice.shot = ShotSize::Medium;
  return exactNumbers(panel, variant, seen, {}, 0).facesSeen;
}

}  // namespace

TEST_CASE("a speaker hidden behind somebody counts as a face not seen") {
  CHECK(facesSeen(talk(), 0.4) == doctest::Approx(1));
  CHECK(facesSeen(talk(), 0) == doctest::Approx(0));
}

TEST_CASE("a voice from outside the panel hides nobody") {
  PanelCase panel = talk();
  panel.beat.copy[0].offPanel = true;
  CHECK(facesSeen(panel, 0) == doctest::Approx(1));
}

}  // namespace tw
