#include "press/text_column.h"

namespace tw {

std::size_t TextColumn::linesOf(const std::string& text, Face face, double size,
                                double indent) const {
  if (text.empty()) return 0;
  return typesetter_.broken(text, face, size, column_.width() - indent).size();
}

void TextColumn::word(const std::string& text, Face face, double size, Ink ink, double indent) {
  surface_.type(
      {.text = text, .face = face, .sizePt = size, .at = {column_.min.x + indent, y_}, .ink = ink});
}

void TextColumn::wordAtRight(const std::string& text, Face face, double size, Ink ink,
                             double inset) {
  surface_.type({.text = text,
                 .face = face,
                 .sizePt = size,
                 .at = {column_.max.x - inset, y_},
                 .align = Align::Right,
                 .ink = ink});
}

void TextColumn::paragraph(const std::string& text, Face face, double size, Ink ink,
                           double indent) {
  if (text.empty()) return;
  for (const std::string& line : typesetter_.broken(text, face, size, column_.width() - indent)) {
    y_ += kLineMm;
    word(line, face, size, ink, indent);
  }
}

void TextColumn::ruleAcross() {
  Path path;
  path.add({{column_.min.x, y_}, {column_.max.x, y_}}, false);
  surface_.line(path, {.ink = kBlack, .width = 0.25});
}

void TextColumn::advice(const std::string& text, double indent) {
  const Point at{column_.min.x + indent + 0.4, y_ + kLineMm - 0.85};
  const Polygon pointer{{at + Vector{0, -0.8}, at + Vector{1.5, 0}, at + Vector{0, 0.8}}};
  surface_.fill(Path(pointer), kBlack, FillRule::NonZero);
  paragraph(text, Face::Italic, kTextPt, kBlack, indent + kIndent);
}

std::string TextColumn::shortened(const std::string& text, Face face, double size,
                                  double inset) const {
  return typesetter_.shortened(text, face, size, column_.width() - inset);
}

}  // namespace tw
