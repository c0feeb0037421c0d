// The artist's own ranking of a page's roughs: their order in the page. Names and scores stay.
#pragma once

#include <string>

#include "job/job.h"

namespace tw {

/// Up for by < 0. False when it is at that end already, or not there.
bool moveRough(Page& page, const std::string& rough, int by);

/// Takes the rough away; chosen, it is chosen no more. False when it is not there.
bool dropRough(Page& page, const std::string& rough);

}  // namespace tw
