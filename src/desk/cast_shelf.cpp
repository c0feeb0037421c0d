#include "desk/cast_shelf.h"

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QIcon>
#include <QMimeData>
#include <QUrl>

#include <algorithm>

#include "command/shelve_picture.h"
#include "desk/in_qt.h"
#include "desk/look.h"

namespace tw {

namespace {

constexpr int kThumbPx = 44, kHighPx = 148;

std::filesystem::path shelfOf(const Document& document) {
  return document.folder() / "art" / "reference";
}

using Kept = Result<std::vector<std::string>>;

/// Their names in the shelf.
Kept shelvedFiles(const std::filesystem::path& shelf,
                  const std::vector<std::filesystem::path>& files) {
  std::vector<std::string> out;
  for (const auto& file : files) {
    auto kept = shelvePictureFile(shelf, file);
    if (!kept) return tl::unexpected(kept.error());
    out.push_back(std::move(*kept));
  }
  return out;
}

}  // namespace

CastShelf::CastShelf(Document& document, QWidget* parent)
    : QListWidget(parent), document_(document) {
  setObjectName(QStringLiteral("castShelf"));
  setAccessibleName(tr("Cast; drop reference pictures on somebody"));
  setToolTip(tr("Drop a picture on somebody to keep it as their reference"));
  setIconSize(QSize(kThumbPx, kThumbPx));
  setMaximumHeight(kHighPx);
  setAcceptDrops(true);
  connect(&document_, &Document::jobChanged, this, &CastShelf::refresh);
  connect(&pictures_, &FilePictures::read, this, &CastShelf::refresh);
  refresh();
}

void CastShelf::refresh() {
  const int row = currentRow();
  clear();
  for (const Character& who : document_.job().cast) {
    const int count = static_cast<int>(who.references.size());
    auto* item = new QListWidgetItem(
        count == 0   ? qt(who.name)
        : count == 1 ? tr("%1 – one reference picture").arg(qt(who.name))
                     : tr("%1 – %2 reference pictures").arg(qt(who.name)).arg(count),
        this);
    item->setSizeHint(QSize(0, count > 0 ? kThumbPx + 6 : kTouchPx));
    item->setData(Qt::UserRole, qt(who.id));
    if (count > 0)
      item->setIcon(QIcon(QPixmap::fromImage(pictures_.picture(
          qt((shelfOf(document_) / who.references.front().file).string()), kThumbPx))));
  }
  setCurrentRow(row);
}

void CastShelf::attach(const std::string& who, const std::vector<std::filesystem::path>& pictures) {
  if (document_.isReadOnly()) {
    document_.changeJob({}, document_.job());  // tells why not
    return;
  }
  shelving_.start(
      [shelf = shelfOf(document_), pictures](Progress&) { return shelvedFiles(shelf, pictures); },
      [this, who](const Kept& kept) { take(who, kept); });
}

void CastShelf::take(const std::string& who, const Kept& kept) {
  if (!kept) {
    emit document_.troubled(qt(kept.error()));
    return;
  }
  Job job = document_.job();
  const auto found = std::ranges::find(job.cast, who, &Character::id);
  if (found == job.cast.end()) return;
  for (const std::string& file : *kept)
    if (std::ranges::find(found->references, file, &Reference::file) == found->references.end())
      found->references.push_back({.file = file});
  if (!(job == document_.job())) document_.changeJob(tr("attach a reference picture"), job);
}

void CastShelf::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void CastShelf::dragMoveEvent(QDragMoveEvent* event) {
  QListWidgetItem* item = itemAt(event->position().toPoint());
  event->setAccepted(item != nullptr && event->mimeData()->hasUrls());
  if (item != nullptr) setCurrentItem(item);
}

void CastShelf::dropEvent(QDropEvent* event) {
  const QListWidgetItem* item = itemAt(event->position().toPoint());
  if (item == nullptr) return;
  const std::string who = item->data(Qt::UserRole).toString().toStdString();
  std::vector<std::filesystem::path> files;
  for (const QUrl& url : event->mimeData()->urls())
    if (url.isLocalFile()) files.emplace_back(url.toLocalFile().toStdString());
  attach(who, files);
  event->acceptProposedAction();
}

}  // namespace tw
