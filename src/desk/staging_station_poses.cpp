#include "desk/staging_station_poses.h"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

#include "desk/in_qt.h"
#include "desk/staging_station_shelf.h"
#include "stage/pose_picture.h"

namespace tw {

namespace {

constexpr int kAtOnce = 6;  // pictures drawn before the shelf shows them
constexpr QSize kPicture(92, 100);
const Rect kFrame{{0, 0}, {32.2, 35}};
constexpr double kMmPerMetre = 15, kGroundMm = 2.6;

struct PoseToDraw {
  QString name;
  PosedFigure figure;
};

std::vector<std::pair<QString, QImage>> drawnPoses(const std::vector<PoseToDraw>& poses,
                                                   Progress& progress) {
  std::vector<std::pair<QString, QImage>> out;
  for (const PoseToDraw& each : poses) {
    if (progress.isStopped()) break;
    const PosePicture picture = posePicture({each.figure}, kFrame, kMmPerMetre, kGroundMm);
    out.emplace_back(each.name, paperPicture(picture.drawing, kFrame, kPicture));
  }
  return out;
}

}  // namespace

PoseShelf::PoseShelf(PanelInHand& hand, QWidget* parent) : QWidget(parent), hand_(hand) {
  setObjectName(QStringLiteral("poseShelfPage"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(4);
  present_ = new QLabel(this);
  present_->setWordWrap(true);
  down->addWidget(present_);
  words_ = new QLineEdit(this);
  words_->setObjectName(QStringLiteral("poseFilter"));
  words_->setAccessibleName(tr("Find a pose"));
  words_->setPlaceholderText(tr("find: kneels, rope, behind …"));
  words_->setClearButtonEnabled(true);
  down->addWidget(words_);
  mirrored_ = new QCheckBox(tr("Mirrored"), this);
  mirrored_->setObjectName(QStringLiteral("poseMirrored"));
  down->addWidget(mirrored_);
  shelf_ = new PictureShelf(QStringLiteral("poseShelf"), kPicture, this);
  shelf_->setAccessibleName(tr("Poses"));
  shelf_->setToolTip(tr("A click tries a pose, a double click or Enter keeps it, Esc goes back"));
  down->addWidget(shelf_, 1);
  connect(words_, &QLineEdit::textChanged, shelf_, &PictureShelf::filter);
  connect(shelf_, &PictureShelf::tried, this, &PoseShelf::tryPose);
  connect(shelf_, &PictureShelf::kept, this, &PoseShelf::keepPose);
  connect(mirrored_, &QCheckBox::clicked, this, [this] {
    if (hand_.isTrying() && !shelf_->currentKey().isEmpty()) tryPose(shelf_->currentKey());
  });
  connect(&hand_, &PanelInHand::holdChanged, this, &PoseShelf::refresh);
  connect(&hand_, &PanelInHand::changed, this, &PoseShelf::refresh);
}

void PoseShelf::showEvent(QShowEvent*) {
  refresh();
}

void PoseShelf::refresh() {
  const bool has = hand_.isReady() && hand_.figure() >= 0;
  setEnabled(has && !hand_.isReadOnly());
  if (!has) return;
  const SetFigure& set = hand_.staging().figures[static_cast<std::size_t>(hand_.figure())];
  QString words = tr("%1: %2").arg(hand_.nameOfFigure(hand_.figure()),
                                   qt(hand_.stager().poses().orStand(set.pose).title));
  if (set.poseMirrored) words += tr(", mirrored");
  if (!set.turnsDeg.empty()) words += tr(", changed by hand");
  present_->setText(words);
  if (!hand_.isTrying()) mirrored_->setChecked(set.poseMirrored);
  if (!isVisible()) return;
  if (!isFilled_) fill();
  if (drawnFor_ == set.who) return;
  drawnFor_ = set.who;
  waiting_.clear();
  for (const std::string& name : hand_.stager().poses().names()) waiting_ << qt(name);
  drawSome();
}

void PoseShelf::fill() {
  isFilled_ = true;
  const QSignalBlocker quiet(shelf_);
  const PoseLibrary& poses = hand_.stager().poses();
  for (const std::string& name : poses.names()) {
    const Pose& pose = *poses.find(name);
    shelf_->add(qt(name), qt(pose.title),
                tr("%1. Line %2, on the %3").arg(qt(name), qt(pose.line), qt(pose.support)));
  }
}

/// The next few pictures; those that the filter shows go first.
void PoseShelf::drawSome() {
  if (waiting_.isEmpty() || !hand_.isReady() || hand_.figure() < 0) return;
  const Body& body = hand_.stager().bodyOf(drawnFor_, hand_.stage().beat->id);
  std::vector<PoseToDraw> next;
  while (next.size() < kAtOnce && !waiting_.isEmpty()) {
    const QString name = waiting_.takeFirst();
    const Pose* pose = hand_.stager().poses().find(name.toStdString());
    if (pose == nullptr) continue;
    SetFigure set{drawnFor_, pose->name, false, {0, 0, 0}, pose->viewDeg, 0, {}};
    next.push_back({name, {body, *pose, set}});
  }
  errand_.start([next = std::move(next)](Progress& progress) { return drawnPoses(next, progress); },
                [this](std::vector<std::pair<QString, QImage>> drawn) {
                  for (const auto& [name, picture] : drawn) shelf_->setPicture(name, picture);
                  if (isVisible()) drawSome();
                });
}

void PoseShelf::tryPose(const QString& pose) {
  if (!hand_.isReady() || hand_.figure() < 0) return;
  hand_.attempt(posedAs(hand_.stage(), hand_.storedPanel().staging,
                        static_cast<std::size_t>(hand_.figure()), pose.toStdString(),
                        mirrored_->isChecked()));
}

void PoseShelf::keepPose(const QString& pose) {
  tryPose(pose);
  if (hand_.isReady()) hand_.keep(tr("pose of %1").arg(hand_.nameOfFigure(hand_.figure())));
}

}  // namespace tw
