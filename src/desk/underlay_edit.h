// Pictures that are laid under a page or a panel to work over: copied into the job, placed on the
// page, one undo step each.
#pragma once

#include <QImage>
#include <QString>

#include <filesystem>
#include <optional>

#include "desk/document.h"

namespace tw {

/// Lays a file under the selected panel, or else under the page. False, and Document::troubled,
/// when it is no picture.
bool layUnder(Document& document, const std::filesystem::path& file);
/// The same for what was pasted.
bool layUnder(Document& document, const QImage& picture);
/// Of the picture that was laid last where the selected panel, or else the page, is.
void strengthenUnderlay(Document& document, double strength);
void takeUnderlayAway(Document& document);
/// How strongly that picture is seen; nothing when there is none.
std::optional<double> underlayStrength(const Document& document);

/// A box of that shape as large as fits, in its middle.
Rect fittedInto(const Rect& place, double wide, double high);

}  // namespace tw
