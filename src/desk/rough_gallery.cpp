#include "desk/rough_gallery.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollBar>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>
#include <set>
#include <utility>

#include "desk/in_qt.h"
#include "desk/look.h"

namespace tw {

namespace {

constexpr int kGhostFromHandPx = 12;

}  // namespace

RoughGallery::RoughGallery(Document& document, const QList<QAction*>& own, QWidget* parent)
    : QScrollArea(parent), document_(document) {
  setObjectName(QStringLiteral("roughGallery"));
  setAccessibleName(tr("Roughs of this page"));
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* inside = new QWidget(this);
  down_ = new QVBoxLayout(inside);
  down_->setContentsMargins(4, 4, 4, 4);
  down_->setSpacing(6);
  none_ = new QLabel(tr("This page has no rough yet. “Find roughs” looks for six that differ."),
                     inside);
  none_->setObjectName(QStringLiteral("noRoughs"));
  none_->setWordWrap(true);
  down_->addWidget(none_);
  down_->addStretch();
  setWidget(inside);
  own_ = new QWidget(inside);
  auto* row = new QHBoxLayout(own_);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(3);
  for (QAction* action : own) {
    auto* button = new QToolButton(own_);
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setAccessibleName(action->text());
    row->addWidget(button);
  }
  row->addStretch();
  own_->hide();
  connect(&document_, &Document::pageChanged, this, [this](int number) {
    if (number == document_.page().number) takeDocument();
  });
  connect(&document_, &Document::shownChanged, this, &RoughGallery::takeDocument);
  takeDocument();
}

RoughCard* RoughGallery::card(const std::string& rough) const {
  const auto found =
      std::ranges::find_if(cards_, [&](RoughCard* each) { return each->rough() == rough; });
  return found == cards_.end() ? nullptr : *found;
}

std::vector<std::string> RoughGallery::marked() const {
  std::vector<std::string> out;
  for (const RoughCard* each : cards_)
    if (each->isMarked()) out.push_back(each->rough());
  return out;
}

void RoughGallery::setMarked(const std::string& rough, bool marked) {
  if (RoughCard* found = card(rough)) found->setMarked(marked);
}

bool RoughGallery::isMarked(const std::string& rough) const {
  const RoughCard* found = card(rough);
  return found != nullptr && found->isMarked();
}

RoughCard* RoughGallery::newCard() {
  auto* out = new RoughCard(document_, widget());
  RoughThumb& thumb = out->thumb();
  const auto show = [this, out] { document_.showRough(out->rough()); };
  connect(out, &RoughCard::asked, this, show);
  connect(out, &RoughCard::stepped, this, [this, out](int by) { step(*out, by); });
  connect(out, &RoughCard::markedChanged, this, &RoughGallery::markedChanged);
  connect(&thumb, &RoughThumb::clickedBeside, this, show);
  connect(&thumb, &RoughThumb::clicked, this, [this, show](std::size_t panel) {
    show();
    document_.selectPanel(panel);
  });
  connect(&thumb, &RoughThumb::dragged, this,
          [this, &thumb](std::size_t panel, QPoint at) { drag(thumb, panel, at); });
  connect(&thumb, &RoughThumb::dropped, this,
          [this, &thumb](std::size_t panel, QPoint at) { drop(thumb, panel, at); });
  connect(&thumb, &RoughThumb::dragCancelled, this, &RoughGallery::endDrag);
  down_->insertWidget(down_->count() - 1, out);
  cards_.push_back(out);
  return out;
}

/// Cards are kept and only shown anew, so that focus and marks stay with their roughs.
void RoughGallery::takeDocument() {
  const Page& page = document_.page();
  std::set<std::string> marks;
  if (page.number == page_)
    for (const std::string& name : marked()) marks.insert(name);
  page_ = page.number;
  noteHandPlace();
  own_->setParent(widget());
  while (cards_.size() < page.roughs.size()) newCard();
  while (cards_.size() > page.roughs.size()) {
    cards_.back()->deleteLater();
    cards_.back()->hide();
    cards_.pop_back();
  }
  for (std::size_t i = 0; i < cards_.size(); ++i) {
    cards_[i]->show(page.number, page.roughs[i].name);
    const QSignalBlocker quiet(cards_[i]);
    cards_[i]->setMarked(marks.contains(page.roughs[i].name));
  }
  none_->setVisible(cards_.empty());
  showShown();
  emit markedChanged();
}

void RoughGallery::showShown() {
  const Rough* shown = document_.rough();
  for (RoughCard* each : cards_) {
    const bool is = shown != nullptr && each->rough() == shown->name;
    if (is) {
      QWidget* place = each->buttonsPlace();
      if (place->layout() == nullptr) {
        auto* layout = new QHBoxLayout(place);
        layout->setContentsMargins(0, 0, 0, 0);
      }
      place->layout()->addWidget(own_);
      own_->show();
      QMetaObject::invokeMethod(
          this, [this, each] { seeCard(*each); }, Qt::QueuedConnection);
    }
    each->setShown(is);
  }
}

void RoughGallery::noteHandPlace() {
  if (!own_->isVisible() || handOn_.empty()) return;
  handAt_ = own_->mapTo(viewport(), QPoint()).y();
}

/// A card that moved in the list brings its buttons back under the hand.
void RoughGallery::seeCard(RoughCard& card) {
  const auto at = std::exchange(handAt_, std::nullopt);
  if (at && card.rough() == handOn_) {
    widget()->layout()->activate();
    QScrollBar* bar = verticalScrollBar();
    bar->setValue(bar->value() + own_->mapTo(viewport(), QPoint()).y() - *at);
  } else {
    ensureWidgetVisible(&card, 0, 4);
  }
  handOn_ = card.rough();
}

void RoughGallery::step(RoughCard& from, int by) {
  const auto here = std::ranges::find(cards_, &from) - cards_.begin();
  const auto to = here + by;
  if (to < 0 || to >= static_cast<std::ptrdiff_t>(cards_.size())) return;
  RoughCard* next = cards_[static_cast<std::size_t>(to)];
  next->setFocus(Qt::TabFocusReason);
  document_.showRough(next->rough());
}

RoughThumb* RoughGallery::thumbUnder(QPoint globalPx, const RoughThumb& but) const {
  if (!viewport()->rect().contains(viewport()->mapFromGlobal(globalPx))) return nullptr;
  for (RoughCard* each : cards_) {
    RoughThumb& thumb = each->thumb();
    if (&thumb != &but && thumb.rect().contains(thumb.mapFromGlobal(globalPx))) return &thumb;
  }
  return nullptr;
}

void RoughGallery::drag(RoughThumb& from, std::size_t panel, QPoint globalPx) {
  QWidget* top = window();
  if (ghost_ == nullptr) {
    ghost_ = new QLabel(top);
    ghost_->setAttribute(Qt::WA_TransparentForMouseEvents);
    ghost_->setPixmap(from.cut(panel));
    ghost_->setFrameStyle(QFrame::Box);
    ghost_->adjustSize();
    ghost_->show();
    from.setFocus();
  }
  ghost_->move(top->mapFromGlobal(globalPx) + QPoint(kGhostFromHandPx, kGhostFromHandPx));
  ghost_->raise();
  const Rough* rough = roughOf(document_, from.page(), from.rough());
  const RoughThumb* under = thumbUnder(globalPx, from);
  for (RoughCard* each : cards_)
    each->thumb().setDrop(&each->thumb() == under && rough != nullptr ? rough->panels[panel].beat
                                                                      : std::string());
}

void RoughGallery::drop(RoughThumb& from, std::size_t panel, QPoint globalPx) {
  const RoughThumb* into = thumbUnder(globalPx, from);
  const Rough* rough = roughOf(document_, from.page(), from.rough());
  endDrag();
  if (into == nullptr || rough == nullptr) return;
  const Rough* target = roughOf(document_, into->page(), into->rough());
  if (target == nullptr) return;
  // The panel of the same beat, wherever it stands in the other.
  const auto same = std::ranges::find(target->panels, rough->panels[panel].beat, &RoughPanel::beat);
  if (same == target->panels.end()) return;
  emit mixAsked(qt(from.rough()), qt(into->rough()),
                static_cast<std::size_t>(same - target->panels.begin()));
}

void RoughGallery::endDrag() {
  delete ghost_;
  ghost_ = nullptr;
  for (RoughCard* each : cards_) each->thumb().setDrop({});
}

}  // namespace tw
