#include <algorithm>
#include <optional>

#include "geometry/polygon.h"
#include "stage/blocking.h"
#include "stage/exact_measures.h"
#include "stage/frame_camera.h"
#include "stage/held_props.h"
#include "stage/light_wish.h"
#include "stage/panel_light.h"
#include "stage/perspective_grid.h"
#include "stage/prop_mesh.h"
#include "stage/quick_measures.h"
#include "stage/set_pieces.h"
#include "stage/set_words.h"
#include "stage/solid_shapes.h"
#include "stage/staging.h"
#include "stage/variants.h"
#include "stage/wardrobe.h"

namespace tw {
namespace {

constexpr double kLookDetail = 0.5;
constexpr double kSmallestRank = 0.5;  // a focus half as big as somebody else is lost
constexpr double kHopeless = 0.8;  // cut cost at which a variant is not worth a place in the list

FrameWish wishOf(const StageRequest& request, const StagingChoice& choice) {
  return {choice,
          request.aspect,
          request.airShare,
          request.wholeFigure,
          runsLeftward(request, choice),
          request.keepInside};
}

bool isHopeless(const Variant& v) {
  return v.cutCost >= kHopeless || v.visible < 0.12 || v.focusRank < kSmallestRank ||
         v.focus.x < 0 || v.focus.x > 1 || v.focus.y < 0 || v.focus.y > 1;
}

/// The script already gave the figure something to sit on.
bool sitsOnProp(const Beat& beat, const std::string& who) {
  return std::any_of(beat.figures.begin(), beat.figures.end(), [&](const BeatFigure& f) {
    const bool on = f.relation == "sits on" || f.relation == "sits in";
    return f.who == who && on && !f.target.empty();
  });
}

Body dressed(const Character& character, const LookHeld& held, const Wardrobe& wardrobe) {
  Body body = bodyOf(character);
  body.look = wardrobe.lookOf(character, held);
  return body;
}

}  // namespace

struct Stager::Impl {
  Cast cast;
  PoseLibrary poses;
  JointLimits limits;
  LightWords lights;
  std::map<std::string, Cast> dressed;  ///< by beat, where somebody looks otherwise than usual
  Models models;

  const Cast& castFor(const std::string& beat) const {
    const auto found = dressed.find(beat);
    return found == dressed.end() ? cast : found->second;
  }

  /// The request or beat with sizes as models have them; `own` keeps what had to be changed.
  const Beat& sized(const Beat& beat, std::optional<Beat>& own) const {
    if (!hasModel(beat, models)) return beat;
    own = sizedByModels(beat, models);
    return *own;
  }
  StageRequest sized(StageRequest request, std::optional<Beat>& own) const {
    ensure(request.beat != nullptr, "a stage request needs a beat");
    request.beat = &sized(*request.beat, own);
    return request;
  }

