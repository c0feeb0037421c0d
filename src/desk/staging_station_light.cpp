#include "desk/staging_station_light.h"

#include <QComboBox>
#include <QImage>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/merge_ids.h"
#include "stage/light_names.h"

namespace tw {

namespace {

constexpr int kBallPx = 120;
constexpr double kMarkPx = 9, kNearPx = 22, kStep = 0.02;
constexpr std::array<LampName, 3> kLamps{LampName::Key, LampName::Fill, LampName::Rim};

/// A matt ball seen from the camera, by Lambert's law; the lamps' axes are the camera's.
QImage litBall(const SetLight& light) {
  QImage image(kBallPx, kBallPx, QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::transparent);
  for (int y = 0; y < kBallPx; ++y)
    for (int x = 0; x < kBallPx; ++x) {
      const double across = 2 * (x + 0.5) / kBallPx - 1, up = 1 - 2 * (y + 0.5) / kBallPx;
      const double toward = 1 - across * across - up * up;
      if (toward < 0) continue;
      double sum = light.ambient;
      for (const LampName lamp : kLamps) {
        const SetLamp& l = lampOf(light, lamp);
        const double cosine = across * l.from.x + up * l.from.y + std::sqrt(toward) * l.from.z;
        sum += l.strength * std::max(0.0, cosine);
      }
      const int grey = static_cast<int>(255 * std::clamp(sum, 0.0, 1.0));
      image.setPixel(x, y, qRgb(grey, grey, grey));
    }
  return image;
}

void drawLamp(QPainter& painter, QPointF at, LampName lamp, bool chosen) {
  const double r = chosen ? kMarkPx + 2 : kMarkPx;
  if (lamp == LampName::Key) {
    for (int i = 0; i < 8; ++i) {
      const double a = i * 0.785398;
      const QPointF way(std::cos(a), std::sin(a));
      painter.drawLine(at + way * (r + 2), at + way * (r + 6));
    }
    painter.drawEllipse(at, r, r);
  } else if (lamp == LampName::Fill) {
    painter.drawRect(QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r));
  } else {
    painter.drawPolygon(QPolygonF(
        {at + QPointF(0, -1.3 * r), at + QPointF(1.2 * r, r), at + QPointF(-1.2 * r, r)}));
  }
}

QString titleOf(LampName lamp) {
  switch (lamp) {
    case LampName::Key:
      return LightControls::tr("Key");
    case LampName::Fill:
      return LightControls::tr("Fill");
    case LampName::Rim:
      return LightControls::tr("Rim");
  }
  return {};
}

}  // namespace

LightDisc::LightDisc(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("lightDisc"));
  setAccessibleName(tr("Where the light comes from"));
  setToolTip(
      tr("Draw a lamp: middle, from the eye; half way, from the side; edge, from behind. "
         "Arrows move the chosen lamp, Space chooses the next."));
  setFocusPolicy(Qt::StrongFocus);
  setMinimumSize(170, 170);
}

void LightDisc::show(const SetLight& light) {
  if (light == light_ && !ball_.isNull()) return;
  light_ = light;
  ball_ = litBall(light);
  update();
}

void LightDisc::chooseLamp(LampName lamp) {
  lamp_ = lamp;
  update();
}

double LightDisc::radius() const {
  return std::min(width(), height()) / 2.0 - kMarkPx - 8;
}

QPointF LightDisc::toView(Point disc) const {
  return QPointF(width() / 2.0 + disc.x * radius(), height() / 2.0 - disc.y * radius());
}

Point LightDisc::toDisc(QPointF px) const {
  return {(px.x() - width() / 2.0) / radius(), (height() / 2.0 - px.y()) / radius()};
}

void LightDisc::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  const DeskColours& c = deskColours();
  const QPointF middle = toView({0, 0});
  painter.setPen(QPen(c.line, 1.5));
  painter.setBrush(palette().base());
  painter.drawEllipse(middle, radius(), radius());
  const double half = radius() / 2;
  painter.drawImage(QRectF(middle.x() - half, middle.y() - half, 2 * half, 2 * half), ball_);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(c.quiet, 1, Qt::DashLine));
  painter.drawEllipse(middle, half, half);
  for (const LampName lamp : {LampName::Rim, LampName::Fill, LampName::Key}) {
    const bool chosen = lamp == lamp_;
    const QPointF at = toView(onLightDisc(lampOf(light_, lamp).from));
    const bool burns = lampOf(light_, lamp).strength > 0;
    painter.setPen(
        QPen(chosen ? c.accent : c.ink, chosen ? 3 : 2, burns ? Qt::SolidLine : Qt::DotLine));
    painter.setBrush(burns ? c.sheet : QBrush(Qt::NoBrush));
    drawLamp(painter, at, lamp, chosen);
  }
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(c.accent, 2));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
  }
}

void LightDisc::mousePressEvent(QMouseEvent* event) {
  double nearest = kNearPx;
  for (const LampName lamp : kLamps) {
    const QPointF way = event->position() - toView(onLightDisc(lampOf(light_, lamp).from));
    const double far = std::hypot(way.x(), way.y()) - (lamp == lamp_ ? 4 : 0);
    if (far >= nearest) continue;
    nearest = far;
    chooseLamp(lamp);
  }
  dragging_ = true;
}

void LightDisc::mouseMoveEvent(QMouseEvent* event) {
  if (dragging_) emit moved(lamp_, toDisc(event->position()), false);
}

void LightDisc::mouseReleaseEvent(QMouseEvent* event) {
  if (!dragging_) return;
  dragging_ = false;
  emit moved(lamp_, toDisc(event->position()), true);
}

