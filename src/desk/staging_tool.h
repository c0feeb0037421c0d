// The hand on a staged panel: takes hold of joints, gaze, figures and things and drags them, or
// moves the camera. Every kind of handle has a shape of its own; a left one is filled, a right one
// is open. By key as by mouse: Tab walks the handles, arrows move what is held.
#pragma once

#include <QCoreApplication>
#include <QString>

#include <array>
#include <optional>

#include "desk/page_tool.h"
#include "desk/staging_station_hand.h"

class QColor;
class QPointF;

namespace tw {

/// What a drag moves.
enum class StagingMode : std::uint8_t { Pose, Orbit, Dolly, Slide, Turn };
inline constexpr int kStagingModes = 5;

class StagingTool final : public PageTool {
  Q_DECLARE_TR_FUNCTIONS(StagingTool)

 public:
  explicit StagingTool(PanelInHand& hand) : hand_(hand) {}

  StagingMode mode() const { return mode_; }
  void setMode(StagingMode mode) { mode_ = mode; }

  void hover(PageView& view, const PenPoint& point) override;
  bool press(PageView& view, const PenPoint& point) override;
  void move(PageView& view, const PenPoint& point) override;
  void release(PageView& view, const PenPoint& point) override;
  void cancel(PageView& view) override;
  bool key(PageView& view, const QKeyEvent& event) override;
  void paint(PageView& view, QPainter& painter) override;

  /// What is held moves by so much on the page, or nearer to the eye, as one edit.
  void nudge(Vector mm, double nearerM);

 private:
  std::optional<std::size_t> handleAt(const PageView& view, Point mm) const;
  int figureAt(Point mm) const;
  bool isShown(const Handle& handle) const;
  void walk(int by);
  void nudgeCamera(Vector steps);
  CameraPlace cameraMoved(const Staging& from, Vector mm) const;
  Staging staged(const Staging& from, Vector mm) const;
  void dragHandle(const PenPoint& point);
  void bringNearer(double byM);
  void tell(const Dragged& dragged) const;
  QString whatMoved() const;

  void paintBones(const PageView& view, QPainter& painter) const;
  void paintPivot(const PageView& view, QPainter& painter) const;
  void paintHandle(const PageView& view, QPainter& painter, std::size_t index) const;

  PanelInHand& hand_;
  StagingMode mode_ = StagingMode::Pose;
  std::optional<std::size_t> hovered_;
  bool dragging_ = false, moved_ = false;
  Staging from_;   ///< as it was when the drag began
  Handle handle_;  ///< as it was then
  Point pressedAt_;
  PenPoint at_;         ///< of a drag
  double nearerM_ = 0;  ///< by keys, while a drag goes on
};

QString nameOf(StagingMode mode);

}  // namespace tw
