#include "command/measures.h"

#include <fmt/format.h>

#include "command/job_pages.h"
#include "job/rough_fields.h"
#include "review/page_case.h"
#include "stage/staging.h"

namespace tw {

namespace {

constexpr Spec kMm = mm();
constexpr double kShort = 0.45;   // a limb shorter than this on the picture is told
constexpr double kHidden = 0.25;  // so is one of which less is seen
constexpr double kHides = 0.05;   // and what takes more than this of a figure

template <class T>
OrderedJson listOf(const std::vector<T>& items) {
  OrderedJson out = OrderedJson::array();
  for (const T& item : items) out.push_back(objectOf(item, true));
  return out;
}

OrderedJson four(double value) {
  return rounded(value, 4);
}

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

void addLimbNotes(const SeenFigure& figure, const std::string& where,
                  std::vector<std::string>& notes) {
  for (const SeenLimb& limb : figure.limbs) {
    if (limb.visible < kHidden) continue;
    if (limb.foreshortened < kShort)
      notes.push_back(fmt::format("{}'s {} shows {} of its length.", where, limb.limb,
                                  percent(limb.foreshortened)));
  }
  for (const HiddenBy& by : figure.hiddenBy)
    if (by.what != "frame" && by.share >= kHides)
      notes.push_back(fmt::format("{}: {} hidden by {}.", where, percent(by.share), by.what));
  for (const JointCut& cut : figure.jointCuts)
    notes.push_back(fmt::format("{} is cut at the {} ({:.0f}, {:.0f} mm).", where, cut.joint,
                                cut.at.x, cut.at.y));
}

}  // namespace

Result<Rough> measuredRough(const std::filesystem::path& job, int number, const std::string& name) {
  auto open = openJob(job);
  if (!open) return tl::unexpected(open.error());
  const auto numbers = pagesAsked(open->job, number);
  if (!numbers) return tl::unexpected(numbers.error());
  const Page& page = *open->job.page(numbers->front());
  const auto named = roughNamed(page, name);
  if (!named) return tl::unexpected(named.error());
  Rough rough = page.roughs[*named];
  const auto stager = Stager::make(open->job.cast);
  if (!stager) return tl::unexpected(stager.error());
  for (std::size_t i = 0; i < rough.panels.size(); ++i) {
    RoughPanel& panel = rough.panels[i];
    if (panel.figures.empty() || !panel.figures.front().limbs.empty()) continue;
    const auto beat = beatShown(page, rough, i);
    if (!beat) return tl::unexpected(beat.error());
    stager->look(panel, *beat, focusOf(*beat, page.brief));
  }
  return rough;
}

OrderedJson measuresJson(const SeenFigure& figure) {
  return {{"share", four(figure.share)},           {"reach", four(figure.reach)},
          {"solidity", four(figure.solidity)},     {"tips_seen", figure.tipsSeen},
          {"overlap", four(figure.overlap)},       {"contrast", rounded(figure.contrast, 1)},
          {"liftable", figure.liftable},           {"cut_at_joint", figure.cutAtJoint},
          {"limbs", listOf(figure.limbs)},         {"hidden_by", listOf(figure.hiddenBy)},
          {"joint_cuts", listOf(figure.jointCuts)}};
}

OrderedJson tangentsJson(const std::vector<SeenTangent>& tangents) {
  return listOf(tangents);
}

OrderedJson cameraJson(const Staging& staging) {
  return objectOf(staging.camera, true);
}

std::string roughMeasuresJson(const Rough& rough) {
  OrderedJson panels = OrderedJson::array();
  for (const RoughPanel& panel : rough.panels) {
    OrderedJson figures = OrderedJson::array();
    for (const SeenFigure& figure : panel.figures) {
      OrderedJson one{{"who", figure.who},
                      {"visible", four(figure.visible)},
                      {"head_mm", rounded(figure.headMm, 2)},
                      {"cut", figure.cut}};
      one.update(measuresJson(figure));
      figures.push_back(std::move(one));
    }
    OrderedJson json{{"beat", panel.beat},
                     {"shot", std::string(nameOf(panel.staging.choice.shot))},
                     {"eye", std::string(nameOf(panel.staging.choice.eye))},
                     {"camera", cameraJson(panel.staging)}};
    if (panel.staging.light) json["light"] = objectOf(*panel.staging.light, true);
    json["figures"] = std::move(figures);
    json["tangents"] = tangentsJson(panel.tangents);
    panels.push_back(std::move(json));
  }
  return textOf({{"rough", rough.name}, {"panels", std::move(panels)}});
}

std::vector<std::vector<std::string>> figureRows(const Rough& rough) {
  std::vector<std::vector<std::string>> rows{{"panel", "shot", "lens", "figure", "seen", "head",
                                              "cut", "reach", "solid", "tips", "overlap",
                                              "contrast", "lifts"}};
  for (std::size_t i = 0; i < rough.panels.size(); ++i) {
    const RoughPanel& panel = rough.panels[i];
    for (const SeenFigure& f : panel.figures)
      rows.push_back({std::to_string(i + 1), std::string(nameOf(panel.staging.choice.shot)),
                      fmt::format("{:.0f} mm", panel.staging.camera.focalMm), f.who,
                      percent(f.visible), fmt::format("{:.1f} mm", f.headMm), f.cut,
                      percent(f.reach), percent(f.solidity), std::to_string(f.tipsSeen),
                      percent(f.overlap), fmt::format("{:+.0f}", f.contrast),
                      f.liftable ? "yes" : "no"});
  }
  return rows;
}

std::vector<std::string> measureNotes(const Rough& rough) {
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < rough.panels.size(); ++i) {
    for (const SeenFigure& figure : rough.panels[i].figures)
      addLimbNotes(figure, fmt::format("Panel {}: {}", i + 1, figure.who), notes);
    for (const SeenTangent& t : rough.panels[i].tangents)
      notes.push_back(fmt::format("Panel {}: {} and {} {} at {:.0f}, {:.0f} mm, for {:.0f} mm.",
                                  i + 1, t.a, t.b, t.kind, t.at.x, t.at.y, t.lengthMm));
  }
  return notes;
}

}  // namespace tw
