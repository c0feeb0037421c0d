// tierwright-desk [JOB]: the desk as a program of its own, so that the terminal needs no window
// library. `tierwright desk` starts it.
#include <QApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QSettings>
#include <QTimer>
#include <QTranslator>

#include "base/keep_memory.h"
#include "desk/desk_window.h"
#include "desk/look.h"

int main(int count, char** words) {
  tw::keepMemoryFlat();
  QApplication application(count, words);
  QApplication::setApplicationName(QStringLiteral("tierwright"));
  QApplication::setApplicationDisplayName(QStringLiteral("Tierwright"));
  QApplication::setDesktopFileName(QStringLiteral("tierwright"));
  QTranslator translator;
  if (translator.load(QLocale(), QStringLiteral("tierwright"), QStringLiteral("_"),
                      QStringLiteral(":/translations")))
    QApplication::installTranslator(&translator);
  tw::dress(application, QSettings().value(QStringLiteral("night")).toBool() ? tw::DeskLight::Night
                                                                             : tw::DeskLight::Day);
  tw::DeskWindow window;
  window.show();
  const QStringList arguments = QApplication::arguments();
  if (arguments.size() > 1) QTimer::singleShot(0, &window, [&] { window.openJob(arguments[1]); });
  return QApplication::exec();
}
