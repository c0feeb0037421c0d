#include "desk/edit_preview.h"

#include <utility>

namespace tw {

EditPreview::EditPreview(Engine& engine, QObject* parent) : QObject(parent), engine_(engine) {
  connect(&engine_, &Engine::measured, this, &EditPreview::look);
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
