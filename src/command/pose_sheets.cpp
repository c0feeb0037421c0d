#include "command/pose_sheets.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>

#include "base/parallel.h"
#include "press/pose_sheet.h"
#include "stage/balance.h"
#include "stage/joint_limits.h"
#include "stage/pair_pose.h"
#include "stage/pose_picture.h"
#include "stage/wardrobe.h"

namespace tw {

namespace {

constexpr double kMmPerMetre = 15.6, kGroundMm = 2.6;
constexpr double kPairMmPerMetre = 23, kPairGroundMm = 5;

/// The two who stand model, plainly dressed.
struct Models {
  Body her, him, child;
};

Result<Models> models() {
  const auto wardrobe = Wardrobe::load();
  if (!wardrobe) return tl::unexpected(wardrobe.error());
  const auto dressed = [&](Sex sex, double height, double years, const char* note) {
    Character who;
    who.id = "model";
    who.sex = sex;
    who.heightM = height;
    who.ageYears = years;
    who.build = years > 0 ? "child" : "medium";
    who.note = note;
    Body body = bodyOf(who);
    body.look = wardrobe->lookOf(who);
    return body;
  };
  return Models{dressed(Sex::Female, 1.68, 0, "jersey, trousers, hair in a bun"),
                dressed(Sex::Male, 1.78, 0, "shirt, trousers, black hair"),
                dressed(Sex::Female, 1.0, 4, "jersey, trousers, bob")};
}

SetFigure standingAt(const std::string& pose, double headingDeg) {
  return {"model", pose, false, {0, 0, 0}, headingDeg, 0, {}};
}

std::string noteOf(const Pose& pose) {
  return pose.held.empty() ? "" : "held up " + pose.held;
}

/// A pose that only suits children is shown with one.
const Body& secondOf(const PairPose& pair, const Models& who) {
  return pair.mostShare < 0.9 ? who.child : who.her;
}

std::vector<PosedFigure> pairOf(const PairPose& pair, const Models& who, double headingDeg) {
  const Body& second = secondOf(pair, who);
  const auto sets = paired(pair, who.him, second, standingAt(pair.poses[0].name, headingDeg));
  return {{who.him, pair.poses[0], sets[0]}, {second, pair.poses[1], sets[1]}};
}

PoseFact factOf(const Pose& pose, const Body& body, const JointLimits& limits) {
  const Skeleton skeleton = posed(body, pose, standingAt(pose.name, 0));
  PoseFact fact{pose.name, pose.title, pose.line, pose.support, {}, beyondReach(pose, limits)};
  fact.balance =
      pose.held.empty() ? balanceOf(body, pose, skeleton, 0).label : "held up " + pose.held;
  return fact;
}

PoseFact factOf(const PairPose& pair, const Models& who, const JointLimits& limits) {
  PoseFact fact{pair.name, pair.title, pair.poses[0].line, pair.roles[0] + ", " + pair.roles[1],
                {},        {}};
  const Body& second = secondOf(pair, who);
  const auto sets = paired(pair, who.him, second, standingAt(pair.poses[0].name, 0));
  double widest = 0;
  for (const double gap : contactGaps(pair, who.him, second, sets)) widest = std::max(widest, gap);
  fact.balance = pair.holds.empty() ? "no hand on the other"
                                    : fmt::format("hands within {:.1f} cm", 100 * widest);
  for (std::size_t i = 0; i < 2; ++i)
    for (const std::string& joint : beyondReach(withTurns(pair.poses[i], sets[i].turnsDeg), limits))
      fact.beyond.push_back(pair.roles[i] + ": " + joint);
  return fact;
}

/// The sheet without its pictures, and who is in each.
struct Plan {
  PoseSheet sheet;
  std::vector<std::vector<PosedFigure>> figures;
  double mmPerMetre = kMmPerMetre, groundMm = kGroundMm;
};

Plan planOf(const PoseLibrary& poses, const Models& who) {
  Plan plan;
  for (const std::string& name : poses.names()) {
    const Pose& pose = *poses.find(name);
    const Body& body = plan.figures.size() % 2 == 0 ? who.her : who.him;
    plan.figures.push_back({{body, pose, standingAt(name, pose.viewDeg)}});
    plan.sheet.cells.push_back({name, pose.title, noteOf(pose), {}, {}});
  }
  plan.sheet.title = "Poses";
  plan.sheet.about = fmt::format("{} poses, each also mirrored", plan.figures.size());
  return plan;
}

Plan planOfPairs(const PoseLibrary& poses, const Models& who) {
  Plan plan;
  for (const PairPose& pair : poses.pairs()) {
    plan.figures.push_back(pairOf(pair, who, pair.viewDeg));
    plan.sheet.cells.push_back(
        {pair.name, pair.title, pair.roles[0] + ", " + pair.roles[1], {}, {}});
  }
  plan.sheet.title = "Poses for two";
  plan.sheet.about = fmt::format("{} poses, each also mirrored", plan.figures.size());
  plan.sheet.columns = 4;
  plan.sheet.cellWide = 62;
  plan.sheet.pictureHigh = 54;
  plan.mmPerMetre = kPairMmPerMetre;
  plan.groundMm = kPairGroundMm;
  return plan;
}

Result<void> drawCells(Plan& plan, unsigned threads, Progress& progress) {
  const Rect frame{{0, 0}, {plan.sheet.cellWide, plan.sheet.pictureHigh}};
  std::atomic<std::size_t> done{0};
  parallelFor(plan.figures.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    PosePicture picture = posePicture(plan.figures[i], frame, plan.mmPerMetre, plan.groundMm);
    plan.sheet.cells[i].drawing = std::move(picture.drawing);
    plan.sheet.cells[i].actions = std::move(picture.actions);
    progress.tell("drawing",
                  static_cast<double>(++done) / static_cast<double>(plan.figures.size()));
  });
  if (progress.isStopped()) return stopped();
  return {};
}

}  // namespace

Result<std::vector<PoseFact>> poseFacts(bool pairs) {
  const auto poses = PoseLibrary::load();
  if (!poses) return tl::unexpected(poses.error());
  const auto limits = JointLimits::load();
  if (!limits) return tl::unexpected(limits.error());
  const auto who = models();
  if (!who) return tl::unexpected(who.error());
  std::vector<PoseFact> out;
  if (pairs) {
    for (const PairPose& pair : poses->pairs()) out.push_back(factOf(pair, *who, *limits));
    return out;
  }
  for (const std::string& name : poses->names())
    out.push_back(factOf(*poses->find(name), who->her, *limits));
  return out;
}

Result<void> writePoseSheets(const PoseSheetRequest& request, Progress& progress) {
  const auto poses = PoseLibrary::load();
  if (!poses) return tl::unexpected(poses.error());
  const auto who = models();
  if (!who) return tl::unexpected(who.error());
  Plan plan = request.pairs ? planOfPairs(*poses, *who) : planOf(*poses, *who);
  if (auto drawn = drawCells(plan, request.threads, progress); !drawn) return drawn;
  for (const std::filesystem::path& file : request.files)
    if (auto done = writePoseSheet(file, plan.sheet, request.dpi); !done) return done;
  return {};
}

}  // namespace tw
