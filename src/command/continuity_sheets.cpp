// The continuity chart filled: who stands in which column, drawn in the look that is new there.
#include <fmt/format.h>

#include <algorithm>
#include <atomic>

#include "base/files.h"
#include "base/parallel.h"
#include "command/continuity.h"
#include "command/looks.h"
#include "job/picture_size.h"
#include "press/continuity_sheet.h"
#include "stage/pose_picture.h"
#include "stage/staging.h"

namespace tw {

namespace {

constexpr double kMmPerMetre = 23.5, kGroundMm = 3;
constexpr double kHeadMmPerMetre = 52;  // a head 12 mm high: every line of the face
constexpr double kHeadingDeg = 4;       // hardly turned: both cheeks in sight

struct Figure {
  std::size_t row, column, place;
  const LookShown* look;
};

std::string joined(const std::vector<std::string>& texts) {
  return fmt::format("{}", fmt::join(texts, ", "));
}

std::string strandOf(const StoryScene& scene) {
  if (scene.strand == kPresent) return {};
  if (std::abs(scene.years) < 1) return scene.strand;
  return fmt::format("{}, {:.0f} years {}", scene.strand, std::abs(scene.years),
                     scene.years < 0 ? "earlier" : "later");
}

ContinuityColumn columnOf(const StoryScene& scene, const StoryTime& story) {
  ContinuityColumn column{scene.id, titleOf(scene), {}, strandOf(scene)};
  std::string first, last;
  for (std::size_t m = 0; m < story.moments().size(); ++m)
    if (story.sceneOf(m).id == scene.id) {
      last = story.moments()[m].beat->id;
      if (first.empty()) first = last;
    }
  column.panels = first == last ? first : first + " to " + last;
  return column;
}

void addReferences(const std::filesystem::path& folder, const Job& job, const Character& who,
                   ContinuityRow& row) {
  for (const ReferenceShown& reference : referencesOf(folder, job)) {
    if (reference.who != who.id) continue;
    row.captions.push_back(reference.trouble.empty()
                               ? reference.file + (reference.note.empty() ? "" : ": ") +
                                     reference.note
                               : reference.trouble);
    const auto bytes =
        readFile(folder / "art" / "reference" / reference.file, kLargestPictureBytes);
    if (reference.trouble.empty() && bytes && bytes->starts_with("\x89PNG"))
      row.pictures.push_back(*bytes);
  }
}

class ChartMaker {
 public:
  ChartMaker(const std::filesystem::path& folder, const StoryContinuity& story)
      : folder_(folder), story_(story), time_(story.job) {}

  ContinuitySheet make() {
    sheet_.title = "Continuity: " + story_.job.title;
    sheet_.about = "Scenes in story time from left to right; a figure wherever a look is new.";
    for (const StoryScene& scene : story_.scenes) addColumn(scene);
    for (const Character& who : story_.job.cast) addRow(who);
    int number = 0;
    for (const ContinuityFinding& finding : story_.findings) addFinding(finding, ++number);
    return std::move(sheet_);
  }

  const std::vector<Figure>& figures() const { return figures_; }

 private:
  void addColumn(const StoryScene& scene) {
    const bool isUsed = std::ranges::any_of(
        time_.moments(), [&](const Moment& m) { return time_.scenes()[m.scene].id == scene.id; });
    if (!isUsed) return;
    sheet_.columns.push_back(columnOf(scene, time_));
  }

  std::size_t columnNamed(const std::string& scene) const {
    const auto found = std::ranges::find(sheet_.columns, scene, &ContinuityColumn::id);
    return static_cast<std::size_t>(found - sheet_.columns.begin());
  }

