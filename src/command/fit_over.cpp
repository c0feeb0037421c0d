// The figure over the border, into neighbours.
//
// Words: home is the figure's own panel; tender places are faces and balloons of the other panels
// and what the brief wants kept clear. What the figure hauls (a chain, a rope) does not stand over
// the border: it runs out of the picture, cut by it.
//
// 1 The page is labelled on a grid of 1 mm: whose panel, tender or not. The figure becomes points,
//   each standing for the same area of it; what it hauls becomes points too.
// 2 From the largest scale that the live area allows downward, by 2 % at a time, all places on a
//   grid are tried: no point on a tender place, at least half of the points at home, no neighbour
//   covered by more than a fifth, enough of what it hauls at home. The first scale with such a
//   place is then raised again by halving what lies between it and the one before.
// 3 When the brief asks for a head height that this scale reaches, a figure with just that head is
//   placed instead: more would cover more for nothing.
// 4 Of the places at the chosen scale the one that covers least of other panels is kept, then the
//   one nearest to where the figure is whole in its panel. All figures told are measured anew on
//   the outlines; while they break a limit the scale goes down by 1 %.
// Cost: some tenths of a second. Does badly: a grid of 2 mm may miss a place that is just free, so
// a larger scale may exist; it is bounded by the live area and by the half that stays at home.
#include <algorithm>
#include <cmath>

#include "command/fit_room.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kCellMm = 1;
constexpr double kDown = 0.98, kDownExact = 0.99;
constexpr double kAirMm = 0.5;  // around balloons and faces
constexpr int kFigurePoints = 600, kHauledPoints = 150;
constexpr std::int8_t kNobody = -1, kTender = -2;

double sharedArea(const std::vector<Polygon>& figure, const Region& region) {
  return area(common(figure, region));
}

class Labels {
 public:
  explicit Labels(const Rect& page)
      : page_(page),
        width_(static_cast<int>(std::ceil(page.width() / kCellMm)) + 1),
        height_(static_cast<int>(std::ceil(page.height() / kCellMm)) + 1),
        label_(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_), kNobody) {}

  void paint(const Region& region, std::int8_t label) {
    const Rect box = bounds(region);
    for (int y = 0; y < height_; ++y)
      for (int x = 0; x < width_; ++x) {
        const Point p = page_.min + Vector{(x + 0.5) * kCellMm, (y + 0.5) * kCellMm};
        if (box.contains(p) && contains(region, p)) label_[index(x, y)] = label;
      }
  }
  std::int8_t at(Point p) const {
    const int x = static_cast<int>((p.x - page_.min.x) / kCellMm);
    const int y = static_cast<int>((p.y - page_.min.y) / kCellMm);
    if (x < 0 || y < 0 || x >= width_ || y >= height_) return kTender;
    return label_[index(x, y)];
  }
  double cells(std::int8_t label) const {
    return static_cast<double>(std::count(label_.begin(), label_.end(), label));
  }

 private:
  std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
           static_cast<std::size_t>(x);
  }
  Rect page_;
  int width_, height_;
  std::vector<std::int8_t> label_;
};

/// Places spread evenly over the silhouette.
std::vector<Point> pointsIn(const std::vector<Polygon>& shapes, int count) {
  const double step = std::sqrt(silhouetteArea(shapes) / count);
  std::vector<Point> out;
  for (const Polygon& shape : shapes) {
    const Rect box = bounds(shape);
    for (double y = box.min.y + step / 2; y < box.max.y; y += step)
      for (double x = box.min.x + step / 2; x < box.max.x; x += step)
        if (contains(shape, {x, y})) out.push_back({x, y});
  }
  return out;
}

class Running {
 public:
  Running(const FitAnswers& asked, const FitRequest& request, const std::vector<KeepClear>& clear)
      : asked_(asked),
        request_(request),
        home_(static_cast<std::size_t>(request.panel - 1)),
        live_(asked.sheet.liveRect(asked.rightHand)),
        labels_(live_),
        all_(silhouetteArea(asked.figure.ownShapes)) {
    label(clear);
    box_ = bounds(Region(asked.figure.ownShapes));
    points_ = pointsIn(asked.figure.ownShapes, kFigurePoints);
    hauled_ = pointsIn(asked.figure.hauled, kHauledPoints);
  }

