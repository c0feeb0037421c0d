// What was measured of the figures of a rough, as a table for the terminal and as the JSON that
// roughs, variants and show share.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/rough.h"
#include "job/write_json.h"

namespace tw {

/// reach, solidity, limbs and all else that is measured of one figure, by the names of the job's
/// files.
OrderedJson measuresJson(const SeenFigure& figure);
OrderedJson tangentsJson(const std::vector<SeenTangent>& tangents);
OrderedJson cameraJson(const Staging& staging);

/// One rough of a job's page; panels that an older version measured less of are looked at again.
Result<Rough> measuredRough(const std::filesystem::path& job, int page, const std::string& rough);

/// The rough's panels with their camera, light, figures and tangents.
std::string roughMeasuresJson(const Rough& rough);

/// Rows of text, the head first: a line per figure of every panel.
std::vector<std::vector<std::string>> figureRows(const Rough& rough);
/// Sentences on limbs that are foreshortened or hidden, joint cuts and tangents, with their panel.
std::vector<std::string> measureNotes(const Rough& rough);

}  // namespace tw
