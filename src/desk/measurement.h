// Everything measured of the page that the desk shows, at one moment. Made by the engine on its own
// thread, never changed after, shared by whoever shows it.
#pragma once

#include <QImage>

#include <memory>
#include <string>
#include <vector>

#include "command/staged_page.h"
#include "compose/page_readings.h"
#include "job/finding.h"
#include "press/proof.h"

namespace tw {

/// A panel's picture and its copy as pixels, transparent where nothing is.
struct PanelImage {
  Rect at;      ///< of the picture, mm on the page
  Rect copyAt;  ///< of the copy: a balloon may have been drawn out of its panel
  QImage picture, copy;
  bool isQuick = false;  ///< drawn coarsely, to keep up with a hand
};

struct Measurement {
  std::uint64_t turn = 0;  ///< counts up with every request that is answered
  int page = 0;
  std::string rough;       ///< name; empty: the page has none
  bool isPreview = false;  ///< of something tried, not of the document
  std::string trouble;     ///< why the rough cannot be measured, a sentence; else empty

  /// Keeps alive what `measured` points at. Null without a rough or in trouble, as are all below.
  std::shared_ptr<const StagedPage> staged;
  std::shared_ptr<const MeasuredPage> measured;
  SeenPage seen;
  PageReadings readings;
  /// `readings` and the findings that come from them are those of the turn before: the new ones are
  /// on their way and come under the same turn.
  bool readingsLate = false;
  /// Some of `images` are of the turn before.
  bool pictureLate = false;
  std::vector<Finding> findings;  ///< the gravest first; remedies are not tried
  RoughPicture picture;           ///< its panels are not drawn: `images` are
  std::vector<std::shared_ptr<const PanelImage>> images;  ///< by panel
  double pixelsPerMm = 4;                                 ///< of the images

  const Rough& roughNow() const { return measured->rough(); }
};

using MeasurementPtr = std::shared_ptr<const Measurement>;

}  // namespace tw
