#include "stage/outdoor_set.h"

#include <algorithm>

#include "stage/set_words.h"

namespace tw {

namespace {

using Pieces = std::vector<Piece>;

void boat(Pieces& p) {
  p.push_back({"boat", {4.8, 0.62, 1.9}, 0, 0, 0, 12});
}
void cliff(Pieces& p) {
  p.push_back({"box", {5.0, 5.2, 4.0}, -1.8, 1.2, 0, 18});
  p.push_back({"box", {4.2, 3.4, 3.4}, 2.2, 0.4, 0, -14});
  p.push_back({"box", {2.4, 1.4, 2.0}, 4.6, -0.6, 0, 33});
}
void rocks(Pieces& p) {
  p.push_back({"ellipsoid", {2.8, 1.7, 2.2}, -1.6, 0.4, -0.35, 20});
  p.push_back({"ellipsoid", {1.8, 1.0, 1.6}, 1.3, -0.3, -0.25, -30});
  p.push_back({"ellipsoid", {4.4, 2.6, 3.0}, 3.6, 2.6, -0.5, 8});
}
void trees(Pieces& p) {
  for (const double x : {-2.8, 0.2, 3.4}) {
    const double back = x * x * 0.25;
    p.push_back({"cylinder", {0.32, 2.4, 0.32}, x, back, 0, 0});
    p.push_back({"ellipsoid", {2.3, 2.8, 2.3}, x + 0.1, back, 1.9, 0});
  }
}
void houses(Pieces& p) {
  p.push_back({"house", {4.2, 6.4, 5.0}, -3.4, 1.0, 0, 10});
  p.push_back({"house", {4.4, 8.6, 5.0}, 1.4, 2.4, 0, 10});
  p.push_back({"house", {5.0, 5.6, 5.0}, 6.6, 1.6, 0, 10});
}
void pier(Pieces& p) {
  p.push_back({"box", {9.0, 0.25, 1.6}, 0, 0.4, 0.75, 0});
  for (const double x : {-3.4, -0.6, 2.2, 4.2}) {
    p.push_back({"cylinder", {0.26, 1.5, 0.26}, x, -0.3, 0, 0});
  }
}
void hills(Pieces& p) {
  p.push_back({"ellipsoid", {26, 9, 12}, -8, 16, -4.5, 0});
  p.push_back({"ellipsoid", {32, 12, 12}, 13, 24, -6.5, 0});
}
void stairs(Pieces& p) {
  p.push_back({"stairs", {2.4, 1.6, 2.6}, 1.4, 0.6, 0, 0});
}

/// A tower by what the words say of it. Far off it stands to the side that is read first.
void tower(Pieces& p, const Beat& beat, const TowerWish& wish) {
  const bool alone = beat.figures.empty() && beat.props.empty();
  const char* shape = wish.broken ? "broken-tower" : "tower";
  Piece piece{shape, {6.4, 21, 6.4}, 0, 0, 0, 24, true};
  if (wish.near) {
    piece.across = 1.6, piece.away = 5.4;
  } else if (wish.sunk) {
    piece.up = -0.62 * piece.sizeM[1];
    if (!alone) piece.across = -9, piece.away = 42;
  } else if (!alone) {
    piece.across = -6.5, piece.away = 21;
  }
  p.push_back(piece);
}

struct Named {
  std::initializer_list<std::string_view> words;
  void (*build)(Pieces&);
};

}  // namespace

std::vector<Piece> outdoorPieces(const Beat& beat) {
  const std::string words = placeWords(beat);
  const Named kNamed[] = {
      {{"boat", "ship", "deck", "dinghy", "raft", "barge", "wreck"}, boat},
      {{"cliff", "cave", "canyon", "quarry"}, cliff},
      {{"pier", "quay", "harbour", "harbor", "dock", "jetty"}, pier},
      {{"street", "town", "city", "village", "house", "square", "roof", "alley"}, houses},
      {{"forest", "wood", "tree", "garden", "orchard"}, trees},
      {{"rock", "reef", "shore", "beach", "seabed", "sea floor", "underwater", "ruin"}, rocks},
      {{"stair", "steps"}, stairs},
      {{"hill", "mountain", "field", "moor", "road", "plain"}, hills}};
  Pieces pieces;
  int kinds = 0;
  if (const auto wish = towerIn(beat)) {
    tower(pieces, beat, *wish);
    kinds = wish->near ? 2 : 1;
  }
  for (const Named& named : kNamed) {
    if (kinds >= 2 || !says(words, named.words)) continue;
    Pieces more;
    named.build(more);
    for (Piece& piece : more) {
      piece.across += kinds * 5.0;
      piece.away += kinds * 3.0;
      pieces.push_back(piece);
    }
    ++kinds;
  }
  if (pieces.empty()) hills(pieces);
  return pieces;
}

}  // namespace tw
