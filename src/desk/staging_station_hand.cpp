#include "desk/staging_station_hand.h"

#include <algorithm>

#include "desk/in_qt.h"
#include "desk/merge_ids.h"

namespace tw {

PanelInHand::PanelInHand(Document& document, Engine& engine, QObject* parent)
    : QObject(parent), document_(document), engine_(engine) {
  setObjectName(QStringLiteral("panelInHand"));
  connect(&engine_, &Engine::measured, this, &PanelInHand::takeMeasured);
  connect(&engine_, &Engine::busyChanged, this, &PanelInHand::measuresChanged);
  connect(&engine_, &Engine::kept, this, &PanelInHand::takeKept);
  connect(&document_, &Document::shownChanged, this, &PanelInHand::takeShown);
  connect(&document_, &Document::pageChanged, this, [this](int number) {
    if (number != document_.page().number || keeping_) return;
    trying_ = false;  // somebody else's edit, or undo: what was tried on the old state is gone
    emit said({});
    takeDocument();
  });
  takeMeasured();
}

const LightWords& PanelInHand::lights() const {
  return measurement_->staged->lights;
}

const RoughPanel& PanelInHand::storedPanel() const {
  return document_.rough()->panels[panel_];
}

/// Whatever is shown now: is it measured, and is a panel of it selected?
void PanelInHand::takeShown() {
  const QString key = QStringLiteral("%1 %2 %3")
                          .arg(document_.page().number)
                          .arg(document_.rough() ? qt(document_.rough()->name) : QString())
                          .arg(document_.panel() ? static_cast<int>(*document_.panel()) : -1);
  if (key != panelKey_) {
    panelKey_ = key;
    ++epoch_;
    pins_.clear();
    held_.reset();
    figure_ = -1;
    trying_ = keeping_ = false;
    after_.reset();
  }
  stage_.reset();
  const Rough* rough = document_.rough();
  const MeasurementPtr& m = measurement_;
  const bool measured = m && m->measured && m->staged && rough != nullptr &&
                        m->page == document_.page().number && m->rough == rough->name;
  if (measured && document_.panel() && *document_.panel() < rough->panels.size() &&
      *document_.panel() < m->staged->wishes.panels.size()) {
    panel_ = *document_.panel();
    const PanelCase& asked = m->staged->wishes.panels[panel_];
    stage_ = StagedPanel{&m->staged->workshop->stager, &asked.beat,
                         frameOf(rough->panels[panel_].outline), asked.focus};
  }
  takeDocument();
}

void PanelInHand::takeDocument() {
  if (isReady() && document_.rough() != nullptr && panel_ < document_.rough()->panels.size()) {
    if (!trying_) now_ = storedPanel().staging;
    stage_->frame = frameOf(storedPanel().outline);
    if (figure_ >= static_cast<int>(now_.figures.size())) figure_ = -1;
    if (figure_ < 0 && !now_.figures.empty()) {
      figure_ = 0;
      for (std::size_t i = 0; i < now_.figures.size(); ++i)
        if (now_.figures[i].who == stage_->focus) figure_ = static_cast<int>(i);
    }
    showHandles(true);
  } else {
    stage_.reset();
    now_ = {};
    handles_.clear();
    held_.reset();
    figure_ = -1;
  }
  emit changed();
  emit holdChanged();
  emit measuresChanged();
}

void PanelInHand::takeMeasured() {
  const bool sameBase =
      measurement_ && engine_.latest() && measurement_->staged == engine_.latest()->staged;
  measurement_ = engine_.latest();
  if (keeping_ && !engine_.isTrying()) {  // refused, or overtaken by another edit
    keeping_ = trying_ = false;
    after_.reset();
    takeShown();
    return;
  }
  if (sameBase && isReady())
    emit measuresChanged();
  else
    takeShown();
}

void PanelInHand::takeKept() {
  if (!keeping_) return;
  keeping_ = false;
  const bool further = isReady() && now_ != keptStaging_;
  if (!further) {
    trying_ = false;
    after_.reset();
    takeDocument();
    return;
  }
  // A hand was on its way while the edit before was being measured.
  const std::optional<Edit> edit = std::exchange(after_, {});
  engine_.tryRestage(panel_, now_);
  if (edit) keep(edit->what, edit->merge);
}

void PanelInHand::showHandles(bool exactly) {
  const std::vector<Handle> before = std::move(handles_);
  handles_ = handlesOf(*stage_, now_);
  if (exactly) {
    markHidden(*stage_, now_, handles_);
  } else if (before.size() == handles_.size()) {
    for (std::size_t i = 0; i < before.size(); ++i) handles_[i].hidden = before[i].hidden;
  }
  if (held_ && *held_ >= handles_.size()) held_.reset();
}

const Handle* PanelInHand::held() const {
  return held_ ? &handles_[*held_] : nullptr;
}

void PanelInHand::hold(std::optional<std::size_t> handle) {
  if (handle && *handle >= handles_.size()) handle.reset();
  if (handle != held_) ++epoch_;
  held_ = handle;
  if (held_ && handles_[*held_].figure >= 0) figure_ = handles_[*held_].figure;
  emit holdChanged();
  emit measuresChanged();
}

void PanelInHand::selectFigure(int figure) {
  if (figure == figure_) return;
  ++epoch_;
  figure_ = figure;
  if (held_ && handles_[*held_].figure != figure) held_.reset();
  emit holdChanged();
  emit measuresChanged();
}

QString PanelInHand::nameOfFigure(int figure) const {
  if (!isReady() || figure < 0 || figure >= static_cast<int>(now_.figures.size())) return {};
  const std::string& who = now_.figures[static_cast<std::size_t>(figure)].who;
  const Character* character = document_.job().character(who);
  return qt(character != nullptr && !character->name.empty() ? character->name : who);
}

QString PanelInHand::nameOfThing(std::size_t thing) const {
  const int prop = beatPropOf(*stage_->beat, now_, thing);
  return prop < 0 ? qt(now_.props[thing].prop)
                  : qt(stage_->beat->props[static_cast<std::size_t>(prop)].name);
}

QString PanelInHand::nameOfHandle(const Handle& handle) const {
  if (handle.grab == Grab::Thing) return nameOfThing(static_cast<std::size_t>(handle.thing));
  return tr("%1, %2").arg(nameOfFigure(handle.figure), qt(nameOf(handle.grab)));
}

const SeenFigure* PanelInHand::seen() const {
  if (!isReady() || figure_ < 0 || panel_ >= measurement_->roughNow().panels.size()) return nullptr;
  const auto& figures = measurement_->roughNow().panels[panel_].figures;
  const auto i = static_cast<std::size_t>(figure_);
  return i < figures.size() ? &figures[i] : nullptr;
}

std::optional<Pin> PanelInHand::pinOf(const Handle& handle) const {
  switch (handle.grab) {
    case Grab::LeftHand:
      return Pin{handle.figure, Joint::LeftWrist};
    case Grab::RightHand:
      return Pin{handle.figure, Joint::RightWrist};
    case Grab::LeftFoot:
      return Pin{handle.figure, Joint::LeftAnkle};
    case Grab::RightFoot:
      return Pin{handle.figure, Joint::RightAnkle};
    case Grab::Pelvis:
      return Pin{handle.figure, Joint::Pelvis};
    case Grab::Head:
      return Pin{handle.figure, Joint::Head};
    default:
      return std::nullopt;
  }
}

bool PanelInHand::isPinned(const Handle& handle) const {
  const auto pin = pinOf(handle);
  return pin && std::ranges::find(pins_, *pin) != pins_.end();
}

void PanelInHand::togglePin(const Handle& handle) {
  const auto pin = pinOf(handle);
  if (!pin) return;
  const auto found = std::ranges::find(pins_, *pin);
  if (found == pins_.end())
    pins_.push_back(*pin);
  else
    pins_.erase(found);
  emit holdChanged();
}

Vec3 PanelInHand::pivot() const {
  if (aboutHeld_ && held() != nullptr) return held()->world;
  return pivotOf(stage_->sceneOf(now_));
}

void PanelInHand::turnAboutHeld(bool held) {
  aboutHeld_ = held;
  emit holdChanged();
}

void PanelInHand::attempt(Staging staging) {
  if (!isReady() || isReadOnly() || staging == now_) return;
  now_ = std::move(staging);
  trying_ = true;
  showHandles(false);
  // What is being kept must not be mixed with what comes after it.
  if (!keeping_) engine_.tryRestage(panel_, now_);
  emit changed();
}

void PanelInHand::keep(const QString& what, int merge) {
  if (!trying_) return;
  if (keeping_) {
    after_ = Edit{what, merge};
    return;
  }
  keeping_ = true;
  keptStaging_ = now_;
  engine_.keep(what, merge < 0 ? merge : merge + epoch_ % kMergeEpochs * kMergesPerEpoch);
}

void PanelInHand::apply(Staging staging, const QString& what, int merge) {
  if (!isReady() || staging == now_) return;
  if (isReadOnly()) {
    emit said(tr("Another program has this job open: nothing is changed."));
    return;
  }
  attempt(std::move(staging));
  keep(what, merge);
}

void PanelInHand::drop() {
  if (!trying_) return;
  if (keeping_) {  // the edit before stays
    after_.reset();
    now_ = keptStaging_;
    showHandles(false);
    emit changed();
    return;
  }
  trying_ = false;
  engine_.drop();
  takeDocument();
}

}  // namespace tw
