#include "desk/story_strip.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <QScrollBar>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/page_words.h"
#include "job/shown_rough.h"

namespace tw {

namespace {

constexpr int kLeafHighPx = 52, kNumberHighPx = 18, kFramePx = 4;
constexpr int kRowHighPx = kLeafHighPx + 2 * kFramePx + kNumberHighPx;
constexpr int kTurnWidePx = 26;
constexpr int kAroundPx = 8;  // frames above and below

/// Between two spreads: a leaf that lifts, pointing on in reading direction.
class TurnedLeaf final : public QWidget {
 public:
  TurnedLeaf(bool rightToLeft, QWidget* parent) : QWidget(parent), rightToLeft_(rightToLeft) {
    setFixedSize(kTurnWidePx, kRowHighPx);
    setToolTip(tr("The reader turns the page here"));
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (rightToLeft_) {
      painter.translate(width(), 0);
      painter.scale(-1, 1);
    }
    const double low = kFramePx + kLeafHighPx, x = 6;
    QPainterPath leaf(QPointF(x, low));
    leaf.cubicTo(x + 1, low - 20, x + 12, low - 34, x + 14, low - 46);
    leaf.lineTo(x + 14, low - 12);
    leaf.cubicTo(x + 12, low - 6, x + 4, low - 3, x, low);
    painter.fillPath(leaf, deskColours().line);
    painter.strokePath(leaf, QPen(deskColours().quiet, 1.2));
  }

 private:
  bool rightToLeft_;
};

bool readsRightToLeft(const Job& job) {
  return !job.pages.empty() && job.pages.front().brief.direction == ReadingDirection::RightToLeft;
}

}  // namespace

PageChip::PageChip(Document& document, int page, QWidget* parent)
    : QAbstractButton(parent),
      document_(document),
      pictures_(RoughPictures::of(document)),
      page_(page) {
  setObjectName(QStringLiteral("goPage%1").arg(page));
  setFocusPolicy(Qt::StrongFocus);
  setCheckable(true);
  connect(&pictures_, &RoughPictures::drawn, this, [this](int drawn, const QString&) {
    if (drawn == page_) update();
  });
  takeDocument();
}

void PageChip::takeDocument() {
  const Page* page = document_.job().page(page_);
  if (page == nullptr) return;
  const Rough* rough = shownRough(*page);
  QString words =
      page->spread ? tr("Pages %1 and %2").arg(page_).arg(page_ + 1) : tr("Page %1").arg(page_);
  if (rough == nullptr)
    words += tr(", no rough yet");
  else
    words += (rough->name == page->choice ? tr(", rough %1 chosen") : tr(", rough %1"))
                 .arg(qt(rough->name));
  setAccessibleName(words);
  setToolTip(words);
  setChecked(document_.page().number == page_);
  updateGeometry();
  update();
}

QSize PageChip::sizeHint() const {
  const Page* page = document_.job().page(page_);
  if (page == nullptr) return {20, 20};
  const Sheet sheet = document_.job().sheetFor(*page);
  const double wide = kLeafHighPx * sheet.bleedRect().width() / sheet.bleedRect().height();
  return {static_cast<int>(std::lround(wide)) + 2 * kFramePx, kRowHighPx};
}

void PageChip::paintEvent(QPaintEvent*) {
  const Page* page = document_.job().page(page_);
  if (page == nullptr) return;
  const DeskColours& c = deskColours();
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  const QRect leaf(kFramePx, kFramePx, width() - 2 * kFramePx, kLeafHighPx);
  painter.fillRect(leaf, Qt::white);
  const Rough* rough = shownRough(*page);
  if (rough != nullptr) {
    const QImage image = pictures_.picture(page_, rough->name);
    if (!image.isNull())
      painter.drawImage(leaf, image.scaled(leaf.size() * devicePixelRatioF(), Qt::IgnoreAspectRatio,
                                           Qt::SmoothTransformation));
  }
  painter.setPen(QPen(QColor(0, 0, 0, 110), 1, rough != nullptr ? Qt::SolidLine : Qt::DashLine));
  painter.drawRect(leaf);
  if (isChecked() || hasFocus()) {
    painter.setPen(QPen(isChecked() ? c.accent : c.quiet, isChecked() ? kFramePx : 2));
    painter.drawRect(leaf.adjusted(-2, -2, 1, 1));
  }
  // A mark below the number says the same without a colour.
  const QString number = numbersOf(*page);
  painter.setPen(c.ink);
  QFont words = font();
  words.setBold(isChecked());
  painter.setFont(words);
  const bool chosen = rough != nullptr && rough->name == page->choice;
  painter.drawText(QRect(0, leaf.bottom() + kFramePx, width(), kNumberHighPx), Qt::AlignCenter,
                   (isChecked() ? QStringLiteral("▸") : QString()) + number +
                       (chosen ? QStringLiteral("✔") : QString()));
}

StoryStrip::StoryStrip(Document& document, Engine&, QWidget* parent)
    : QScrollArea(parent), document_(document) {
  setObjectName(QStringLiteral("storyStrip"));
  setAccessibleName(tr("The story, spread by spread"));
  setFrameShape(QFrame::NoFrame);
  setStyleSheet(QStringLiteral("tw--StoryStrip { border: none; }"));
  setWidgetResizable(true);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  build();
  connect(&document_, &Document::pageChanged, this, &StoryStrip::takeDocument);
  connect(&document_, &Document::jobChanged, this, &StoryStrip::takeDocument);
  connect(&document_, &Document::shownChanged, this, &StoryStrip::showShown);
}

/// A scroll bar takes its place only where the story is longer than the strip.
void StoryStrip::fitHeight() {
  const bool scrolls = widget() != nullptr && widget()->sizeHint().width() > width();
  setFixedHeight(kRowHighPx + kAroundPx +
                 (scrolls ? horizontalScrollBar()->sizeHint().height() : 0));
}

void StoryStrip::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  fitHeight();
}

