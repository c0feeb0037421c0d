// The program's own mark, drawn: three tiers of panels, the lowest one wide, and the way an eye
// takes through them.
#pragma once

#include <QIcon>

namespace tw {

QIcon deskIcon();

}  // namespace tw
