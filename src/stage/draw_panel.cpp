// A panel's picture as an artist's rough.
//
// Words: a solid is a thing before the camera; its mask is where the picture shows it; the shadow
// side is where the key light falls flat or not at all.
//
//  1 Render once (who, part, depth, light).
//  2 Backdrop: sky, ground, water (set_lines).
//  3 Paper under all solids, so that they stand clear of dark grounds; set solids get the mood's
//    tone.
//  4 Tones: cast shadows on the ground, shadow sides, hair. Each is a field over the pixels, made
//    calm by blurring within its own solid, traced into smooth outlines (shade).
//  5 Lines: contours and creases of every solid, hidden ones removed (visible_lines), inked by the
//    pen; far things first. Faces last.
// The shadow map is made beside the picture, and a value plan beside the drawing: two cores help.
// Cost: about a render and a half plus some look-ups per pixel of line.
// Does badly: a lamp stands infinitely far away, so a lantern lights the whole panel from one side;
// cast shadows on the ground fall on level ground at height 0 only.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "base/parallel.h"
#include "geometry/polygon.h"
#include "stage/face_lines.h"
#include "stage/garment_lines.h"
#include "stage/pen.h"
#include "stage/picture.h"
#include "stage/rasterise.h"
#include "stage/refine.h"
#include "stage/set_lines.h"
#include "stage/shade.h"
#include "stage/shadow_map.h"
#include "stage/value_blacks.h"
#include "stage/visible_lines.h"

namespace tw {

namespace {

constexpr float kShadowBelow = 0.1f;  // light under this is the shadow side
constexpr double kLeastToneMm2 = 1.2;
constexpr double kFocusWeight = 1.22, kFigureWeight = 1.0, kPropWeight = 0.88, kSetWeight = 0.55;
constexpr float kRimShows = 0.5f;  // a rim light this strong keeps its edge white

/// Two pieces of work that know nothing of each other, on two cores.
template <class One, class Other>
void inParallel(const One& one, const Other& other) {
  parallelFor(2, 0, [&](std::size_t which) {
    if (which == 0) {
      one();
    } else {
      other();
    }
  });
}

/// The solids as they are drawn: cut to the frame, figures refined for their size on it, with
/// the normals of their surface.
std::vector<Solid> forDrawing(const std::vector<Solid>& solids, const Camera& camera, int width,
                              std::vector<std::vector<Vec3>>& light) {
  std::vector<Solid> out;
  for (const Solid& solid : solids) {
    Solid copy{.mesh = {},
               .figure = solid.figure,
               .prop = solid.prop,
               .isSet = solid.isSet,
               .isFocus = solid.isFocus,
               .head = solid.head,
               .look = solid.look};
    if (solid.figure >= 0) {
      FineBody fine = fineBody(solid.mesh, camera, width);
      copy.mesh = std::move(fine.surface);
      light.push_back(std::move(fine.light));
    } else {
      copy.mesh = solid.mesh;
      light.push_back(solid.mesh.normals);
    }
    out.push_back(std::move(copy));
  }
  return out;
}

class PanelArtist {
 public:
  PanelArtist(const std::vector<Solid>& solids, const Camera& camera, const Rect& frame,
              const DrawOptions& options, const Lighting& lighting)
      : all_(solids),
        solids_(forDrawing(solids, camera, options.width, lightNormals_)),
        camera_(camera),
        options_(options),
        mood_(moodOf(options.setting)),
        lighting_(lighting),
        light_(towardLamp(lighting.key, camera)),
        picture_(renderLit()),
        view_{picture_, camera_, frame},
        windows_(windowsOf(picture_, solids_.size())),
        partWindows_(partWindowsOf(picture_, windows_)),
        ordinaryDepth_(findOrdinaryDepth()) {
    if (options.shadows && mood_.castShadows)
      groundShadow_ = groundShadow(solids, camera, light_, picture_);
  }

  std::size_t marks() const { return marks_; }

  ValuePlan plan(const Polygon& panel) const {
    return valuePlanOf({solids_, view_, others_, groundShadow_, mood_, lighting_}, panel);
  }

