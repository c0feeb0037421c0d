#include "command/variants.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/job_models.h"
#include "command/job_pages.h"
#include "command/measures.h"
#include "compose/compose.h"
#include "compose/finish.h"
#include "job/rough_fields.h"
#include "job/write_json.h"
#include "letter/move_balloon.h"
#include "press/variant_sheet.h"
#include "review/page_case.h"

namespace tw {

namespace {

constexpr const char* kFoot =
    "In brackets: the change against the pose as it is. Reach: limbs' length in the picture over "
    "their true length. Open: air inside the silhouette's hull. Left and right are the figure's "
    "own.";

/// What the request names, found in the job.
struct Asked {
  OpenJob open;
  Workshop workshop;
  int page = 0;
  std::size_t rough = 0, panel = 0, figure = 0;
  Beat beat;

  Page& pageOf() { return *open.job.page(page); }
  RoughPanel& panelOf() { return pageOf().roughs[rough].panels[panel]; }
};

tl::unexpected<Problems> missing(std::string sentence, const VariantsRequest& r,
                                 std::string advice) {
  return badInput(std::move(sentence), {.page = r.page, .panel = r.panel}, std::move(advice));
}

Result<void> findPanel(const VariantsRequest& r, Asked& asked) {
  const Page& page = asked.pageOf();
  const auto rough = roughNamed(page, r.rough);
  if (!rough) return tl::unexpected(rough.error());
  asked.rough = *rough;
  const auto panel = panelNumbered(page, page.roughs[*rough], r.panel);
  if (!panel) return tl::unexpected(panel.error());
  asked.panel = *panel;
  auto beat = beatShown(page, page.roughs[*rough], *panel);
  if (!beat) return tl::unexpected(beat.error());
  asked.beat = std::move(*beat);
  return {};
}

std::string nameOfCharacter(const Job& job, const std::string& id) {
  for (const Character& c : job.cast)
    if (c.id == id && !c.name.empty()) return c.name;
  return id;
}

Result<void> findFigure(const VariantsRequest& r, Asked& asked) {
  const std::vector<SetFigure>& figures = asked.panelOf().staging.figures;
  if (figures.empty() || figures.size() != asked.beat.figures.size())
    return missing("There is no figure in that panel whose pose could be varied.", r, {});
  const std::string wanted =
      r.figure.empty() ? focusOf(asked.beat, asked.pageOf().brief) : r.figure;
  std::string known;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const std::string name = nameOfCharacter(asked.open.job, figures[i].who);
    known += (known.empty() ? "" : ", ") + figures[i].who;
    if (figures[i].who != wanted && name != wanted) continue;
    asked.figure = i;
    return {};
  }
  if (r.figure.empty()) return {};
  return missing(fmt::format("\"{}\" is not in that panel.", r.figure), r,
                 fmt::format("Its figures are {}.", known));
}

Result<Asked> found(const VariantsRequest& r) {
  auto open = openJob(r.job);
  if (!open) return tl::unexpected(open.error());
  const auto numbers = pagesAsked(open->job, r.page);
  if (!numbers) return tl::unexpected(numbers.error());
  auto workshop = workshopFor(*open);
  if (!workshop) return tl::unexpected(workshop.error());
  Asked asked{std::move(*open), std::move(*workshop), numbers->front(), 0, 0, 0, {}};
  if (auto done = findPanel(r, asked); !done) return tl::unexpected(done.error());
  if (auto done = findFigure(r, asked); !done) return tl::unexpected(done.error());
  return asked;
}

SheetCell cellOf(Asked& asked, const PoseVariant& v, const PoseVariant& present,
                 const std::string& number) {
  RoughPanel panel = asked.panelOf();
  panel.staging = v.staging;
  DrawOptions options;
  options.setting = asked.beat.setting;
  return {number, number.empty() ? "As it is" : v.name, factsOf(v, present),
          asked.workshop.stager.draw(panel, asked.beat, focusOf(asked.beat, asked.pageOf().brief),
                                     options)};
}

Result<void> writePictures(const VariantsMade& made, Asked& asked) {
  if (made.request.pictures.empty()) return {};
  const VariantsRequest& r = made.request;
  VariantSheet sheet;
  sheet.title = fmt::format("{} {}: what else", made.figure, made.pose);
  sheet.about = fmt::format("{}, page {}, rough {}, panel {}", asked.open.job.title, r.page,
                            r.rough, r.panel);
  sheet.foot = kFoot;
  sheet.outline = asked.panelOf().outline;
  sheet.cells.push_back(cellOf(asked, made.variants.present, made.variants.present, ""));
  for (std::size_t i = 0; i < made.variants.kept.size(); ++i)
    sheet.cells.push_back(
        cellOf(asked, made.variants.kept[i], made.variants.present, std::to_string(i + 1)));
  for (const auto& file : r.pictures)
    if (auto done = writeVariantSheet(file, sheet); !done) return done;
  return {};
}

/// The figure as the panel would show it in that pose.
SeenFigure seenOf(Asked& asked, const PoseVariant& variant) {
  RoughPanel panel = asked.panelOf();
  panel.staging = variant.staging;
  asked.workshop.stager.look(panel, asked.beat, focusOf(asked.beat, asked.pageOf().brief));
  return panel.figures[asked.figure];
}

/// Letters the panel again for what it now shows; tails placed by hand follow their mouths.
Result<void> letterAgain(Asked& asked, const RoughPanel& before) {
  const auto page = pageCaseOf(asked.open.job, asked.pageOf(), asked.workshop.letterer);
  if (!page) return tl::unexpected(page.error());
  std::vector<Polygon> insets;
  const Rough& rough = asked.pageOf().roughs[asked.rough];
  for (std::size_t k = 0; k < rough.panels.size(); ++k)
    if (rough.panels[asked.panel].ground && k != asked.panel)
      insets.push_back(rough.panels[k].outline);
  RoughPanel& panel = asked.panelOf();
  panel.balloons =
      takenAlong(letterRequest(*page, asked.panel, before, insets),
                 letterRequest(*page, asked.panel, panel, insets), asked.workshop.letterer);
  panel.balloons = letteredPanel(*page, asked.workshop, asked.panel, panel, insets).balloons;
  return {};
}

Result<void> take(const VariantsMade& made, Asked& asked) {
  if (!made.request.take) return {};
  if (auto writable = mustBeWritable(asked.open); !writable) return writable;
  const int number = *made.request.take;
  if (number < 1 || number > static_cast<int>(made.variants.kept.size()))
    return missing(fmt::format("There is no variant {}.", number), made.request,
                   fmt::format("They are 1 to {}.", made.variants.kept.size()));
  const PoseVariant& chosen = made.variants.kept[static_cast<std::size_t>(number - 1)];
  RoughPanel& panel = asked.panelOf();
  const RoughPanel before = panel;
  panel.staging = chosen.staging;
  asked.workshop.stager.look(panel, asked.beat, focusOf(asked.beat, asked.pageOf().brief));
  if (auto done = letterAgain(asked, before); !done) return done;
  asked.pageOf().roughs[asked.rough].card.push_back(
      {"changed by hand", 0,
       fmt::format("{}: {}. The rest of this card was made before.", made.figure, chosen.name), "",
       made.request.panel});
  return asked.open.folder.savePage(asked.pageOf());
}

std::string changed(double now, double before, double times) {
  const double by = times * (now - before);
  return std::abs(by) < 0.5 ? "" : fmt::format(" ({:+.0f})", by);
}

std::string balanceInWords(const Balance& b) {
  if (!b.judged) return b.label;
  return fmt::format("balance {:+.0f} cm", 100 * b.marginM);
}

OrderedJson figuresJson(const PoseVariant& v) {
  const PoseFigures& f = v.figures;
  const auto share = [](double value) { return rounded(std::clamp(value, 0.0, 1.0), 4); };
  OrderedJson out{{"readability", rounded(v.readability, 4)},
                  {"reach", share(f.reach)},
                  {"openness", share(f.openness)},
                  {"tips_seen", static_cast<int>(f.tipsSeen)},
                  {"arms_inside", share(f.armsInside)},
                  {"hands_seen", share(f.handsSeen)},
                  {"face_seen", share(f.faceSeen)},
                  {"in_frame", share(f.inFrame)},
                  {"limbs_inside", share(f.limbsInside)}};
  if (f.balance.judged) out["balance_m"] = rounded(f.balance.marginM, 4);
  out["balance"] = f.balance.label;
  out["limits"] = f.limits;
  return out;
}

OrderedJson variantJson(const PoseVariant& v, const SeenFigure& seen, std::size_t figure) {
  const SetFigure& set = v.staging.figures[figure];
  OrderedJson out{{"name", v.name}, {"figures", figuresJson(v)}, {"seen", measuresJson(seen)}};
  out["set_figure"] = objectOf(set, true);
  return out;
}

}  // namespace

