// One loop: wait for wishes, take them all at once, begin anew or try, measure, draw, answer.
//
// What is tried is laid on a copy of the measured page, so dropping it costs nothing. Panels that
// an edit did not touch keep their images. While a hand moves, touched panels are drawn coarsely;
// when no wish has come for kRestMs they are drawn again as they print.
#include "desk/engine_thread.h"

#include <QPainter>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "base/parallel.h"
#include "command/pictures.h"
#include "command/read_page.h"
#include "desk/painter_surface.h"
#include "geometry/polygon.h"
#include "press/number_places.h"
#include "press/page_art.h"

namespace tw {

namespace {

constexpr auto kRestMs = std::chrono::milliseconds(140);
constexpr auto kLongestWait = std::chrono::seconds(5);
constexpr int kQuickWidth = 220;  // px of the render that decides what is seen
constexpr int kMostUndrawn = 3;
constexpr int kQuickReaders = 200, kReaders = 500;
constexpr double kFinestPx = 0.4;       // detail smaller than this is left out
constexpr double kAroundPanelMm = 1.8;  // paper around an inset, and half its line

// What of a panel's image is no longer right. A picture that is drawn again has its copy set again.
constexpr char kPictureStale = 1, kCopyStale = 2;

char staleness(const RoughPanel& a, const RoughPanel& b) {
  const bool samePicture =
      a.beat == b.beat && a.outline == b.outline && a.ground == b.ground && a.staging == b.staging;
  return !samePicture ? kPictureStale : a.balloons == b.balloons ? char{0} : kCopyStale;
}

QImage blankImage(const Rect& at, double pixelsPerMm) {
  const auto pixels = [&](double mm) {
    return std::max(1, static_cast<int>(std::ceil(mm * pixelsPerMm)));
  };
  QImage image(pixels(at.width()), pixels(at.height()), QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::transparent);
  return image;
}

void toMm(QPainter& painter, const Rect& at, double pixelsPerMm) {
  painter.scale(pixelsPerMm, pixelsPerMm);
  painter.translate(-at.min.x, -at.min.y);
}

/// The panel with all its copy, and a little around.
Rect copyPlace(const RoughPanel& panel, const Typesetter& typesetter) {
  Rect out = bounds(panel.outline);
  for (const Polygon& shape : copyShapes(panel, typesetter)) {
    const Rect box = bounds(shape);
    out = {{std::min(out.min.x, box.min.x), std::min(out.min.y, box.min.y)},
           {std::max(out.max.x, box.max.x), std::max(out.max.y, box.max.y)}};
  }
  return out.outset(kAroundPanelMm);
}

}  // namespace

EngineThread::EngineThread(Answer answer)
    : answer_(std::move(answer)), thread_([this] { run(); }) {}

EngineThread::~EngineThread() {
  {
    std::scoped_lock lock(mutex_);
    isOver_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void EngineThread::show(ShowWish wish, std::uint64_t turn) {
  {
    std::scoped_lock lock(mutex_);
    wishes_.show = std::move(wish);
    wishes_.drop = wishes_.adopt = false;
    wishes_.tries.clear();
    wishes_.turn = turn;
  }
  changed_.notify_all();
}

void EngineThread::tryOut(TryWish wish, std::uint64_t turn) {
  {
    std::scoped_lock lock(mutex_);
    // The same thing tried farther takes the place of what was not begun yet.
    const auto replaces = [&](const TryWish& before) {
      if (before.index() != wish.index()) return false;
      if (const auto* restage = std::get_if<RestageWish>(&wish))
        return std::get<RestageWish>(before).panel == restage->panel;
      if (const auto* panel = std::get_if<PanelWishNow>(&wish))
        return std::get<PanelWishNow>(before).panel == panel->panel;
      return true;
    };
    if (!wishes_.tries.empty() && replaces(wishes_.tries.back()))
      wishes_.tries.back() = std::move(wish);
    else
      wishes_.tries.push_back(std::move(wish));
    wishes_.turn = turn;
  }
  changed_.notify_all();
}

void EngineThread::drop(std::uint64_t turn) {
  {
    std::scoped_lock lock(mutex_);
    wishes_.tries.clear();
    wishes_.drop = true;
    wishes_.turn = turn;
  }
  changed_.notify_all();
}

void EngineThread::adopt(std::uint64_t turn) {
  {
    std::scoped_lock lock(mutex_);
    wishes_.adopt = true;
    wishes_.turn = turn;
  }
  changed_.notify_all();
}

void EngineThread::setPixelsPerMm(double pixelsPerMm, std::uint64_t turn) {
  {
    std::scoped_lock lock(mutex_);
    wishes_.pixelsPerMm = pixelsPerMm;
    wishes_.redraw = true;
    wishes_.turn = turn;
  }
  changed_.notify_all();
}

/// False when it is time to end. Empty wishes: the hand rests.
bool EngineThread::waitForWishes(Wishes& wishes) {
  std::unique_lock lock(mutex_);
  const auto isWoken = [this] { return isOver_ || !wishes_.isEmpty(); };
  const bool coarse = std::ranges::any_of(
      images_, [](const auto& image) { return image == nullptr || image->isQuick; });
  if (coarse)
    changed_.wait_for(lock, kRestMs, isWoken);
  else
    changed_.wait(lock, isWoken);
  if (isOver_) return false;
  wishes = wishes_;
  wishes_ = {.pixelsPerMm = wishes.pixelsPerMm, .turn = wishes.turn};
  return true;
}

void EngineThread::run() {
  if (auto model = loadEyePathModel()) eyes_ = std::move(*model);
  Wishes wishes;
  while (waitForWishes(wishes)) {
    if (wishes.pixelsPerMm != pixelsPerMm_) {
      pixelsPerMm_ = wishes.pixelsPerMm;
      std::ranges::fill(stale_, 1);
    }
    if (wishes.adopt) base_ = tried_;
    if (wishes.show) begin(*wishes.show);
    if (wishes.drop && tried_ != base_) {
      for (std::size_t i = 0; i < stale_.size(); ++i)
        stale_[i] |= staleness(tried_->rough().panels[i], base_->rough().panels[i]);
      tried_ = base_;
    }
    for (const TryWish& wish : wishes.tries) tryNow(wish);
    const bool rests = wishes.isEmpty(), drags = !wishes.tries.empty();
    if (rests)
      for (std::size_t i = 0; i < images_.size(); ++i)
        stale_[i] |= images_[i] == nullptr || images_[i]->isQuick;
    if (drags) {
      answer(wishes.turn, true);
      // The hand is farther already: its measures first, but a picture every few frames.
      if (isWished() && ++undrawn_ < kMostUndrawn) continue;
    }
    undrawn_ = 0;
    drawPanels(drags);
    if (!rests) readNow(drags);
    answer(wishes.turn, false);
  }
}

bool EngineThread::isWished() {
  std::scoped_lock lock(mutex_);
  return isOver_ || !wishes_.isEmpty();
}

void EngineThread::begin(const ShowWish& wish) {
  const auto before = tried_;
  const bool samePage = wish.page == shownPage_;
  const auto shopBefore = workshop_;
  staged_.reset(), base_.reset(), tried_.reset();
  trouble_.clear();
  shownPage_ = wish.page;
  shownRough_ = wish.rough;
  const auto fail = [this](const Problems& problems) {
    trouble_ = describe(problems);
    images_.clear(), stale_.clear();
    readings_ = {};
  };
  auto shop = wish.work.workshop();
  if (!shop) return fail(shop.error());
  workshop_ = std::move(*shop);
  if (wish.rough.empty()) return fail({});
  auto staged = stagePage(wish.work.job(), workshop_, wish.page, wish.rough);
  if (!staged) return fail(staged.error());
  staged_ = std::move(*staged);
  base_ = tried_ = std::shared_ptr<const MeasuredPage>(std::move(staged_->measured));
  const std::size_t n = tried_->rough().panels.size();
  images_.resize(n);
  stale_.assign(n, kPictureStale);
  readings_ = {};
  if (samePage && workshop_ == shopBefore && before && before->rough().panels.size() == n)
    for (std::size_t i = 0; i < n; ++i)
      stale_[i] = images_[i] ? staleness(before->rough().panels[i], tried_->rough().panels[i])
                             : kPictureStale;
}

void EngineThread::tryNow(const TryWish& wish) {
  if (!tried_) return;
  auto next = std::make_shared<MeasuredPage>(*tried_);
  const std::size_t n = next->rough().panels.size();
  if (const auto* restage = std::get_if<RestageWish>(&wish)) {
    if (restage->panel < n) next->restage(restage->panel, restage->staging);
  } else if (const auto* reshape = std::get_if<ReshapeWish>(&wish)) {
    const bool fits =
        std::ranges::all_of(reshape->outlines, [&](const auto& each) { return each.first < n; });
    if (fits) next->reshape(reshape->outlines);
  } else if (const auto* panel = std::get_if<PanelWishNow>(&wish)) {
    if (panel->panel < n) next->replace(panel->panel, panel->changed);
  }
  for (std::size_t i = 0; i < n; ++i)
    stale_[i] |= staleness(tried_->rough().panels[i], next->rough().panels[i]);
  tried_ = std::move(next);
}

std::shared_ptr<const PanelImage> EngineThread::drawn(std::size_t i, bool quickly) const {
  const RoughPanel& panel = tried_->rough().panels[i];
  auto image = std::make_shared<PanelImage>();
  image->at = bounds(panel.outline).outset(kAroundPanelMm);
  image->isQuick = quickly;
  image->picture = blankImage(image->at, pixelsPerMm_);
  const Drawing drawing =
      drawnPanel(workshop_->stager, panel, tried_->page().panels[i].beat, tried_->page().brief,
                 quickly ? kQuickWidth : DrawOptions{}.width);
  QPainter painter(&image->picture);
  toMm(painter, image->at, pixelsPerMm_);
  PainterSurface surface(painter, typesetter_);  // sets no type
  drawPanelPicture(surface, panel.outline, liesOnGround(tried_->rough(), i), drawing,
                   kFinestPx / pixelsPerMm_);
  drawPanelBorder(surface, panel, tried_->page().sheet.trimRect());
  return image;
}

void EngineThread::drawPanels(bool quickly) {
  std::vector<std::size_t> work;
  for (std::size_t i = 0; i < stale_.size(); ++i)
    if (stale_[i]) work.push_back(i);
  std::vector<std::shared_ptr<const PanelImage>> made(work.size());
  // While a hand drags the window paints the measures at the same time: one core is left to it.
  const unsigned threads = quickly ? std::max(1u, defaultThreads() - 1) : defaultThreads();
  parallelFor(work.size(), threads, [&](std::size_t k) {
    const std::size_t i = work[k];
    made[k] = !(stale_[i] & kPictureStale) && images_[i] ? images_[i] : drawn(i, quickly);
  });
  for (std::size_t k = 0; k < work.size(); ++k) {  // one typesetter, so one after another
    auto image = std::make_shared<PanelImage>(*made[k]);
    image->copyAt = copyPlace(tried_->rough().panels[work[k]], typesetter_);
    image->copy = blankImage(image->copyAt, pixelsPerMm_);
    QPainter painter(&image->copy);
    toMm(painter, image->copyAt, pixelsPerMm_);
    PainterSurface surface(painter, typesetter_);
    drawPanelCopy(surface, tried_->rough().panels[work[k]], typesetter_);
    images_[work[k]] = std::move(image);
    stale_[work[k]] = 0;
  }
}

void EngineThread::readNow(bool isPreview) {
  if (!tried_ || !eyes_) return;
  EyeOptions options;
  options.readers = isPreview ? kQuickReaders : kReaders;
  options.samples = 1;
  readings_ = readingsOf(*tried_, *eyes_, options);
}

void EngineThread::answer(std::uint64_t turn, bool late) {
  auto out = std::make_shared<Measurement>();
  out->turn = turn;
  out->page = shownPage_;
  out->rough = shownRough_;
  out->trouble = trouble_;
  out->pixelsPerMm = pixelsPerMm_;
  if (tried_) {
    out->isPreview = tried_ != base_;
    out->staged = staged_;
    out->measured = tried_;
    out->seen = seenPageOf(*tried_);
    out->readings = readings_;
    out->readingsLate = late;
    out->pictureLate = std::ranges::any_of(stale_, [](char each) { return each != 0; });
    out->findings = readings_.squints.size() == images_.size()
                        ? findingsOn(*tried_, readings_, out->seen, workshop_->rules.evidence())
                        : tried_->measured().findings;
    out->images = images_;
    if (auto picture = blankPictureOf(staged_->job, staged_->stored(), tried_->rough()))
      out->picture = std::move(*picture);
    for (std::size_t i = 0; i < out->picture.grids.size(); ++i)
      out->picture.grids[i] =
          workshop_->stager.grid(tried_->rough().panels[i], tried_->page().panels[i].focus);
  }
  {
    std::scoped_lock lock(mutex_);
    answered_ = out;
  }
  answering_.notify_all();
  answer_(std::move(out));
}

MeasurementPtr EngineThread::waitFor(std::uint64_t turn) {
  std::unique_lock lock(mutex_);
  const bool came = answering_.wait_for(
      lock, kLongestWait, [&] { return answered_ != nullptr && answered_->turn >= turn; });
  return came ? answered_ : nullptr;
}

}  // namespace tw
