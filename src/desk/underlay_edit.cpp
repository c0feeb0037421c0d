#include "desk/underlay_edit.h"

#include <QBuffer>
#include <QCoreApplication>

#include <algorithm>

#include "base/files.h"
#include "command/shelve_picture.h"
#include "desk/in_qt.h"
#include "desk/merge_ids.h"
#include "geometry/polygon.h"
#include "job/picture_size.h"

namespace tw {

namespace {

constexpr double kUsualStrength = 0.5;

QString words(const char* text) {
  return QCoreApplication::translate("Underlay", text);
}

std::string beatSelected(const Document& document) {
  const Rough* rough = document.rough();
  return rough != nullptr && document.panel() ? rough->panels[*document.panel()].beat
                                              : std::string();
}

Result<ShelvedPicture> shelvedBytes(const std::filesystem::path& art, const std::string& name,
                                    std::string_view bytes) {
  const auto size = pictureSizeOf(bytes, name);
  if (!size) return tl::unexpected(size.error());
  const auto kept = shelvePicture(art, name, bytes);
  if (!kept) return tl::unexpected(kept.error());
  return ShelvedPicture{*kept, size->width, size->height};
}

/// The last one of the selected panel, or else of the page.
auto lastUnder(const Document& document, Page& page) {
  const auto lastOf = [&](const std::string& beat) {
    const auto found = std::find_if(page.underlays.rbegin(), page.underlays.rend(),
                                    [&](const Underlay& each) { return each.beat == beat; });
    return found == page.underlays.rend() ? page.underlays.end() : std::prev(found.base());
  };
  const auto own = lastOf(beatSelected(document));
  return own == page.underlays.end() ? lastOf({}) : own;
}

}  // namespace

Rect fittedInto(const Rect& place, double wide, double high) {
  const double scale = std::min(place.width() / wide, place.height() / high);
  const Vector half{wide * scale / 2, high * scale / 2};
  return {place.centre() - half, place.centre() + half};
}

UnderPlace underPlace(const Document& document) {
  const Rough* rough = document.rough();
  return {document.page().number, beatSelected(document),
          rough != nullptr && document.panel()
              ? bounds(rough->panels[*document.panel()].outline)
              : document.job().sheetFor(document.page()).trimRect()};
}

Result<ShelvedPicture> shelved(const std::filesystem::path& art,
                               const std::filesystem::path& file) {
  const auto bytes = readFile(file, kLargestPictureBytes);
  if (!bytes) return tl::unexpected(bytes.error());
  return shelvedBytes(art, file.string(), *bytes);
}

Result<ShelvedPicture> shelved(const std::filesystem::path& art, const QImage& picture) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  picture.save(&buffer, "PNG");
  return shelvedBytes(art, "pasted.png", bytes.toStdString());
}

bool layUnder(Document& document, const UnderPlace& place, const Result<ShelvedPicture>& picture) {
  if (!picture) {
    emit document.troubled(qt(picture.error()));
    return false;
  }
  const Page* now = document.job().page(place.page);
  if (now == nullptr) return false;
  Page page = *now;
  page.underlays.push_back({picture->file, place.beat,
                            fittedInto(place.at, picture->width, picture->height), kUsualStrength});
  return document.change(words(QT_TRANSLATE_NOOP("Underlay", "lay a picture under")), page);
}

std::optional<double> underlayStrength(const Document& document) {
  Page page = document.page();
  const auto under = lastUnder(document, page);
  if (under == page.underlays.end()) return std::nullopt;
  return under->strength;
}

void strengthenUnderlay(Document& document, double strength) {
  Page page = document.page();
  const auto under = lastUnder(document, page);
  if (under == page.underlays.end()) return;
  const auto which = static_cast<int>(under - page.underlays.begin());
  under->strength = strength;
  document.change(words(QT_TRANSLATE_NOOP("Underlay", "strengthen the picture under")), page,
                  kMergeUnderlay + 1000 * page.number + which);
}

void takeUnderlayAway(Document& document) {
  Page page = document.page();
  const auto under = lastUnder(document, page);
  if (under == page.underlays.end()) return;
  page.underlays.erase(under);
  document.change(words(QT_TRANSLATE_NOOP("Underlay", "take the picture under away")), page);
}

}  // namespace tw
