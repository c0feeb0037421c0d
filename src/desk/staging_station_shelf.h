// Small pictures side by side to choose from: a click tries one, a double click or Enter keeps it.
#pragma once

#include <QImage>
#include <QListWidget>

#include "geometry/drawing.h"

namespace tw {

class PictureShelf final : public QListWidget {
  Q_OBJECT

 public:
  PictureShelf(const QString& name, QSize picture, QWidget* parent);

  void add(const QString& key, const QString& title, const QString& toolTip,
           const QImage& picture = {});
  void setPicture(const QString& key, const QImage& picture);
  /// Those whose title or key has every word of the text.
  void filter(const QString& text);
  QString currentKey() const;

 signals:
  void tried(const QString& key);
  void kept(const QString& key);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
};

/// The drawing on white paper, the frame of it filling the picture. On any thread.
QImage paperPicture(const Drawing& drawing, const Rect& frame, QSize pixels);

}  // namespace tw
