// Trying remedies.
//
// 1. For each panel that has a finding which staging can mend, every change of trialsFor() is made
//    on a copy of the page and the page measured again: the picture rendered, the copy set, the
//    leads followed, the whole card written.
// 2. A change helps a finding when the cost of that rule in that panel falls to less than
//    kHelpsBelow of what it was and the measure comes nearer to its limit or passes it.
// 3. What rises by kHarm or more elsewhere on the page, or is a new should or must, is named as
// harm; changes are ranked by the
//    finding's cost left plus all that rose.
// Cost: some twenty measured panels each, in parallel. Badly done: changes are tried one at a time,
// never two together; panels keep their shapes.
#include "compose/trials.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <map>
#include <set>

#include "base/parallel.h"
#include "compose/page_readings.h"
#include "compose/re_aim.h"
#include "compose/staging_moves.h"
#include "review/panel_findings.h"
#include "review/thing_findings.h"
#include "stage/blocking.h"

namespace tw {

namespace {

constexpr double kHelpsBelow = 0.7;
constexpr double kHarm = 0.4;       // weighted cost; our choice
constexpr double kLeastStep = 0.1;  // of the way to the limit, to be worth telling; our choice
constexpr std::size_t kTold = 3;
constexpr std::string_view kAim = "aim the lead at the next panel";

class Changes {
 public:
  Changes(const MeasuredPage& page, std::size_t panel)
      : page_(page),
        panel_(panel),
        wish_(page.page().panels[panel]),
        before_(page.rough().panels[panel].staging) {}

  std::vector<Trial> all() {
    mirror();
    tilts();
    walks();
    steps();
    heights();
    places();
    turns();
    aims();
    return std::move(out_);
  }

 private:
  /// The words, numbered when another change has them already.
  std::string differently(const std::string& change) const {
    const auto isTaken = [&](const std::string& words) {
      return std::ranges::find(out_, words, &Trial::change) != out_.end();
    };
    std::string words = change;
    for (int way = 2; isTaken(words); ++way) words = fmt::format("{}, way {}", change, way);
    return words;
  }

  void choose(std::string change, const StagingChoice& choice) {
    out_.push_back({std::move(change), stagedAs(page_, panel_, choice)});
  }

  void mirror() { out_.push_back({"mirror the picture", mirroredPicture(page_, panel_)}); }

  void tilts() {
    for (const double by : {-14.0, -7.0, 7.0, 14.0}) {
      auto tilted = tiltedPicture(page_, panel_, by);
      if (!tilted) continue;
      std::string change = tilted->choice.tiltDeg == 0 ? std::string("set the horizon level")
                                                       : tiltInWords(before_, by);
      out_.push_back({std::move(change), std::move(*tilted)});
    }
  }

  void walks() {
    for (const double by : {-80.0, -40.0, 40.0, 80.0}) {
      StagingChoice c = before_.choice;
      c.sideDeg += by;
      if (std::abs(c.sideDeg) > 180) continue;
      const bool right = (by > 0) != runsLeftward(before_);
      choose(fmt::format("walk the camera {:.0f}° round to the {}", std::abs(by),
                         right ? "right" : "left"),
             c);
    }
  }

  void steps() {
    for (const int by : {-1, 1}) {
      StagingChoice c = before_.choice;
      const int shot = static_cast<int>(c.shot) + by;
      if (shot < 0 || shot >= kShotSizes) continue;
      c.shot = static_cast<ShotSize>(shot);
      const std::string_view shotName = nameOf(c.shot);
      choose(fmt::format("step {} to {} {} shot", by < 0 ? "in" : "back",
                         shotName.starts_with('e') ? "an" : "a", shotName),
             c);
    }
  }

  void heights() {
    for (const int by : {-1, 1}) {
      StagingChoice c = before_.choice;
      const int eye = static_cast<int>(c.eye) + by;
      if (eye < 0 || eye > static_cast<int>(EyeHeight::Bird)) continue;
      c.eye = static_cast<EyeHeight>(eye);
      choose(fmt::format("{} the camera to {}", by < 0 ? "lower" : "raise", nameOf(c.eye)), c);
    }
  }

  void places() {
    if (wish_.beat.figures.size() < 2) return;
    for (int placement = 0; placement < placementsFor(wish_.beat); ++placement) {
      StagingChoice c = before_.choice;
      if (placement == c.placement) continue;
      c.placement = placement;
      const Staging staging = stagedAs(page_, panel_, c);
      std::string names;
      for (const std::string& who : page_.fromTheLeft(panel_, staging))
        names += (names.empty() ? "" : ", ") + calledIn(*page_.page().job, who);
      out_.push_back({differently("let stand from the left " + names), staging});
    }
  }

