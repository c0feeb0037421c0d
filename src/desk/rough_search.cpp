#include "desk/rough_search.h"

#include <QAction>
#include <QHBoxLayout>
#include <QProgressBar>
#include <QSpinBox>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

#include "command/roughs.h"
#include "compose/hand_work.h"
#include "compose/merge_found.h"
#include "desk/controls.h"
#include "desk/in_qt.h"
#include "desk/page_words.h"

namespace tw {

namespace {

constexpr int kUsualRoughs = 6, kMostRoughs = 12;
constexpr int kBarPx = 24;

}  // namespace

RoughSearch::RoughSearch(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), errand_(nullptr) {
  setObjectName(QStringLiteral("roughSearch"));
  find_ = actionOn(*this, tr("Find roughs"), "findRoughs", QKeySequence(QStringLiteral("Ctrl+R")),
                   tr("Look for roughs of this page that differ; pins are kept"));
  stop_ = actionOn(*this, tr("Stop"), "stopFinding", QKeySequence(QStringLiteral("Ctrl+.")),
                   tr("Stop looking"));
  unlike_ =
      actionOn(*this, tr("Unlike these"), "unlikeThese", QKeySequence(QStringLiteral("Ctrl+U")),
               tr("Keep the marked roughs and find others that are unlike them"));
  connect(find_, &QAction::triggered, this, [this] { find({}); });
  connect(stop_, &QAction::triggered, this, &RoughSearch::stop);
  connect(unlike_, &QAction::triggered, this, &RoughSearch::unlikeAsked);
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  auto* row = new QHBoxLayout;
  go_ = buttonFor(find_, this);
  row->addWidget(go_);
  keep_ = new QSpinBox(this);
  keep_->setObjectName(QStringLiteral("keepRoughs"));
  keep_->setAccessibleName(tr("How many roughs"));
  keep_->setToolTip(tr("How many roughs"));
  keep_->setRange(1, kMostRoughs);
  keep_->setValue(kUsualRoughs);
  row->addWidget(keep_);
  row->addWidget(buttonFor(unlike_, this));
  row->addStretch();
  down->addLayout(row);
  bar_ = new QProgressBar(this);
  bar_->setObjectName(QStringLiteral("findProgress"));
  bar_->setAccessibleName(tr("How far the search is"));
  bar_->setFixedHeight(kBarPx);
  bar_->setRange(0, 100);
  down->addWidget(bar_);
  connect(&errand_, &Errand::progressed, this, &RoughSearch::showProgress);
  connect(&errand_, &Errand::runningChanged, this, &RoughSearch::showRunning);
  showRunning(false);
}

void RoughSearch::showRunning(bool running) {
  stop_->setEnabled(running);
  find_->setEnabled(!running);
  unlike_->setEnabled(!running);
  go_->removeAction(running ? find_ : stop_);
  go_->setDefaultAction(running ? stop_ : find_);
  go_->setAccessibleName(go_->defaultAction()->text());
  bar_->setVisible(running);
  bar_->setValue(0);
  bar_->setFormat(tr("beginning"));
  emit runningChanged(running);
}

void RoughSearch::showProgress(const QString& what, double share) {
  bar_->setValue(static_cast<int>(std::lround(100 * share)));
  bar_->setFormat(what + QStringLiteral(" %p %"));
}

void RoughSearch::stop() {
  errand_.stop();
}

void RoughSearch::find(const std::vector<std::string>& unlike) {
  if (document_.isReadOnly()) {
    emit said(tr("Another program has this job open, so nothing can be changed here."));
    return;
  }
  const int page = document_.page().number;
  // The first search of a page takes the seed that the terminal takes.
  seed_ = page == searched_ ? seed_ + 1 : 1;
  searched_ = page;
  ComposeOptions options;
  options.keep = keep_->value();
  options.seed = seed_;
  const auto work = [bench = Workbench::of(document_).work(), page, options,
                     unlike](Progress& progress) -> Result<FoundRoughs> {
    const auto workshop = bench.workshop();
    if (!workshop) return tl::unexpected(workshop.error());
    return findRoughs(bench.job(), *bench.job().page(page), **workshop, options, unlike, progress);
  };
  RoughsBefore before{unlike, {}};
  before.kept.push_back(document_.page().choice);
  for (const Rough& rough : document_.page().roughs) {
    before.all.push_back(rough.name);
    if (hasHandWork(rough)) before.kept.push_back(rough.name);
  }
  errand_.start(work, [this, page, before](Result<FoundRoughs> found) {
    take(page, before, std::move(found));
  });
}

void RoughSearch::take(int number, const RoughsBefore& before, Result<FoundRoughs> found) {
  if (!found) {
    const bool stopped = found.error().front().cause == Cause::Stopped;
    emit said(stopped ? tr("Stopped. The roughs are as they were.") : qt(found.error()));
    return;
  }
  const Page* now = document_.job().page(number);
  if (now == nullptr) return;
  const Page after = withFound(*now, found->page, before);
  const std::size_t count = after.roughs.size();
  const auto fresh = std::ranges::find_if(after.roughs, [&](const Rough& rough) {
    return std::ranges::find(now->roughs, rough) == now->roughs.end();
  });
  const std::string first = fresh == after.roughs.end() ? std::string() : fresh->name;
  document_.change(tr("find roughs"), after);
  if (document_.page().number == number && !first.empty()) document_.showRough(first);
  QStringList words{tr("There are %1 roughs of %2 now.").arg(count).arg(inWords(after))};
  for (const std::string& pin : found->composed.unkept) words += tr("Not kept: %1").arg(qt(pin));
  for (const std::string& demand : found->composed.unmet)
    words += tr("Not met, even by the best: %1").arg(qt(demand));
  emit said(words.join(QLatin1Char('\n')));
}

}  // namespace tw
