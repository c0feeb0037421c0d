#include "desk/errand.h"

#include "desk/in_qt.h"

namespace tw {

Errand::Errand(QObject* parent) : QObject(parent) {}

Errand::~Errand() {
  stop();
  if (thread_.joinable()) thread_.join();
}

void Errand::stop() {
  if (progress_) progress_->stop();
}

void Errand::begin(std::function<Ending(Progress&)> work) {
  stop();
  if (thread_.joinable()) thread_.join();  // stopped work ends within a few milliseconds
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
  thread_ = std::thread([this, turn, progress = progress_, work = std::move(work)] {
    const Ending ending = work(*progress);
    QMetaObject::invokeMethod(
        this, [this, turn, ending] { end(turn, ending); }, Qt::QueuedConnection);
  });
  if (!was) emit runningChanged(true);
}

void Errand::end(std::uint64_t turn, const Ending& ending) {
  if (turn != turn_) return;  // other work has begun since
  running_ = false;
  emit runningChanged(false);
  ending();
}

}  // namespace tw
