// Long work takes a Progress: it is asked whether to go on and is told how far the work is.
// One Progress may be shared by several threads.
#pragma once

#include <atomic>
#include <functional>
#include <mutex>
#include <string>
#include <string_view>

namespace tw {

class Progress {
 public:
  using Report = std::function<void(std::string_view what, double share)>;

  Progress() = default;
  explicit Progress(Report report) : report_(std::move(report)) {}

  /// Safe to call from a signal handler or another thread.
  void stop() { stopped_.store(true, std::memory_order_relaxed); }
  bool isStopped() const { return stopped_.load(std::memory_order_relaxed); }

  /// `share` runs from 0 to 1 within the part named `what`.
  void tell(std::string_view what, double share) {
    if (!report_) return;
    std::scoped_lock lock(mutex_);
    report_(what, share);
  }

 private:
  std::atomic<bool> stopped_{false};
  Report report_;
  std::mutex mutex_;
};

}  // namespace tw
