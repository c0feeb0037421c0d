// Pictures in files, read off the window's thread and kept in falling sizes. Whoever shows one asks
// each time it paints, and again when one has been read.
#pragma once

#include <QImage>
#include <QObject>
#include <QString>

#include <deque>
#include <map>
#include <vector>

#include "desk/errand.h"

namespace tw {

class FilePictures final : public QObject {
  Q_OBJECT

 public:
  explicit FilePictures(QObject* parent = nullptr);

  /// The smallest that is at least so wide, px, or the largest there is. Null until it is read, and
  /// when the file is no picture.
  QImage picture(const QString& file, double widePx);

 signals:
  void read();

 private:
  using Sizes = std::vector<QImage>;  ///< the largest first, each half as wide as the one before
  void readNext();

  std::map<QString, Sizes> known_;
  std::deque<QString> queue_;
  Errand errand_;
};

}  // namespace tw