std::vector<std::string> factsOf(const PoseVariant& v, const PoseVariant& present) {
  const PoseFigures &f = v.figures, &p = present.figures;
  std::string balance = balanceInWords(f.balance);
  if (f.balance.judged && p.balance.judged)
    balance += changed(f.balance.marginM, p.balance.marginM, 100);
  const auto percent = [](const char* what, double now, double before) {
    return fmt::format("{} {:.0f} %{}", what, 100 * now, changed(now, before, 100));
  };
  std::vector<std::string> out{
      fmt::format("reads {:.0f}{}, {}", 100 * v.readability,
                  changed(v.readability, present.readability, 100),
                  percent("reach", f.reach, p.reach)),
      fmt::format("{}, tips {:.0f} of 5{}", percent("open", f.openness, p.openness), f.tipsSeen,
                  changed(f.tipsSeen, p.tipsSeen, 1)),
      percent("hands", f.handsSeen, p.handsSeen) + ", " + percent("face", f.faceSeen, p.faceSeen),
      balance};
  if (f.inFrame < 0.995)
    out.back() += fmt::format(", {:.0f} % in the frame{}", 100 * f.inFrame,
                              changed(f.inFrame, p.inFrame, 100));
  if (f.limbsInside > 0.02)
    out.push_back(fmt::format("{:.0f} % of the limbs inside something", 100 * f.limbsInside));
  return out;
}

