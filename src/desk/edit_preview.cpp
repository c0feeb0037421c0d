#include "desk/edit_preview.h"

#include <utility>

namespace tw {

namespace {

std::pair<int, std::string> shownIn(const Document& document) {
  const Rough* rough = document.rough();
  return {document.page().number, rough ? rough->name : std::string()};
}

}  // namespace

EditPreview::EditPreview(Document& document, Engine& engine, QObject* parent)
    : QObject(parent), document_(document), engine_(engine), shown_(shownIn(document)) {
  connect(&engine_, &Engine::measured, this, &EditPreview::look);
  connect(&document_, &Document::shownChanged, this, &EditPreview::checkShown);
  connect(&document_, &Document::pageChanged, this, &EditPreview::checkShown);
}

void EditPreview::checkShown() {
  auto now = shownIn(document_);
  if (now == shown_) return;
  shown_ = std::move(now);
  keeping_ = false;
  waiting_ = nullptr;
  waitingKeep_.reset();
  emit forgotten();
}

void EditPreview::show(std::vector<std::pair<std::size_t, Polygon>> outlines) {
  send([this, outlines = std::move(outlines)] { engine_.tryReshape(outlines); });
}

void EditPreview::show(std::size_t panel, Staging staging) {
  send([this, panel, staging = std::move(staging)] { engine_.tryRestage(panel, staging); });
}

void EditPreview::send(std::function<void()> wish) {
  if (keeping_)
    waiting_ = std::move(wish);
  else
    wish();
}

void EditPreview::keep(const QString& what, int merge) {
  if (waiting_) {
    waitingKeep_ = {what, merge};
    return;
  }
  if (!engine_.isTrying()) return;
  keeping_ = true;
  engine_.keep(what, merge);
  look();  // it may be measured already
}

void EditPreview::drop() {
  if (keeping_) {  // what waits was never shown; what is kept stays
    waiting_ = nullptr;
    waitingKeep_.reset();
  } else {
    engine_.drop();
  }
}

/// The engine ends trying when it has kept, or could not.
void EditPreview::look() {
  if (!keeping_ || engine_.isTrying()) return;
  keeping_ = false;
  if (const auto next = std::exchange(waiting_, nullptr)) next();
  if (const auto next = std::exchange(waitingKeep_, std::nullopt)) {
    keep(next->first, next->second);
    return;
  }
  if (!isPending()) emit settled();
}

}  // namespace tw
