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
  const int file = page.number;
  hand(file, [page = std::move(page), former](JobFolder& folder) {
    return folder.savePage(page, former);
  });
}

void Saver::save(Job job) {
  const Former former = formerFor(0);
  hand(0, [job = std::move(job), former](JobFolder& folder) { return folder.save(job, former); });
}

Result<void> Saver::finish() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !work_ && !isWorking_; });
  Problems problems;
  const auto again = failed_;
  for (const auto& [file, work] : again)
    if (const auto done = tried(file, work); !done)
      problems.insert(problems.end(), done.error().begin(), done.error().end());
  if (problems.empty()) return {};
  return tl::unexpected(std::move(problems));
}

void Saver::hand(int file, Work work) {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !work_ && !isWorking_; });
  work_ = std::move(work);
  file_ = file;
  changed_.notify_all();
}

/// What fails is remembered, and tried again with every later save.
Result<void> Saver::tried(int file, const Work& work) {
  Result<void> done = work(folder_);
  if (done)
    failed_.erase(file);
  else
    failed_[file] = work;
  return done;
}

void Saver::run() {
  std::unique_lock lock(mutex_);
  for (;;) {
    changed_.wait(lock, [this] { return work_ || isOver_; });
    if (!work_) return;
    const Work work = std::exchange(work_, nullptr);
    const int file = file_;
    isWorking_ = true;
    lock.unlock();
    failed_.erase(file);  // overtaken; only this thread and finish(), which waits, touch it
    const auto before = failed_;
    Result<void> all = tried(file, work);
    for (const auto& [each, again] : before)
      if (auto done = tried(each, again); !done && all) all = std::move(done);
    told_(all);
    lock.lock();
    isWorking_ = false;
    changed_.notify_all();
  }
}

}  // namespace tw
