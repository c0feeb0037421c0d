#include "desk/staging_station_variants.h"

#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "command/variants.h"
#include "desk/in_qt.h"
#include "desk/staging_station_shelf.h"

namespace tw {

namespace {

constexpr std::size_t kKept = 8;
constexpr int kDrawWidth = 320;  // px of the render that decides what is seen
constexpr QSize kPicture(140, 112);

}  // namespace

VariantStrip::VariantStrip(PanelInHand& hand, QWidget* parent) : QWidget(parent), hand_(hand) {
  setObjectName(QStringLiteral("variantStripPage"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(4);
  find_ = new QPushButton(tr("Find other poses"), this);
  find_->setObjectName(QStringLiteral("findVariants"));
  find_->setToolTip(
      tr("Tries arms, legs, turns and gazes of the selected figure and keeps those "
         "that read best and are unlike each other"));
  down->addWidget(find_);
  state_ = new QLabel(this);
  state_->setObjectName(QStringLiteral("variantState"));
  state_->setProperty("quiet", true);
  state_->setWordWrap(true);
  down->addWidget(state_);
  shelf_ = new PictureShelf(QStringLiteral("variantStrip"), kPicture, this);
  shelf_->setAccessibleName(tr("Other poses"));
  shelf_->setToolTip(tr("A click tries one, a double click or Enter keeps it, Esc goes back"));
  down->addWidget(shelf_, 1);
  connect(find_, &QPushButton::clicked, this, &VariantStrip::find);
  connect(shelf_, &PictureShelf::tried, this, [this](const QString& key) {
    if (hand_.isReady() && foundIn_ == hand_.storedPanel().staging)
      hand_.attempt(shown_[key.toUInt()].staging);
  });
  connect(shelf_, &PictureShelf::kept, this, [this](const QString& key) {
    if (!hand_.isReady() || foundIn_ != hand_.storedPanel().staging) return;
    const Shown& chosen = shown_[key.toUInt()];
    hand_.attempt(chosen.staging);
    hand_.keep(tr("%1: %2").arg(foundFor_, chosen.name));
  });
  connect(&errand_, &Errand::runningChanged, this, &VariantStrip::refresh);
  connect(&hand_, &PanelInHand::changed, this, &VariantStrip::refresh);
  connect(&hand_, &PanelInHand::holdChanged, this, &VariantStrip::refresh);
  refresh();
}

std::vector<VariantStrip::Shown> VariantStrip::found(const MeasurementPtr& m, RoughPanel panel,
                                                     std::size_t index, std::size_t figure,
                                                     QSize picture) {
  const PanelCase& asked = m->staged->wishes.panels[index];
  const Stager& stager = m->staged->workshop->stager;
  const PoseVariants made = poseVariants(stager, panel, asked.beat, figure, kKept);
  DrawOptions options;
  options.width = kDrawWidth;
  options.setting = asked.beat.setting;
  std::vector<Shown> out;
  for (const PoseVariant& variant : made.kept) {
    QStringList facts;
    for (const std::string& fact : factsOf(variant, made.present)) facts << qt(fact);
    panel.staging = variant.staging;
    const Drawing drawing = stager.draw(panel, asked.beat, asked.focus, options);
    out.push_back({qt(variant.name), facts.join(u'\n'), variant.staging,
                   paperPicture(drawing, frameOf(panel.outline), picture)});
  }
  return out;
}

void VariantStrip::find() {
  if (!hand_.isReady() || hand_.figure() < 0) return;
  hand_.drop();
  foundFor_ = hand_.nameOfFigure(hand_.figure());
  foundIn_ = hand_.storedPanel().staging;
  errand_.start([m = hand_.measurement(), panel = hand_.storedPanel(), index = hand_.panel(),
                 figure = static_cast<std::size_t>(hand_.figure())](
                    Progress&) { return found(m, panel, index, figure, kPicture); },
                [this](std::vector<Shown> shown) { take(std::move(shown)); });
}

void VariantStrip::take(std::vector<Shown> shown) {
  const QSignalBlocker quiet(shelf_);
  shown_ = std::move(shown);
  shelf_->clear();
  for (std::size_t i = 0; i < shown_.size(); ++i)
    shelf_->add(QString::number(i), shown_[i].name, shown_[i].facts, shown_[i].picture);
  refresh();
}

void VariantStrip::refresh() {
  const bool has = hand_.isReady() && hand_.figure() >= 0;
  find_->setEnabled(has && !errand_.isRunning());
  if (!has) {
    shelf_->setEnabled(false);
    state_->setText(tr("Select a panel with a figure."));
    return;
  }
  const bool fresh = foundIn_ == hand_.storedPanel().staging;
  shelf_->setEnabled(fresh && !errand_.isRunning());
  if (errand_.isRunning())
    state_->setText(tr("trying poses of %1 …").arg(foundFor_));
  else if (shown_.empty())
    state_->setText(tr("None tried yet."));
  else if (!fresh)
    state_->setText(tr("Made for the panel as it was before: find them again."));
  else
    state_->setText(
        tr("%1, the most readable first. Point at one for its figures.").arg(foundFor_));
}

}  // namespace tw
