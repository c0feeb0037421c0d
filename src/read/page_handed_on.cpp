#include "read/page_handed_on.h"

#include <algorithm>
#include <array>
#include <numbers>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr std::array kTiltsDeg{-15.0, -10.0, -5.0, 5.0, 10.0, 15.0};
constexpr double kAimStepDeg = 5;
/// Shares nearer than this are equal.
constexpr double kSame = 1e-9;
constexpr double kRadians = std::numbers::pi / 180;

bool hasLead(const Lead& lead) {
  return lead.strength > 0 && lead.direction != Vector{};
}

double turnBetween(Vector from, Vector to) {
  if (from == Vector{} || to == Vector{}) return 0;
  return std::atan2(cross(from, to), dot(from, to)) / kRadians;
}

PanelHandedOn panelHandedOn(const ArrivalField& field, const SeenPage& page, std::size_t i) {
  const Lead& lead = page.panels[i].lead;
  PanelHandedOn out;
  out.hasNext = i + 1 < page.panels.size();
  out.hasLead = hasLead(lead);
  if (!out.hasLead) return out;
  out.arrival = field.of(lead, i);
  out.turnDeg = turnBetween(lead.direction, field.goalOf(i) - lead.from);
  return out;
}

Lead mirroredIn(Lead lead, const Rect& box) {
  lead.from.x = box.min.x + box.max.x - lead.from.x;
  lead.direction.x = -lead.direction.x;
  return lead;
}

Lead tilted(Lead lead, Point about, double deg) {
  const double c = std::cos(deg * kRadians), s = std::sin(deg * kRadians);
  const auto turned = [&](Vector v) { return Vector{v.x * c - v.y * s, v.x * s + v.y * c}; };
  lead.from = about + turned(lead.from - about);
  lead.direction = turned(lead.direction);
  return lead;
}

Lead aimed(const SeenPanel& panel, Point goal) {
  Lead lead = panel.lead;
  if (!hasLead(lead)) lead = {panel.focus, {}, 1, ""};
  lead.direction = (goal - lead.from).unit();
  return lead;
}

/// The same place of the picture when it fills another panel.
Lead movedInto(Lead lead, const Rect& from, const Rect& to) {
  const double x = (lead.from.x - from.min.x) / std::max(from.width(), 1e-9);
  const double y = (lead.from.y - from.min.y) / std::max(from.height(), 1e-9);
  lead.from = {to.min.x + x * to.width(), to.min.y + y * to.height()};
  return lead;
}

/// Tries changes of one panel's lead on a page of its own.
class LeadTrial {
 public:
  LeadTrial(const SeenPage& page, std::size_t panel)
      : page_(page), panel_(panel), field_(arrivalFieldOf(page)) {}

  std::vector<ChangedLead> all() {
    const SeenPanel& panel = page_.panels[panel_];
    if (hasLead(panel.lead)) {
      tryLead(LeadChange::Mirror, mirroredIn(panel.lead, bounds(panel.outline)));
      for (const double deg : kTiltsDeg)
        tryLead(LeadChange::Tilt, tilted(panel.lead, panel.focus, deg), deg);
    }
    const Lead atEntry = aimed(panel, field_.goalOf(panel_));
    tryLead(LeadChange::AimAtEntry, atEntry);
    tryLead(LeadChange::AimBest, bestAimed(atEntry));
    if (panel_ + 1 < page_.panels.size()) trySwap(LeadChange::SwapWithNext, panel_ + 1);
    if (panel_ > 0) trySwap(LeadChange::SwapWithPrevious, panel_ - 1);
    return std::move(out_);
  }

 private:
  /// Outward from the given lead, so that the least turn wins among equals.
  Lead bestAimed(const Lead& lead) const {
    Lead best = lead;
    double most = field_.of(lead, panel_).next;
    for (double deg = kAimStepDeg; deg <= 180; deg += kAimStepDeg) {
      for (const double turn : {deg, -deg}) {
        const Lead turned = tilted(lead, lead.from, turn);
        const double next = field_.of(turned, panel_).next;
        if (next <= most + kSame) continue;
        most = next;
        best = turned;
      }
    }
    return best;
  }

  void tryLead(LeadChange change, const Lead& lead, double tiltDeg = 0) {
    SeenPage tried = page_;
    tried.panels[panel_].lead = lead;
    note(change, tiltDeg, tried, panel_);
  }

  void trySwap(LeadChange change, std::size_t other) {
    if (!hasLead(page_.panels[panel_].lead)) return;
    const Rect here = bounds(page_.panels[panel_].outline);
    const Rect there = bounds(page_.panels[other].outline);
    SeenPage tried = page_;
    tried.panels[other].lead = movedInto(page_.panels[panel_].lead, here, there);
    tried.panels[panel_].lead = movedInto(page_.panels[other].lead, there, here);
    note(change, 0, tried, other);
  }

  void note(LeadChange change, double tiltDeg, const SeenPage& tried, std::size_t panel) {
    const Lead& lead = tried.panels[panel].lead;
    out_.push_back({change, tiltDeg, lead, static_cast<int>(panel), field_.of(lead, panel),
                    handedOnOf(tried).mean});
  }

  const SeenPage& page_;
  std::size_t panel_;
  ArrivalField field_;
  std::vector<ChangedLead> out_;
};

}  // namespace

ArrivalField arrivalFieldOf(const SeenPage& page) {
  std::vector<Polygon> outlines;
  std::vector<bool> ground;
  const bool layered = std::any_of(page.panels.begin(), page.panels.end(),
                                   [](const SeenPanel& panel) { return panel.layer > 0; });
  for (const SeenPanel& panel : page.panels) {
    outlines.push_back(panel.outline);
    ground.push_back(layered && panel.layer == 0);
  }
  return {std::move(outlines), page.page, page.direction, std::move(ground)};
}

PageHandedOn handedOnOf(const SeenPage& page) {
  PageHandedOn out;
  const ArrivalField field = arrivalFieldOf(page);
  for (std::size_t i = 0; i < page.panels.size(); ++i)
    out.panels.push_back(panelHandedOn(field, page, i));
  const std::size_t steps = out.panels.size() > 1 ? out.panels.size() - 1 : 0;
  for (std::size_t i = 0; i < steps; ++i)
    out.mean += out.panels[i].arrival.next / static_cast<double>(steps);
  return out;
}

std::vector<ChangedLead> changedLeads(const SeenPage& page, std::size_t panel) {
  if (panel >= page.panels.size()) return {};
  return LeadTrial(page, panel).all();
}

}  // namespace tw
