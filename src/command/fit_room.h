// Where on the page a figure may stand, for the three answers of fit.h.
#pragma once

#include "command/fit.h"

namespace tw {

/// The panel's visible outline: less the panels that lie on it.
Region visibleOutline(const Rough& rough, std::size_t panel);
/// The same within the live area when the panel bleeds.
Region roomFor(const Rough& rough, std::size_t panel, const Rect& live);

std::optional<WholeAnswer> fitWhole(const FitAnswers& asked, const FitRequest& request);
std::optional<CutAnswer> fitCut(const FitAnswers& asked, const FitRequest& request);
/// `keepClear`: more places that must not be covered.
std::optional<OverAnswer> fitOver(const FitAnswers& asked, const FitRequest& request,
                                  const std::vector<KeepClear>& keepClear);

/// The silhouette's area over all its shapes, mm².
double silhouetteArea(const std::vector<Polygon>& shapes);
std::vector<Polygon> placedShapes(const std::vector<Polygon>& shapes, const Fit& fit);

}  // namespace tw
