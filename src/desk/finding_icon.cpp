#include "desk/finding_icon.h"

#include <QPainter>
#include <QPixmap>
#include <QPixmapCache>
#include <QString>

#include "desk/painter_surface.h"
#include "press/finding_mark.h"

namespace tw {

namespace {

QPixmap drawnMark(const Finding& finding, std::size_t number) {
  constexpr int kFiner = 2;  // for screens of twice the resolution
  constexpr double kSideMm = 3.4 * kFindingMarkMm;
  QPixmap pixmap(kFindingIconPx * kFiner, kFindingIconPx * kFiner);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(pixmap.width() / kSideMm, pixmap.height() / kSideMm);
  const Typesetter typesetter;
  PainterSurface surface(painter, typesetter);
  drawFindingMark(surface, {kSideMm / 2, kSideMm / 2}, finding.severity, number,
                  !finding.silencedWhy.empty());
  painter.end();
  pixmap.setDevicePixelRatio(kFiner);
  return pixmap;
}

}  // namespace

QIcon findingIcon(const Finding& finding, std::size_t number) {
  // Setting type is dear, and a list of findings is filled with every frame of a drag.
  const QString key = QStringLiteral("finding %1 %2 %3")
                          .arg(static_cast<int>(finding.severity))
                          .arg(number)
                          .arg(finding.silencedWhy.empty());
  QPixmap pixmap;
  if (!QPixmapCache::find(key, &pixmap)) {
    pixmap = drawnMark(finding, number);
    QPixmapCache::insert(key, pixmap);
  }
  QIcon icon(pixmap);
  icon.addPixmap(pixmap, QIcon::Selected);  // its colour means something
  return icon;
}

}  // namespace tw
