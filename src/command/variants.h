// "What if I raise this arm?": alternatives to a figure's pose in a panel of a rough, and taking
// one of them into the rough.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "stage/pose_variants.h"

namespace tw {

struct VariantsRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rough = "A";
  int panel = 1;       ///< in reading order, from 1
  std::string figure;  ///< character id or name; empty: the panel's focus
  std::size_t keep = 8;
  std::vector<std::filesystem::path> pictures;  ///< .png or .svg files of all side by side
  std::optional<int> take;                      ///< number of the variant to write into the rough
};

struct VariantsMade {
  VariantsRequest request;
  std::size_t index = 0;  ///< of the figure in the panel's staging
  std::string figure;     ///< the character's name
  std::string pose;       ///< the present pose in words
  PoseVariants variants;
  SeenFigure presentSeen;        ///< the figure as the panel shows it now
  std::vector<SeenFigure> seen;  ///< and in each pose that is kept
};

/// Bad input when there is no such page, rough, panel, figure or number. Taking a variant writes
/// the page; the state before goes to .history.
Result<VariantsMade> makeVariants(const VariantsRequest& request);

/// docs/formats/variants-output.schema.json
std::string variantsJson(const VariantsMade& made);
/// "reach 62 % (+8), …": one line for people, with the change against the present pose.
std::vector<std::string> factsOf(const PoseVariant& variant, const PoseVariant& present);

}  // namespace tw
