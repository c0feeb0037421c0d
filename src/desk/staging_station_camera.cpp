#include "desk/staging_station_camera.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QVBoxLayout>

#include <cmath>

#include "desk/in_qt.h"
#include "desk/merge_ids.h"
#include "job/words.h"

namespace tw {

namespace {}  // namespace

CameraControls::CameraControls(PanelInHand& hand, QWidget* parent) : QWidget(parent), hand_(hand) {
  setObjectName(QStringLiteral("cameraControls"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(4);
  words_ = new QLabel(this);
  words_->setObjectName(QStringLiteral("cameraWords"));
  words_->setWordWrap(true);
  down->addWidget(words_);
  about_ = new QComboBox(this);
  about_->setObjectName(QStringLiteral("cameraAbout"));
  about_->setAccessibleName(tr("What the camera turns about"));
  about_->addItems({tr("About the focus"), tr("About what is held")});
  connect(about_, qOverload<int>(&QComboBox::activated), this,
          [this](int index) { hand_.turnAboutHeld(index == 1); });
  down->addWidget(about_);
  addTurns();
  addLens();
  addPlace();
  down->addStretch();
  connect(&hand_, &PanelInHand::changed, this, &CameraControls::refresh);
  connect(&hand_, &PanelInHand::holdChanged, this, &CameraControls::refresh);
  refresh();
}

void CameraControls::addDial(const QString& title, const char* name, const QString& unit,
                             const NumberDial::Range& range, Read read, Move move) {
  auto* dial = new NumberDial(title, QString::fromLatin1(name), unit, range, this);
  layout()->addWidget(dial);
  const std::size_t row = rows_.size();
  rows_.push_back({dial, std::move(read)});
  connect(dial, &NumberDial::turned, this,
          [this, row, move = std::move(move), title](double value, bool meant) {
            turn(row, move, title, value, meant);
          });
}

void CameraControls::addTurns() {
  const auto distance = [this](const CameraPlace& c) {
    return (Vec3(c.eye.x, c.eye.y, c.eye.z) - hand_.pivot()).norm();
  };
  addDial(
      tr("Round"), "cameraRound", tr("°"), {-180, 180, 1, 1, false, true},
      [](const CameraPlace& c) { return c.panDeg; },
      [this](const CameraPlace& c, double to) {
        return orbited(c, hand_.pivot(), to - c.panDeg, 0);
      });
  addDial(
      tr("From above"), "cameraOver", tr("°"), {-80, 85, 1, 1},
      [](const CameraPlace& c) { return -c.pitchDeg; },
      [this](const CameraPlace& c, double to) {
        return orbited(c, hand_.pivot(), 0, to + c.pitchDeg);
      });
  addDial(tr("Distance"), "cameraDistance", tr(" m"), {0.3, 60, 0.05, 2, true}, distance,
          [this, distance](const CameraPlace& c, double to) {
            return dollied(c, hand_.pivot(), to / distance(c));
          });
  addDial(
      tr("Eye height"), "cameraHeight", tr(" m"), {0.05, 12, 0.05, 2},
      [](const CameraPlace& c) { return c.eye.y; },
      [this](const CameraPlace& c, double to) {
        const RiseBy by = risesBy_->currentIndex() == 0 ? RiseBy::Tilt : RiseBy::Shift;
        return raised(c, hand_.pivot(), to - c.eye.y, by, hand_.stage().aspect());
      });
  risesBy_ = new QComboBox(this);
  risesBy_->setObjectName(QStringLiteral("cameraRisesBy"));
  risesBy_->setAccessibleName(tr("How the eye rises"));
  risesBy_->addItems({tr("rising, it tilts to the focus"), tr("rising, uprights stay upright")});
  layout()->addWidget(risesBy_);
}

void CameraControls::addLens() {
  addDial(
      tr("Lens"), "cameraLens", tr(" mm"), {kShortestLensMm, kLongestLensMm, 1, 0, true},
      [](const CameraPlace& c) { return c.focalMm; },
      [this](const CameraPlace& c, double to) {
        const Scene scene = hand_.stage().sceneOf(hand_.staging());
        if (!keepsSize_->isChecked() || scene.focus < 0) return withLens(c, to);
        const Skeleton& s = scene.actors[static_cast<std::size_t>(scene.focus)].skeleton;
        return withLensKeeping(c, to, s[Joint::Chin], s[Joint::Crown], hand_.stage().aspect());
      });
  keepsSize_ = new QCheckBox(tr("Keep the focus as large, and move the eye"), this);
  keepsSize_->setObjectName(QStringLiteral("cameraKeepsSize"));
  keepsSize_->setChecked(true);
  layout()->addWidget(keepsSize_);
  addDial(
      tr("Tilt the picture"), "cameraRoll", tr("°"), {-kMostRollDeg, kMostRollDeg, 1, 1},
      [](const CameraPlace& c) { return c.rollDeg; },
      [](const CameraPlace& c, double to) { return rolled(c, to - c.rollDeg); });
}

Point CameraControls::focusIn(const CameraPlace& camera) const {
  const double aspect = hand_.stage().aspect();
  const Point at = Camera(camera, aspect).projectAlways(hand_.pivot());
  return {100 * at.x, 100 * at.y * aspect};
}

/// `wanted`: the focus's place in per cent of the frame.
CameraPlace CameraControls::placed(const CameraPlace& camera, Point wanted) const {
  const double aspect = hand_.stage().aspect();
  const Point to{wanted.x / 100, wanted.y / 100 / aspect};
  const Vector by = to - Camera(camera, aspect).projectAlways(hand_.pivot());
  switch (placesBy_->currentIndex()) {
    case 0:
      return shifted(camera, by);
    case 1:
      return aimed(camera, hand_.pivot(), to, aspect);
    default:
      return trucked(camera, hand_.pivot(), by, aspect);
  }
}

void CameraControls::addPlace() {
  placesBy_ = new QComboBox(this);
  placesBy_->setObjectName(QStringLiteral("cameraPlacesBy"));
  placesBy_->setAccessibleName(tr("How the focus is moved in the frame"));
  placesBy_->addItems({tr("Move the focus by shifting the lens"),
                       tr("Move the focus by turning the camera"),
                       tr("Move the focus by moving the eye")});
  addDial(
      tr("Focus across"), "cameraAcross", tr(" %"), {-40, 140, 1, 1},
      [this](const CameraPlace& c) { return focusIn(c).x; },
      [this](const CameraPlace& c, double to) {
        return placed(c, {to, focusIn(c).y});
      });
  addDial(
      tr("Focus down"), "cameraDown", tr(" %"), {-40, 140, 1, 1},
      [this](const CameraPlace& c) { return focusIn(c).y; },
      [this](const CameraPlace& c, double to) {
        return placed(c, {focusIn(c).x, to});
      });
  layout()->addWidget(placesBy_);
}

void CameraControls::turn(std::size_t row, const Move& move, const QString& title, double value,
                          bool meant) {
  if (!hand_.isReady()) return;
  if (!isTurning_) from_ = hand_.staging();
  isTurning_ = !meant;
  const CameraPlace camera = move(from_.camera, value);
  Staging staging = camera == from_.camera ? from_ : seenBy(hand_.stage(), from_, camera);
  const QString what = tr("camera: %1").arg(title.toLower());
  hand_.attempt(std::move(staging));
  if (meant) hand_.keep(what, kMergeDials + static_cast<int>(row));
}

void CameraControls::refresh() {
  setEnabled(hand_.isReady() && !hand_.isReadOnly());
  if (!hand_.isReady()) return;
  const Staging& staging = hand_.staging();
  for (const Row& row : rows_) row.dial->show(row.read(staging.camera));
  words_->setText(tr("%1, %2; %3 mm")
                      .arg(qt(nameOf(staging.choice.shot)), qt(nameOf(staging.choice.eye)))
                      .arg(staging.camera.focalMm, 0, 'f', 0));
}

}  // namespace tw
