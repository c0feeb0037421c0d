// JSON Schemas (draft 2020-12) made from the same field listings that read and write the files.
// The published copies stand in docs/formats; a test compares them with these.
#pragma once

#include <string>
#include <vector>

namespace tw {

struct PublishedSchema {
  std::string file;  ///< below docs/formats
  std::string text;
};

/// The schemas of job.json, pages/NN.json, sheets, beats --json and brief --json.
std::vector<PublishedSchema> publishedSchemas();

}  // namespace tw
