#include "desk/saver.h"

#include <chrono>

namespace tw {

namespace {

// .history holds 20 states of a file: one for every stroke would push out yesterday's.
constexpr auto kBetweenFormerStates = std::chrono::minutes(5);

}  // namespace

Saver::Saver(JobFolder folder, std::function<void(const Result<void>&)> told)
    : folder_(std::move(folder)), told_(std::move(told)), thread_([this] { run(); }) {}

Saver::~Saver() {
  finish();
  {
    std::scoped_lock lock(mutex_);
    isOver_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

Former Saver::formerFor(int file) {
  const auto now = std::chrono::steady_clock::now();
  const auto last = kept_.find(file);
  if (last != kept_.end() && now - last->second < kBetweenFormerStates) return Former::Drop;
  kept_[file] = now;
  return Former::Keep;
}

void Saver::save(Page page) {
  const Former former = formerFor(page.number);
  hand([page = std::move(page), former](JobFolder& folder) {
    return folder.savePage(page, former);
  });
}

void Saver::save(Job job) {
  const Former former = formerFor(0);
  hand([job = std::move(job), former](JobFolder& folder) { return folder.save(job, former); });
}

void Saver::finish() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !work_ && !isWorking_; });
}

void Saver::hand(std::function<Result<void>(JobFolder&)> work) {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !work_ && !isWorking_; });
  work_ = std::move(work);
  changed_.notify_all();
}

void Saver::run() {
  std::unique_lock lock(mutex_);
  for (;;) {
    changed_.wait(lock, [this] { return work_ || isOver_; });
    if (!work_) return;
    const auto work = std::exchange(work_, nullptr);
    isWorking_ = true;
    lock.unlock();
    const Result<void> done = work(folder_);
    told_(done);
    lock.lock();
    isWorking_ = false;
    changed_.notify_all();
  }
}

}  // namespace tw
