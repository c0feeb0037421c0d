// What a reading sheet lays over the pale page: where eyes rest, one reader's path, partings of
// readers, and the numbered marks of findings.
#pragma once

#include <vector>

#include "press/reading_sheet.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

void drawRests(Surface& surface, const RoughPicture& picture, const std::vector<EyeRest>& rests);
void drawPath(Surface& surface, const std::vector<EyeRest>& path);
void drawPartings(Surface& surface, const RoughPicture& picture,
                  const std::vector<PanelMove>& partings, const Typesetter& typesetter);

/// One mark on the page for each finding, none on another; findings on the whole page get none.
void drawFindingMarks(Surface& surface, const RoughPicture& picture,
                      const std::vector<Finding>& findings);

/// The keys of the marks in the slug.
void drawReadingKey(Surface& surface, const RoughPicture& picture);

}  // namespace tw
