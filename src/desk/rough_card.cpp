#include "desk/rough_card.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QVBoxLayout>

#include "desk/in_qt.h"
#include "desk/look.h"
#include "review/compare_roughs.h"

namespace tw {

namespace {

constexpr int kThumbPx = 112;

QLabel* wordsIn(QWidget* parent, const char* name) {
  auto* out = new QLabel(parent);
  out->setObjectName(QString::fromLatin1(name));
  out->setWordWrap(true);
  out->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  out->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  return out;
}

/// The first so many letters, ending at a word.
QString shortened(const QString& words, qsizetype most) {
  if (words.size() <= most) return words;
  const qsizetype end = words.lastIndexOf(QLatin1Char(' '), most);
  return words.left(end > most / 2 ? end : most) + QStringLiteral(" …");
}

}  // namespace

RoughCard::RoughCard(Document& document, QWidget* parent) : QFrame(parent), document_(document) {
  setFocusPolicy(Qt::StrongFocus);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(12, 8, 8, 8);
  auto* across = new QHBoxLayout;
  across->setSpacing(10);
  all->addLayout(across);
  thumb_ = new RoughThumb(document, this);
  thumb_->setFixedWidth(kThumbPx);
  across->addWidget(thumb_, 0, Qt::AlignTop);
  auto* down = new QVBoxLayout;
  down->setSpacing(3);
  head_ = wordsIn(this, "head");
  head_->setProperty("heading", true);
  strongest_ = wordsIn(this, "strongest");
  weakest_ = wordsIn(this, "weakest");
  mark_ = new QCheckBox(tr("Mark"), this);
  mark_->setToolTip(tr("For comparing, taking panels from, and finding others unlike it (Ctrl+M)"));
  connect(mark_, &QCheckBox::toggled, this, &RoughCard::markedChanged);
  buttons_ = new QWidget(this);
  for (QWidget* each : {static_cast<QWidget*>(head_), static_cast<QWidget*>(strongest_),
                        static_cast<QWidget*>(weakest_)})
    down->addWidget(each);
  down->addStretch();
  down->addWidget(mark_);
  across->addLayout(down, 1);
  all->addWidget(buttons_);
  buttons_->hide();
}

void RoughCard::show(int page, const std::string& name) {
  thumb_->show(page, name);
  thumb_->setFixedHeight(thumb_->heightForWidth(kThumbPx));
  const Rough* rough = roughOf(document_, page, name);
  if (rough == nullptr) return;
  const Page& stored = *document_.job().page(page);
  const QString letter = qt(name);
  setObjectName(QStringLiteral("roughCard") + letter);
  thumb_->setObjectName(QStringLiteral("roughThumb") + letter);
  mark_->setObjectName(QStringLiteral("markRough") + letter);
  mark_->setAccessibleName(tr("Mark rough %1").arg(letter));
  const bool chosen = stored.choice == name;
  head_->setText(tr("%1   %2%3")
                     .arg(letter, QString::number(rough->score, 'f', 1),
                          chosen ? tr("   ✔ chosen") : QString()));
  const QString strong = qt(strongestOf(*rough, stored.roughs).words);
  const QString weak = qt(weakestOf(*rough, stored.roughs).words);
  strongest_->setText(QStringLiteral("▲ ") + shortened(strong, 90));
  strongest_->setToolTip(strong);
  weakest_->setText(QStringLiteral("▼ ") + shortened(weak, 110));
  weakest_->setToolTip(weak);
  setAccessibleName(tr("Rough %1, costs %2%3. Strongest: %4. Weakest: %5")
                        .arg(letter, QString::number(rough->score, 'f', 1),
                             chosen ? tr(", chosen") : QString(), strong, weak));
}

void RoughCard::setShown(bool shown) {
  shown_ = shown;
  buttons_->setVisible(shown);
  update();
}

void RoughCard::setMarked(bool marked) {
  mark_->setChecked(marked);
}

bool RoughCard::isMarked() const {
  return mark_->isChecked();
}

void RoughCard::mousePressEvent(QMouseEvent*) {
  setFocus(Qt::MouseFocusReason);
  emit asked();
}

void RoughCard::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      return emit asked();
    case Qt::Key_Space:
      return setMarked(!isMarked());
    case Qt::Key_Down:
      return emit stepped(1);
    case Qt::Key_Up:
      return emit stepped(-1);
    default:
      QFrame::keyPressEvent(event);
  }
}

void RoughCard::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const DeskColours& c = deskColours();
  painter.setPen(QPen(hasFocus() ? c.accent : c.line, hasFocus() ? 2 : 1));
  painter.drawRect(rect().adjusted(1, 1, -2, -2));
  if (shown_) painter.fillRect(QRect(0, 0, 6, height()), c.accent);
}

}  // namespace tw