  std::optional<OverAnswer> run() {
    const double least = (asked_.whole ? asked_.whole->fit.scale : 0.05) * kNoGain;
    OverAnswer out;
    out.boundScale = mostScale();
    auto found = largest(out.boundScale, least);
    if (!found) return {};
    out.largestScale = found->scale;
    out.why = "largest that covers no face, no balloon and no more than a fifth of a neighbour";
    if (!hauled_.empty()) out.why += ", with what it hauls still seen";
    const double wanted = asked_.wantedHeadMm / asked_.figure.headMm;
    if (wanted > least && wanted < found->scale)
      if (const auto there = bestPlace(wanted)) {
        found = there;
        out.why = "just the head that the brief asks for";
      }
    return measured(std::move(out), *found, least);
  }

 private:
  std::optional<Fit> largest(double most, double least) const {
    double above = most;
    for (double scale = most; scale >= least; above = scale, scale *= kDown) {
      auto found = bestPlace(scale);
      if (!found) continue;
      while (above > found->scale * (1 + kOverScaleStep)) {
        const double middle = (above + found->scale) / 2;
        const auto there = bestPlace(middle);
        if (there) {
          found = there;
        } else {
          above = middle;
        }
      }
      return found;
    }
    return {};
  }

  void label(const std::vector<KeepClear>& clear) {
    const auto& panels = asked_.roughPage.panels;
    for (const bool ground : {true, false})
      for (std::size_t i = 0; i < panels.size(); ++i)
        if (panels[i].ground == ground)
          labels_.paint({panels[i].outline}, static_cast<std::int8_t>(i));
    for (std::size_t i = 0; i < panels.size(); ++i)
      cells_.push_back(std::max(1.0, labels_.cells(static_cast<std::int8_t>(i))));
    for (std::size_t i = 0; i < panels.size(); ++i) {
      if (i == home_) continue;
      for (const SeenFigure& f : panels[i].figures)
        if (!f.face.points.empty()) addTender(common({f.face}, {panels[i].outline}));
      for (const PlacedBalloon& b : panels[i].balloons)
        if (!b.outline.points.empty()) addTender({b.outline});
    }
    for (const KeepClear& k : clear) addTender({polygonOf(k.rect)});
  }
  void addTender(const Region& region) { labels_.paint(offset(region, kAirMm), kTender); }

  /// No larger one: the live area holds the figure, and its own panel the half that stays there.
  double mostScale() const {
    const double room = 2 * request_.marginMm;
    const double home = area(visibleOutline(asked_.roughPage, home_));
    return std::min({(live_.width() - room) / box_.width(), (live_.height() - room) / box_.height(),
                     std::sqrt(home / (kLeastAtHome * all_))});
  }

  bool showsHauled(const Fit& fit) const {
    const auto home = std::count_if(hauled_.begin(), hauled_.end(), [&](Point p) {
      return labels_.at(fit.placed(p)) == static_cast<std::int8_t>(home_);
    });
    return static_cast<double>(home) >= kLeastHauled * static_cast<double>(hauled_.size());
  }

  /// Covered area of other panels in points, or nothing when a limit is broken.
  std::optional<double> priceAt(double scale, bool mirror, Vector move) const {
    std::vector<double> on(cells_.size(), 0);
    double home = 0, covered = 0;
    for (const Point& p : points_) {
      const auto label = labels_.at({(mirror ? -p.x : p.x) * scale + move.x, p.y * scale + move.y});
      if (label == kTender) return {};
      if (label == kNobody) continue;
      const auto i = static_cast<std::size_t>(label);
      if (i == home_) {
        home += 1;
      } else {
        on[i] += 1;
      }
    }
    const auto count = static_cast<double>(points_.size());
    if (home < kLeastAtHome * count) return {};
    const double cellsEach = all_ * scale * scale / count / (kCellMm * kCellMm);
    for (std::size_t i = 0; i < on.size(); ++i) {
      if (on[i] * cellsEach > kMostOfNeighbour * cells_[i]) return {};
      covered += on[i] * cellsEach;
    }
    return covered;
  }

