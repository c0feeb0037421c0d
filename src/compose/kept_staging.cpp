#include "compose/kept_staging.h"

#include "stage/quick_measures.h"

namespace tw {

Staging withHandOf(Staging solved, const Staging& kept) {
  for (SetFigure& figure : solved.figures)
    for (const SetFigure& old : kept.figures) {
      if (old.who != figure.who) continue;
      figure.pose = old.pose;
      figure.poseMirrored = old.poseMirrored;
      figure.gazeDeg = old.gazeDeg;
      figure.turnsDeg = old.turnsDeg;
    }
  solved.light = kept.light;
  return solved;
}

Staging fitted(const Stager& stager, const StageRequest& request, const Staging& kept) {
  return withHandOf(stager.solved(request, kept.choice), kept);
}

Variant quickVariant(const Stager& stager, const StageRequest& request, const Staging& staging) {
  return quicklyMeasured(request, staging.choice,
                         stager.sceneOf(staging, *request.beat, request.focus), staging.camera);
}

}  // namespace tw
