// Readers are walked in blocks of a fixed size, each block on one thread with sums of its own, and
// the blocks' sums are added in their order: the same numbers at any number of threads.
// The typical reader is found among those who take the commonest order of first looks and never go
// back: the one whose times, panel by panel, are nearest to the mean of all readers.

#include "read/eye_reading.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/parallel.h"

namespace tw {
namespace {

constexpr int kBlock = 128;
/// Readers who go back stand for all only when there are no others.
constexpr double kLast = 1e200;
constexpr double kQuick = 0.1, kSlow = 0.9;

/// Sums over readers, of one panel.
struct PanelSums {
  double looks = 0, copyLooks = 0, ms = 0, msSquared = 0, copyMs = 0;
  int enteredFirst = 0, passedOver = 0, seen = 0, cameBack = 0, firstOnPicture = 0;
  int toPicture = 0, toCopy = 0, handedOn = 0;

  void operator+=(const PanelSums& o) {
    looks += o.looks, copyLooks += o.copyLooks, ms += o.ms, msSquared += o.msSquared;
    copyMs += o.copyMs, enteredFirst += o.enteredFirst, passedOver += o.passedOver;
    seen += o.seen, cameBack += o.cameBack, firstOnPicture += o.firstOnPicture;
    toPicture += o.toPicture, toCopy += o.toCopy, handedOn += o.handedOn;
  }
};

/// What is remembered of each reader.
struct ReaderNote {
  std::vector<float> dwellMs;
  std::vector<int> order;
  double ms = 0;
  bool wentBack = false;  ///< to a panel that she had left
};

/// What one panel was to the reader being counted.
struct Visit {
  double ms = 0;
  bool seen = false, sawPicture = false, sawCopy = false, wentBack = false;
};

/// Counts the readers of one block.
class Tally {
 public:
  Tally(const SeenPage& page, const EyePage& ready, int heatColumns)
      : page_(page.page),
        leftward_(page.direction == ReadingDirection::RightToLeft),
        saccadeMs_(ready.model().saccadeMs),
        sums(ready.panels().size()) {
    if (heatColumns <= 0 || page_.width() <= 0) return;
    heat.columns = heatColumns;
    heat.rows =
        std::max(1, static_cast<int>(std::lround(heatColumns * page_.height() / page_.width())));
    heat.ms.assign(static_cast<std::size_t>(heat.columns) * static_cast<std::size_t>(heat.rows), 0);
  }

  ReaderNote add(const EyePath& path) {
    visits_.assign(sums.size(), {});
    int panel = -1;
    bool onPicture = false;
    for (const EyeFixation& f : path.fixations) {
      count(f, f.panel != panel || (f.on != SeenKind::Copy) != onPicture);
      panel = f.panel;
      onPicture = f.on != SeenKind::Copy;
      warm(f);
    }
    countPanels(path);
    looks += static_cast<double>(path.fixations.size());
    ms += path.ms;
    msSquared += path.ms * path.ms;
    return note(path);
  }

 private:
  Rect page_;
  bool leftward_;
  double saccadeMs_;
  std::vector<Visit> visits_;

  /// `turned`: the look before was in another panel, or on copy and not on the picture.
  void count(const EyeFixation& f, bool turned) {
    PanelSums& sum = sums[static_cast<std::size_t>(f.panel)];
    Visit& visit = visits_[static_cast<std::size_t>(f.panel)];
    const bool copy = f.on == SeenKind::Copy;
    const double took = f.ms + saccadeMs_;
    if (!visit.seen) sum.firstOnPicture += !copy;
    visit.seen = true;
    visit.ms += took;
    if (f.goesBack && turned) visit.wentBack = true;
    bool& saw = copy ? visit.sawCopy : visit.sawPicture;
    if (turned && saw) ++(copy ? sum.toCopy : sum.toPicture);
    saw = true;
    sum.looks += 1;
    sum.copyLooks += copy;
    sum.copyMs += copy ? took : 0;
  }

