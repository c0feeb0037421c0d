#include "desk/lead_aim.h"

#include <utility>

#include "desk/in_qt.h"

namespace tw {

LeadAim::LeadAim(Engine& engine, EditPreview& preview, QObject* parent)
    : QObject(parent), engine_(engine), preview_(preview) {
  connect(&preview_, &EditPreview::forgotten, this, [this] {
    wish_.reset();
    base_.reset();
  });
}

bool LeadAim::begin(std::size_t panel) {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured || panel >= m->roughNow().panels.size()) return false;
  errand_.stop();
  base_ = m;
  panel_ = panel;
  wish_.reset();
  keeps_ = shown_ = false;
  return true;
}

void LeadAim::aimAt(Point target) {
  if (!isAiming()) return;
  wish_ = target;
  if (!errand_.isRunning()) search();
}

void LeadAim::keep() {
  if (!isAiming()) return;
  keeps_ = true;
  if (!errand_.isRunning()) end();
}

void LeadAim::drop() {
  if (!isAiming()) return;
  wish_.reset();
  base_.reset();
  if (shown_) preview_.drop();
}

void LeadAim::search() {
  const Point target = *std::exchange(wish_, std::nullopt);
  errand_.start([base = base_, panel = panel_,
                 target](Progress&) { return reAimedAt(*base->measured, panel, target); },
                [this, base = base_, panel = panel_](const Result<ReAimed>& aimed) {
                  if (base == base_ && panel == panel_)
                    found(aimed);
                  else if (isAiming() && wish_)
                    search();
                });
}

void LeadAim::found(const Result<ReAimed>& aimed) {
  if (aimed) {
    preview_.show(panel_, aimed->staging);
    shown_ = true;
    emit said(tr("Lead of panel %1: %2; %3° off.")
                  .arg(panel_ + 1)
                  .arg(aimed->change == "nothing" ? tr("stays as it is") : qt(aimed->change))
                  .arg(aimed->offDeg, 0, 'f', 0));
  } else {
    emit said(qt(aimed.error()));
  }
  if (wish_)
    search();
  else if (keeps_)
    end();
}

void LeadAim::end() {
  if (shown_) preview_.keep(tr("aim lead of panel %1").arg(panel_ + 1));
  base_.reset();
  emit ended();
}

}  // namespace tw