  Drawing draw(const Polygon& panel) {
    out_.clip = {panel};
    SetDrawing backdrop;
    if (options_.setLines) backdrop = setLines(view_, mood_, lineMm());
    out_.tones = std::move(backdrop.tones);
    addGrounds();
    if (options_.shadows && mood_.castShadows) addCastShadows();
    addCostumes(0, mood_.figureShade);
    if (options_.shadows) {
      addShadowSide(true, mood_.setShade);
      addShadowSide(false, mood_.figureShade);
    }
    addCostumes(mood_.figureShade, 1);
    out_.strokes = std::move(backdrop.strokes);
    for (const std::size_t i : farFirst()) addLines(i);
    marks_ = out_.tones.size();
    for (std::size_t i = 0; i < solids_.size(); ++i) addFace(i);
    std::erase_if(out_.strokes, [&](const Stroke& s) { return liesOutside(s, panel); });
    return std::move(out_);
  }

 private:
  /// As render(), shaded by the calmed normals; then what stands in the key's way takes its light.
  Picture renderLit() {
    const Viewport view = frameViewport(camera_, options_.width);
    Picture picture = blankPicture(view);
    others_.assign(picture.light.size(), 0);
    std::optional<ShadowMap> map;
    inParallel(
        [&] {
          for (std::size_t i = 0; i < solids_.size(); ++i)
            rasterise(solids_[i].mesh, pointLight(lightNormals_[i]),
                      solids_[i].figure >= 0 ? Faces::TowardEye : Faces::All, static_cast<int>(i),
                      camera_, view, picture, others_);
        },
        [&] {
          if (options_.shadows) map.emplace(all_, light_);
        });
    if (map) map->darken(solids_, camera_, picture);
    return picture;
  }

  PointLight pointLight(const std::vector<Vec3>& normals) const {
    const Vec3 fill = towardLamp(lighting_.fill, camera_), rim = towardLamp(lighting_.rim, camera_);
    PointLight light;
    light.key.reserve(normals.size());
    light.others.reserve(normals.size());
    for (const Vec3& n : normals) {
      light.key.push_back(static_cast<float>(n.dot(light_)));
      light.others.push_back(
          static_cast<float>(lighting_.fill.strength * std::max(0.0, n.dot(fill)) +
                             lighting_.rim.strength * std::max(0.0, n.dot(rim))));
    }
    return light;
  }

  /// Nothing of the stroke would be left by the panel's clip, or only its run-out.
  static bool liesOutside(const Stroke& stroke, const Polygon& panel) {
    return std::none_of(stroke.points.begin(), stroke.points.end(),
                        [&](Point p) { return contains(panel, p); });
  }

  /// Millimetres on the page of a metre at the depth that counts as ordinary.
  double mmPerM() const {
    return camera_.intrinsics()(0, 0) * view_.frame.width() / ordinaryDepth_;
  }

  /// Small panels and small figures are drawn with a finer pen.
  double lineMm() const {
    const double panel = std::pow(std::sqrt(view_.frame.area()) / 75, 0.2);
    const double headMm = 0.23 * mmPerM();
    return options_.lineMm * std::clamp(panel * std::pow(headMm / 10, 0.42), 0.42, 1.3);
  }

  int blurPx(double mm) const {
    return std::max(1, static_cast<int>(std::lround(mm / view_.mmPerPx())));
  }

  const Solid& solidAt(std::size_t pixel) const {
    return solids_[static_cast<std::size_t>(picture_.solid[pixel])];
  }

  /// Around all solids that are set, or all that are not.
  Window windowOf(bool set) const {
    Window all;
    for (std::size_t i = 0; i < solids_.size(); ++i)
      if (solids_[i].isSet == set) all = around(all, windows_[i]);
    return all;
  }

  Field maskOf(bool set) const {
    return fieldOf(picture_, windowOf(set), [&](std::size_t i) {
      return picture_.solid[i] >= 0 && solidAt(i).isSet == set ? 1.f : 0.f;
    });
  }

  void addTone(Region region, double darkness) {
    if (!region.empty()) out_.tones.push_back({std::move(region), darkness});
  }

