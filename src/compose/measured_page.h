// A staged page and everything that is measured of it. After an edit only what the edit can have
// changed is measured again, so that figures keep up with a hand that drags. Measures what a rough
// stores, never what the search would have chosen instead.
#pragma once

#include <utility>
#include <vector>

#include "compose/compose.h"
#include "review/score_card.h"
#include "stage/light.h"
#include "stage/panel_glance.h"

namespace tw {

class MeasuredPage {
 public:
  /// All must outlive the page. Bad input when the rough was made for another state of the script.
  static Result<MeasuredPage> of(const PageCase& page, const Workshop& workshop,
                                 const LightWords& lights, Rough rough, unsigned threads = 0);

  const Measured& measured() const { return measured_; }
  const Rough& rough() const { return measured_.rough; }
  const PageCase& page() const { return *page_; }
  /// Of every panel, without its balloons.
  const std::vector<GreyPicture>& greys() const { return greys_; }
  /// Of every panel, how much of each thing in its staging is seen.
  const std::vector<std::vector<SeenThing>>& things() const { return things_; }

  /// Another staging for one panel: a joint, a gaze, the camera or the light was changed.
  void restage(std::size_t panel, Staging staging);
  /// Other outlines for some panels: a gutter was dragged. Their cameras are solved again for the
  /// new shapes, but not those that the artist moved; poses and gazes that she set stay, her lines
  /// go with their panel.
  void reshape(const std::vector<std::pair<std::size_t, Polygon>>& outlines, unsigned threads = 0);

  /// Everything in the panel that is not measured: its bleed, staging, balloons, strokes.
  void replace(std::size_t panel, RoughPanel changed);

  /// Who stands where in that staging of the panel: character ids from the left of the picture.
  std::vector<std::string> fromTheLeft(std::size_t panel, const Staging& staging) const;

  /// Other balloons for one panel: those placed by hand stay, the others are placed around them.
  void reletter(std::size_t panel, std::vector<PlacedBalloon> balloons);
  /// What lettering knows of the panel as it is now; borrows from the page.
  LetterRequest letterRequestOf(std::size_t panel) const;

  /// The staging that this choice gives the panel in its present shape.
  Staging solved(std::size_t panel, const StagingChoice& choice) const;
  /// What that staging would give the panel, from joints alone: microseconds, no picture.
  Variant quickly(std::size_t panel, const Staging& staging) const;

 private:
  MeasuredPage(const PageCase& page, const Workshop& workshop, const LightWords& lights);
  void takeLayout();
  void readOrderAgain();
  void look(std::size_t panel);
  void look(std::size_t panel, const LetterRequest& before);
  void lookClosely(std::size_t panel, const LetterRequest& before);
  void letterAgain(std::size_t panel);
  void arriveAgain();
  bool isSetByHand(std::size_t panel) const;

  const PageCase* page_;
  const Workshop* workshop_;
  const LightWords* lights_;
  Measured measured_;
  std::vector<GreyPicture> greys_;
  std::vector<std::vector<SeenThing>> things_;
};

}  // namespace tw
