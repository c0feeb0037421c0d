// The story on the wall: all spreads in a row as they lie open, every page in miniature as it
// stands, what scene runs how long, where pages are turned, and below each page, panel by panel,
// how long it reads, its words, how near it is seen and how large it is drawn. Findings carry
// numbers and are listed. One landscape A3 sheet for some two dozen pages, more for more.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/finding.h"
#include "press/proof.h"
#include "press/surface.h"

namespace tw {

struct StoryMapPanel {
  std::size_t scene = 0;  ///< index into StoryMap::scenes
  int words = 0;
  double seconds = 0, curve = 0;             ///< its reading time, and the smoothed one
  int pace = 0;                              ///< −1 in a fast stretch, +1 in a slow one
  std::optional<std::size_t> paceFinding{};  ///< index, on the first panel of a stretch
  ShotSize shot = ShotSize::Medium;
  double areaShare = 0;  ///< of the sheet
  bool dominant = false, reveal = false;
  std::vector<std::size_t> findings{};  ///< indices into StoryMap::findings
};

struct StoryMapPage {
  int number = 1;
  bool spread = false;
  std::optional<RoughPicture> picture{};  ///< absent: no rough yet
  std::vector<StoryMapPanel> panels{};
  std::vector<std::size_t> findings{};  ///< on the page as a whole

  int lastNumber() const { return spread ? number + 1 : number; }
};

struct StoryMapFinding {
  Severity severity = Severity::Look;
  std::string head;            ///< "page 4 panel 2, axis kept"
  std::string reason, remedy;  ///< sentences
  std::string tried{};         ///< "Tried: …", or empty
  int page = 1;
  std::string silencedWhy{};  ///< the artist's reason; empty: not silenced
};

struct StoryMap {
  std::string title, about;
  double pageWide = 168, pageHigh = 260;  ///< trim of a single page, mm
  ReadingDirection direction = ReadingDirection::LeftToRight;
  std::vector<StoryMapPage> pages;  ///< by number
  std::vector<std::string> scenes;
  std::vector<StoryMapFinding> findings;
  double middleSeconds = 0;  ///< the story's middle panel
};

/// By the file's extension: .pdf holds all sheets, .svg and .png get a file for each ("map-2.png").
Result<void> writeStoryMap(const std::filesystem::path& file, const StoryMap& map, double dpi);

}  // namespace tw
