// Writes the job's files on a thread of its own, in the order asked for. A save that is asked for
// while another is under way waits for it, so at most one edit is ever not yet on disk.
#pragma once

#include <condition_variable>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <thread>

#include "job/job.h"

namespace tw {

class Saver {
 public:
  /// `told` hears how each save ended, on the saver's thread.
  Saver(JobFolder folder, std::function<void(const Result<void>&)> told);
  /// Finishes what was asked for.
  ~Saver();

  const JobFolder& folder() const { return folder_; }
  void save(Page page);
  /// job.json alone; pages are saved one by one.
  void save(Job job);
  /// Returns when all that was asked for is on disk, or was refused.
  void finish();

 private:
  void hand(std::function<Result<void>(JobFolder&)> work);
  void run();
  Former formerFor(int file);

  JobFolder folder_;
  std::function<void(const Result<void>&)> told_;
  std::map<int, std::chrono::steady_clock::time_point> kept_;  ///< by page; 0 is job.json
  std::mutex mutex_;
  std::condition_variable changed_;
  std::function<Result<void>(JobFolder&)> work_;
  bool isWorking_ = false, isOver_ = false;
  std::thread thread_;
};

}  // namespace tw
