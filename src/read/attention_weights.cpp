#include "read/attention_weights.h"

#include <fmt/format.h>

#include "base/files.h"
#include "job/parse_json.h"

namespace tw {

Result<AttentionWeights> attentionWeightsFrom(const std::string& bytes, const std::string& file) {
  const auto json = parseJson(bytes, file);
  if (!json) return tl::unexpected(json.error());
  AttentionWeights weights;
  Problems problems;
  double sum = 0;
  const auto take = [&](const char* name, double& into) {
    const std::string path = fmt::format("/weights/{}/weight", name);
    const Json::json_pointer at(path);
    const bool sound =
        json->contains(at) && (*json)[at].is_number() && (*json)[at] >= 0 && (*json)[at] <= 1;
    if (sound) sum += into = (*json)[at].get<double>();
    if (!sound)
      problems.push_back({Cause::BadInput, "Expected a number from 0 to 1.", {file, 0, path}, {}});
  };
  take("text", weights.text);
  take("faces", weights.faces);
  take("figures", weights.figures);
  take("spectral", weights.spectral);
  take("centre", weights.centre);
  if (!problems.empty()) return tl::unexpected(problems);
  if (sum == 0) return badInput("At least one cue must count.", {.file = file, .path = "/weights"});
  return weights;
}

Result<AttentionWeights> readAttentionWeights() {
  const auto path = presetPath("read/attention.json");
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  return attentionWeightsFrom(*bytes, path->string());
}

}  // namespace tw
