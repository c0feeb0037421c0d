// The page as it stands, with what is laid over it, at any size; and the hand of a tool on it.
#pragma once

#include <QList>
#include <QTimer>
#include <QWidget>

#include "desk/engine.h"
#include "desk/file_pictures.h"
#include "desk/page_layers.h"
#include "desk/page_tool.h"

class QAction;

namespace tw {

class PageView final : public QWidget {
  Q_OBJECT

 public:
  PageView(Document& document, Engine& engine, QWidget* parent = nullptr);
  ~PageView() override;

  /// Borrowed; null: a press only selects the panel under it.
  void setTool(PageTool* tool);
  PageTool* tool() const { return tool_; }

  QPointF toView(Point mm) const;
  Point toPage(QPointF px) const;
  double pixelsPerMm() const { return scale_; }
  /// The panel that is seen at that place: an inset before the ground it lies on.
  std::optional<std::size_t> panelAt(Point mm) const;

  /// Keep the page, or the selected panel with a little around it, in sight whatever happens.
  void fitPage();
  void fitPanel();
  void zoomBy(double factor, QPointF aboutPx);

  const LayersShown& layers() const { return layers_; }
  void showLayer(Layer layer, bool shown);
  /// One checkable action for each layer and one to play the eye's path; they work while the view
  /// is seen.
  QList<QAction*> layerActions() const { return actions_; }
  /// One action to see the selected panel and one to see the page.
  QList<QAction*> sizeActions() const { return sizes_; }
  /// Points out a place on the page until the hand is on it, or something else is shown; empty:
  /// nothing.
  void pointOut(const Polygon& place);

 protected:
  void paintEvent(QPaintEvent*) override;
  void resizeEvent(QResizeEvent*) override;
  void showEvent(QShowEvent*) override;
  void wheelEvent(QWheelEvent*) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;
  void mouseReleaseEvent(QMouseEvent*) override;
  void tabletEvent(QTabletEvent*) override;
  void keyPressEvent(QKeyEvent*) override;
  bool event(QEvent*) override;

 private:
  enum class Kept { Page, Panel, Nothing };
  void makeActions();
  void playEyePath();
  void fit();
  void lookAt(const Rect& mm);
  void sharpenSoon();
  void letGoOfOther();
  QString shownNow() const;
  PenPoint penPoint(QPointF px, Qt::KeyboardModifiers keys) const;
  bool pressAt(const PenPoint& point);
  void paintPage(QPainter& painter);
  void paintPanels(QPainter& painter) const;
  void paintUnderlays(QPainter& painter);
  void paintStrokes(QPainter& painter) const;
  void paintState(QPainter& painter);
  QImage composed() const;
  QTransform viewFromPage() const;

  Document& document_;
  Engine& engine_;
  PageTool* tool_ = nullptr;
  Typesetter typesetter_;
  LayersShown layers_;
  QList<QAction*> actions_, sizes_;
  Kept kept_ = Kept::Page;
  double scale_ = 3;  ///< px per mm
  QPointF origin_;    ///< view place of the trim's top left corner
  Polygon pointedOut_;
  int pointedPage_ = 0;
  std::optional<std::size_t> pointedOn_;  ///< rough
  QTimer playing_, sharpening_;
  bool toolHolds_ = false, panning_ = false;
  QString heldOn_;  ///< page, rough and panel of the press that the tool holds
  QPointF panFrom_;
  FilePictures underlays_;
  mutable QImage derived_;  ///< values or squint
  mutable std::uint64_t derivedOf_ = 0;
  mutable int derivedKind_ = 0;
};

}  // namespace tw
