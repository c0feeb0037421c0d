// How one reader looks at one panel: a short first look at the picture, the copy in its order, then
// the picture again. Each panel, balloon and picture has random numbers of its own, so that a
// change in one place leaves the reader as she was everywhere else.
#pragma once

#include <cstdint>
#include <vector>

#include "base/random.h"
#include "read/eye_page.h"

namespace tw {

struct EyeFixation {
  Point at;  ///< mm on the page
  double ms = 0;
  int panel = 0;
  int element = -1;  ///< of the panel; −1: the picture where nothing stands
  SeenKind on = SeenKind::Spot;
  bool goesBack = false;  ///< within copy, or to a panel that the reader had left
};

/// What makes one reader differ from the next.
struct EyeReader {
  std::uint64_t seed = 0;
  double copyPace = 1, picturePace = 1;  ///< factors on fixation durations
  double interest = 1;                   ///< factor on looks at pictures

  EyeReader(std::uint64_t seedOfAll, std::uint64_t number, const EyePathModel& model);
};

enum class Draw { PassOver, Landing, Picture, Glance, Copy };  ///< Copy + i: the i-th balloon

/// The random numbers of a reader for one purpose at one panel.
Random drawsFor(const EyeReader& reader, int panel, Draw purpose, int balloon = 0);

/// A factor with mean 1 whose logarithm has this standard deviation, bounded at 3.5 of them.
double spreadFactor(std::uint64_t draw, double deviation);

/// Looks at panels and writes down the fixations.
class PanelLooker {
 public:
  PanelLooker(const EyePage& page, std::vector<EyeFixation>& path) : page_(page), path_(path) {}

  /// Ready for another reader, who begins at time 0.
  void restart(const EyeReader& reader);
  /// Reads the whole panel.
  void read(int panel, bool cameBack);
  /// One look at a panel read before.
  void glance(int panel);

 private:
  void landOn(int panel, bool cameBack);
  void readCopy(int panel, std::size_t balloon, bool cameBack);
  void lookAtPicture(int panel, bool cameBack);
  std::size_t choosePart(const EyePanel& panel, double draw) const;
  double inhibited(double lastMs) const;
  void fixate(int panel, const EyePart& part, Point at, double ms, bool goesBack);
  void lookAtPart(int panel, std::size_t part, std::uint64_t draw, double ms, bool goesBack);

  const EyePage& page_;
  std::vector<EyeFixation>& path_;
  const EyeReader* reader_ = nullptr;
  double now_ = 0;                ///< ms since the reader began
  std::vector<double> lastSeen_;  ///< of the picture's parts of the panel being read, ms
};

}  // namespace tw