  void addRow(const Character& who) {
    ContinuityRow row;
    row.name = who.name;
    row.note = who.note;
    row.cells.resize(sheet_.columns.size());
    addReferences(folder_, story_.job, who, row);
    const LookShown* before = nullptr;
    bool any = false;
    for (const LookShown& look : story_.looks) {
      if (look.who != who.id) continue;
      const std::size_t column = columnNamed(look.scene);
      ContinuityCell& cell = row.cells[column];
      cell.seen = any = true;
      if (look.changed) {
        figures_.push_back({sheet_.rows.size(), column, cell.figures.size(), &look});
        cell.figures.emplace_back();
        addWords(look, before, cell);
      }
      before = &look;
    }
    if (any) sheet_.rows.push_back(std::move(row));
  }

  /// What is new, or everything for the first look.
  static void addWords(const LookShown& look, const LookShown* before, ContinuityCell& cell) {
    const auto news = [&](const std::vector<std::string>& is, const std::vector<std::string>& was) {
      std::vector<std::string> out;
      for (const std::string& word : is)
        if (std::ranges::find(was, word) == was.end()) out.push_back(word);
      return out;
    };
    const std::vector<std::string> none;
    const auto on = news(look.worn, before ? before->worn : none);
    const auto off = before ? news(before->worn, look.worn) : none;
    if (!on.empty()) cell.words.push_back((before ? "on: " : "") + joined(on));
    if (!off.empty()) cell.words.push_back("off: " + joined(off));
    const auto marks = news(look.marks, before ? before->marks : none);
    const auto gone = before ? news(before->marks, look.marks) : none;
    for (const std::string& mark : marks) cell.words.push_back(mark);
    for (const std::string& mark : gone) cell.words.push_back("gone: " + mark);
    if (!look.hands.empty()) cell.words.push_back(joined(look.hands));
  }

  void addFinding(const ContinuityFinding& finding, int number) {
    sheet_.findings.push_back(fmt::format("{}: {}", nameOf(finding.severity), finding.sentence));
    const Character* who = story_.job.character(finding.who);
    const std::size_t column = columnNamed(finding.here.scene);
    if (who == nullptr || column == sheet_.columns.size()) return;
    for (ContinuityRow& row : sheet_.rows)
      if (row.name == who->name) row.cells[column].findings.push_back(number);
  }

  const std::filesystem::path& folder_;
  const StoryContinuity& story_;
  StoryTime time_;
  ContinuitySheet sheet_;
  std::vector<Figure> figures_;
};

ContinuityCell::Figure drawn(const PosedFigure& figure, const ContinuitySheet& sheet) {
  const Rect whole{{0, 0}, {sheet.wholeWide, sheet.pictureHigh}};
  const Rect head{{0, 0}, {sheet.headWide, sheet.headHigh}};
  const double chest = figure.body.stature - sheet.headHigh / kHeadMmPerMetre + 0.03;
  return {posePicture({figure}, whole, kMmPerMetre, kGroundMm).drawing,
          posePicture({figure}, head, kHeadMmPerMetre, -chest * kHeadMmPerMetre).drawing};
}

}  // namespace

Result<void> writeContinuitySheets(const std::filesystem::path& folder,
                                   const StoryContinuity& story,
                                   const ContinuitySheetRequest& request, Progress& progress) {
  const auto stager = Stager::make(story.job);
  if (!stager) return tl::unexpected(stager.error());
  ChartMaker maker(folder, story);
  ContinuitySheet sheet = maker.make();
  std::atomic<std::size_t> done{0};
  parallelFor(maker.figures().size(), request.threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    const Figure& figure = maker.figures()[i];
    const SetFigure set{figure.look->who, "stand", false, {0, 0, 0}, kHeadingDeg, 0, {}};
    const PosedFigure posed{stager->bodyOf(figure.look->who, figure.look->beat),
                            stager->poses().orStand("stand"), set};
    sheet.rows[figure.row].cells[figure.column].figures[figure.place] = drawn(posed, sheet);
    progress.tell("drawing",
                  static_cast<double>(++done) / static_cast<double>(maker.figures().size()));
  });
  if (progress.isStopped()) return stopped();
  for (const std::filesystem::path& file : request.files)
    if (auto written = writeContinuitySheet(file, sheet, request.dpi); !written) return written;
  return {};
}

}  // namespace tw
