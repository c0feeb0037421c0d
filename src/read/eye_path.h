// A simulated reader's eye on a page: where it enters, rests and for how long, which panels it
// passes over and comes back to. Same page, same seed, same reader: same path.
#pragma once

#include <cstdint>
#include <vector>

#include "read/reading_moves.h"
#include "read/within_panel.h"

namespace tw {

struct EyePath {
  std::vector<EyeFixation> fixations;
  std::vector<int> panels;      ///< as indices, in the order in which they were first looked at
  std::vector<int> passedOver;  ///< panels passed over when their turn came
  std::vector<int> cameBackTo;  ///< … to which the reader came back

  double ms = 0;  ///< fixations and the jumps between them

  void clear();
};

/// Walks readers over one page; keeps what they have in common. Not for several threads at once.
class EyeWalker {
 public:
  explicit EyeWalker(const EyePage& page);
  EyeWalker(const EyeWalker&) = delete;  // its looker writes into its path
  EyeWalker& operator=(const EyeWalker&) = delete;
  /// The path of that reader among all those that the seed stands for; valid until the next call.
  const EyePath& walk(std::uint64_t seed, std::uint64_t reader);

 private:
  void comeTo(int panel, const EyeReader& reader);
  void look(int panel, bool cameBack);
  void comeBack(const EyeReader& reader);

  const EyePage& page_;
  MoveTree moves_;
  EyePath path_;
  PanelLooker looker_;
  std::vector<int> waiting_;  ///< passed over since a panel was read
};

/// One reader's path.
EyePath eyePathOf(const SeenPage& page, const EyePathModel& model, std::uint64_t seed,
                  std::uint64_t reader = 0);

}  // namespace tw
