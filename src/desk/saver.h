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
  /// `told` hears after each save whether all is on disk, on the saver's thread.
  Saver(JobFolder folder, std::function<void(const Result<void>&)> told);
  /// Finishes what was asked for.
  ~Saver();

  const JobFolder& folder() const { return folder_; }
  void save(Page page);
  /// job.json alone; pages are saved one by one.
  void save(Job job);
  /// Returns when all that was asked for is on disk, or was refused. Files whose last save failed
  /// are written once more; bad news about those that fail again.
  Result<void> finish();

 private:
  using Work = std::function<Result<void>(JobFolder&)>;
  void hand(int file, Work work);
  Result<void> tried(int file, const Work& work);
  void run();
  Former formerFor(int file);

  JobFolder folder_;
  std::function<void(const Result<void>&)> told_;
  std::map<int, std::chrono::steady_clock::time_point> kept_;  ///< by page; 0 is job.json
  std::mutex mutex_;
  std::condition_variable changed_;
  Work work_;
  int file_ = 0;
  std::map<int, Work> failed_;  ///< by page; 0 is job.json
  bool isWorking_ = false, isOver_ = false;
  std::thread thread_;
};

}  // namespace tw
