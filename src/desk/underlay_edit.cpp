#include "desk/underlay_edit.h"

#include <QBuffer>
#include <QCoreApplication>

#include <algorithm>

#include "base/files.h"
#include "command/shelve_picture.h"
#include "desk/in_qt.h"
#include "geometry/polygon.h"
#include "job/picture_size.h"

namespace tw {

namespace {

constexpr int kMergeStrength = 2000000000 - 100000000;  // a slider's way is one step

QString words(const char* text) {
  return QCoreApplication::translate("Underlay", text);
}

std::string beatSelected(const Document& document) {
  const Rough* rough = document.rough();
  return rough != nullptr && document.panel() ? rough->panels[*document.panel()].beat
                                              : std::string();
}

Rect placeSelected(const Document& document) {
  const Rough* rough = document.rough();
  if (rough != nullptr && document.panel()) return bounds(rough->panels[*document.panel()].outline);
  return document.job().sheetFor(document.page()).trimRect();
}

bool layBytesUnder(Document& document, const std::string& name, const std::string& bytes) {
  const auto tell = [&](const Problems& problems) {
    emit document.troubled(qt(problems));
    return false;
  };
  const auto size = pictureSizeOf(bytes, name);
  if (!size) return tell(size.error());
  if (document.isReadOnly()) return document.change({}, document.page());
  const auto kept = shelvePicture(document.folder() / "art", name, bytes);
  if (!kept) return tell(kept.error());
  Page page = document.page();
  page.underlays.push_back({*kept, beatSelected(document),
                            fittedInto(placeSelected(document), size->width, size->height), 0.5});
  return document.change(words(QT_TRANSLATE_NOOP("Underlay", "lay a picture under")), page);
}

/// The last one of the selected panel, or else of the page.
auto lastUnder(const Document& document, Page& page) {
  const std::string beat = beatSelected(document);
  const auto found = std::find_if(page.underlays.rbegin(), page.underlays.rend(),
                                  [&](const Underlay& each) { return each.beat == beat; });
  return found == page.underlays.rend() ? page.underlays.end() : std::prev(found.base());
}

}  // namespace

Rect fittedInto(const Rect& place, double wide, double high) {
  const double scale = std::min(place.width() / wide, place.height() / high);
  const Vector half{wide * scale / 2, high * scale / 2};
  return {place.centre() - half, place.centre() + half};
}

bool layUnder(Document& document, const std::filesystem::path& file) {
  const auto bytes = readFile(file, kLargestPictureBytes);
  if (bytes) return layBytesUnder(document, file.string(), *bytes);
  emit document.troubled(qt(bytes.error()));
  return false;
}

bool layUnder(Document& document, const QImage& picture) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  picture.save(&buffer, "PNG");
  return layBytesUnder(document, "pasted.png", bytes.toStdString());
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
                  kMergeStrength + 1000 * page.number + which);
}

void takeUnderlayAway(Document& document) {
  Page page = document.page();
  const auto under = lastUnder(document, page);
  if (under == page.underlays.end()) return;
  page.underlays.erase(under);
  document.change(words(QT_TRANSLATE_NOOP("Underlay", "take the picture under away")), page);
}

}  // namespace tw
