// The whole story as a reader meets it, page by page: what the script gives every panel, and what
// is seen of it where its page has a rough. Made by review from the job; the measures of story and
// rhythm take this and nothing else. A page without a rough is not measured, which is never fine.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "job/words.h"

namespace tw {

struct StoryPanel {
  std::string beat, scene;
  int number = 1;  ///< in reading order on its page
  int words = 0;
  double seconds = 0;               ///< that its reading is expected to take
  std::vector<std::string> who;     ///< of the cast, as the script names them
  std::vector<std::string> enters;  ///< of these, who was not seen before in the story
  std::string revealWord;           ///< that marks a reveal in the script, or empty
  bool dominant = false;
  bool isSet = true;  ///< there is a place to show: not an empty ground, not a mere detail

  // From the rough; mean nothing where the page is not measured.
  ShotSize shot = ShotSize::Medium;
  double areaShare = 0;          ///< of the sheet's trim
  double headMm = 0;             ///< of the figure that it is about; 0: no head in sight
  double figureShare = 0;        ///< of the panel's area that figures fill
  double wholeShown = 0;         ///< the most that is seen of a figure that nothing cuts, 0…1
  double speakersInOrder = 1;    ///< share of the speakers who follow each other as they speak
  std::optional<double> axis{};  ///< −1, 0, +1: the camera's side of the line through a pair
  std::string axisBetween{};     ///< that pair, "brannoch and ines"
};

struct StoryPage {
  int number = 1;
  bool spread = false;
  bool measured = false;
  std::string rough;  ///< name of the one that is measured
  std::vector<StoryPanel> panels;
};

struct SeenStory {
  std::vector<StoryPage> pages;  ///< by number
  ReadingDirection direction = ReadingDirection::LeftToRight;
};

/// A panel's place in a story: indices into pages and panels.
struct StoryPlace {
  std::size_t page = 0, panel = 0;
  bool operator==(const StoryPlace&) const = default;
};

/// All panels in the order of the pages.
std::vector<StoryPlace> placesOf(const SeenStory& story);
inline const StoryPanel& panelAt(const SeenStory& story, StoryPlace at) {
  return story.pages[at.page].panels[at.panel];
}
/// "page 4", "pages 2–3"
std::string inWords(const StoryPage& page);
/// "page 4 panel 2"
std::string inWords(const SeenStory& story, StoryPlace at);

}  // namespace tw