  std::optional<Fit> bestPlace(double scale) const {
    std::optional<Fit> best;
    double least = 0;
    const Rect room = live_.inset(request_.marginMm);
    for (const bool mirror : {false, true}) {
      if (mirror && !request_.mayMirror) continue;
      const double left = (mirror ? -box_.max.x : box_.min.x) * scale;
      const double wide = box_.width() * scale, high = box_.height() * scale;
      for (double y = room.min.y; y + high <= room.max.y + 1e-9; y += kOverGridMm)
        for (double x = room.min.x; x + wide <= room.max.x + 1e-9; x += kOverGridMm) {
          const Vector move{x - left, y - box_.min.y * scale};
          const auto covered = priceAt(scale, mirror, move);
          if (!covered) continue;
          const double price = *covered + 0.01 * awayFromWhole(scale, mirror, move);
          const Fit here{scale, move, mirror, 0};
          if ((best && price >= least) || !showsHauled(here)) continue;
          least = price;
          best = here;
        }
    }
    return best;
  }

  /// mm between the head here and in the first answer, else in the panel now.
  double awayFromWhole(double scale, bool mirror, Vector move) const {
    const Point head = asked_.figure.head;
    const Point now = Fit{scale, move, mirror, 0}.placed(head);
    return (now - (asked_.whole ? asked_.whole->fit.placed(head) : head)).length();
  }

  bool lawful(const OverAnswer& out) const {
    return out.ownShare >= kLeastAtHome - 1e-3 && out.hauledShare >= kLeastHauled - 0.02 &&
           std::all_of(out.covered.begin(), out.covered.end(), [](const CoveredPanel& c) {
             return c.share <= kMostOfNeighbour + 1e-3 && c.facesMm2 <= 0 && c.copyMm2 <= 0;
           });
  }

  OverAnswer measure(OverAnswer out, const Fit& fit) const {
    out.fit = fit;
    out.headMm = fit.scale * asked_.figure.headMm;
    out.covered.clear();
    const std::vector<Polygon> figure = placedShapes(asked_.figure.ownShapes, fit);
    const std::vector<Polygon> hauled = placedShapes(asked_.figure.hauled, fit);
    const double own = silhouetteArea(figure);
    const auto& panels = asked_.roughPage.panels;
    for (std::size_t i = 0; i < panels.size(); ++i) {
      const Region seen = visibleOutline(asked_.roughPage, i);
      const double shared = sharedArea(figure, seen);
      if (i == home_) {
        out.ownShare = shared / own;
        if (!hauled.empty()) out.hauledShare = sharedArea(hauled, seen) / silhouetteArea(hauled);
        continue;
      }
      if (shared <= 0.5) continue;
      CoveredPanel c{static_cast<int>(i) + 1, shared / std::max(1e-9, area(seen)), shared, 0, 0};
      for (const SeenFigure& f : panels[i].figures)
        if (!f.face.points.empty())
          c.facesMm2 += sharedArea(figure, common({f.face}, {panels[i].outline}));
      for (const PlacedBalloon& b : panels[i].balloons)
        if (!b.outline.points.empty()) c.copyMm2 += sharedArea(figure, {b.outline});
      out.covered.push_back(c);
    }
    return out;
  }

  std::optional<OverAnswer> measured(OverAnswer out, Fit fit, double least) const {
    out = measure(std::move(out), fit);
    while (!lawful(out)) {
      const double smaller = out.fit.scale * kDownExact;
      if (smaller < least) return {};
      const auto next = bestPlace(smaller);
      if (next) {
        out = measure(std::move(out), *next);
      } else {
        out.fit.scale = smaller;
      }
      out.largestScale = std::min(out.largestScale, out.fit.scale);
    }
    return out;
  }

  const FitAnswers& asked_;
  const FitRequest& request_;
  std::size_t home_;
  Rect live_, box_;
  Labels labels_;
  double all_;
  std::vector<double> cells_;
  std::vector<Point> points_, hauled_;
};

}  // namespace

std::optional<OverAnswer> fitOver(const FitAnswers& asked, const FitRequest& request,
                                  const std::vector<KeepClear>& keepClear) {
  return Running(asked, request, keepClear).run();
}

}  // namespace tw
