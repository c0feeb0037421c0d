// Reading a staged page: measure the rough as it is stored, send readers over it, gather what every
// rule finds, try what would mend it, and draw the sheet.
#include "command/read_page.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/pictures.h"
#include "command/staged_page.h"
#include "compose/page_readings.h"
#include "compose/trials.h"
#include "press/reading_sheet.h"
#include "read/page_handed_on.h"
#include "read/reading_time.h"
#include "review/silence.h"
#include "review/tail_findings.h"
#include "review/thing_findings.h"

namespace tw {

namespace {

constexpr double kParting = 0.08;  // a share of readers worth an arrow
constexpr int kHeatColumns = 76;

EyeOptions eyeOptionsOf(const ReadPageRequest& request) {
  EyeOptions options;
  options.readers = request.readers;
  options.seed = request.seed;
  options.threads = request.threads;
  options.samples = 1;
  options.heatColumns = kHeatColumns;
  return options;
}

std::vector<EyeRest> restsOf(const EyePath& path) {
  std::vector<EyeRest> out;
  for (const EyeFixation& f : path.fixations) out.push_back({f.at, f.ms, f.on == SeenKind::Copy});
  return out;
}

/// The heat's cells as rests at their middles.
std::vector<EyeRest> restsOf(const EyeHeat& heat, const Rect& trim) {
  std::vector<EyeRest> out;
  for (int row = 0; row < heat.rows; ++row)
    for (int column = 0; column < heat.columns; ++column) {
      const double ms = heat.ms[static_cast<std::size_t>(row * heat.columns + column)];
      const Vector middle{(column + 0.5) * trim.width() / heat.columns,
                          (row + 0.5) * trim.height() / heat.rows};
      if (ms > 0) out.push_back({trim.min + middle, ms, false});
    }
  return out;
}

Result<void> writeSheets(const ReadPageRequest& request, StagedPage& staged, const PageRead& read) {
  if (request.sheets.empty()) return {};
  Page shown = staged.stored();
  shown.roughs[staged.rough] = read.measured.rough;
  const auto picture =
      pictureOf(staged.job, shown, read.measured.rough.name, staged.workshop->stager);
  if (!picture) return tl::unexpected(picture.error());
  ReadingSheet sheet;
  sheet.facts = pageReadFacts(read);
  sheet.path = restsOf(read.readings.eyes.typical);
  sheet.rests = restsOf(read.readings.eyes.heat, picture->sheet.trimRect());
  for (const Move& move : partingsOf(read.readings.order))
    sheet.partings.push_back({move.from + 1, move.to + 1, move.share, move.cause});
  sheet.findings = read.findings;
  for (const auto& file : request.sheets)
    if (auto done = writeReadingSheet(file, *picture, sheet, request.dpi); !done) return done;
  return {};
}

}  // namespace

void sortFindings(std::vector<Finding>& findings) {
  std::ranges::stable_sort(findings, {}, [](const Finding& f) {
    return std::pair{!f.silencedWhy.empty(), f.severity};
  });
}

std::vector<Finding> findingsOn(const MeasuredPage& measured, const PageReadings& readings,
                                const SeenPage& seen, const EvidenceBook& book) {
  std::vector<Finding> out = measured.measured().findings;
  for (Finding& finding : readingFindings(readings, measured.page(), book))
    out.push_back(std::move(finding));
  for (Finding& finding : tailFindings(measured.rough(), measured.page(), book))
    out.push_back(std::move(finding));
  for (Finding& finding : thingFindings(measured.things(), measured.page(), book))
    out.push_back(std::move(finding));
  aimLeads(out, seen);
  applySilenced(out, *measured.page().page);
  sortFindings(out);
  return out;
}

Result<PageRead> readStagedPage(const ReadPageRequest& request, Progress& progress) {
  const auto opened = openStagedPage(request.job, request.page, request.rough, request.threads);
  if (!opened) return tl::unexpected(opened.error());
  StagedPage& staged = **opened;
  const auto model = loadEyePathModel();
  if (!model) return tl::unexpected(model.error());

  PageRead out;
  out.page = staged.page;
  out.spread = staged.wishes.sheet.spread;
  out.seen = seenPageOf(*staged.measured);
  out.measured = staged.measured->measured();
  out.readings = readingsOf(*staged.measured, *model, eyeOptionsOf(request));
  for (const PanelCase& panel : staged.wishes.panels) out.focuses.push_back(panel.focus);
  out.findings =
      findingsOn(*staged.measured, out.readings, out.seen, staged.workshop->rules.evidence());
  if (request.tryRemedies)
    if (auto done = tryRemedies(*staged.measured, out.findings, request.threads, progress); !done)
      return tl::unexpected(done.error());
  if (auto done = writeSheets(request, staged, out); !done) return tl::unexpected(done.error());
  return out;
}

FocusProminence prominenceOf(const PageRead& read, std::size_t panel) {
  FocusProminence out;
  const std::vector<SeenFigure>& figures = read.measured.rough.panels[panel].figures;
  const auto focus = std::ranges::find(figures, read.focuses[panel], &SeenFigure::who);
  if (focus == figures.end()) return out;
  out.who = focus->who;
  out.headMm = focus->headMm;
  out.visible = focus->visible;
  for (const SeenFigure& other : figures) out.rank += other.headMm > focus->headMm;
  return out;
}

bool findsAtLeast(const PageRead& read, Severity level) {
  const auto gravest = gravestOf(read.findings);
  return gravest && *gravest <= level;
}

std::vector<Move> partingsOf(const PageReading& order) {
  std::vector<Move> out;
  for (const Move& move : order.moves)
    if (move.to != move.from + 1 && move.share >= kParting && !catchesUp(move)) out.push_back(move);
  return out;
}

std::string pageReadTitle(const PageRead& read) {
  return read.spread ? fmt::format("Pages {}–{}", read.page, read.page + 1)
                     : fmt::format("Page {}", read.page);
}

namespace {

std::string orderFact(const PageRead& read) {
  const double followed = read.measured.order.followed;
  std::string out =
      fmt::format("{:.0f} % of readers take the panels in the intended order.", 100 * followed);
  if (followed < 0.1)
    out += " Was the rough made for the other reading direction? Make the page's roughs again.";
  return out;
}

std::string leadFact(const PageRead& read) {
  const PageHandedOn handed = handedOnOf(read.seen);
  return fmt::format(
      "Leads hand on {:.0f} %: the mean over the panels that have a next one, none counting 0. Of "
      "the "
      "leads there are, by their strength, {:.0f} % arrives.",
      100 * handed.mean, 100 * read.measured.rough.reading.handedOn);
}

std::string timeFact(const PageRead& read) {
  const EyeReading& eyes = read.readings.eyes;
  return fmt::format(
      "A reader's eye rests {:.0f} times in {:.0f} s; one in ten takes less than {:.0f} s, one in "
      "ten more "
      "than {:.0f} s. Panel by panel and without haste the page takes about {:.0f} s.",
      eyes.looks, eyes.ms / 1000, eyes.quickMs / 1000, eyes.slowMs / 1000, pageSeconds(read.seen));
}

std::string pictureFact(const OnePicture& picture) {
  const std::string rivals =
      picture.centres.size() < 2
          ? std::string("no other place comes near")
          : fmt::format("{} places are of nearly that strength", picture.centres.size());
  return fmt::format("At arm's length panel {} is the strongest; {}.", picture.strongest + 1,
                     rivals);
}

}  // namespace

std::vector<std::string> pageReadFacts(const PageRead& read) {
  std::vector<std::string> out{orderFact(read), leadFact(read), timeFact(read)};
  if (read.readings.picture.strongest >= 0) out.push_back(pictureFact(read.readings.picture));
  return out;
}

}  // namespace tw