  /// Traces where a mask of zeros and ones is set, its stairs smoothed.
  Region shapeOf(const Field& mask, double leastMm2, double smoothMm = 0.2) const {
    return traced(blurred(mask, 1), view_, {0.5f, leastMm2, smoothMm});
  }

  void addGrounds() {
    const bool darkBehind = mood_.skyDark > 0 || mood_.groundDark > 0;
    if (darkBehind || mood_.setDark > 0) {
      addTone(shapeOf(maskOf(true), kLeastToneMm2), mood_.setDark);
      addTone(shapeOf(maskOf(false), kLeastToneMm2), 0);
    }
  }

  /// Forms are about a hand's breadth; what varies faster is the mesh, not the body.
  void addShadowSide(bool ofSet, double darkness) {
    const Field ours = maskOf(ofSet);
    const double calmMm = ofSet ? 0.3 : std::clamp(0.011 * mmPerM(), 0.35, 3.0);
    const bool rim = lighting_.rim.strength > 0;
    Field light = fieldOf(picture_, ours.window, [&](std::size_t i) {
      return rim && others_[i] > kRimShows ? 1.f : picture_.light[i];
    });
    light = blurredWithin(light, ours, blurPx(calmMm));
    Field shade = fieldOver(ours.window);
    // A soft threshold: half-way exactly at kShadowBelow, so that tracing is finer than a pixel.
    for (std::size_t i = 0; i < shade.value.size(); ++i)
      shade.value[i] =
          ours.value[i] * std::clamp(0.5f + (kShadowBelow - light.value[i]) * 6.f, 0.f, 1.f);
    const double least = std::max(kLeastToneMm2, std::pow(0.025 * mmPerM(), 2));
    addTone(traced(shade, view_, {0.5f, least, std::clamp(calmMm, 0.4, 1.2)}), darkness);
  }

  /// Hair and costume whose value lies above `over`, up to `upTo`. Parts of one value are one
  /// area, so that no seam of paper shows between them.
  void addCostumes(double over, double upTo) {
    for (std::size_t i = 0; i < solids_.size(); ++i) {
      if (solids_[i].figure < 0) continue;
      const PartValues values = valuesOf(solids_[i].look);
      PartValues left = values;
      for (const double value : values) {
        if (value <= over || value > upTo) continue;
        if (std::find(left.begin(), left.end(), value) == left.end()) continue;
        std::replace(left.begin(), left.end(), value, 0.0);
        addCostume(i, value, values);
      }
    }
  }

  void addCostume(std::size_t solid, double value, const PartValues& values) {
    Window window;
    for (std::size_t part = 0; part < values.size(); ++part)
      if (values[part] == value) window = around(window, partWindows_[solid][part]);
    if (window.width == 0) return;
    const Field mask = fieldOf(picture_, window, [&](std::size_t at) {
      const bool ours = picture_.solid[at] == static_cast<std::int16_t>(solid);
      return ours && values[picture_.part[at]] == value ? 1.f : 0.f;
    });
    addTone(shapeOf(mask, 0.3), value);
  }

  void addGroundTone(const Field& mask, double darkness) {
    Picture half;
    half.width = std::max(1, options_.width / 2);
    half.height = frameViewport(camera_, half.width).height;
    const PanelView view{half, camera_, view_.frame};
    addTone(traced(blurred(mask, 1), view, {0.5f, kLeastToneMm2, 0.4}), darkness);
  }

  void addCastShadows() {
    addGroundTone(groundShadow_, castDarkness());
    addGroundTone(contactShadow(all_, camera_, picture_), contactDarkness());
  }

  double contactDarkness() const { return std::min(1.0, castDarkness() + 0.3); }
  double castDarkness() const { return std::min(0.9, mood_.figureShade + 0.14); }

  double middleDepth(std::size_t i) const {
    const auto& points = solids_[i].mesh.points;
    double sum = 0;
    for (const Vec3& p : points) sum += camera_.depth(p);
    return points.empty() ? 0 : sum / static_cast<double>(points.size());
  }

