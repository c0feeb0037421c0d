#include "job/finding.h"

namespace tw {

std::string_view nameOf(Severity severity) {
  return severity == Severity::Must ? "must" : severity == Severity::Should ? "should" : "look";
}

std::string_view nameOf(Evidence evidence) {
  switch (evidence) {
    case Evidence::Published:
      return "published";
    case Evidence::CommonPractice:
      return "common practice";
    case Evidence::Ours:
      break;
  }
  return "ours";
}

}  // namespace tw
