#include "desk/rough_acts.h"

#include "command/mix.h"
#include "command/pin.h"
#include "command/rank_roughs.h"
#include "compose/rough_names.h"
#include "desk/in_qt.h"

namespace tw {

RoughActs::RoughActs(Document& document, QObject* parent)
    : QObject(parent), document_(document), errand_(nullptr) {
  connect(&errand_, &Errand::runningChanged, this, &RoughActs::mixingChanged);
}

bool RoughActs::change(const QString& what, const Page& after) {
  return document_.change(what, after);
}

void RoughActs::pick() {
  const Rough* rough = document_.rough();
  if (rough == nullptr) return;
  Page after = document_.page();
  const bool isPicked = after.choice == rough->name;
  after.choice = isPicked ? std::string() : rough->name;
  change(isPicked ? tr("pick none") : tr("pick rough %1").arg(qt(rough->name)), after);
}

void RoughActs::rank(int by) {
  const Rough* rough = document_.rough();
  if (rough == nullptr) return;
  const std::string name = rough->name;
  Page after = document_.page();
  if (!moveRough(after, name, by)) {
    emit said(by < 0 ? tr("It is first already.") : tr("It is last already."));
    return;
  }
  change(tr("rank rough %1").arg(qt(name)), after);
  document_.showRough(name);  // where nothing is chosen the new first one would be shown
}

void RoughActs::drop() {
  const auto index = document_.roughIndex();
  if (!index) return;
  Page after = document_.page();
  const std::string name = after.roughs[*index].name;
  const std::size_t next = *index + 1 < after.roughs.size() ? *index + 1 : *index - 1;
  const std::string shown = after.roughs.size() > 1 ? after.roughs[next].name : std::string();
  dropRough(after, name);
  if (change(tr("drop rough %1").arg(qt(name)), after) && !shown.empty())
    document_.showRough(shown);
}

void RoughActs::pinArrangement() {
  const Rough* rough = document_.rough();
  if (rough == nullptr) return;
  Page after = document_.page();
  if (isArrangementPinned(after, *rough)) {
    after.pins.arrangement.clear();
    after.pins.treatment.clear();
    change(tr("unpin arrangement"), after);
  } else {
    tw::pinArrangement(after, *rough);
    change(tr("pin arrangement of %1").arg(qt(rough->name)), after);
  }
}

void RoughActs::pinPanel(std::size_t panel) {
  const Rough* rough = document_.rough();
  if (rough == nullptr || panel >= rough->panels.size()) return;
  Page after = document_.page();
  if (isPinned(after, *rough, panel)) {
    after.pins.stagings.erase(rough->panels[panel].beat);
    change(tr("unpin panel %1").arg(panel + 1), after);
  } else {
    tw::pinPanel(after, *rough, panel);
    change(tr("pin panel %1 of %2").arg(panel + 1).arg(qt(rough->name)), after);
  }
}

void RoughActs::mix(const std::string& from, const std::string& into,
                    std::optional<std::size_t> panel) {
  if (document_.isReadOnly()) {
    emit said(tr("Another program has this job open, so nothing can be changed here."));
    return;
  }
  if (errand_.isRunning()) {
    emit said(tr("The mix before is still being measured."));
    return;
  }
  const int page = document_.page().number;
  MixRequest request;
  request.page = page;
  request.from = from;
  request.into = into;
  if (panel) request.panel = static_cast<int>(*panel) + 1;
  const QString what = panel ? tr("panel %1 of %2 into %3").arg(*panel + 1).arg(qt(from), qt(into))
                             : tr("arrangement of %1 into %2").arg(qt(from), qt(into));
  emit said(tr("Measuring: %1 …").arg(what));
  const auto work = [bench = Workbench::of(document_).work(),
                     request](Progress&) -> Result<MixMade> {
    const auto workshop = bench.workshop();
    if (!workshop) return tl::unexpected(workshop.error());
    return mixedOn(bench.job(), *bench.job().page(request.page), **workshop, request);
  };
  errand_.start(work,
                [this, page, what](Result<MixMade> made) { take(page, what, std::move(made)); });
}

void RoughActs::take(int number, const QString& what, Result<MixMade> made) {
  if (!made) {
    emit said(qt(made.error()));
    return;
  }
  const Page* now = document_.job().page(number);
  if (now == nullptr) return;
  Page after = *now;
  made->rough.name = freeRoughName(after.roughs);  // others may have come meanwhile
  after.roughs.push_back(made->rough);
  if (!change(tr("mix: %1").arg(what), after)) return;
  if (document_.page().number == number) {
    document_.showRough(made->rough.name);
    emit mixed();
  }
  QStringList words{tr("Rough %1: %2. It costs %3; before it was %4.")
                        .arg(qt(made->rough.name), what, QString::number(made->rough.score, 'f', 1),
                             QString::number(made->scoreInto, 'f', 1))};
  for (const std::string& note : made->notes) words += qt(note);
  emit said(words.join(QLatin1Char('\n')));
}

}  // namespace tw
