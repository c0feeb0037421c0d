// Work at the desk that goes on until somebody kills it: draws one line after another with the pen
// and prints how many it has drawn. For the test that a kill loses at most the edit in flight.
//   scripted_work JOB PAGE           works
//   scripted_work --count JOB PAGE   prints how many lines the job holds; 1 when it does not open
#include <QAction>
#include <QApplication>
#include <QStandardPaths>
#include <QTest>

#include <cstdio>
#include <cstring>

#include "base/random.h"
#include "desk/desk_window.h"
#include "desk/look.h"
#include "desk/page_view.h"
#include "geometry/polygon.h"

namespace {

using namespace tw;

int countLines(const char* job, int page) {
  const auto folder = JobFolder::open(job);
  if (!folder) return 1;
  const auto loaded = folder->load();
  if (!loaded || loaded->page(page) == nullptr) return 1;
  std::size_t lines = 0;
  for (const Rough& rough : loaded->page(page)->roughs)
    for (const RoughPanel& panel : rough.panels) lines += panel.strokes.size();
  std::printf("%zu\n", lines);
  return 0;
}

void drawLine(PageView& view, Point from, Random& random) {
  QPoint at = view.toView(from).toPoint();
  QTest::mousePress(&view, Qt::LeftButton, {}, at);
  for (int i = 0; i < 3; ++i) {
    at += QPoint(static_cast<int>(random.next() % 30), static_cast<int>(random.next() % 20));
    QTest::mouseMove(&view, at);
  }
  QTest::mouseRelease(&view, Qt::LeftButton, {}, at);
}

}  // namespace

int main(int count, char** words) {
  if (count == 4 && std::strcmp(words[1], "--count") == 0)
    return countLines(words[2], std::atoi(words[3]));
  if (count != 3) return 2;
  QApplication application(count, words);
  QStandardPaths::setTestModeEnabled(true);
  dress(application, DeskLight::Day);
  DeskWindow window;
  window.resize(1000, 700);
  window.show();
  if (!window.openJob(QString::fromLocal8Bit(words[1]))) return 1;
  window.document()->showPage(std::atoi(words[2]));
  window.findChild<QAction*>(QStringLiteral("goBoard"))->trigger();
  auto* view = window.station()->findChild<PageView*>();
  while (window.engine()->latest() == nullptr || window.engine()->isBusy()) QTest::qWait(5);
  Random random(7);
  const Rect panel = bounds(window.document()->rough()->panels[0].outline);
  for (;;) {
    drawLine(*view, panel.centre(), random);
    std::printf("%d\n", window.document()->undoStack().count());
    std::fflush(stdout);
    QApplication::processEvents();
  }
}
