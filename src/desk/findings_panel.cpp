#include "desk/findings_panel.h"

#include <QLabel>
#include <QListWidget>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QSplitter>
#include <QVBoxLayout>

#include <algorithm>

#include "compose/trials.h"
#include "desk/finding_icon.h"
#include "desk/in_qt.h"
#include "desk/lined_rows.h"
#include "desk/look.h"
#include "geometry/polygon.h"
#include "job/amount_words.h"
#include "review/silence.h"

namespace tw {

namespace {

constexpr int kSeekMs = 200;

/// Of the same rule in the same panel; there may be several.
bool isAlike(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.panel == b.panel && a.page == b.page;
}

/// Row of the finding, or of one like it, or −1.
int rowOf(const Finding& finding, const std::vector<Finding>& all) {
  int row = -1;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!isAlike(all[i], finding)) continue;
    if (all[i].reason == finding.reason) return static_cast<int>(i);
    if (row < 0) row = static_cast<int>(i);
  }
  return row;
}

Polygon placeOf(const Finding& finding, const Measurement& m) {
  if (!finding.place.points.empty()) return finding.place;
  const auto& panels = m.roughNow().panels;
  const auto panel = static_cast<std::size_t>(finding.panel) - 1;
  if (finding.panel > 0 && panel < panels.size()) return panels[panel].outline;
  return polygonOf(m.picture.sheet.trimRect());
}

}  // namespace

FindingsPanel::FindingsPanel(Document& document, Engine& engine, PageView& view, QWidget* parent)
    : QWidget(parent),
      document_(document),
      engine_(engine),
      view_(view),
      preview_(document, engine) {
  setObjectName(QStringLiteral("findingsPanel"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  head_ = new QLabel(this);
  head_->setObjectName(QStringLiteral("findingsHead"));
  head_->setWordWrap(true);
  head_->setProperty("heading", true);
  down->addWidget(head_);
  auto* split = new QSplitter(Qt::Vertical, this);
  split->setChildrenCollapsible(false);
  list_ = new QListWidget(split);
  list_->setObjectName(QStringLiteral("findingsList"));
  list_->setAccessibleName(tr("Findings of the page"));
  list_->setIconSize(QSize(kFindingIconPx, kFindingIconPx));
  list_->setItemDelegate(new LinedRows(LinedRows::First::Plain, list_));
  list_->setResizeMode(QListView::Adjust);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);  // rows wrap at one width
  auto* scroll = new QScrollArea(split);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  detail_ = new FindingView(scroll);
  scroll->setWidget(detail_);
  split->setSizes({3, 2});  // shares; both grow alike afterwards
  down->addWidget(split, 1);

  connect(list_, &QListWidget::currentRowChanged, this, [this] {
    dropRemedy();
    remedies_.reset();
    pointOutCurrent();
    seekSoon();
  });
  connect(list_, &QListWidget::itemClicked, this, &FindingsPanel::pointOutCurrent);
  connect(detail_, &FindingView::tryAsked, this, &FindingsPanel::tryRemedy);
  connect(detail_, &FindingView::keepAsked, this, &FindingsPanel::keepRemedy);
  connect(detail_, &FindingView::dropAsked, this, &FindingsPanel::dropRemedy);
  connect(detail_, &FindingView::silenceAsked, this, &FindingsPanel::answer);
  connect(detail_, &FindingView::unsilenceAsked, this, &FindingsPanel::takeBack);
  seeking_.setSingleShot(true);
  connect(&seeking_, &QTimer::timeout, this, &FindingsPanel::seekRemedies);
  connect(&preview_, &EditPreview::forgotten, this, [this] {
    tried_.reset();
    remedies_.reset();
  });
  connect(&engine_, &Engine::measured, this, &FindingsPanel::takeMeasured);
  connect(&engine_, &Engine::busyChanged, this, &FindingsPanel::showHead);
  connect(&errand_, &Errand::progressed, this, [this](const QString&, double share) {
    detail_->showProgress(tr("Remedies are being tried … %1 %").arg(qRound(100 * share)));
  });
  takeMeasured();
}

void FindingsPanel::takeMeasured() {
  const MeasurementPtr& m = engine_.latest();
  if (!m) return showHead();
  if (tried_ && engine_.isTrying()) return showWhatItDoes();
  tried_.reset();
  const Finding* chosen = current();
  const std::optional<Finding> before = chosen ? std::optional(*chosen) : std::nullopt;
  const bool sameRough =
      base_ && base_->measured && m->measured && base_->roughNow() == m->roughNow();
  const bool sameFindings = base_ && base_->findings == m->findings && list_->count() > 0;
  base_ = m;
  if (!sameFindings) fillList();
  showHead();
  const int row = before ? rowOf(*before, m->findings) : -1;
  const QSignalBlocker quiet(list_);
  list_->setCurrentRow(row);
  if (!sameRough || row < 0) remedies_.reset();
  showCurrent();
  if (!remedies_) seekSoon();
}

void FindingsPanel::fillList() {
  const QSignalBlocker quiet(list_);
  list_->clear();
  for (std::size_t i = 0; i < base_->findings.size(); ++i) {
    const Finding& finding = base_->findings[i];
    auto* item = new QListWidgetItem(findingIcon(finding, i + 1), findingTitle(finding), list_);
    item->setToolTip(qt(finding.remedy));
    if (!finding.silencedWhy.empty()) {
      item->setText(tr("%1 (answered)").arg(item->text()));
      item->setForeground(deskColours().quiet);
    }
  }
}

void FindingsPanel::showHead() {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured) {
    head_->setText(engine_.isBusy() ? tr("Findings are being measured …") : tr("Nothing measured"));
    return;
  }
  const auto& all = m->findings;
  const auto open = std::ranges::count_if(
      all, [](const Finding& finding) { return finding.silencedWhy.empty(); });
  QString words = open == 0   ? tr("Nothing is found")
                  : open == 1 ? tr("One finding")
                              : tr("%1 findings").arg(open);
  if (open < static_cast<std::ptrdiff_t>(all.size()))
    words += tr(", %1 answered").arg(static_cast<int>(all.size()) - open);
  if (engine_.isBusy())
    words += tr("; being measured again …");
  else if (m->readingsLate)
    words += tr("; readers on their way …");
  head_->setText(words);
}

