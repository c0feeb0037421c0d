// What can be asked of, and done to, outlines. Booleans and offsets are Clipper's (see
// docs/decisions), on a grid of 1/10000 mm.
#pragma once

#include <optional>

#include "geometry/shapes.h"

namespace tw {

Polygon polygonOf(const Rect& rect);
/// A regular approximation of an axis-parallel ellipse.
Polygon ellipse(Point centre, double radiusX, double radiusY, int corners = 48);

Rect bounds(const std::vector<Point>& points);
Rect bounds(const Polygon& polygon);
Rect bounds(const Region& region);

/// Always positive, mm².
double area(const Polygon& polygon);
/// Even-odd area for outlines that do not cross each other, mm².
double area(const Region& region);
Point centroid(const Polygon& polygon);
bool contains(const Polygon& polygon, Point p);
bool contains(const Region& region, Point p);
bool isConvex(const Polygon& polygon);
/// Shortest distance from p to the outline (0 on it, positive inside and outside), mm.
double distanceToOutline(const Polygon& polygon, Point p);
/// To the nearest place between a and b, ends included, mm.
double distanceToSegment(Point p, Point a, Point b);

/// Smallest convex polygon around the points (Andrew's monotone chain); clockwise on screen.
Polygon hull(std::vector<Point> points);

Region united(const std::vector<Polygon>& shapes);
Region common(const Region& a, const Region& b);
Region without(const Region& a, const Region& b);
/// Grown (by > 0) or shrunk (by < 0) with round corners, mm.
Region offset(const Region& region, double by);

/// Distance along the ray to where it first enters or leaves the outline, or nothing.
/// 0 when the ray starts on the outline; the direction need not be of unit length.
std::optional<double> firstHit(const Ray& ray, const Polygon& polygon);

/// Indices of the points that stay when those go that are no farther than `tolerance` from what is
/// left; the ends stay. Douglas and Peucker, "Algorithms for the reduction of the number of points
/// required to represent a digitized line", The Canadian Cartographer 10 (1973).
std::vector<std::size_t> pointsThatTell(const std::vector<Point>& line, double tolerance);
/// The line with those points only.
std::vector<Point> simplified(const std::vector<Point>& line, double tolerance);

Polygon moved(const Polygon& polygon, Vector by);
/// Mirrored at the vertical line x = axis.
Polygon mirrored(const Polygon& polygon, double axis);

}  // namespace tw