  void warm(const EyeFixation& f) {
    if (heat.ms.empty()) return;
    const auto cell = [](double share, int cells) {
      return static_cast<std::size_t>(
          std::clamp(static_cast<int>(std::floor(share * cells)), 0, cells - 1));
    };
    // Counted from the side that is read first, so that mirrored pages fill mirrored cells.
    const double in = leftward_ ? page_.max.x - f.at.x : f.at.x - page_.min.x;
    std::size_t x = cell(in / page_.width(), heat.columns);
    if (leftward_) x = static_cast<std::size_t>(heat.columns) - 1 - x;
    const std::size_t y = cell((f.at.y - page_.min.y) / page_.height(), heat.rows);
    heat.ms[y * static_cast<std::size_t>(heat.columns) + x] += f.ms;
  }

  void countPanels(const EyePath& path) {
    for (std::size_t i = 0; i < sums.size(); ++i) {
      sums[i].seen += visits_[i].seen;
      sums[i].cameBack += visits_[i].wentBack;
      sums[i].ms += visits_[i].ms;
      sums[i].msSquared += visits_[i].ms * visits_[i].ms;
    }
    for (const int panel : path.passedOver) ++sums[static_cast<std::size_t>(panel)].passedOver;
    for (std::size_t k = 0; k < path.panels.size(); ++k) {
      const int panel = path.panels[k];
      PanelSums& sum = sums[static_cast<std::size_t>(panel)];
      sum.enteredFirst += k == 0;
      const bool last = panel + 1 == static_cast<int>(sums.size());
      const bool ends = k + 1 == path.panels.size();
      sum.handedOn += ends ? last : path.panels[k + 1] == panel + 1;
    }
  }

  ReaderNote note(const EyePath& path) const {
    ReaderNote note{{}, path.panels, path.ms, false};
    note.dwellMs.reserve(visits_.size());
    for (const Visit& visit : visits_) {
      note.dwellMs.push_back(static_cast<float>(visit.ms));
      note.wentBack |= visit.wentBack;
    }
    return note;
  }

 public:
  std::vector<PanelSums> sums;
  EyeHeat heat;
  double looks = 0, ms = 0, msSquared = 0;

