// The value plans of a rough: per panel how much of each value, whether the focus stands out, which
// blacks to spot; and the page drawn in its four values.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "stage/value_plan.h"

namespace tw {

struct ValuesRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rough = "A";
  std::optional<int> panel;  ///< in reading order from 1; nothing: all
  std::optional<std::filesystem::path> png, svg;
  double dpi = 150;
};

struct PanelValues {
  int panel = 1;      ///< in reading order
  std::string beat;   ///< "p3-2"
  std::string focus;  ///< character id, or empty
  std::string light;  ///< in words
  ValuePlan plan;
  std::vector<std::string> blacks;    ///< one sentence each
  std::vector<std::string> findings;  ///< what does not separate, one sentence each
};

/// Plans the panels asked for and writes the files asked for: the whole page in four values, or
/// the one panel with the others left as paper.
Result<std::vector<PanelValues>> valuesOf(const ValuesRequest& request);

/// The JSON of docs/formats/values-output.schema.json.
std::string valuesJson(const ValuesRequest& request, const std::vector<PanelValues>& values);

}  // namespace tw
