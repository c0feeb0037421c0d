// A narrow column of type, set from the top downward: what score cards and reading sheets are
// written with.
#pragma once

#include <string>
#include <vector>

#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

inline constexpr Ink kQuietInk{0.35, 0.35, 0.35};

class TextColumn {
 public:
  static constexpr double kLineMm = 3.15;  ///< 7.2 pt on 8.9 pt
  static constexpr double kTextPt = 7.2, kRulePt = 8, kNotePt = 6.8;
  static constexpr double kIndent = 3;  ///< of what a pointer leads in

  TextColumn(Surface& surface, const Rect& column, const Typesetter& typesetter)
      : surface_(surface), column_(column), typesetter_(typesetter), y_(column.min.y) {}

  Surface& surface() { return surface_; }
  const Rect& column() const { return column_; }
  double y() const { return y_; }
  double room() const { return column_.max.y - y_; }
  void move(double mm) { y_ += mm; }

  /// Lines that the text takes at that size.
  std::size_t linesOf(const std::string& text, Face face, double size, double indent) const;
  /// On the present baseline.
  void word(const std::string& text, Face face, double size, Ink ink, double indent = 0);
  void wordAtRight(const std::string& text, Face face, double size, Ink ink, double inset = 0);
  /// From the next line on; nothing for an empty text.
  void paragraph(const std::string& text, Face face, double size, Ink ink, double indent = 0);
  void ruleAcross();
  /// Led in by a small pointer, so that advice is told from a reason at a glance.
  void advice(const std::string& text, double indent = 0);
  /// The text, shortened to what is left of the column's width.
  std::string shortened(const std::string& text, Face face, double size, double inset) const;

 private:
  Surface& surface_;
  Rect column_;
  const Typesetter& typesetter_;
  double y_;
};

}  // namespace tw
