#include "desk/finding_icon.h"

#include <QPainter>
#include <QPixmap>

#include "desk/painter_surface.h"
#include "press/finding_mark.h"

namespace tw {

QIcon findingIcon(const Finding& finding, std::size_t number) {
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
  QIcon icon(pixmap);
  icon.addPixmap(pixmap, QIcon::Selected);  // its colour means something
  return icon;
}

}  // namespace tw
