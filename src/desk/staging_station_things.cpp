#include "desk/staging_station_things.h"

#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/merge_ids.h"
#include "stage/held_props.h"

namespace tw {

namespace {

constexpr int kRows = 5;
constexpr std::array<const char*, 4> kHands{"", "left", "right", "both"};

/// The staging with what that figure holds put into its hands as the beat now says.
Staging heldAgain(const StagedPanel& panel, const Staging& from, int holder) {
  Scene scene = panel.sceneOf(from);
  if (scene.props.size() != panel.beat->props.size()) return from;
  putHeldProps(*panel.beat, scene);
  Staging out = from;
  for (std::size_t i = 0; i < out.props.size(); ++i)
    if (holderOfThing(*panel.beat, from, i) == holder) out.props[i] = scene.props[i];
  return out;
}

}  // namespace

ThingControls::ThingControls(PanelInHand& hand, QWidget* parent) : QWidget(parent), hand_(hand) {
  setObjectName(QStringLiteral("thingControls"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(4);
  none_ = new QLabel(tr("Nothing but figures in this panel."), this);
  none_->setProperty("quiet", true);
  down->addWidget(none_);
  list_ = new QListWidget(this);
  list_->setObjectName(QStringLiteral("thingList"));
  list_->setAccessibleName(tr("Things"));
  down->addWidget(list_);
  inHand_ = new QComboBox(this);
  inHand_->setObjectName(QStringLiteral("thingHand"));
  inHand_->setAccessibleName(tr("In which hand"));
  inHand_->addItems({tr("in the hand that the pose offers"), tr("in the left hand"),
                     tr("in the right hand"), tr("in both hands")});
  down->addWidget(inHand_);
  addDials();
  down->addStretch();
  connect(list_, &QListWidget::currentRowChanged, this, [this](int row) {
    for (std::size_t i = 0; i < hand_.handles().size(); ++i)
      if (row >= 0 && hand_.handles()[i].thing == list_->item(row)->data(Qt::UserRole).toInt())
        hand_.hold(i);
    refresh();
  });
  connect(inHand_, qOverload<int>(&QComboBox::activated), this, &ThingControls::setHand);
  connect(&hand_, &PanelInHand::changed, this, &ThingControls::refresh);
  connect(&hand_, &PanelInHand::holdChanged, this, &ThingControls::refresh);
  refresh();
}

void ThingControls::addDials() {
  const auto add = [this](const QString& title, const char* name, const QString& unit,
                          const NumberDial::Range& range, double SetProp::*field, int merge) {
    auto* dial = new NumberDial(title, QString::fromLatin1(name), unit, range, this);
    layout()->addWidget(dial);
    connect(dial, &NumberDial::turned, this, [this, field, merge, title](double to, bool meant) {
      if (thing() < 0) return;
      SetProp prop = hand_.staging().props[static_cast<std::size_t>(thing())];
      prop.*field = to;
      setThing(prop, title.toLower(), meant, merge);
    });
    return dial;
  };
  heading_ = add(tr("Turned"), "thingHeading", tr("°"), {-180, 180, 5, 1, false, true},
                 &SetProp::headingDeg, 1);
  lean_ =
      add(tr("Leans"), "thingLean", tr("°"), {-180, 180, 5, 1, false, true}, &SetProp::pitchDeg, 2);
  height_ = new NumberDial(tr("Above ground"), QStringLiteral("thingHeight"), tr(" m"),
                           {-2, 8, 0.05, 2}, this);
  layout()->addWidget(height_);
  connect(height_, &NumberDial::turned, this, [this](double to, bool meant) {
    if (thing() < 0) return;
    SetProp prop = hand_.staging().props[static_cast<std::size_t>(thing())];
    prop.at.y = to;
    setThing(prop, tr("height"), meant, 3);
  });
}

int ThingControls::thing() const {
  const QListWidgetItem* item = list_->currentItem();
  const int index = item != nullptr ? item->data(Qt::UserRole).toInt() : -1;
  return hand_.isReady() && index < static_cast<int>(hand_.staging().props.size()) ? index : -1;
}

void ThingControls::setThing(const SetProp& prop, const QString& what, bool meant, int merge) {
  const auto index = static_cast<std::size_t>(thing());
  Staging staging = hand_.staging();
  staging.props[index] = prop;
  hand_.attempt(std::move(staging));
  if (meant)
    hand_.keep(tr("%1: %2").arg(hand_.nameOfThing(index), what),
               kMergeThings + 10 * static_cast<int>(index) + merge);
}

/// The hand is the beat's to say: the correction and the new place are one edit.
void ThingControls::setHand(int index) {
  const int at = thing();
  if (at < 0 || index < 0) return;
  hand_.drop();
  const Staging& staging = hand_.staging();
  const int holder = holderOfThing(*hand_.stage().beat, staging, static_cast<std::size_t>(at));
  const int prop = beatPropOf(*hand_.stage().beat, staging, static_cast<std::size_t>(at));
  if (holder < 0 || prop < 0) return;
  Beat beat = *hand_.stage().beat;
  beat.props[static_cast<std::size_t>(prop)].hand = kHands[static_cast<std::size_t>(index)];
  StagedPanel panel = hand_.stage();
  panel.beat = &beat;
  Page after = hand_.document().page();
  after.overrides[beat.id].props[beat.props[static_cast<std::size_t>(prop)].id].hand =
      kHands[static_cast<std::size_t>(index)];
  Rough& rough = after.roughs[*hand_.document().roughIndex()];
  rough.panels[hand_.panel()].staging = heldAgain(panel, staging, holder);
  hand_.changePage(
      tr("%1 %2").arg(hand_.nameOfThing(static_cast<std::size_t>(at)), inHand_->itemText(index)),
      after);
}

QString ThingControls::placeInWords(std::size_t thing) const {
  const Staging& staging = hand_.staging();
  const int holder = holderOfThing(*hand_.stage().beat, staging, thing);
  if (holder >= 0) return tr("held by %1").arg(hand_.nameOfFigure(holder));
  const Place3& at = staging.props[thing].at;
  const QString aside = at.x < 0 ? tr("%1 m to the left") : tr("%1 m to the right");
  const QString deep = at.z < 0 ? tr("%1 m nearer") : tr("%1 m farther");
  return aside.arg(std::abs(at.x), 0, 'f', 1) + QStringLiteral(", ") +
         deep.arg(std::abs(at.z), 0, 'f', 1);
}

/// What is hauled goes through both hands whatever the beat says.
bool ThingControls::isHauled(int thing) const {
  const std::string& id = hand_.staging().props[static_cast<std::size_t>(thing)].prop;
  return std::ranges::any_of(hand_.stage().beat->figures, [&](const BeatFigure& figure) {
    return figure.target == id && hauls(*hand_.stage().beat, figure);
  });
}

void ThingControls::listThings() {
  const QSignalBlocker quiet(list_);
  const int chosen =
      hand_.held() != nullptr && hand_.held()->thing >= 0 ? hand_.held()->thing : thing();
  std::vector<int> things;
  for (const Handle& handle : hand_.handles())
    if (handle.thing >= 0) things.push_back(handle.thing);
  while (list_->count() > static_cast<int>(things.size())) delete list_->takeItem(0);
  while (list_->count() < static_cast<int>(things.size())) list_->addItem(QString());
  for (std::size_t i = 0; i < things.size(); ++i) {
    QListWidgetItem* item = list_->item(static_cast<int>(i));
    const auto index = static_cast<std::size_t>(things[i]);
    item->setData(Qt::UserRole, things[i]);
    item->setSizeHint(QSize(0, kTouchPx));
    item->setText(tr("%1, %2").arg(hand_.nameOfThing(index), placeInWords(index)));
    if (things[i] == chosen) list_->setCurrentItem(item);
  }
  if (list_->currentItem() == nullptr) list_->setCurrentRow(0);
  list_->setFixedHeight(std::min(list_->count(), kRows) * kTouchPx + 8);
}

void ThingControls::refresh() {
  setEnabled(hand_.isReady() && !hand_.isReadOnly());
  if (!hand_.isReady()) return;
  listThings();
  const bool any = list_->count() > 0;
  none_->setVisible(!any);
  list_->setVisible(any);
  const int at = thing();
  const bool held = at >= 0 && holderOfThing(*hand_.stage().beat, hand_.staging(),
                                             static_cast<std::size_t>(at)) >= 0;
  inHand_->setEnabled(held && !isHauled(at));
  for (NumberDial* dial : {heading_, lean_, height_}) dial->setEnabled(at >= 0);
  if (at < 0) return;
  const SetProp& prop = hand_.staging().props[static_cast<std::size_t>(at)];
  heading_->show(prop.headingDeg);
  lean_->show(prop.pitchDeg);
  height_->show(prop.at.y);
  const int known = beatPropOf(*hand_.stage().beat, hand_.staging(), static_cast<std::size_t>(at));
  if (known < 0) return;
  const std::string& in = hand_.stage().beat->props[static_cast<std::size_t>(known)].hand;
  for (std::size_t i = 0; i < kHands.size(); ++i)
    if (in == kHands[i]) inHand_->setCurrentIndex(static_cast<int>(i));
}

}  // namespace tw
