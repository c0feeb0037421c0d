// A page whose panels are moved by hand: what can be dragged, and what a drag or a typed number
// makes of the outlines. Every gutter stays as wide as it is, no panel falls under the sheet's
// least size, leaves the bleed or stops being convex; a drag that asks for more goes as far as it
// may and says why it stopped. The page itself is never changed: answers are new outlines.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrange/edit_snap.h"
#include "base/result.h"
#include "job/rough.h"

namespace tw {

enum class HandleKind {
  Gutter,     ///< a gutter, or the part of it between two crossings
  GutterEnd,  ///< turns the gutter about its other end
  Border,     ///< an outer border, or several in line
  Corner,     ///< both borders that meet there
  Tier,       ///< the gutters above and below a tier, so that it keeps its height
  Inset,      ///< a whole panel that lies on the ground
};

struct EditHandle {
  HandleKind kind = HandleKind::Gutter;
  std::size_t line = 0;    ///< of PageEdit::lines(); a corner's first, the upper of a tier
  std::size_t second = 0;  ///< a corner's other line, the lower of a tier
  bool atFrom = false;     ///< which end of the gutter
  std::size_t panel = 0;   ///< of a corner or an inset
  std::size_t corner = 0;  ///< point of that panel's outline
  Point from, to;          ///< where it is shown: a line, or one place
  /// How it can be dragged: a unit direction, or zero for every way.
  Vector runs;
  /// False for the part of a line that is usually moved whole, and for the whole of one that is
  /// usually moved in parts: offered when asked for.
  bool usual = true;
};

/// A panel that an edit changes.
struct EditedPanel {
  std::size_t panel = 0;
  Polygon outline;
  bool bleeds = false;
};

struct EditMove {
  std::vector<EditedPanel> panels;  ///< only those that change
  Vector offset;                    ///< how far it really went
  std::vector<SnapLine> snaps;
  std::string stopped;  ///< why it went no farther, a sentence; empty: it went all the way
};

enum class PageSide { Left, Right, Top, Bottom };
inline constexpr PageSide kPageSides[] = {PageSide::Left, PageSide::Right, PageSide::Top,
                                          PageSide::Bottom};

class PageEdit {
 public:
  PageEdit(std::vector<EditPanel> panels, const Sheet& sheet, bool rightHand);
  /// The rough's panels.
  PageEdit(const Rough& rough, const Sheet& sheet, bool rightHand);

  const std::vector<EditPanel>& panels() const { return panels_; }
  const std::vector<EditLine>& lines() const { return lines_; }
  const std::vector<EditHandle>& handles() const { return handles_; }

  /// The handle under a hand at `at`: places before lines, the nearer before the farther. Unusual
  /// ones only when `unusual`, and then before the usual ones.
  std::optional<std::size_t> handleAt(Point at, double reachMm, bool unusual = false) const;
  /// The handle of the same kind that stands nearest to where one was before an edit.
  std::optional<std::size_t> sameHandle(const EditHandle& before) const;

  /// The page after dragging a handle by `offset`; `snapMm` 0: resting places are not looked for.
  EditMove moved(std::size_t handle, Vector offset, double snapMm = 0) const;

  /// Whether a panel's border on that side of the page could run to the bleed: no other panel
  /// stands between them.
  bool canBleed(std::size_t panel, PageSide side) const;
  bool bleeds(std::size_t panel, PageSide side) const;
  /// Border out to the bleed, or back to the live area. Bad input when a panel stands between.
  Result<EditMove> withBleed(std::size_t panel, PageSide side, bool on) const;

  /// The panel's box by number: its left, top, width or height, mm. What moves with it moves as
  /// when dragged. Width and height move the border that lies on a gutter, the later one when
  /// both do; an inset's place moves all of it.
  EditMove withLeft(std::size_t panel, double mm) const;
  EditMove withTop(std::size_t panel, double mm) const;
  EditMove withWidth(std::size_t panel, double mm) const;
  EditMove withHeight(std::size_t panel, double mm) const;

 private:
  /// Borders with their movement.
  struct Step {
    std::vector<PanelSide> sides;
    RigidMove move;
  };
  struct Made {
    std::vector<EditPanel> panels;
    std::vector<double> shares;  ///< of each step that was possible
    std::string stopped;
  };

  void makeHandles();
  void addLine(std::size_t line);
  void addCorners(std::size_t panel);
  void addTiers();
  bool isUsual(std::size_t line) const;
  std::size_t usualLineOf(PanelSide side) const;
  std::vector<std::size_t> gutterLinesAcrossPage() const;

  std::vector<PanelSide> allSides(std::size_t panel) const;
  std::vector<PanelSide> movingWith(const EditHandle& handle) const;
  std::vector<Step> stepsFor(const EditHandle& handle, Vector offset) const;
  Snapped snappedFor(const EditHandle& handle, Vector offset, double snapMm) const;
  Snapped snappedTurn(const EditHandle& handle, Vector offset, double snapMm) const;
  Step turnStep(const EditHandle& handle, Vector offset) const;
  Made made(const std::vector<Step>& steps) const;
  EditMove answer(const Made& made) const;

  std::optional<std::size_t> sideToward(std::size_t panel, PageSide side) const;
  double edgeOf(const Polygon& outline, PageSide side) const;
  bool onGutter(std::size_t panel, PageSide side) const;
  bool isInset(std::size_t panel) const;
  EditMove edgeTo(std::size_t panel, PageSide side, double mm,
                  const std::vector<PanelSide>& moving) const;
  EditMove borderTo(std::size_t panel, PageSide side, double mm) const;
  EditMove lengthTo(std::size_t panel, PageSide first, PageSide second, double mm) const;

  std::vector<EditPanel> panels_;
  Sheet sheet_;
  SnapPaper paper_;
  std::vector<EditLine> lines_;
  std::vector<EditHandle> handles_;
};

}  // namespace tw
