// Long work on a thread of its own: roughs, variants, remedies. It can be stopped, tells how far it
// is, and hands its result to the window's thread.
#pragma once

#include <QObject>
#include <QString>

#include <atomic>
#include <functional>
#include <memory>
#include <thread>
#include <vector>

#include "base/progress.h"

namespace tw {

class Errand final : public QObject {
  Q_OBJECT

 public:
  explicit Errand(QObject* parent = nullptr);
  /// Stops the work and waits for it.
  ~Errand() override;

  bool isRunning() const { return running_; }

  /// Calls work(progress) on another thread, then then(its result) on the window's thread. Work
  /// that runs already is stopped and its result forgotten.
  template <class Work, class Then>
  void start(Work work, Then then) {
    using T = decltype(work(std::declval<Progress&>()));
    begin([work = std::move(work), then = std::move(then)](Progress& progress) {
      auto result = std::make_shared<T>(work(progress));
      return std::function<void()>([result, then] { then(std::move(*result)); });
    });
  }
  void stop();

 signals:
  void progressed(const QString& what, double share);
  void runningChanged(bool running);

 private:
  using Ending = std::function<void()>;
  void begin(std::function<Ending(Progress&)> work);
  void end(std::uint64_t turn, const Ending& ending);

  std::shared_ptr<Progress> progress_;
  struct Runner {
    std::thread thread;
    std::shared_ptr<std::atomic<bool>> isDone;
  };
  std::vector<Runner> runners_;  ///< the last one's result is waited for; others were stopped
  std::uint64_t turn_ = 0;
  bool running_ = false;
};

}  // namespace tw
