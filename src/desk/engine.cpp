#include "desk/engine.h"

#include <algorithm>

#include "desk/engine_thread.h"
#include "desk/in_qt.h"

namespace tw {

namespace {

// 300 dpi of the print. Nearer than that images are drawn larger: a whole page at the closest zoom
// would take gigabytes.
constexpr double kMostPixelsPerMm = 12;

}  // namespace

Engine::Engine(Document& document) : document_(document) {
  Workbench::of(document_);  // hears of changes before the engine asks it for the job
  thread_ = std::make_unique<EngineThread>([this](MeasurementPtr measurement) {
    QMetaObject::invokeMethod(
        this, [this, measurement] { take(measurement); }, Qt::QueuedConnection);
  });
  connect(&document_, &Document::pageChanged, this, [this](int number) {
    if (number == document_.page().number && !adopting_) showAgain();
  });
  connect(&document_, &Document::jobChanged, this, &Engine::showAgain);
  connect(&document_, &Document::shownChanged, this, [this] {
    const Rough* rough = document_.rough();
    const bool same = latest_ && latest_->page == document_.page().number &&
                      latest_->rough == (rough ? rough->name : std::string());
    if (!same || asked_ == 0) showAgain();
  });
  showAgain();
}

Engine::~Engine() = default;

std::uint64_t Engine::ask() {
  ++asked_;
  if (!wasBusy_) {
    wasBusy_ = true;
    emit busyChanged(true);
  }
  return asked_;
}

void Engine::showAgain() {
  const Rough* rough = document_.rough();
  ShowWish wish;
  wish.work = Workbench::of(document_).work();
  wish.page = document_.page().number;
  wish.rough = rough ? rough->name : std::string();
  trying_ = false;
  keepAt_ = 0;
  thread_->show(std::move(wish), ask());
}

void Engine::tryRestage(std::size_t panel, Staging staging) {
  trying_ = true;
  thread_->tryOut(RestageWish{panel, std::move(staging)}, ask());
}

void Engine::tryReshape(std::vector<std::pair<std::size_t, Polygon>> outlines) {
  trying_ = true;
  thread_->tryOut(ReshapeWish{std::move(outlines)}, ask());
}

void Engine::tryPanel(std::size_t panel, RoughPanel changed) {
  trying_ = true;
  thread_->tryOut(PanelWishNow{panel, std::move(changed)}, ask());
}

void Engine::keep(const QString& what, int merge) {
  if (!trying_) return;
  keepAs_ = what;
  keepMerge_ = merge;
  keepAt_ = asked_;
  if (latest_ && latest_->turn >= keepAt_) keepNow();
}

void Engine::drop() {
  keepAt_ = 0;
  if (!trying_) return;
  trying_ = false;
  thread_->drop(ask());
}

void Engine::setPixelsPerMm(double pixelsPerMm) {
  thread_->setPixelsPerMm(std::min(pixelsPerMm, kMostPixelsPerMm), ask());
}

void Engine::take(MeasurementPtr measurement) {
  latest_ = std::move(measurement);
  if (keepAt_ != 0 && latest_->turn >= keepAt_) keepNow();
  emit measured();
  if (wasBusy_ && !isBusy()) {
    wasBusy_ = false;
    emit busyChanged(false);
  }
}

void Engine::keepNow() {
  keepAt_ = 0;
  const auto index = document_.roughIndex();
  if (!latest_->measured || !latest_->isPreview || !index ||
      latest_->page != document_.page().number || document_.rough()->name != latest_->rough) {
    drop();
    return;
  }
  Page after = document_.page();
  after.roughs[*index] = latest_->roughNow();
  trying_ = false;
  adopting_ = true;
  const bool done = document_.change(keepAs_, after, keepMerge_);
  adopting_ = false;
  if (!done) {
    thread_->drop(ask());
    return;
  }
  thread_->adopt(ask());
  emit kept();
}

}  // namespace tw
