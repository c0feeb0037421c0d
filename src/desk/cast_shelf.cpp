#include "desk/cast_shelf.h"

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QIcon>
#include <QImageReader>
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

/// Read small at once, however large the file is.
QIcon thumb(const std::filesystem::path& file) {
  QImageReader reader(qt(file.string()));
  reader.setScaledSize(reader.size().scaled(kThumbPx, kThumbPx, Qt::KeepAspectRatio));
  return QIcon(QPixmap::fromImage(reader.read()));
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
    if (count > 0) item->setIcon(thumb(shelfOf(document_) / who.references.front().file));
  }
  setCurrentRow(row);
}

bool CastShelf::attach(const std::string& who, const std::filesystem::path& picture) {
  Job job = document_.job();
  const auto found = std::ranges::find(job.cast, who, &Character::id);
  if (found == job.cast.end()) return false;
  if (document_.isReadOnly()) return document_.changeJob({}, job);
  const auto kept = shelvePictureFile(shelfOf(document_), picture);
  if (!kept) {
    emit document_.troubled(qt(kept.error()));
    return false;
  }
  if (std::ranges::find(found->references, *kept, &Reference::file) == found->references.end())
    found->references.push_back({.file = *kept});
  return document_.changeJob(tr("attach a reference picture"), job);
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
  for (const QUrl& url : event->mimeData()->urls())
    if (url.isLocalFile()) attach(who, url.toLocalFile().toStdString());
  event->acceptProposedAction();
}

}  // namespace tw
