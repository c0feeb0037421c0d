// The layout of a rough that is there already, from its own outlines.
#pragma once

#include <string>

#include "arrange/layout.h"
#include "review/page_case.h"

namespace tw {

/// Plain when the name is none of ours.
Treatment treatmentNamed(const std::string& name);

/// The rough's panels as a layout, its dominant share and shortfall measured.
Layout layoutOf(const Rough& rough, const PageCase& page);

/// True when the rough's panels show the page's beats one by one.
bool showsBeatsOf(const Rough& rough, const PageCase& page);

}  // namespace tw
