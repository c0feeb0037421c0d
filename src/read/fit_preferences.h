// Fits the few free strengths of the reader to the published shares, through whole pages and the
// same steps that every page is read by. The shipped numbers come out of it; a test checks that.
#pragma once

#include <string>
#include <vector>

#include "read/preferences.h"

namespace tw {

/// A published share beside what the reader does.
struct PublishedCheck {
  std::string what;
  PublishedShare published;
  double found = 0;
};

/// The published shares on the pages that they are fitted on.
std::vector<PublishedCheck> checkAgainstPublished(const ReaderPreferences& likes);

/// The preferences with acrossAtGrid, acrossAtBlockage and downOfRest fitted, the others kept.
ReaderPreferences fitPreferences(ReaderPreferences likes);

}  // namespace tw