  void turns() {
    for (std::size_t i = 0; i < before_.figures.size(); ++i) {
      if (before_.figures[i].who != wish_.focus) continue;
      for (const double by : {-60.0, -30.0, 30.0, 60.0}) {
        Staging staging = before_;
        SetFigure& figure = staging.figures[i];
        figure.gazeDeg += by;
        if (std::abs(figure.gazeDeg) > kMostGazeDeg) continue;
        const std::string who = calledIn(*page_.page().job, wish_.focus);
        out_.push_back({fmt::format("turn {}'s head {:.0f}° to {} {}", who, std::abs(by),
                                    "the figure's own", by > 0 ? "left" : "right"),
                        std::move(staging)});
      }
    }
  }

  void aims() {
    if (panel_ + 1 >= page_.rough().panels.size()) return;
    auto aimed = reAimedAt(page_, panel_, page_.rough().panels[panel_ + 1].focus);
    if (aimed && aimed->change != "nothing")
      out_.push_back({std::string(kAim) + ": " + aimed->change, std::move(aimed->staging)});
  }

  const MeasuredPage& page_;
  std::size_t panel_;
  const PanelCase& wish_;
  const Staging& before_;
  std::vector<Trial> out_;
};

/// Weighted cost by rule and panel.
using Costs = std::map<std::pair<std::string, int>, double>;

Costs costsOf(const Rough& rough) {
  Costs out;
  for (const CardLine& line : rough.card) out[{line.rule, line.panel}] += line.cost;
  return out;
}

double at(const Costs& costs, const std::pair<std::string, int>& key) {
  const auto found = costs.find(key);
  return found == costs.end() ? 0 : found->second;
}

/// A trial that was measured.
struct Tried {
  std::size_t panel = 0;
  Trial trial;
  Costs costs;
  std::vector<Finding> findings;
  Measured measured;
  double focusHolds = 0;  ///< of the panel's squint test
  double leastInSight = 0;
};

const std::string kSquint = "squint";

/// Rules that no card pays for: what is missing to their limit stands for their cost.
bool isUnpaid(const Finding& finding) {
  return finding.rule == kSquint || finding.rule == kThingsRule;
}

/// What the rule measures in the panel after the change.
double valueAfter(const Finding& finding, const Tried& tried, const PageCase& page) {
  if (finding.rule == kSquint) return 100 * tried.focusHolds;
  if (finding.rule == kThingsRule) return tried.leastInSight;
  double sum = 0;
  bool told = false;
  for (const Finding& f : tried.findings) {
    if (f.rule != finding.rule || f.panel != finding.panel) continue;
    sum = finding.rule == nameOf(RuleId::JointCuts) ? sum + f.value : std::max(sum, f.value);
    told = true;
  }
  if (told) return sum;
  const auto rule = ruleNamed(finding.rule);
  const auto panel = static_cast<std::size_t>(finding.panel) - 1;
  const auto kept = rule ? panelFound(*rule, tried.measured, page, panel) : std::nullopt;
  return kept ? kept->value : finding.limit;
}

/// What rose elsewhere, and by how much in all.
struct Harm {
  std::string words;
  double cost = 0;
};

/// How many findings of a rule in a panel are more than worth a look.
int graveOf(const std::vector<Finding>& findings, const std::pair<std::string, int>& key) {
  return static_cast<int>(std::ranges::count_if(findings, [&](const Finding& f) {
    return f.rule == key.first && f.panel == key.second && f.severity != Severity::Look;
  }));
}

Harm harmOf(const Costs& before, const MeasuredPage& page, const Tried& tried,
            const std::pair<std::string, int>& mended) {
  Harm out;
  std::set<std::string> told;
  for (const auto& [key, cost] : tried.costs) {
    const double rise = cost - at(before, key);
    if (rise <= 0 || key == mended) continue;
    out.cost += rise;
    const bool isNew = graveOf(tried.findings, key) > graveOf(page.measured().findings, key);
    if ((rise >= kHarm || isNew) && told.insert(key.first).second)
      out.words += (out.words.empty() ? "" : ", ") + key.first;
  }
  return out;
}

/// A remedy with its place in the ranking.
struct Ranked {
  double cost = 0;
  TriedRemedy remedy;
};

Ranked ranked(const Finding& finding, const Costs& before, const Tried& tried,
              const MeasuredPage& page) {
  const std::pair key{finding.rule, finding.panel};
  const double value = valueAfter(finding, tried, page.page());
  const bool unpaid = isUnpaid(finding);
  const double was = unpaid ? finding.limit - finding.value : at(before, key);
  const double is = unpaid ? std::max(0.0, finding.limit - value) : at(tried.costs, key);
  const Harm harm = harmOf(before, page, tried, key);
  // A weaker lead costs less and arrives no better: the measure itself has to come nearer.
  const double missed = finding.value - finding.limit, misses = value - finding.limit;
  const bool nearer = std::abs(misses) < (1 - kLeastStep) * std::abs(missed) || misses * missed < 0;
  Ranked out;
  out.cost = is + harm.cost;
  out.remedy = {tried.trial.change, finding.value, value, nearer && is < kHelpsBelow * was,
                harm.words};
  return out;
}

/// The best change of each kind; several tilts or places are one kind.
void keepBest(std::vector<Ranked>& all, std::vector<TriedRemedy>& out) {
  std::ranges::stable_sort(all, {}, &Ranked::cost);
  std::set<std::string> kinds;
  for (const Ranked& r : all) {
    if (!r.remedy.helps || out.size() >= kTold) continue;
    if (kinds.insert(r.remedy.change.substr(0, r.remedy.change.find(' '))).second)
      out.push_back(r.remedy);
  }
}

bool canBeStaged(const Finding& finding) {
  const auto rule = ruleNamed(finding.rule);
  return finding.panel > 0 && (isUnpaid(finding) || (rule && isAboutStaging(*rule)));
}

/// Aiming is for leads: what else it may mend is mended by smaller changes.
bool isFor(const Trial& trial, const Finding& finding) {
  const bool lead =
      finding.rule == nameOf(RuleId::HandedOn) || finding.rule == nameOf(RuleId::LeaksOff);
  return lead || !trial.change.starts_with(kAim);
}

std::vector<Tried> trialsOn(const MeasuredPage& page, const std::vector<Finding>& findings) {
  std::set<int> panels;
  for (const Finding& finding : findings)
    if (canBeStaged(finding)) panels.insert(finding.panel);
  std::vector<Tried> out;
  for (const int panel : panels)
    for (Trial& trial : trialsFor(page, static_cast<std::size_t>(panel) - 1)) {
      Tried tried;
      tried.panel = static_cast<std::size_t>(panel) - 1;
      tried.trial = std::move(trial);
      out.push_back(std::move(tried));
    }
  return out;
}

}  // namespace

std::vector<Trial> trialsFor(const MeasuredPage& page, std::size_t panel) {
  return Changes(page, panel).all();
}

Result<void> tryRemedies(const MeasuredPage& page, std::vector<Finding>& findings, unsigned threads,
                         Progress& progress) {
  std::vector<Tried> all = trialsOn(page, findings);
  std::atomic<std::size_t> done{0};
  parallelFor(all.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    MeasuredPage copy = page;
    copy.restage(all[i].panel, all[i].trial.staging);
    all[i].costs = costsOf(copy.rough());
    all[i].findings = copy.measured().findings;
    all[i].measured = copy.measured();
    all[i].focusHolds = squintOf(copy, all[i].panel).holds;
    all[i].leastInSight =
        leastInSight(copy.things()[all[i].panel], page.page().panels[all[i].panel].beat);
    progress.tell("trying remedies", static_cast<double>(++done) / static_cast<double>(all.size()));
  });
  if (progress.isStopped()) return stopped();
  const Costs before = costsOf(page.rough());
  for (Finding& finding : findings) {
    if (!canBeStaged(finding)) continue;
    std::vector<Ranked> list;
    for (const Tried& tried : all)
      if (static_cast<int>(tried.panel) + 1 == finding.panel && isFor(tried.trial, finding))
        list.push_back(ranked(finding, before, tried, page));
    keepBest(list, finding.tried);
    if (finding.tried.empty() && !list.empty())
      finding.remedy +=
          fmt::format(" Of {} changes of the staging that were tried none mends it.", list.size());
  }
  return {};
}

Result<std::vector<Staging>> tryRemedies(const MeasuredPage& page, Finding& finding,
                                         unsigned threads, Progress& progress) {
  std::vector<Finding> alone{finding};
  if (auto done = tryRemedies(page, alone, threads, progress); !done)
    return tl::unexpected(done.error());
  finding = std::move(alone.front());
  std::vector<Staging> out;
  if (finding.tried.empty()) return out;
  const auto trials = trialsFor(page, static_cast<std::size_t>(finding.panel) - 1);
  for (const TriedRemedy& tried : finding.tried) {
    const auto found = std::ranges::find(trials, tried.change, &Trial::change);
    ensure(found != trials.end(), "what was tried is among the trials");
    out.push_back(found->staging);
  }
  return out;
}

}  // namespace tw
