// The layers of a page view as buttons in a row, each with its key.
#pragma once

#include <QWidget>

namespace tw {

class PageView;

class LayerBar final : public QWidget {
  Q_OBJECT

 public:
  explicit LayerBar(PageView& view, QWidget* parent = nullptr);
};

}  // namespace tw
