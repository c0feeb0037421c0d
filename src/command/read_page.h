// How a staged page will be read: order and partings, the eye's path, what every rule finds, and
// what would mend it. Files: the reading sheet, and the JSON of
// docs/formats/read-output.schema.json.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "base/progress.h"
#include "base/result.h"
#include "compose/measured_page.h"
#include "review/reading_findings.h"
#include "review/score_card.h"

namespace tw {

struct ReadPageRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rough;  ///< empty: the chosen one, else the first
  int readers = 500;
  std::uint64_t seed = 1;
  unsigned threads = 0;  ///< 0 = all cores; the answer does not depend on it
  bool tryRemedies = true;
  std::vector<std::filesystem::path> sheets;  ///< .pdf, .svg or .png reading sheets to write
  double dpi = 150;
};

struct PageRead {
  int page = 1;
  bool spread = false;
  SeenPage seen;
  Measured measured;
  PageReadings readings;
  std::vector<std::string> focuses;  ///< character ids; empty where a panel is about nobody
  std::vector<Finding> findings;     ///< the gravest first; silenced ones last
};

/// Every finding on the page but for remedies: those of its card, of its readings and of its tails;
/// answered ones are marked; the gravest first.
std::vector<Finding> findingsOn(const MeasuredPage& measured, const PageReadings& readings,
                                const SeenPage& seen, const EvidenceBook& book);
/// The gravest first, those that are silenced last.
void sortFindings(std::vector<Finding>& findings);

/// How prominent the figure is that a panel is about.
struct FocusProminence {
  std::string who;     ///< character id, or empty
  double headMm = 0;   ///< chin to crown at print size
  int rank = 1;        ///< of its head's height among the figures seen
  double visible = 0;  ///< share of its own outline, 0 … 1
};
FocusProminence prominenceOf(const PageRead& read, std::size_t panel);

/// Bad input when there is no such page or rough, or the script has changed since.
Result<PageRead> readStagedPage(const ReadPageRequest& request, Progress& progress);

/// True when a finding of that level or a graver one is not silenced.
bool findsAtLeast(const PageRead& read, Severity level);

std::string pageReadJson(const PageRead& read);
/// Moves off the intended order that are worth telling: readers part there, and do not merely catch
/// up on what they left.
std::vector<Move> partingsOf(const PageReading& order);
/// "Page 4", "Pages 2–3".
std::string pageReadTitle(const PageRead& read);
/// Sentences on the page as a whole.
std::vector<std::string> pageReadFacts(const PageRead& read);

}  // namespace tw
