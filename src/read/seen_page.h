// A page as a reader's eye meets it: panels in the intended order, and in each what draws the eye.
// Made from a staged rough, or from a drawn page whose parts were marked or proposed. All reading
// measures take this and nothing else, so that roughs and drawn pages are measured alike.
#pragma once

#include <string>
#include <vector>

#include "job/rough.h"

namespace tw {

enum class SeenKind { Copy, Face, Figure, Hand, Prop, Spot };  ///< Spot: salient, nothing named

struct SeenElement {
  SeenKind kind = SeenKind::Figure;
  Rect box;            ///< mm on the page
  std::string name;    ///< character, prop or copy id; may be empty
  int words = 0;       ///< of copy
  int characters = 0;  ///< of copy, without spaces
  bool isFocus = false;
  bool operator==(const SeenElement&) const = default;
};

struct SeenPanel {
  Polygon outline;                    ///< mm on the page
  int layer = 0;                      ///< over 0: lies on another panel
  std::vector<SeenElement> elements;  ///< copy in its reading order first
  Point focus;
  Lead lead;               ///< strength 0: none
  bool continues = false;  ///< the same figures in the same place as in the panel before

  int words() const {
    int sum = 0;
    for (const SeenElement& e : elements) sum += e.words;
    return sum;
  }
};

struct SeenPage {
  std::vector<SeenPanel> panels;  ///< in the intended order
  Rect page;                      ///< trim, mm
  ReadingDirection direction = ReadingDirection::LeftToRight;
};

}  // namespace tw
