#include "desk/compare_panel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include <fmt/format.h>

#include <algorithm>

#include "desk/controls.h"
#include "desk/in_qt.h"

namespace tw {

namespace {

constexpr std::size_t kNobody = static_cast<std::size_t>(-1);

std::size_t indexOf(int panel) {
  return panel > 0 ? static_cast<std::size_t>(panel) - 1 : kNobody;
}

QString ruleWords(const RuleDifference& rule, const RoughComparison& d) {
  const bool aIsDearer = rule.costA > rule.costB;
  const std::string& why = aIsDearer ? rule.reasonA : rule.reasonB;
  return qt(fmt::format("{} is better by {:.1f}: {}.{}", aIsDearer ? d.b : d.a,
                        std::abs(rule.difference()), rule.rule,
                        why.empty() ? "" : fmt::format(" {}: {}", aIsDearer ? d.a : d.b, why)));
}

QString panelWords(const PanelDifference& panel, const RoughComparison& d) {
  if (panel.panelA == 0 || panel.panelB == 0)
    return qt(fmt::format("{}: only in {}", panel.beat, panel.panelA == 0 ? d.b : d.a));
  std::vector<std::string> words;
  if (!panel.shape.empty())
    words.push_back(fmt::format("in {} {}", d.b, fmt::join(panel.shape, ", ")));
  words.insert(words.end(), panel.staging.begin(), panel.staging.end());
  return qt(fmt::format("panel {}: {}", panel.panelA, fmt::join(words, "; ")));
}

}  // namespace

ComparePanel::ComparePanel(Document& document, QWidget* parent)
    : QWidget(parent), document_(document) {
  setObjectName(QStringLiteral("comparePanel"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  auto* bar = new QHBoxLayout;
  auto* legend =
      new QLabel(tr("Dashed border: another shape. Corner cut off: staged otherwise."), this);
  legend->setProperty("quiet", true);
  legend->setWordWrap(true);
  bar->addWidget(legend, 1);
  auto* close = new QToolButton(this);
  close->setObjectName(QStringLiteral("closeComparison"));
  close->setText(tr("Back to the page"));
  close->setAccessibleName(close->text());
  close->setShortcut(QKeySequence(Qt::Key_Escape));
  close->setToolTip(tr("Back to the page (Esc)"));
  connect(close, &QToolButton::clicked, this, &ComparePanel::putAway);
  bar->addWidget(close);
  down->addLayout(bar);
  auto* across = new QHBoxLayout;
  across->addWidget(makeSide(headA_, first_, "comparedFirst"), 1);
  across->addWidget(makeSide(headB_, second_, "comparedSecond"), 1);
  down->addLayout(across, 3);
  list_ = new QListWidget(this);
  list_->setObjectName(QStringLiteral("differences"));
  list_->setAccessibleName(tr("What differs"));
  list_->setWordWrap(true);
  list_->setSpacing(3);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  connect(list_, &QListWidget::currentRowChanged, this, &ComparePanel::point);
  down->addWidget(list_, 2);
  connect(&document_, &Document::pageChanged, this, &ComparePanel::takeDocument);
  connect(&document_, &Document::shownChanged, this, [this] {
    // Names are those of one page.
    if (isShowing() && document_.page().number != first_->page()) emit closed();
  });
}

QWidget* ComparePanel::makeSide(QLabel*& head, RoughThumb*& thumb, const char* name) {
  auto* out = new QWidget(this);
  auto* down = new QVBoxLayout(out);
  down->setContentsMargins(0, 0, 0, 0);
  head = heading({}, out);
  down->addWidget(head);
  thumb = new RoughThumb(document_, out);
  thumb->setObjectName(QString::fromLatin1(name));
  thumb->setMinimumSize(120, 160);
  thumb->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  down->addWidget(thumb, 1);
  RoughThumb* own = thumb;
  connect(own, &RoughThumb::clicked, this, [this, own](std::size_t panel) {
    document_.showRough(own->rough());
    document_.selectPanel(panel);
  });
  connect(own, &RoughThumb::dropped, this, [this, own](std::size_t panel, QPoint at) {
    RoughThumb* other = own == first_ ? second_ : first_;
    if (!other->rect().contains(other->mapFromGlobal(at))) return;
    const Rough* from = roughOf(document_, own->page(), own->rough());
    const Rough* into = roughOf(document_, other->page(), other->rough());
    if (from == nullptr || into == nullptr) return;
    const auto same = std::ranges::find(into->panels, from->panels[panel].beat, &RoughPanel::beat);
    if (same != into->panels.end())
      emit mixAsked(qt(own->rough()), qt(other->rough()),
                    static_cast<std::size_t>(same - into->panels.begin()));
  });
  return out;
}

void ComparePanel::show(const std::string& a, const std::string& b) {
  a_ = a;
  b_ = b;
  first_->show(document_.page().number, a);
  second_->show(document_.page().number, b);
  takeDocument();
}

void ComparePanel::putAway() {
  a_.clear();
  emit closed();
}

void ComparePanel::takeDocument() {
  if (!isShowing()) return;
  const Rough* a = roughOf(document_, first_->page(), a_);
  const Rough* b = roughOf(document_, second_->page(), b_);
  if (a == nullptr || b == nullptr) return putAway();
  const RoughComparison difference = compareRoughs(document_.job(), *a, *b);
  headA_->setText(tr("%1   %2").arg(qt(a_), QString::number(a->score, 'f', 1)));
  headB_->setText(tr("%1   %2").arg(qt(b_), QString::number(b->score, 'f', 1)));
  fillList(difference);
  markPanels(difference);
}

void ComparePanel::addLine(const QString& words, Line line) {
  list_->addItem(words);
  lines_.push_back(line);
}

void ComparePanel::fillList(const RoughComparison& d) {
  const QSignalBlocker quiet(list_);
  list_->clear();
  lines_.clear();
  for (const RuleDifference& rule : d.rules) {
    const auto first = [](const std::vector<int>& panels) {
      return indexOf(panels.empty() ? 0 : panels.front());
    };
    addLine(ruleWords(rule, d), {first(rule.panelsA), first(rule.panelsB)});
  }
  for (const PanelDifference& panel : d.panels)
    if (panel.differs())
      addLine(panelWords(panel, d), {indexOf(panel.panelA), indexOf(panel.panelB)});
  if (lines_.empty()) addLine(tr("Nothing differs."), {kNobody, kNobody});
}

void ComparePanel::markPanels(const RoughComparison& d) {
  std::map<std::size_t, PanelMark> inA, inB;
  for (const PanelDifference& panel : d.panels) {
    const PanelMark mark{!panel.shape.empty(), !panel.staging.empty()};
    if (!panel.differs()) continue;
    if (panel.panelA > 0) inA[indexOf(panel.panelA)] = mark;
    if (panel.panelB > 0) inB[indexOf(panel.panelB)] = mark;
  }
  first_->setMarks(std::move(inA));
  second_->setMarks(std::move(inB));
  point(-1);
}

void ComparePanel::point(int row) {
  const auto index = static_cast<std::size_t>(row);
  const Line line = row >= 0 && index < lines_.size() ? lines_[index] : Line{kNobody, kNobody};
  const auto asked = [](std::size_t panel) {
    return panel == kNobody ? std::nullopt : std::optional<std::size_t>(panel);
  };
  first_->setPointed(asked(line.panelA));
  second_->setPointed(asked(line.panelB));
}

}  // namespace tw
