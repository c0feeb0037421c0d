// What a reading sheet lays over the pale page: where eyes rest, one reader's path, partings of
// readers, and the numbered marks of findings.
#pragma once

#include <vector>

#include "press/reading_sheet.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

/// Those off copy: copy must stay legible, and that it is read needs no heat.
void drawRests(Surface& surface, const RoughPicture& picture, const std::vector<EyeRest>& rests,
               const Typesetter& typesetter);

/// Long jumps have an arrow head, the first rest in each panel the number of its turn. Thinner
/// from word to word.
void drawPath(Surface& surface, const RoughPicture& picture, const std::vector<EyeRest>& path,
              const Typesetter& typesetter);
void drawPartings(Surface& surface, const RoughPicture& picture,
                  const std::vector<PanelMove>& partings, const Typesetter& typesetter);

/// One mark inside the panel of each finding; findings on the whole page get none.
void drawFindingMarks(Surface& surface, const RoughPicture& picture,
                      const std::vector<Finding>& findings, const Typesetter& typesetter);

/// The keys in the slug of what this sheet shows.
void drawReadingKey(Surface& surface, const RoughPicture& picture, const ReadingSheet& sheet,
                    const Typesetter& typesetter);

}  // namespace tw
