// What a layout's shapes come to, whoever drew them: the dominant panel's share and how far sizes
// fall short of what was asked. For layouts that were dragged by hand; layOut() fills the same.
#pragma once

#include "arrange/layout.h"

namespace tw {

/// Share of the dominant panel in all that the reader sees inside the trim; a ground counts without
/// what covers it.
double dominantShareOf(const Layout& layout, std::size_t dominant, const Rect& trim);

/// Sets the layout's dominant share and shortfall from its outlines. Borders near the fold of a
/// spread are not looked at.
void measureShapes(const ArrangeRequest& request, Layout& layout);

}  // namespace tw
