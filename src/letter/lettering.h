// Sets copy in a real font and finds places for it: balloons that hold their text, in reading
// order, off faces, inside the live area, with tails to mouths.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "job/beat.h"
#include "job/rough.h"
#include "job/sheet.h"

namespace tw {

struct LetterStyle {
  std::string family = "Comic Neue";
  std::string weight = "bold";
  double sizePt = 7.5;  ///< at print; production facts §4
  double leadingPt = 8.4;
  double smallestPt = 6;   ///< never set smaller than this
  double paddingMm = 1.6;  ///< between type and balloon outline
  double gapMm = 1.2;      ///< between balloons, and from balloon to border
  bool upperCase = true;
};

/// Copy set without a place: what it needs.
struct SetCopy {
  std::string item;
  CopyKind kind = CopyKind::Speech;
  std::vector<std::string> lines;
  std::vector<double> lineWidthsMm;
  double widthMm = 0, heightMm = 0;  ///< of the balloon or box around it
};

struct CopyFinding {
  std::string item;
  std::string rule;  ///< "words per balloon", "no room", "covers a face", …
  std::string reason;
  std::string remedy;
  double amount = 0;  ///< how far over, as a share of the limit or of the area
};

struct LetterRequest {
  const std::vector<CopyItem>* items = nullptr;  ///< in reading order
  Polygon panel;
  Rect live;                            ///< type must stay inside
  std::vector<Polygon> faces;           ///< never covered
  std::vector<Region> bodies;           ///< better not covered
  std::map<std::string, Point> mouths;  ///< by character id, seen ones only
  std::vector<Rect> keepClear;
  std::vector<Polygon> covered;  ///< insets lying on this panel
  ReadingDirection direction = ReadingDirection::LeftToRight;
  int panelsOnPage = 1;  ///< for the word limits
  /// The balloons as they stand. Those that the artist placed stay where they are as long as they
  /// hold the item's words, and are set again at the same middle when they do not.
  std::vector<PlacedBalloon> standing;
};

struct LetterResult {
  std::vector<PlacedBalloon> balloons;
  std::vector<CopyFinding> findings;
  double coveredFace = 0;  ///< mm² of faces under balloons
  double coveredBody = 0;  ///< mm²
  double areaShare = 0;    ///< balloons over panel area
  int unplaced = 0;        ///< items for which no room was found
};

class TypeMeasure;

class Letterer {
 public:
  static Result<Letterer> make(LetterStyle style = {});
  Letterer(Letterer&&) noexcept;
  ~Letterer();

  /// Thread-safe.
  SetCopy set(const CopyItem& item, double mostWidthMm) const;
  /// Area that the items want, mm², and the least panel width and height that can hold the
  /// widest of them; for sizing before any panel exists.
  struct Wanted {
    double areaMm2 = 0, leastWidthMm = 0, leastHeightMm = 0;
  };
  Wanted wanted(const std::vector<CopyItem>& items) const;
  LetterResult place(const LetterRequest& request) const;
  const LetterStyle& style() const;
  const TypeMeasure& type() const;

 private:
  struct Impl;
  explicit Letterer(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

/// Most words for one panel when the page has that many panels; common practice, facts §4:
/// 1:210 2:105 3:70 4:52 5:42 6:35 7:30 8:26 9:23 12:17 16:13.
int mostWordsPerPanel(int panelsOnPage);

}  // namespace tw
