// Breaks a paragraph into a wanted number of lines whose lengths follow a wanted profile, such as
// the short–long–short of a balloon. Looks at the whole paragraph, not line by line.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "letter/type_measure.h"

namespace tw {

struct BrokenLines {
  std::vector<std::string> lines;
  double raggedness = 0;  ///< mean squared departure from the profile, plus breaks in bad taste
};

/// `profile` holds each line's wanted length relative to the longest. Nothing when there are
/// fewer chunks than lines or more forced breaks than lines.
std::optional<BrokenLines> breakLines(const std::vector<Chunk>& chunks, double spaceEm,
                                      const std::vector<double>& profile);

/// Splits chunks wider than `mostEm`, at hyphens inside them or, failing that, anywhere with a
/// hyphen added.
std::vector<Chunk> withOverlongSplit(const std::vector<Chunk>& chunks, double mostEm,
                                     const TypeMeasure& type);

/// Neighbours joined until no more than `most` are left: an absurd amount of copy still gets
/// lines in reasonable time.
std::vector<Chunk> joinedTo(std::vector<Chunk> chunks, std::size_t most, double spaceEm);

}  // namespace tw
