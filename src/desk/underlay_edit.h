// Pictures that are laid under a page or a panel to work over: copied into the job, placed on the
// page, one undo step each.
#pragma once

#include <QImage>
#include <QString>

#include <filesystem>
#include <optional>

#include "desk/document.h"

namespace tw {

/// Where a picture is to lie.
struct UnderPlace {
  int page = 0;
  std::string beat;  ///< of the panel; empty: the page
  Rect at;           ///< mm on the page
};
/// The selected panel, or else the page.
UnderPlace underPlace(const Document& document);

/// A picture that has been put into the job's art folder.
struct ShelvedPicture {
  std::string file;
  int width = 0, height = 0;  ///< px
};
/// Copies a picture into the folder. On any thread: a large one takes a moment.
Result<ShelvedPicture> shelved(const std::filesystem::path& art, const std::filesystem::path& file);
/// The same for what was pasted.
Result<ShelvedPicture> shelved(const std::filesystem::path& art, const QImage& picture);

/// As large as the place allows, in its middle. False, and Document::troubled, when there is no
/// picture or the page is gone.
bool layUnder(Document& document, const UnderPlace& place, const Result<ShelvedPicture>& picture);
/// Of the picture that was laid last where the selected panel, or else the page, is.
void strengthenUnderlay(Document& document, double strength);
void takeUnderlayAway(Document& document);
/// How strongly that picture is seen; nothing when there is none.
std::optional<double> underlayStrength(const Document& document);

/// A box of that shape as large as fits, in its middle.
Rect fittedInto(const Rect& place, double wide, double high);

}  // namespace tw
