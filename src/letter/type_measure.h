// Measures words in a real font with Pango, in ems, so that one measurement serves every type
// size. Hinting is off, so widths grow in proportion and are the same on paper. Thread-safe.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace tw {

/// Lettered text carries these around stressed words, which are set bold italic (common practice,
/// no source): characters that no script can hold.
inline constexpr char kStressOn = '\x0e', kStressOff = '\x0f';

/// A piece of text that may not be broken inside (UAX #14 by way of Pango).
struct Chunk {
  std::string text;  ///< without the space behind it
  double widthEm = 0;
  bool spaceAfter = false;
  bool mustBreak = false;  ///< a paragraph ends here
};

class TypeMeasure {
 public:
  /// Our fault with advice when the font is not installed.
  static Result<TypeMeasure> make(const std::string& family, const std::string& weight);
  TypeMeasure(TypeMeasure&&) noexcept;
  ~TypeMeasure();

  double widthEm(std::string_view text) const;
  double capHeightEm() const;
  double spaceEm() const;
  /// Characters for which no installed font has a glyph.
  int unknownGlyphs(std::string_view text) const;
  std::vector<Chunk> chunks(const std::string& text) const;

 private:
  struct Impl;
  explicit TypeMeasure(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

/// The words as they are lettered: marks of emphasis made kStressOn and kStressOff, white space
/// made plain, capitals if asked for, paragraphs still one per line.
std::string lettered(const std::string& text, bool upperCase);
/// Without the marks of stress.
std::string bareWords(std::string_view lettered);
/// As the document keeps it: stars around stressed words.
std::string starred(std::string_view lettered);

}  // namespace tw