  Variant measured(const StageRequest& request, const StagingChoice& choice) const {
    const Scene scene = blocked(request, choice, castFor(request.beat->id), poses);
    return quicklyMeasured(request, choice, scene, framedCamera(scene, wishOf(request, choice)));
  }
};

Stager::Stager(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Stager::Stager(Stager&&) noexcept = default;
Stager::~Stager() = default;

Result<Stager> Stager::make(const std::vector<Character>& cast, Models models) {
  auto poses = PoseLibrary::load();
  if (!poses) return tl::unexpected(poses.error());
  auto lights = LightWords::load();
  if (!lights) return tl::unexpected(lights.error());
  const auto wardrobe = Wardrobe::load();
  if (!wardrobe) return tl::unexpected(wardrobe.error());
  auto limits = JointLimits::load();
  if (!limits) return tl::unexpected(limits.error());
  auto impl = std::make_unique<Impl>();
  impl->poses = std::move(*poses);
  impl->limits = std::move(*limits);
  impl->lights = std::move(*lights);
  impl->cast.stranger = dressed(Character{}, {}, *wardrobe);
  for (const Character& character : cast)
    impl->cast.bodies[character.id] = dressed(character, {}, *wardrobe);
  impl->models = std::move(models);
  return Stager(std::move(impl));
}

Result<Stager> Stager::make(const Job& job, Models models) {
  auto stager = make(job.cast, std::move(models));
  if (!stager) return stager;
  const auto words = LookWords::load();
  if (!words) return tl::unexpected(words.error());
  const auto wardrobe = Wardrobe::load();
  if (!wardrobe) return tl::unexpected(wardrobe.error());
  const StoryTime story(job);
  for (const Character& character : job.cast) {
    const LooksAlong looks(character, story, *words);
    LookHeld before;
    Body body;
    for (std::size_t m = 0; m < story.moments().size(); ++m) {
      LookHeld held = looks.at(m);
      if (held.dressings.empty() && held.marks.empty()) continue;
      if (held != before) {
        body = dressed(character, held, *wardrobe);
        before = std::move(held);
      }
      auto& casts = stager->impl_->dressed;
      Cast& cast =
          casts.try_emplace(story.moments()[m].beat->id, stager->impl_->cast).first->second;
      cast.bodies[character.id] = body;
    }
  }
  return stager;
}

std::vector<Variant> Stager::variants(const StageRequest& asked, std::size_t most) const {
  std::optional<Beat> own;
  const StageRequest request = impl_->sized(asked, own);
  most = std::max<std::size_t>(most, 1);
  std::vector<Variant> kept, hopeless;
  for (const StagingChoice& choice : choicesFor(request, most + most / 2)) {
    if (kept.size() >= most) break;
    Variant v = impl_->measured(request, choice);
    if (isHopeless(v) && !kept.empty()) {
      hopeless.push_back(std::move(v));
    } else {
      kept.push_back(std::move(v));
    }
  }
  for (Variant& v : hopeless) {
    if (kept.size() < std::min<std::size_t>(most, 8)) kept.push_back(std::move(v));
  }
  return kept;
}

Variant Stager::measured(const StageRequest& request, const StagingChoice& choice) const {
  std::optional<Beat> own;
  return impl_->measured(impl_->sized(request, own), choice);
}

Staging Stager::solved(const StageRequest& asked, const StagingChoice& choice) const {
  std::optional<Beat> own;
  const StageRequest request = impl_->sized(asked, own);
  const Scene scene = blocked(request, choice, impl_->castFor(request.beat->id), impl_->poses);
  Staging staging;
  staging.choice = choice;
  staging.camera = framedCamera(scene, wishOf(request, choice));
  for (const Actor& actor : scene.actors) staging.figures.push_back(actor.set);
  staging.props = scene.props;
  staging.light = setLightOf(lightOf(*request.beat, impl_->lights));
  return staging;
}

std::vector<Solid> Stager::solidsOf(const Staging& staging, const Beat& scripted,
                                    double detail) const {
  std::optional<Beat> own;
  const Beat& beat = impl_->sized(scripted, own);
  std::vector<Solid> solids, seats;
  for (std::size_t i = 0; i < staging.figures.size(); ++i) {
    const SetFigure& set = staging.figures[i];
    const Body& body = impl_->castFor(beat.id).of(set.who);
    const Pose& pose = impl_->poses.orStand(set.pose);
    const Skeleton skeleton = posed(body, pose, set);
    Solid solid;
    solid.mesh = bodyMesh(body, skeleton, detail);
    solid.figure = static_cast<int>(i);
    dress(solid, body, skeleton, detail > kLookDetail);
    solids.push_back(std::move(solid));
    if (pose.seat <= 0 || sitsOnProp(beat, set.who)) continue;
    Solid seat;
    const double high = pose.seat * body.stature;
    const Vec3 under = skeleton[Joint::Pelvis];
    seat.mesh =
        placed(boxMesh({0.46, high, 0.42}), {under.x(), set.at.y, under.z()}, set.headingDeg);
    seats.push_back(std::move(seat));
  }
  for (std::size_t i = 0; i < staging.props.size(); ++i) {
    for (std::size_t k = 0; k < beat.props.size(); ++k) {
      if (beat.props[k].id != staging.props[i].prop) continue;
      Solid solid;
      const auto passer = passerOf(beat, k);
      const bool known = passer && *passer < staging.figures.size();
      const double floor = known ? staging.figures[*passer].at.y : 0;
      const auto model = impl_->models.find(modelNameFor(beat.props[k], impl_->models));
      const bool modelled = model != impl_->models.end();
      solid.mesh =
          propMesh(beat, k, staging.props[i], floor, modelled ? &model->second : nullptr, detail);
      solid.isSet = !modelled && isBuilt(beat.props[k]);
      solid.prop = static_cast<int>(i);
      solid.isFocus = staging.figures.empty() && k == 0;
      solids.push_back(std::move(solid));
    }
  }
  std::move(seats.begin(), seats.end(), std::back_inserter(solids));
  auto set = setSolids(beat, staging.camera, runsLeftward(staging), detail);
  std::move(set.begin(), set.end(), std::back_inserter(solids));
  return solids;
}

void Stager::look(RoughPanel& panel, const Beat& beat, const std::string& focus, int width,
                  LookFor what) const {
  std::optional<Beat> own;
  const Scene scene = sceneOf(panel.staging, beat, focus);
  lookExactly(panel, impl_->sized(beat, own), scene, solidsOf(panel.staging, beat, kLookDetail),
              lightOf(panel.staging, beat, impl_->lights), width, what);
}

Drawing Stager::draw(const RoughPanel& panel, const Beat& beat, const std::string& focus,
                     const DrawOptions& options) const {
  const Rect frame = frameOf(panel.outline);
  DrawOptions own = options;
  if (own.setting.empty()) own.setting = beat.setting;
  return drawLitPanel(drawnSolids(*this, panel, beat, focus),
                      Camera(panel.staging.camera, frame.width() / frame.height()), frame,
                      panel.outline, own, lightOf(panel.staging, beat, impl_->lights));
}

Scene Stager::sceneOf(const Staging& staging, const Beat& beat, const std::string& focus) const {
  std::optional<Beat> own;
  return tw::sceneOf(staging, impl_->sized(beat, own), focus, impl_->castFor(beat.id),
                     impl_->poses);
}

const JointLimits& Stager::limits() const {
  return impl_->limits;
}

const Body& Stager::bodyOf(const std::string& who, const std::string& beat) const {
  return impl_->castFor(beat).of(who);
}

PerspectiveGrid Stager::grid(const RoughPanel& panel, const std::string& focus) const {
  const Rect frame = frameOf(panel.outline);
  const CameraPlace& place = panel.staging.camera;
  Vec3 through(0, 0, 0);
  for (const SetFigure& figure : panel.staging.figures)
    if (figure.who == focus || &figure == &panel.staging.figures.front())
      through = {figure.at.x, 0, figure.at.z};
  return perspectiveGrid(Camera(place, frame.width() / frame.height()), place, through, frame,
                         panel.outline);
}

const PoseLibrary& Stager::poses() const {
  return impl_->poses;
}

Rect frameOf(const Polygon& panelOutline) {
  return bounds(panelOutline);
}

}  // namespace tw
