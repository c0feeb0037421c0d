// One rough as a picture with its panels under the hand: a click chooses a panel, a drag takes it
// along to another picture. Pins, differences and a place to drop are drawn over it.
#pragma once

#include <QImage>
#include <QWidget>

#include <map>
#include <optional>
#include <string>

#include "desk/rough_pictures.h"
#include "geometry/shapes.h"

namespace tw {

/// What sets a panel off. Told apart by shape: a dashed border is elsewhere in the other rough, a
/// corner cut off is staged otherwise, both when both.
struct PanelMark {
  bool shape = false, staging = false;
};

class RoughThumb final : public QWidget {
  Q_OBJECT

 public:
  RoughThumb(Document& document, QWidget* parent = nullptr);

  void show(int page, const std::string& rough);
  int page() const { return page_; }
  const std::string& rough() const { return rough_; }

  std::optional<std::size_t> panelAt(QPointF px) const;
  /// Middle of the panel, px; for keys, tests and ghosts.
  QPointF middleOf(std::size_t panel) const;
  /// The panel's part of the picture.
  QPixmap cut(std::size_t panel) const;

  void setMarks(std::map<std::size_t, PanelMark> marks);
  /// The panel of that beat is offered as a place to drop; empty: none.
  void setDrop(const std::string& beat);
  void setPointed(std::optional<std::size_t> panel);

  QSize sizeHint() const override;
  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override;

 signals:
  void clicked(std::size_t panel);
  /// A press that hit no panel.
  void clickedBeside();
  void dragged(std::size_t panel, QPoint globalPx);
  void dropped(std::size_t panel, QPoint globalPx);
  void dragCancelled();

 protected:
  void paintEvent(QPaintEvent*) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;
  void mouseReleaseEvent(QMouseEvent*) override;
  void keyPressEvent(QKeyEvent*) override;

 private:
  const Rough* stored() const;
  Rect extent() const;
  QRectF paper() const;
  QTransform viewFromPage() const;
  void paintMarks(QPainter& painter, const Rough& rough) const;

  Document& document_;
  RoughPictures& pictures_;
  int page_ = 0;
  std::string rough_, drop_;
  std::map<std::size_t, PanelMark> marks_;
  std::optional<std::size_t> pointed_, held_;
  QPoint pressedAt_;
  qint64 scaledOf_ = 0;  ///< the picture's cache key
  QImage scaled_;        ///< to the widget's own pixels
  bool dragging_ = false;
};

}  // namespace tw
