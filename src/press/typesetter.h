// Sets lines of type with Pango: how wide, broken where, drawn how. One typesetter belongs to one
// thread at a time; its measures do not depend on the resolution of any surface.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "press/surface.h"

typedef struct _cairo cairo_t;

namespace tw {

class Typesetter {
 public:
  Typesetter();
  ~Typesetter();
  Typesetter(const Typesetter&) = delete;
  Typesetter& operator=(const Typesetter&) = delete;

  /// mm from the line's start to its end.
  double widthOf(const std::string& text, Face face, double sizePt) const;
  /// The text broken between words so that no line is wider than `mostMm` where that is possible.
  std::vector<std::string> broken(const std::string& text, Face face, double sizePt,
                                  double mostMm) const;
  /// The text, shortened by an ellipsis when it is wider than `mostMm`.
  std::string shortened(const std::string& text, Face face, double sizePt, double mostMm) const;
  /// The line's letters as outlines (non-zero rule), mm.
  Path outlines(const TypeLine& line) const;
  /// Draws on a cairo context whose user space is mm.
  void draw(cairo_t* cairo, const TypeLine& line) const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace tw
