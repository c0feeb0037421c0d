#include "desk/rough_pictures.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

#include "command/pictures.h"
#include "desk/in_qt.h"
#include "desk/painter_surface.h"
#include "desk/stroke_art.h"
#include "press/page_art.h"

namespace tw {

namespace {

constexpr int kWidePx = 520;    // enough for two side by side
constexpr int kRenderPx = 200;  // of each panel's render: what is seen, not how finely it is drawn

Result<RoughPicture> drawnRough(const Job& job, int page, const Rough& rough, const Stager& stager,
                                Progress& progress) {
  const Page* stored = job.page(page);
  ensure(stored != nullptr, "a picture is asked of a page that is there");
  auto out = blankPictureOf(job, *stored, rough);
  if (!out) return out;
  const std::vector<Beat> beats = stored->correctedBeats();
  for (std::size_t i = 0; i < rough.panels.size() && !progress.isStopped(); ++i) {
    const auto beat = std::ranges::find(beats, rough.panels[i].beat, &Beat::id);
    out->panels[i] = drawnPanel(stager, rough.panels[i], *beat, stored->brief, kRenderPx);
  }
  return out;
}

QImage painted(const RoughPicture& picture, const Typesetter& typesetter) {
  const Rect bleed = picture.sheet.bleedRect();
  const double scale = kWidePx / bleed.width();
  QImage out(kWidePx, static_cast<int>(std::lround(bleed.height() * scale)), QImage::Format_RGB32);
  out.fill(Qt::white);
  QPainter painter(&out);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(scale, scale);
  painter.translate(-bleed.min.x, -bleed.min.y);
  PainterSurface surface(painter, typesetter);
  PageArt(picture, typesetter).drawOn(surface, 0.5 / scale);
  for (const RoughPanel& panel : picture.rough.panels)
    for (const PenStroke& stroke : panel.strokes) drawStroke(painter, stroke);
  return out;
}

}  // namespace

const Rough* roughOf(const Document& document, int page, const std::string& name) {
  const Page* stored = document.job().page(page);
  if (stored == nullptr) return nullptr;
  const auto found = std::ranges::find(stored->roughs, name, &Rough::name);
  return found == stored->roughs.end() ? nullptr : &*found;
}

RoughPictures& RoughPictures::of(Document& document) {
  auto* found = document.findChild<RoughPictures*>(QString(), Qt::FindDirectChildrenOnly);
  return found != nullptr ? *found : *new RoughPictures(document);
}

RoughPictures::RoughPictures(Document& document)
    : QObject(&document), document_(document), bench_(Workbench::of(document)) {}

RoughPictures::~RoughPictures() = default;

bool RoughPictures::isFresh(int page, const std::string& name) const {
  const Rough* rough = roughOf(document_, page, name);
  const auto found = entries_.find({page, name});
  return rough != nullptr && found != entries_.end() && found->second.isDrawn &&
         found->second.edition == document_.wishesEdition() && found->second.rough == *rough;
}

QImage RoughPictures::picture(int page, const std::string& name) {
  const Rough* rough = roughOf(document_, page, name);
  if (rough == nullptr) return {};
  Entry& entry = entries_[{page, name}];
  const bool same = entry.edition == document_.wishesEdition() && entry.rough == *rough;
  if (!same) {
    entry.rough = *rough;
    entry.edition = document_.wishesEdition();
    entry.isDrawn = false;
    // What was asked for last is what is looked at now.
    const Key key{page, name};
    std::erase(queue_, key);
    queue_.push_front(key);
    drawNext();
  }
  return entry.image;
}

void RoughPictures::drawNext() {
  if (errand_.isRunning() || queue_.empty()) return;
  const Key key = queue_.front();
  queue_.pop_front();
  const Rough rough = entries_[key].rough;
  if (roughOf(document_, key.first, key.second) == nullptr) {
    entries_.erase(key);
    return drawNext();
  }
  if (!typesetter_) typesetter_ = std::make_shared<Typesetter>();
  const auto work = [bench = bench_.work(), key, rough, letters = typesetter_](Progress& progress) {
    const auto workshop = bench.workshop();
    if (!workshop) return QImage();
    const auto picture = drawnRough(bench.job(), key.first, rough, (*workshop)->stager, progress);
    return picture && !progress.isStopped() ? painted(*picture, *letters) : QImage();
  };
  errand_.start(work, [this, key, rough](QImage image) {
    const auto entry = entries_.find(key);
    if (entry != entries_.end()) {
      if (!image.isNull()) entry->second.image = std::move(image);
      const bool isNow = entry->second.rough == rough;
      entry->second.isDrawn = isNow;
      if (!isNow && std::ranges::find(queue_, key) == queue_.end()) queue_.push_back(key);
      emit drawn(key.first, qt(key.second));
    }
    drawNext();
  });
}

}  // namespace tw