const Finding* FindingsPanel::current() const {
  const int row = list_->currentRow();
  if (!base_ || row < 0 || static_cast<std::size_t>(row) >= base_->findings.size()) return nullptr;
  return &base_->findings[static_cast<std::size_t>(row)];
}

void FindingsPanel::showCurrent() {
  if (remedies_)
    detail_->showFinding(&remedies_->finding, RemedyState::Computed);
  else
    detail_->showFinding(current(), seeking_.isActive() || errand_.isRunning()
                                        ? RemedyState::Running
                                        : RemedyState::Resting);
}

void FindingsPanel::pointOutCurrent() {
  const Finding* finding = current();
  if (finding == nullptr || !base_->measured) return;
  view_.pointOut(placeOf(*finding, *base_));
  if (finding->panel > 0) document_.selectPanel(static_cast<std::size_t>(finding->panel) - 1);
}

bool FindingsPanel::canSeek() const {
  const Finding* finding = current();
  return finding != nullptr && base_->measured && !base_->isPreview && !base_->readingsLate &&
         finding->silencedWhy.empty();
}

/// A hand that walks down the list is let by.
void FindingsPanel::seekSoon() {
  errand_.stop();
  seeking_.stop();
  if (canSeek()) seeking_.start(kSeekMs);
  showCurrent();
}

void FindingsPanel::seekRemedies() {
  if (!canSeek()) return;
  const Finding* finding = current();
  errand_.start(
      [base = base_, finding = *finding](Progress& progress) -> Result<Remedies> {
        Remedies out{finding, {}};
        auto stagings = tryRemedies(*base->measured, out.finding, 0, progress);
        if (!stagings) return tl::unexpected(stagings.error());
        out.stagings = std::move(*stagings);
        return out;
      },
      [this, base = base_](Result<Remedies> found) {
        if (base == base_) takeRemedies(std::move(found));
      });
  showCurrent();
}

void FindingsPanel::takeRemedies(Result<Remedies> found) {
  if (!found) {
    if (found.error().front().cause != Cause::Stopped) detail_->showTrouble(qt(found.error()));
    return;
  }
  const Finding* finding = current();
  if (finding == nullptr || !isAlike(*finding, found->finding) ||
      finding->reason != found->finding.reason)
    return;
  remedies_ = std::move(*found);
  showCurrent();
}

void FindingsPanel::tryRemedy(std::size_t index) {
  if (!remedies_ || index >= remedies_->stagings.size()) return;
  tried_ = index;
  preview_.show(static_cast<std::size_t>(remedies_->finding.panel) - 1, remedies_->stagings[index]);
  detail_->showTried(index, tr("It is being measured …"));
}

void FindingsPanel::keepRemedy(std::size_t index) {
  if (!remedies_ || index >= remedies_->stagings.size()) return;
  if (document_.isReadOnly()) {
    detail_->showTrouble(tr("Another program has this job open; nothing can be changed here."));
    return;
  }
  const QString what = qt(remedies_->finding.tried[index].change);
  if (tried_ != index) tryRemedy(index);
  preview_.keep(what);
}

void FindingsPanel::dropRemedy() {
  if (!tried_) return;
  tried_.reset();
  preview_.drop();
  detail_->showTried(std::nullopt, {});
}

/// How the page with the remedy differs from the listed one.
void FindingsPanel::showWhatItDoes() {
  const MeasurementPtr& m = engine_.latest();
  if (!m->isPreview) return;
  const Finding& finding = remedies_->finding;
  const auto now = std::ranges::find_if(
      m->findings, [&](const Finding& each) { return isAlike(each, finding); });
  QString words = now == m->findings.end()
                      ? tr("Shown on the page: it is mended.")
                      : tr("Shown on the page: %1 instead of %2.")
                            .arg(qt(amountInWords(now->value, now->unit)),
                                 qt(amountInWords(finding.value, finding.unit)));
  words += QLatin1Char(' ') + tr("The page has %1 findings instead of %2.")
                                  .arg(m->findings.size())
                                  .arg(base_->findings.size());
  detail_->showTried(tried_, words);
}

void FindingsPanel::changePage(const QString& what, const std::function<Result<void>(Page&)>& how) {
  dropRemedy();
  Page page = document_.page();
  if (const auto done = how(page); !done) {
    detail_->showTrouble(qt(done.error()));
    return;
  }
  document_.change(what, page);
}

void FindingsPanel::answer(const QString& reason) {
  const Finding* finding = current();
  if (finding == nullptr) return;
  if (reason.trimmed().isEmpty()) {
    detail_->showTrouble(tr("Say in a few words why it is meant so."));
    return;
  }
  const Silenced answer{finding->rule, finding->beat, reason.trimmed().toStdString()};
  changePage(tr("answer finding"), [&](Page& page) { return silence(page, answer); });
}

void FindingsPanel::takeBack() {
  const Finding* finding = current();
  if (finding == nullptr) return;
  const std::string rule = finding->rule, beat = finding->beat;
  changePage(tr("take answer back"), [&](Page& page) { return unsilence(page, rule, beat); });
}

}  // namespace tw
