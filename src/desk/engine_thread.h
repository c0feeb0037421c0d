// The engine's own thread: takes the latest wishes, measures, draws, hands the answer over.
#pragma once

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "desk/measurement.h"
#include "desk/try_wish.h"
#include "desk/workbench.h"
#include "press/typesetter.h"
#include "read/eye_path_model.h"

namespace tw {

/// The document's state to begin from.
struct ShowWish {
  Workbench::Work work;
  int page = 0;
  std::string rough;
};

class EngineThread {
 public:
  using Answer = std::function<void(MeasurementPtr)>;
  /// `answer` is called on this thread.
  explicit EngineThread(Answer answer);
  ~EngineThread();

  void show(ShowWish wish, std::uint64_t turn);
  void tryOut(TryWish wish, std::uint64_t turn);
  void drop(std::uint64_t turn);
  /// What is tried has become the document's: goes on from there.
  void adopt(std::uint64_t turn);
  void setPixelsPerMm(double pixelsPerMm, std::uint64_t turn);
  /// The first answer of that turn or a later one; null when none comes within some seconds.
  MeasurementPtr waitFor(std::uint64_t turn);

 private:
  struct Wishes {
    std::optional<ShowWish> show;
    bool drop = false, adopt = false, redraw = false;
    std::vector<TryWish> tries;
    double pixelsPerMm = 4;
    std::uint64_t turn = 0;

    bool isEmpty() const { return !show && !drop && !adopt && !redraw && tries.empty(); }
  };

  void run();
  bool waitForWishes(Wishes& wishes);
  void begin(const ShowWish& wish);
  void tryNow(const TryWish& wish);
  void drawPanels(bool quickly);
  std::shared_ptr<const PanelImage> drawn(std::size_t panel, bool quickly) const;
  void readNow(bool isPreview);
  bool isWished();
  void answer(std::uint64_t turn, bool late);

  Answer answer_;
  std::mutex mutex_;
  std::condition_variable changed_;
  Wishes wishes_;
  MeasurementPtr answered_;  ///< the latest
  std::condition_variable answering_;
  bool isOver_ = false;

  // Only this thread's.
  std::optional<EyePathModel> eyes_;
  std::shared_ptr<const Workshop> workshop_;
  int shownPage_ = 0;
  std::string shownRough_;
  std::shared_ptr<StagedPage> staged_;
  std::shared_ptr<const MeasuredPage> base_, tried_;  ///< tried_: base_ with what is tried
  std::string trouble_;
  std::vector<std::shared_ptr<const PanelImage>> images_;
  std::vector<char> stale_;  ///< by panel: its image is not of tried_
  int undrawn_ = 0;          ///< frames that were measured since a picture was drawn
  PageReadings readings_;
  double pixelsPerMm_ = 4;
  Typesetter typesetter_;

  std::thread thread_;
};

}  // namespace tw
