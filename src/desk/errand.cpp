#include "desk/errand.h"

#include "desk/in_qt.h"

namespace tw {

Errand::Errand(QObject* parent) : QObject(parent) {}

Errand::~Errand() {
  stop();
  for (Runner& runner : runners_) runner.thread.join();
}

void Errand::stop() {
  if (progress_) progress_->stop();
}

void Errand::begin(std::function<Ending(Progress&)> work) {
  stop();
  // The window never waits for stopped work: it is joined once it has ended.
  std::erase_if(runners_, [](Runner& runner) {
    if (!*runner.isDone) return false;
    runner.thread.join();
    return true;
  });
  const std::uint64_t turn = ++turn_;
  progress_ = std::make_shared<Progress>([this, turn](std::string_view what, double share) {
    const QString words = qt(what);
    QMetaObject::invokeMethod(
        this,
        [this, turn, words, share] {
          if (turn == turn_ && running_) emit progressed(words, share);
        },
        Qt::QueuedConnection);
  });
  const bool was = std::exchange(running_, true);
  auto isDone = std::make_shared<std::atomic<bool>>(false);
  std::thread thread([this, turn, isDone, progress = progress_, work = std::move(work)] {
    const Ending ending = work(*progress);
    QMetaObject::invokeMethod(
        this, [this, turn, ending] { end(turn, ending); }, Qt::QueuedConnection);
    *isDone = true;
  });
  runners_.push_back({std::move(thread), std::move(isDone)});
  if (!was) emit runningChanged(true);
}

void Errand::end(std::uint64_t turn, const Ending& ending) {
  if (turn != turn_) return;  // other work has begun since
  running_ = false;
  emit runningChanged(false);
  ending();
}

}  // namespace tw
