#include "compose/page_readings.h"

#include "base/parallel.h"
#include "read/page_grey.h"
#include "read/seen_page_of_rough.h"

namespace tw {

namespace {

/// A focus without a figure is looked at within this, mm to each side.
constexpr double kPointMm = 6;

std::vector<Polygon> outlinesOf(const Rough& rough) {
  std::vector<Polygon> out;
  for (const RoughPanel& panel : rough.panels) out.push_back(panel.outline);
  return out;
}

OnePicture pictureOf(const MeasuredPage& page) {
  const Rough& rough = page.rough();
  OnePictureAsk ask;
  ask.panels = outlinesOf(rough);
  bool grounded = false;
  for (const RoughPanel& panel : rough.panels) grounded |= panel.ground;
  for (const RoughPanel& panel : rough.panels) {
    ask.focuses.push_back(panel.focus);
    ask.layer.push_back(grounded && !panel.ground ? 1 : 0);
  }
  ask.page = page.page().sheet.trimRect();
  if (page.page().dominant) ask.dominant = static_cast<int>(*page.page().dominant);
  return onePictureOf(pageGrey(rough, page.greys(), ask.page), ask);
}

}  // namespace

SeenPage seenPageOf(const MeasuredPage& page) {
  std::vector<Beat> beats;
  for (const PanelCase& panel : page.page().panels) beats.push_back(panel.beat);
  return seenPageOf(page.rough(), beats, page.page().sheet.trimRect(), page.page().brief.direction);
}

Squint squintOf(const MeasuredPage& page, std::size_t i) {
  const RoughPanel& panel = page.rough().panels[i];
  const SeenFigure* focus = focusFigure(panel, page.page().panels[i].focus);
  if (focus != nullptr && !focus->body.empty())
    return squintAt(page.greys()[i], panel.outline, focus->body);
  const Vector reach{kPointMm, kPointMm};
  return squintAt(page.greys()[i], panel.outline, Rect{panel.focus - reach, panel.focus + reach});
}

PageReadings readingsOf(const MeasuredPage& page, const EyePathModel& model,
                        const EyeOptions& options) {
  PageReadings out;
  out.squints.resize(page.rough().panels.size());
  parallelFor(2, options.threads, [&](std::size_t part) {
    if (part == 0) {
      out.eyes = readEyes(seenPageOf(page), model, options);
      out.order = readPage(outlinesOf(page.rough()), page.page().brief.direction);
      for (std::size_t i = 0; i < out.squints.size(); ++i) out.squints[i] = squintOf(page, i);
    } else {
      out.picture = pictureOf(page);
    }
  });
  return out;
}

}  // namespace tw
