// All stations of the desk, in the order of the work.
#pragma once

#include <vector>

#include "desk/station.h"

namespace tw {

/// Owned by `parent`.
std::vector<Station*> makeStations(Document& document, Engine& engine, QWidget* parent);

}  // namespace tw
