#include "desk/file_pictures.h"

#include <QImageReader>

#include <algorithm>

namespace tw {

namespace {

// More than a window shows of a page; a board scan at 600 dpi would take 400 MB.
constexpr QSize kLargest(2400, 2400);
constexpr int kSmallestWide = 60;

std::vector<QImage> sizesOf(const QString& file) {
  QImageReader reader(file);
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  if (size.width() > kLargest.width() || size.height() > kLargest.height())
    reader.setScaledSize(size.scaled(kLargest, Qt::KeepAspectRatio));
  std::vector<QImage> out;
  QImage image = reader.read();
  while (!image.isNull()) {
    out.push_back(image);
    const int half = image.width() / 2;
    if (half < kSmallestWide) break;
    image = image.scaledToWidth(half, Qt::SmoothTransformation);
  }
  return out;
}

}  // namespace

FilePictures::FilePictures(QObject* parent) : QObject(parent) {}

QImage FilePictures::picture(const QString& file, double widePx) {
  const auto [found, isNew] = known_.try_emplace(file);
  if (isNew) {
    queue_.push_back(file);
    readNext();
  }
  const Sizes& sizes = found->second;
  const auto best = std::find_if(sizes.rbegin(), sizes.rend(),
                                 [&](const QImage& image) { return image.width() >= widePx; });
  if (best != sizes.rend()) return *best;
  return sizes.empty() ? QImage() : sizes.front();
}

void FilePictures::readNext() {
  if (errand_.isRunning() || queue_.empty()) return;
  const QString file = queue_.front();
  queue_.pop_front();
  errand_.start([file](Progress&) { return sizesOf(file); },
                [this, file](Sizes sizes) {
                  known_[file] = std::move(sizes);
                  emit read();
                  readNext();
                });
}

}  // namespace tw