  void operator+=(const Tally& o) {
    for (std::size_t i = 0; i < sums.size(); ++i) sums[i] += o.sums[i];
    for (std::size_t i = 0; i < heat.ms.size(); ++i) heat.ms[i] += o.heat.ms[i];
    looks += o.looks, ms += o.ms, msSquared += o.msSquared;
  }
};

double deviation(double sum, double squares, double n) {
  const double mean = sum / n;
  return std::sqrt(std::max(0.0, squares / n - mean * mean));
}

PanelEyes meanOf(const PanelSums& sum, double n) {
  PanelEyes eyes;
  eyes.looks = sum.looks / n;
  eyes.copyLooks = sum.copyLooks / n;
  eyes.pictureLooks = (sum.looks - sum.copyLooks) / n;
  eyes.dwellMs = sum.ms / n;
  eyes.dwellDeviationMs = deviation(sum.ms, sum.msSquared, n);
  eyes.copyMs = sum.copyMs / n;
  eyes.pictureMs = std::max(0.0, sum.ms - sum.copyMs) / n;
  eyes.enteredFirst = sum.enteredFirst / n;
  eyes.passedOver = sum.passedOver / n;
  eyes.neverSeen = 1 - sum.seen / n;
  eyes.cameBack = sum.cameBack / n;
  eyes.returnsToPicture = sum.toPicture / n;
  eyes.returnsToCopy = sum.toCopy / n;
  const double seen = std::max(1, sum.seen);
  eyes.firstOnPicture = sum.firstOnPicture / seen;
  eyes.handedOn = sum.handedOn / seen;
  return eyes;
}

/// The time that this share of the readers stays under.
double quantile(const std::vector<ReaderNote>& notes, double share) {
  std::vector<double> times;
  for (const ReaderNote& note : notes) times.push_back(note.ms);
  const auto at =
      times.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(times.size() - 1));
  std::nth_element(times.begin(), at, times.end());
  return *at;
}

const std::vector<int>* commonestOrder(const std::vector<ReaderNote>& notes) {
  std::map<std::vector<int>, int> takers;
  const std::vector<int>* best = nullptr;
  int most = 0;
  for (const ReaderNote& note : notes) ++takers[note.order];
  for (const ReaderNote& note : notes) {  // of several, that of the first reader
    if (takers[note.order] <= most) continue;
    most = takers[note.order];
    best = &note.order;
  }
  return best;
}

double distanceFromMean(const ReaderNote& note, const EyeReading& reading) {
  double distance = 0;
  for (std::size_t i = 0; i < reading.panels.size(); ++i) {
    const double off = note.dwellMs[i] - reading.panels[i].dwellMs;
    distance += off * off;
  }
  return distance;
}

std::size_t typicalReader(const std::vector<ReaderNote>& notes, const EyeReading& reading) {
  const std::vector<int>* order = commonestOrder(notes);
  std::size_t best = 0;
  double nearest = 1e300;
  for (std::size_t r = 0; r < notes.size(); ++r) {
    if (notes[r].order != *order) continue;
    const double distance = distanceFromMean(notes[r], reading) + (notes[r].wentBack ? kLast : 0);
    if (distance >= nearest) continue;
    nearest = distance;
    best = r;
  }
  return best;
}

void fill(EyeReading& reading, const Tally& all) {
  const double n = reading.readers;
  for (const PanelSums& sum : all.sums) reading.panels.push_back(meanOf(sum, n));
  reading.looks = all.looks / n;
  reading.ms = all.ms / n;
  reading.deviationMs = deviation(all.ms, all.msSquared, n);
  reading.heat = all.heat;
  for (double& cell : reading.heat.ms) cell /= n;
  const std::size_t steps = reading.panels.size() - 1;
  for (std::size_t i = 0; i < steps; ++i)
    reading.handedOn += reading.panels[i].handedOn / static_cast<double>(steps);
}

void keepPaths(EyeReading& reading, const EyePage& ready, const EyeOptions& options,
               const std::vector<ReaderNote>& notes) {
  EyeWalker walker(ready);
  reading.typical = walker.walk(options.seed, typicalReader(notes, reading));
  for (int i = 0; i < std::min(options.samples, reading.readers); ++i)
    reading.samples.push_back(walker.walk(options.seed, static_cast<std::uint64_t>(i)));
}

}  // namespace

EyeReading readEyes(const SeenPage& page, const EyePathModel& model, const EyeOptions& options) {
  EyeReading reading;
  if (page.panels.empty() || options.readers <= 0) return reading;
  reading.readers = options.readers;
  const EyePage ready(page, model);
  const auto readers = static_cast<std::size_t>(options.readers);
  std::vector<ReaderNote> notes(readers);
  const std::size_t blocks = (readers + kBlock - 1) / kBlock;
  std::vector<Tally> tallies(blocks, Tally(page, ready, options.heatColumns));
  parallelFor(blocks, options.threads, [&](std::size_t block) {
    EyeWalker walker(ready);
    for (std::size_t r = block * kBlock; r < std::min(readers, (block + 1) * kBlock); ++r)
      notes[r] = tallies[block].add(walker.walk(options.seed, r));
  });
  for (std::size_t block = 1; block < blocks; ++block) tallies[0] += tallies[block];
  fill(reading, tallies[0]);
  reading.quickMs = quantile(notes, kQuick);
  reading.slowMs = quantile(notes, kSlow);
  keepPaths(reading, ready, options, notes);
  return reading;
}

}  // namespace tw
