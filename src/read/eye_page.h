// A page made ready for many simulated readers: in the direction that they read, in page heights,
// with what draws the eye in each panel, the chance that it is passed over, and the pull of copy
// and leads from panel to panel. All of it follows from the page alone, not from the reader.
#pragma once

#include <vector>

#include "read/eye_path_model.h"
#include "read/panel_relations.h"
#include "read/seen_page.h"

namespace tw {

/// Something to look at. Places in page heights, x growing in the reading direction.
struct EyePart {
  SeenKind kind = SeenKind::Spot;
  int element = -1;  ///< index into the panel's elements; −1: the picture where nothing stands
  Rect box;
  Point aim;          ///< where looks fall about
  double weight = 0;  ///< of pictures: how strongly it draws
  double looks = 0;   ///< of copy: fixations that go forward, on average
};

struct EyePanel {
  Rect box;
  std::vector<EyePart> copy;     ///< in its reading order
  std::vector<EyePart> picture;  ///< never empty
  double looks = 0;              ///< at the picture after the first, on average
  double passedOver = 0;         ///< chance that it is
  double cameBack = 0;           ///< chance that the reader then comes back to it
};

class EyePage {
 public:
  /// Panels beyond kMostPanels are left out; no printed page has so many.
  EyePage(const SeenPage& page, const EyePathModel& model,
          const ReaderPreferences& likes = shippedPreferences());

  const std::vector<EyePanel>& panels() const { return panels_; }
  const EyePathModel& model() const { return model_; }
  const PanelRelations& relations() const { return relations_; }
  int count() const { return static_cast<int>(panels_.size()); }
  /// Added log odds of going from one panel to another: copy near by at an open fork, and leads.
  double copyPull(int from, int to) const { return copyPull_[at(from, to)]; }
  double leadPull(int from, int to) const { return leadPull_[at(from, to)]; }
  /// Back to mm on the page as printed.
  Point onPage(Point p) const;

 private:
  Point ready(Point p) const;
  Rect ready(const Rect& box) const;
  std::size_t at(int from, int to) const;
  EyePanel readyPanel(const SeenPanel& panel, bool underInsets) const;
  std::vector<EyePart> readyCopy(const SeenPanel& panel) const;
  std::vector<EyePart> readyPicture(const SeenPanel& panel, bool underInsets) const;
  double gazeFactor(const SeenPanel& panel, const SeenElement& element) const;
  void countLooks();
  void findSkips(const SeenPage& page);
  void findPulls(const SeenPage& page);
  double densePull(std::size_t panel, const SeenPage& page) const;

  EyePathModel model_;
  PanelRelations relations_;
  bool mirrored_ = false;
  Point origin_;
  double unit_ = 1;  ///< mm of one page height
  std::vector<EyePanel> panels_;
  std::vector<double> copyPull_, leadPull_;
};

}  // namespace tw
