// The part of `tierwright read` that reads a staged page of a job.
#pragma once

#include <string>

#include "command/read_page.h"

namespace tw {

struct ReadJobArguments {
  ReadPageRequest request;
  std::string level = "must";  ///< findings from this level on make the exit code 1
  bool json = false;
};

/// Reads, prints and returns the exit code.
int readJob(const ReadJobArguments& arguments);

}  // namespace tw
