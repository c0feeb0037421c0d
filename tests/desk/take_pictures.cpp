// Pictures of the desk for its guide: every station with a job open, as a window manager shows
// them.
//   take_pictures JOB PAGE OUT-FOLDER [NAME-ENDING]
// Under Xvfb with a window manager; the whole screen is taken.
#include <QAction>
#include <QApplication>
#include <QScreen>
#include <QSettings>
#include <QStandardPaths>
#include <QTest>

#include <cstdio>

#include "desk/desk_window.h"
#include "desk/look.h"
#include "desk/page_view.h"
#include "desk/start_page.h"

namespace {

using namespace tw;

void save(const QString& folder, const QString& name, const QString& ending) {
  QTest::qWait(700);  // the last paint, and the window manager
  QScreen* screen = QApplication::primaryScreen();
  QPixmap picture = screen->grabWindow(0);
  const QString file = folder + QLatin1Char('/') + name + ending + QStringLiteral(".png");
  picture.save(file);
  std::printf("%s %dx%d\n", qPrintable(file), picture.width(), picture.height());
}

bool settled(DeskWindow& window) {
  QTest::qWait(300);
  return QTest::qWaitFor(
      [&] { return window.engine()->latest() != nullptr && !window.engine()->isBusy(); }, 60000);
}

}  // namespace

int main(int count, char** words) {
  QApplication application(count, words);
  if (count < 4) {
    std::fprintf(stderr, "take_pictures JOB PAGE OUT-FOLDER [NAME-ENDING]\n");
    return 2;
  }
  QStandardPaths::setTestModeEnabled(true);
  QApplication::setApplicationName(QStringLiteral("tierwright-pictures"));
  QSettings().clear();  // no jobs of former runs on the start page
  dress(application, qEnvironmentVariableIsSet("NIGHT") ? DeskLight::Night : DeskLight::Day);
  const QString folder = QString::fromLocal8Bit(words[3]);
  const QString ending = count > 4 ? QString::fromLocal8Bit(words[4]) : QString();
  DeskWindow window;
  window.showMaximized();
  save(folder, QStringLiteral("start"), ending);
  if (!window.openJob(QString::fromLocal8Bit(words[1]))) return 1;
  window.document()->showPage(std::atoi(words[2]));
  for (const char* name : {"goScript", "goRoughs", "goStaging", "goCopy", "goBoard"}) {
    auto* action = window.findChild<QAction*>(QString::fromLatin1(name));
    if (action == nullptr) continue;
    action->trigger();
    if (!settled(window)) return 1;
    if (window.document()->rough() != nullptr && !window.document()->panel())
      window.document()->selectPanel(window.document()->rough()->panels.size() - 1);
    if (!settled(window)) return 1;
    QTest::qWait(1500);  // pictures that errands make
    save(folder, QString::fromLatin1(name).mid(2).toLower(), ending);
  }
  return 0;
}