Result<VariantsMade> makeVariants(const VariantsRequest& request) {
  auto asked = found(request);
  if (!asked) return tl::unexpected(asked.error());
  VariantsMade made{request, asked->figure, {}, {}, {}, {}, {}};
  const SetFigure& set = asked->panelOf().staging.figures[asked->figure];
  made.figure = nameOfCharacter(asked->open.job, set.who);
  made.pose = asked->workshop.stager.poses().orStand(set.pose).title;
  made.variants = poseVariants(asked->workshop.stager, asked->panelOf(), asked->beat, asked->figure,
                               request.keep);
  made.presentSeen = seenOf(*asked, made.variants.present);
  for (const PoseVariant& v : made.variants.kept) made.seen.push_back(seenOf(*asked, v));
  if (auto done = writePictures(made, *asked); !done) return tl::unexpected(done.error());
  if (auto done = take(made, *asked); !done) return tl::unexpected(done.error());
  return made;
}

std::string variantsJson(const VariantsMade& made) {
  OrderedJson out{{"page", made.request.page},
                  {"rough", made.request.rough},
                  {"panel", made.request.panel},
                  {"figure", made.figure},
                  {"tried", made.variants.tried},
                  {"present", variantJson(made.variants.present, made.presentSeen, made.index)}};
  OrderedJson list = OrderedJson::array();
  for (std::size_t i = 0; i < made.variants.kept.size(); ++i) {
    OrderedJson item{{"number", i + 1}};
    item.update(variantJson(made.variants.kept[i], made.seen[i], made.index));
    item["unlike"] = rounded(made.variants.kept[i].unlike, 4);
    list.push_back(std::move(item));
  }
  out["variants"] = std::move(list);
  if (made.request.take) out["taken"] = *made.request.take;
  return textOf(out);
}

}  // namespace tw
