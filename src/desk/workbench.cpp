#include "desk/workbench.h"

#include <mutex>

#include "command/job_models.h"

namespace tw {

struct Workbench::Work::Shop {
  std::mutex mutex;
  std::uint64_t edition = 0;
  std::shared_ptr<const Workshop> made;
};

Workbench& Workbench::of(Document& document) {
  auto* found = document.findChild<Workbench*>(QString(), Qt::FindDirectChildrenOnly);
  return found != nullptr ? *found : *new Workbench(document);
}

Workbench::Workbench(Document& document)
    : QObject(&document), document_(document), shop_(std::make_shared<Work::Shop>()) {
  const auto forget = [this] { job_.reset(); };
  connect(&document, &Document::pageChanged, this, forget);
  connect(&document, &Document::jobChanged, this, forget);
}

Workbench::Work Workbench::work() {
  if (!job_) job_ = std::make_shared<const Job>(document_.job());
  Work out;
  out.job_ = job_;
  out.folder_ = document_.folder();
  out.edition_ = document_.wishesEdition();
  out.shop_ = shop_;
  return out;
}

Result<std::shared_ptr<const Workshop>> Workbench::Work::workshop() const {
  std::scoped_lock lock(shop_->mutex);
  if (shop_->made && shop_->edition == edition_) return shop_->made;
  auto made = workshopFor(folder_, *job_);
  if (!made) return tl::unexpected(made.error());
  shop_->made = std::make_shared<const Workshop>(std::move(*made));
  shop_->edition = edition_;
  return shop_->made;
}

}  // namespace tw
