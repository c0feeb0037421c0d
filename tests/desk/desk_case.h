// What window tests begin with: the demo job in a folder of its own, open at the desk, and waiting
// until the engine has measured.
#pragma once

#include <QAction>
#include <QApplication>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include <filesystem>

#include "base/keep_memory.h"
#include "desk/desk_window.h"
#include "desk/look.h"

namespace tw {

class DeskCase {
 public:
  DeskCase() {
    keepMemoryFlat();  // as the program does
    QStandardPaths::setTestModeEnabled(true);
    QApplication::setApplicationName(QStringLiteral("tierwright-test"));
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, settings_.path());
    dress(*static_cast<QApplication*>(QApplication::instance()), DeskLight::Day);
    std::filesystem::copy(std::filesystem::path(TIERWRIGHT_SOURCE_DIR) / "demo" / "the-low-bell",
                          folder(), std::filesystem::copy_options::recursive);
  }

  std::filesystem::path folder() const {
    return std::filesystem::path(place_.path().toStdString()) / "job";
  }
  /// False when it does not open.
  bool open() {
    window.resize(1366, 768);
    window.show();
    return window.openJob(QString::fromStdString(folder().string()));
  }
  Document& document() { return *window.document(); }
  Engine& engine() { return *window.engine(); }
  /// False when nothing was measured within a minute.
  bool settled() {
    return QTest::qWaitFor([this] { return engine().latest() != nullptr && !engine().isBusy(); },
                           60000);
  }
  template <class T>
  T* part(const char* name) {
    return window.findChild<T*>(QString::fromLatin1(name));
  }
  /// Triggers an action by its object name; false when there is none or it cannot be used.
  bool act(const char* name) {
    auto* action = part<QAction>(name);
    if (action == nullptr || !action->isEnabled()) return false;
    action->trigger();
    return true;
  }

  DeskWindow window;

 private:
  QTemporaryDir place_, settings_;
};

}  // namespace tw
