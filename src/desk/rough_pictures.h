// Small pictures of roughs, drawn off the window's thread one after another and kept until the
// rough changes. Whoever shows one asks each time it paints.
#pragma once

#include <QImage>
#include <QObject>
#include <QString>

#include <deque>
#include <map>
#include <memory>
#include <string>

#include "desk/errand.h"
#include "desk/workbench.h"

namespace tw {

class Typesetter;

class RoughPictures final : public QObject {
  Q_OBJECT

 public:
  /// The document's own.
  static RoughPictures& of(Document& document);

  /// The picture of the bled sheet, or the last one until a newer is drawn; null before the first.
  QImage picture(int page, const std::string& rough);
  /// It is the one of the rough as it is now.
  bool isFresh(int page, const std::string& rough) const;

 signals:
  void drawn(int page, const QString& rough);

 private:
  using Key = std::pair<int, std::string>;
  struct Entry {
    Rough rough;  ///< of which the image is, or is being drawn
    std::uint64_t edition = 0;
    QImage image;
    bool isDrawn = false;
  };

  explicit RoughPictures(Document& document);
  ~RoughPictures() override;
  void drawNext();

  Document& document_;
  Workbench& bench_;
  std::map<Key, Entry> entries_;
  std::deque<Key> queue_;
  std::shared_ptr<Typesetter> typesetter_;  ///< the errand's alone
  Errand errand_;
};

/// The rough of that name of that page, or null.
const Rough* roughOf(const Document& document, int page, const std::string& name);

}  // namespace tw
