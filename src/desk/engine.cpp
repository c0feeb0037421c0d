#include "desk/engine.h"

#include <algorithm>

#include "desk/engine_thread.h"
#include "desk/in_qt.h"

namespace tw {

namespace {

// 300 dpi of the print. Nearer than that images are drawn larger: a whole page at the closest zoom
// would take gigabytes.
constexpr double kMostPixelsPerMm = 12;

std::pair<int, std::string> shownIn(const Document& document) {
  const Rough* rough = document.rough();
  return {document.page().number, rough ? rough->name : std::string()};
}

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
    if (shownIn(document_) == shown_) return;
    finishKeeping();  // into the page that was left
    showAgain();
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
  shown_ = shownIn(document_);
  ShowWish wish{Workbench::of(document_).work(), shown_.first, shown_.second};
  forgetKeeping();
  trying_ = false;
  thread_->show(std::move(wish), ask());
}

void Engine::tryRestage(std::size_t panel, Staging staging) {
  tryOut(RestageWish{panel, std::move(staging)});
}

void Engine::tryReshape(std::vector<std::pair<std::size_t, Polygon>> outlines) {
  tryOut(ReshapeWish{std::move(outlines)});
}

void Engine::tryPanel(std::size_t panel, RoughPanel changed) {
  tryOut(PanelWishNow{panel, std::move(changed)});
}

void Engine::tryOut(TryWish wish) {
  if (keepAt_ != 0) {
    waiting_.push_back([this, wish = std::move(wish)] { tryOut(wish); });
    return;
  }
  trying_ = true;
  thread_->tryOut(std::move(wish), ask());
}

void Engine::keep(const QString& what, int merge) {
  if (keepAt_ != 0) {
    if (!waiting_.empty()) waiting_.push_back([this, what, merge] { keep(what, merge); });
    return;
  }
  if (!trying_) return;
  keepAs_ = what;
  keepMerge_ = merge;
  keepAt_ = asked_;
  if (latest_ && latest_->turn >= keepAt_)
    keepNow();
  else
    emit keeping();
}

void Engine::drop() {
  waiting_.clear();
  if (!trying_ || keepAt_ != 0) return;
  trying_ = false;
  thread_->drop(ask());
}

void Engine::finishKeeping() {
  while (keepAt_ != 0) {  // keeping one begins the next that waits
    MeasurementPtr measured = thread_->waitFor(keepAt_);
    if (measured == nullptr) return forgetKeeping();
    latest_ = std::move(measured);
    keepNow();
  }
}

/// The edit that was being measured cannot be kept any more.
void Engine::forgetKeeping() {
  waiting_.clear();
  if (std::exchange(keepAt_, 0) != 0)
    emit troubled(
        tr("“%1” was not kept: the page was changed before it was measured.").arg(keepAs_));
}

void Engine::setPixelsPerMm(double pixelsPerMm) {
  thread_->setPixelsPerMm(std::min(pixelsPerMm, kMostPixelsPerMm), ask());
}

void Engine::take(MeasurementPtr measurement) {
  if (latest_ && measurement->turn < latest_->turn) return;  // a newer one was waited for
  latest_ = std::move(measurement);
  if (keepAt_ != 0 && latest_->turn >= keepAt_) keepNow();
  emit measured();
  if (wasBusy_ && !isBusy()) {
    wasBusy_ = false;
    emit busyChanged(false);
  }
}

/// Into the page and rough that were measured, whatever is shown by now.
void Engine::keepNow() {
  const Page* page = document_.job().page(latest_->page);
  const auto rough = page ? std::ranges::find(page->roughs, latest_->rough, &Rough::name)
                          : std::vector<Rough>::const_iterator();
  trying_ = false;
  if (!latest_->measured || page == nullptr || rough == page->roughs.end()) {
    forgetKeeping();
    thread_->drop(ask());
    return;
  }
  keepAt_ = 0;
  Page after = *page;
  after.roughs[static_cast<std::size_t>(rough - page->roughs.begin())] = latest_->roughNow();
  adopting_ = true;
  const bool done = document_.change(keepAs_, after, keepMerge_);
  adopting_ = false;
  if (!done) {
    waiting_.clear();
    thread_->drop(ask());
    return;
  }
  thread_->adopt(ask());
  emit kept();
  goOn();
}

/// What was tried meanwhile, until the next edit is to be measured.
void Engine::goOn() {
  while (!waiting_.empty() && keepAt_ == 0) {
    const auto next = std::move(waiting_.front());
    waiting_.pop_front();
    next();
  }
}

}  // namespace tw
