// Where a prop of a staged panel stands on the page: its box seen by the panel's camera. Nothing
// is known here of what stands before it.
#pragma once

#include <optional>

#include "job/beat.h"
#include "job/rough.h"

namespace tw {

/// Box on the page in mm, cut at the panel's box. Nothing when the prop is behind the camera, out
/// of the picture, a line hauled from hands, or so large that it is the setting.
std::optional<Rect> propPlace(const SetProp& set, const Prop& prop, const CameraPlace& camera,
                              const Rect& panel);

}  // namespace tw
