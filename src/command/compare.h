// Two roughs of a page compared, for the terminal and as JSON.
#pragma once

#include <filesystem>
#include <string>

#include "base/result.h"
#include "review/compare_roughs.h"

namespace tw {

struct CompareRequest {
  std::filesystem::path job;
  int page = 1;
  std::string a, b;
};

struct Compared {
  int page = 1;
  RoughComparison difference;
  Standing strongestA, weakestA, strongestB, weakestB;
};

/// Bad input when there is no such page or rough.
Result<Compared> compareOnPage(const CompareRequest& request);

/// docs/formats/compare-output.schema.json
std::string comparedJson(const Compared& compared);

}  // namespace tw
