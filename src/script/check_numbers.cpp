// What does not add up between the heads of a script. The numbers as written are judged; each
// panel then gets its place on the page, so that later parts can rely on 1, 2, 3 in order.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "script/raw_script.h"
#include "script/text_case.h"

namespace tw {

namespace {

constexpr int kMostGap = 50;  // a page number further off is a slip of the keys, not missing pages

class NumberCheck {
 public:
  NumberCheck(RawScript& script, const std::string& file) : script_(script), file_(file) {}

  void run() {
    for (RawPage& page : script_.pages) {
      checkPage(page);
      checkPanels(page);
      checkEmptiness(page);
    }
  }

 private:
  void warn(int line, const RawPage& page, int panel, std::string sentence, std::string advice) {
    script_.warnings.push_back(
        {Cause::BadInput,
         std::move(sentence),
         {.file = file_, .line = line, .page = page.head.first, .panel = panel},
         std::move(advice)});
  }

  void checkPage(RawPage& page) {
    const PageHead& head = page.head;
    if (head.last < head.first)
      warn(page.line, page, 0, fmt::format("Pages {}-{} run backwards.", head.first, head.last),
           "They were turned round.");
    if (head.last < head.first) std::swap(page.head.first, page.head.last);
    if (head.last - head.first > 1)
      warn(page.line, page, 0,
           fmt::format("One head for pages {} to {}; a spread has two pages.", head.first,
                       head.last),
           "Give each page or spread its own head.");
    if (pagesSeen_.contains(head.first))
      warn(page.line, page, 0, fmt::format("Page {} comes twice.", head.first),
           "Number the pages again; both were kept.");
    else if (head.first < expectedPage_)
      warn(page.line, page, 0,
           fmt::format("Page {} comes after page {}.", head.first, expectedPage_ - 1),
           "Check the order of the pages.");
    else if (head.first > expectedPage_)
      warnMissingPages(page);
    for (int n = head.first; n <= std::min(head.last, head.first + kMostGap); ++n)
      pagesSeen_.insert(n);
    if (head.last >= expectedPage_) expectedPage_ = head.last + 1;
  }

  void warnMissingPages(const RawPage& page) {
    const int first = expectedPage_, last = page.head.first - 1;
    if (pagesSeen_.empty() && last > 0) return;  // an excerpt may start anywhere
    if (first == last)
      warn(page.line, page, 0, fmt::format("Page {} is missing.", first), "Check with the writer.");
    else
      warn(page.line, page, 0, fmt::format("Pages {} to {} are missing.", first, last),
           "Check with the writer.");
  }

  /// Panels numbered right through the script start where the page before ended.
  bool runsOn(const RawPage& page) const {
    const int first = page.panels.front().number;
    return first > 1 && lastWritten_ > 0 && first == lastWritten_ + 1;
  }

  void checkPanels(RawPage& page) {
    if (page.panels.empty()) return;
    const int offset = runsOn(page) ? lastWritten_ : 0;
    std::set<int> seen;
    int last = 0;
    for (RawPanel& panel : page.panels) {
      const int written = panel.number;
      const int number = written > 0 ? written - offset : 0;
      if (written > 0) checkOne(page, panel, number, last, seen);
      if (written > 0) lastWritten_ = written;
      panel.number = number > last && number <= last + kMostGap ? number : last + 1;
      last = panel.number;
    }
    const int count = static_cast<int>(page.panels.size());
    if (page.head.announcedPanels > 0 && page.head.announcedPanels != count)
      warn(page.line, page, 0,
           fmt::format("The head announces {} panels; the page has {}.", page.head.announcedPanels,
                       count),
           "Check with the writer whether a panel is missing.");
  }

  void checkOne(const RawPage& page, const RawPanel& panel, int number, int last,
                std::set<int>& seen) {
    if (!seen.insert(number).second)
      warn(panel.line, page, panel.number,
           fmt::format("Panel {} comes twice on page {}.", panel.number, page.head.first),
           "Both were kept, the second under the next number.");
    else if (number < last)
      warn(panel.line, page, panel.number,
           fmt::format("Panel {} comes after a higher number on page {}.", panel.number,
                       page.head.first),
           "The order of the script was kept.");
    else if (number > last + 1)
      warn(panel.line, page, panel.number,
           number == last + 2
               ? fmt::format("Panel {} is missing on page {}.", panel.number - 1, page.head.first)
               : fmt::format("Panels are missing on page {} before panel {}.", page.head.first,
                             panel.number),
           "Check with the writer.");
  }

  void checkEmptiness(const RawPage& page) {
    if (page.panels.empty())
      warn(page.line, page, 0, fmt::format("Page {} has no panel.", page.head.first),
           "Add what it shows.");
    for (const RawPanel& panel : page.panels)
      if (bareText(panel.description).empty() && panel.copy.empty())
        warn(panel.line, page, panel.number,
             fmt::format("Panel {} on page {} is empty.", panel.number, page.head.first),
             "Say what it shows.");
  }

  RawScript& script_;
  const std::string& file_;
  std::set<int> pagesSeen_;
  int expectedPage_ = 1, lastWritten_ = 0;
};

}  // namespace

void checkNumbers(RawScript& script, const std::string& fileName) {
  NumberCheck(script, fileName).run();
}

}  // namespace tw
