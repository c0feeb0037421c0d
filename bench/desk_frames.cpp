// Frames at the desk while a hand drags on the demo's dominant page: from the hand's move until the
// page is painted with the card and every measure of the panels made again, one after another; and
// until it is whole, with the panels' pictures drawn again and simulated readers gone over it. Also
// how long a start takes and what the window's own thread spends on a frame. Prints one JSON
// object.
//   QT_QPA_PLATFORM=offscreen desk_frames
#include <fmt/format.h>

#include <QAction>
#include <QApplication>
#include <QStandardPaths>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>

#include "base/keep_memory.h"
#include "base/scratch_folder.h"
#include "command/new_job.h"
#include "command/roughs.h"
#include "desk/desk_window.h"
#include "desk/look.h"
#include "desk/page_view.h"
#include "geometry/polygon.h"

namespace {

using namespace tw;
using Clock = std::chrono::steady_clock;

constexpr int kFrames = 200;

double msSince(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

struct Times {
  std::vector<double> frames, paints, complete;

  static double at(std::vector<double> all, double share) {
    std::ranges::sort(all);
    return all[static_cast<std::size_t>(share * static_cast<double>(all.size() - 1))];
  }
  std::string json() const {
    return fmt::format(R"({{"median_ms": {:.1f}, "p95_ms": {:.1f}, "paint_median_ms": {:.1f}, )"
                       R"("whole_median_ms": {:.1f}, "whole_p95_ms": {:.1f}}})",
                       at(frames, 0.5), at(frames, 0.95), at(paints, 0.5), at(complete, 0.5),
                       at(complete, 0.95));
  }
};

void settle(DeskWindow& window) {
  while (window.engine()->latest() == nullptr || window.engine()->isBusy())
    QApplication::processEvents(QEventLoop::WaitForMoreEvents);
}

/// One frame: the hand moves, all is measured, the page is painted.
template <class Move>
Times framesOf(DeskWindow& window, PageView& view, Move move) {
  Times out;
  for (int i = 0; i < kFrames; ++i) {
    const auto start = Clock::now();
    move(i);
    settle(window);
    const auto painting = Clock::now();
    view.repaint();
    out.paints.push_back(msSince(painting));
    out.frames.push_back(msSince(start));
    while (window.engine()->latest()->readingsLate || window.engine()->latest()->pictureLate)
      QApplication::processEvents(QEventLoop::WaitForMoreEvents);
    view.repaint();
    out.complete.push_back(msSince(start));
  }
  window.engine()->drop();
  settle(window);
  return out;
}

Times dragGutter(DeskWindow& window, PageView& view) {
  const std::vector<RoughPanel> panels = window.document()->rough()->panels;
  return framesOf(window, view, [&](int i) {
    const double shift = 4 * std::sin(i * 0.1);
    Polygon a = panels[0].outline, b = panels[1].outline;
    for (Point& p : a.points) p.x += p.x > bounds(panels[0].outline).centre().x ? shift : 0;
    for (Point& p : b.points) p.x += p.x < bounds(panels[1].outline).centre().x ? shift : 0;
    window.engine()->tryReshape({{0, a}, {1, b}});
  });
}

Times turnJoint(DeskWindow& window, PageView& view) {
  const auto panels = window.document()->rough()->panels;
  const auto dominant = static_cast<std::size_t>(
      std::ranges::find(panels, true, &RoughPanel::dominant) - panels.begin());
  return framesOf(window, view, [&](int i) {
    Staging staging = panels[dominant].staging;
    staging.figures.front().turnsDeg["left shoulder"] = {20 + 20 * std::sin(i * 0.1), 0, 0};
    window.engine()->tryRestage(dominant, staging);
  });
}

}  // namespace

int main(int count, char** words) {
  keepMemoryFlat();
  const auto began = Clock::now();
  QApplication application(count, words);
  QStandardPaths::setTestModeEnabled(true);
  QApplication::setApplicationName(QStringLiteral("tierwright-bench"));
  dress(application, DeskLight::Day);
  ScratchFolder scratch;
  const auto started = Clock::now();
  NewJobRequest request;
  request.folder = scratch / "job";
  request.script = TIERWRIGHT_SOURCE_DIR "/demo/the-low-bell.txt";
  Progress progress;
  if (!newJob(request) || !makeRoughs({request.folder, 4, {}, {}}, progress)) return 1;
  const auto prepared = Clock::now();
  DeskWindow window;
  window.resize(1920, 1080);
  window.show();
  if (!window.openJob(QString::fromStdString(request.folder.string()))) return 1;
  window.document()->showPage(4);
  settle(window);
  const double start =
      msSince(prepared) + std::chrono::duration<double, std::milli>(started - began).count();
  auto* view = window.station()->findChild<PageView*>();
  for (QAction* stop : window.findChildren<QAction*>())
    if (view == nullptr && stop->objectName() == QLatin1String("goBoard")) {
      stop->trigger();
      view = window.station()->findChild<PageView*>();
    }
  if (view == nullptr) return 1;
  QApplication::processEvents();
  settle(window);
  const Times gutter = dragGutter(window, *view), joint = turnJoint(window, *view);
  fmt::print("{{\"start_ms\": {:.0f}, \"gutter\": {}, \"joint\": {}}}\n", start, gutter.json(),
             joint.json());
  return 0;
}