void LightDisc::keyPressEvent(QKeyEvent* event) {
  Point at = onLightDisc(lampOf(light_, lamp_).from);
  switch (event->key()) {
    case Qt::Key_Left:
      at.x -= kStep;
      break;
    case Qt::Key_Right:
      at.x += kStep;
      break;
    case Qt::Key_Up:
      at.y += kStep;
      break;
    case Qt::Key_Down:
      at.y -= kStep;
      break;
    case Qt::Key_Space:
      chooseLamp(kLamps[(static_cast<std::size_t>(lamp_) + 1) % 3]);
      return;
    default:
      QWidget::keyPressEvent(event);
      return;
  }
  emit moved(lamp_, at, true);
}

LightControls::LightControls(PanelInHand& hand, QWidget* parent) : QWidget(parent), hand_(hand) {
  setObjectName(QStringLiteral("lightControls"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(4);
  title_ = new QLabel(this);
  title_->setWordWrap(true);
  title_->setMinimumHeight(2 * fontMetrics().lineSpacing());  // the disc stays where it is
  down->addWidget(title_);
  disc_ = new LightDisc(this);
  down->addWidget(disc_, 0, Qt::AlignHCenter);
  connect(disc_, &LightDisc::moved, this, [this](LampName lamp, Point disc, bool meant) {
    set(withLampFrom(present(), lamp, disc), tr("light: %1").arg(titleOf(lamp).toLower()), meant,
        kMergeLight + static_cast<int>(lamp));
  });
  for (const LampName lamp : kLamps) {
    auto* dial = new NumberDial(titleOf(lamp), QStringLiteral("light") + titleOf(lamp), {},
                                {0, kMostLampStrength / 2, 0.05, 2}, this);
    strengths_[static_cast<std::size_t>(lamp)] = dial;
    connect(dial, &NumberDial::turned, this, [this, lamp](double value, bool meant) {
      set(withLampStrength(present(), lamp, value), tr("light: %1").arg(titleOf(lamp).toLower()),
          meant, kMergeLight + 10 + static_cast<int>(lamp));
    });
    down->addWidget(dial);
  }
  ambient_ = new NumberDial(tr("From everywhere"), QStringLiteral("lightAmbient"), {},
                            {0, 1, 0.02, 2}, this);
  connect(ambient_, &NumberDial::turned, this, [this](double value, bool meant) {
    set(withAmbient(present(), value), tr("light from everywhere"), meant, kMergeLight + 20);
  });
  down->addWidget(ambient_);
  named_ = new QComboBox(this);
  named_->setObjectName(QStringLiteral("lightNamed"));
  named_->setAccessibleName(tr("A light by name"));
  named_->addItem(tr("A light by name …"));
  if (const auto names = lightNames())
    for (const LightName& each : *names) named_->addItem(qt(each.title), qt(each.name));
  connect(named_, qOverload<int>(&QComboBox::activated), this, [this](int index) {
    if (index > 0) setByWords(named_->itemData(index).toString());
    named_->setCurrentIndex(0);
  });
  down->addWidget(named_);
  words_ = new QLineEdit(this);
  words_->setObjectName(QStringLiteral("lightWords"));
  words_->setAccessibleName(tr("Light in words"));
  words_->setPlaceholderText(tr("in words: back-lit, rim 1, fill 0.2 from the right"));
  connect(words_, &QLineEdit::returnPressed, this, [this] { setByWords(words_->text()); });
  down->addWidget(words_);
  trouble_ = new QLabel(this);
  trouble_->setProperty("warn", true);
  trouble_->setWordWrap(true);
  trouble_->hide();
  down->addWidget(trouble_);
  auto* back = new QPushButton(tr("As the script says"), this);
  back->setObjectName(QStringLiteral("lightAsWords"));
  back->setToolTip(tr("Back to the light that the panel's words name"));
  connect(back, &QPushButton::clicked, this, [this] {
    if (hand_.isReady())
      set(wordsLight(*hand_.stage().beat, hand_.lights()), tr("light as the script says"), true,
          -1);
  });
  down->addWidget(back);
  down->addStretch();
  connect(&hand_, &PanelInHand::changed, this, &LightControls::refresh);
  refresh();
}

SetLight LightControls::present() const {
  const Staging& staging = hand_.staging();
  return staging.light ? *staging.light : wordsLight(*hand_.stage().beat, hand_.lights());
}

void LightControls::set(const SetLight& light, const QString& what, bool meant, int merge) {
  if (!hand_.isReady()) return;
  Staging staging = hand_.staging();
  staging.light = light;
  hand_.attempt(std::move(staging));
  if (meant) hand_.keep(what, merge);
}

void LightControls::setByWords(const QString& words) {
  if (!hand_.isReady()) return;
  const auto asked = lightAsked(words.toStdString(), hand_.lights());
  trouble_->setVisible(!asked.has_value());
  if (asked)
    set(setLightOf(*asked), tr("light in words"), true, -1);
  else
    trouble_->setText(qt(asked.error()));
}

void LightControls::refresh() {
  setEnabled(hand_.isReady() && !hand_.isReadOnly());
  if (!hand_.isReady()) return;
  const SetLight light = present();
  disc_->show(light);
  for (const LampName lamp : kLamps)
    strengths_[static_cast<std::size_t>(lamp)]->show(lampOf(light, lamp).strength);
  ambient_->show(light.ambient);
  const QString from = qt(directionInWords(light.key.from)), title = qt(light.title);
  title_->setText(title.contains(from) ? tr("Light: %1").arg(title)
                                       : tr("Light: %1; key %2").arg(title, from));
}

}  // namespace tw