PageChip* StoryStrip::chip(int page) const {
  const auto found = std::ranges::find(chips_, page, [](PageChip* c) { return c->page(); });
  return found == chips_.end() ? nullptr : *found;
}

void StoryStrip::build() {
  const Job& job = document_.job();
  rightToLeft_ = readsRightToLeft(job);
  chips_.clear();
  numbers_.clear();
  auto* inside = new QWidget(this);
  auto* row = new QHBoxLayout(inside);
  row->setContentsMargins(6, 0, 6, 0);
  row->setSpacing(0);
  row->setDirection(rightToLeft_ ? QBoxLayout::RightToLeft : QBoxLayout::LeftToRight);
  for (const Page& page : job.pages) {
    // A spread and every left-hand page lie behind a turn; facing pages lie side by side.
    const bool turns = page.spread || !Job::isRightHand(page);
    if (!chips_.empty() && turns) row->addWidget(new TurnedLeaf(rightToLeft_, inside));
    if (!chips_.empty() && !turns && numbers_.back() + 1 != page.number)
      row->addWidget(new TurnedLeaf(rightToLeft_, inside));
    auto* chip = new PageChip(document_, page.number, inside);
    chip->setFixedSize(chip->sizeHint());
    connect(chip, &PageChip::clicked, this, [this, number = page.number] {
      document_.showPage(number);
      showShown();
    });
    chip->installEventFilter(this);
    row->addWidget(chip);
    chips_.push_back(chip);
    numbers_.push_back(page.number);
  }
  row->addStretch();
  setWidget(inside);
  fitHeight();
  QMetaObject::invokeMethod(this, &StoryStrip::showShown, Qt::QueuedConnection);
}

void StoryStrip::takeDocument() {
  std::vector<int> now;
  for (const Page& page : document_.job().pages) now.push_back(page.number);
  if (now != numbers_ || rightToLeft_ != readsRightToLeft(document_.job())) return build();
  for (PageChip* each : chips_) each->takeDocument();
}

void StoryStrip::showShown() {
  for (PageChip* each : chips_) {
    each->setChecked(each->page() == document_.page().number);
    each->update();
    if (each->isChecked()) ensureWidgetVisible(each, 120, 0);
  }
}

void StoryStrip::step(int by) {
  const auto here = std::ranges::find(numbers_, document_.page().number) - numbers_.begin();
  const auto to = here + by;
  if (to < 0 || to >= static_cast<std::ptrdiff_t>(numbers_.size())) return;
  document_.showPage(numbers_[static_cast<std::size_t>(to)]);
  chips_[static_cast<std::size_t>(to)]->setFocus(Qt::TabFocusReason);
}

/// A wheel runs along the story.
void StoryStrip::wheelEvent(QWheelEvent* event) {
  const QPoint by = event->angleDelta();
  QScrollBar* bar = horizontalScrollBar();
  bar->setValue(bar->value() - (std::abs(by.x()) > std::abs(by.y()) ? by.x() : by.y()));
  event->accept();
}

bool StoryStrip::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    const int on = rightToLeft_ ? -1 : 1;
    if (key == Qt::Key_Right || key == Qt::Key_Left) {
      step(key == Qt::Key_Right ? on : -on);
      return true;
    }
  }
  return QScrollArea::eventFilter(watched, event);
}

}  // namespace tw
