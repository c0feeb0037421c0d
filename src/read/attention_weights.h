// How much each cue counts in an attention map: presets/read/attention.json, each with its source
// and how sure it is.
#pragma once

#include "base/result.h"

namespace tw {

struct AttentionWeights {
  double text = 0.30, faces = 0.30, figures = 0.15, spectral = 0.15, centre = 0.10;
};

/// Numbers 0 … 1, at least one above 0; else bad input with the place in the file.
Result<AttentionWeights> readAttentionWeights();
Result<AttentionWeights> attentionWeightsFrom(const std::string& bytes, const std::string& file);

}  // namespace tw
