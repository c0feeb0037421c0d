// Pins: what new roughs of a page must keep. A panel's staging, or the arrangement and treatment,
// taken from a rough that is there; kept with the page, not with the rough.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

struct PinRequest {
  std::filesystem::path job;
  int page = 1;
  std::optional<int> panel;  ///< in reading order, from 1
  bool arrangement = false;
  std::string rough;  ///< empty: the chosen one, else the first
  bool back = false;  ///< take the pin away instead; neither panel nor arrangement: all of them
};

struct Pinned {
  Page page;                       ///< as it is now
  std::vector<std::string> notes;  ///< what a pin cannot hold, a sentence each
};

/// Nothing to pin and not `back`: only shows. Bad input when there is no such page, rough or panel,
/// or no such pin to take away.
Result<Pinned> changePins(const PinRequest& request);

/// The same on a page in memory.
void pinPanel(Page& page, const Rough& rough, std::size_t panel);
void pinArrangement(Page& page, const Rough& rough);
bool isPinned(const Page& page, const Rough& rough, std::size_t panel);
bool isArrangementPinned(const Page& page, const Rough& rough);

/// A line per pin: "panel 2: medium, eye level, from the front".
std::vector<std::string> pinsInWords(const Page& page);

/// docs/formats/pin-output.schema.json
std::string pinsJson(const Page& page);

}  // namespace tw