  std::vector<std::size_t> farFirst() const {
    std::vector<std::pair<double, std::size_t>> order;
    for (std::size_t i = 0; i < solids_.size(); ++i) order.emplace_back(-middleDepth(i), i);
    std::sort(order.begin(), order.end());
    std::vector<std::size_t> out;
    for (const auto& [depth, i] : order) out.push_back(i);
    return out;
  }

  /// Depth that counts as ordinary: of the focus, else of the nearest figure.
  double findOrdinaryDepth() const {
    double best = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < solids_.size(); ++i) {
      if (solids_[i].isFocus) return std::max(0.3, middleDepth(i));
      if (solids_[i].figure >= 0) best = std::min(best, std::max(0.3, middleDepth(i)));
    }
    return std::isfinite(best) ? best : 4;
  }

  Pen penFor(const Solid& solid) const {
    Pen pen;
    pen.baseMm = lineMm();
    pen.weight = solid.isFocus       ? kFocusWeight
                 : solid.figure >= 0 ? kFigureWeight
                 : solid.isSet       ? kSetWeight
                                     : kPropWeight;
    const Vec3 seen = camera_.rotation() * light_;
    pen.towardLight = Vector{seen.x(), seen.y()};
    pen.middleDepth = ordinaryDepth_;
    return pen;
  }

  void addLines(std::size_t i) {
    const Pen pen = penFor(solids_[i]);
    for (const SeenLine& line : visibleLines(solids_[i], static_cast<int>(i), view_))
      if (auto stroke = inked(line, pen)) out_.strokes.push_back(std::move(*stroke));
  }

  void addFace(std::size_t i) {
    for (Stroke& stroke : drawnGarments(all_[i], static_cast<int>(i), view_, lineMm()))
      out_.strokes.push_back(std::move(stroke));
    FaceDrawing face = faceLines(solids_[i], static_cast<int>(i), view_, lineMm());
    for (Tone& tone : face.tones) out_.tones.push_back(std::move(tone));
    for (Stroke& stroke : face.strokes) out_.strokes.push_back(std::move(stroke));
  }

  const std::vector<Solid>& all_;  ///< as given: for shadows of what the frame cuts off
  std::vector<std::vector<Vec3>> lightNormals_;  ///< of solids_, to shade by
  const std::vector<Solid> solids_;              ///< as drawn
  const Camera& camera_;
  const DrawOptions& options_;
  Mood mood_;
  const Lighting& lighting_;
  Vec3 light_;                 ///< toward the key
  std::vector<float> others_;  ///< light of the other lamps, per pixel
  Picture picture_;
  PanelView view_;
  std::vector<Window> windows_;           ///< where each solid is seen
  std::vector<PartWindows> partWindows_;  ///< where each part of it is seen
  double ordinaryDepth_;
  Field groundShadow_;
  std::size_t marks_ = 0;  ///< where the tones of faces begin
  Drawing out_;
};

}  // namespace

Vec3 keyLight(const Camera& camera) {
  return towardLamp(Lamp{}, camera);
}

Drawing drawPanel(const std::vector<Solid>& solids, const Camera& camera, const Rect& frame,
                  const Polygon& panel, const DrawOptions& options) {
  return drawLitPanel(solids, camera, frame, panel, options, Lighting{});
}

Drawing drawLitPanel(const std::vector<Solid>& solids, const Camera& camera, const Rect& frame,
                     const Polygon& panel, const DrawOptions& options, const Lighting& light) {
  return PanelArtist(solids, camera, frame, options, light).draw(panel);
}

PlannedPanel drawWithValues(const std::vector<Solid>& solids, const Camera& camera,
                            const Rect& frame, const Polygon& panel, const DrawOptions& options,
                            const Lighting& light) {
  PanelArtist artist(solids, camera, frame, options, light);
  ValuePlan plan;
  Drawing drawing;
  // Both only look at what the artist has rendered.
  inParallel([&] { drawing = artist.draw(panel); }, [&] { plan = artist.plan(panel); });
  return {std::move(drawing), std::move(plan), artist.marks()};
}

}  // namespace tw
