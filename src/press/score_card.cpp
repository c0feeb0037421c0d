#include "press/score_card.h"

#include <fmt/format.h>

#include <algorithm>

#include "press/in_words.h"

namespace tw {

namespace {

constexpr double kLineMm = 3.15;  // 7.2 pt on 8.9 pt
constexpr double kTextPt = 7.2, kRulePt = 8, kNotePt = 6.8;
constexpr double kBarMm = 1.3;
constexpr Ink kQuiet{0.35, 0.35, 0.35};

/// Sets lines of the card from the top of the column downward.
class CardColumn {
 public:
  CardColumn(Surface& surface, const Rect& column, const Typesetter& typesetter)
      : surface_(surface), column_(column), typesetter_(typesetter), y_(column.min.y) {}

  void heading(const RoughPicture& picture) {
    const Rough& rough = picture.rough;
    y_ += 7;
    word("Rough " + rough.name, Face::Bold, 20, kBlack);
    wordAtRight(costInWords(rough.score), Face::Bold, 20, kBlack);
    y_ += 4.6;
    word(pageInWords(picture) + ", " + rough.treatment, Face::Regular, kTextPt, kQuiet);
    wordAtRight("total cost, less is better", Face::Regular, kTextPt, kQuiet);
    y_ += 1.2;
    paragraph(readingInWords(rough.reading), Face::Regular, kTextPt, kBlack, 0);
    y_ += 2.4;
    ruleAcross();
  }

  double heightOf(const CardLine& line) const {
    double lines = static_cast<double>(broken(line.reason, Face::Regular, kTextPt, 0).size());
    if (!line.remedy.empty())
      lines += static_cast<double>(broken(line.remedy, Face::Italic, kTextPt, kIndent).size());
    return 9.3 + lines * kLineMm;
  }
  double room() const { return column_.max.y - y_; }

  void entry(const CardLine& line, double dearest) {
    y_ += 5.2;
    word(typesetter_.shortened(line.rule, Face::Bold, kRulePt, column_.width() - 24), Face::Bold,
         kRulePt, kBlack);
    wordAtRight(costInWords(line.cost), Face::Bold, kRulePt, kBlack);
    if (line.panel > 0)
      surface_.type({.text = fmt::format("panel {}", line.panel),
                     .sizePt = kNotePt,
                     .at = {column_.max.x - 10, y_},
                     .align = Align::Right,
                     .ink = kQuiet});
    bar(dearest > 0 ? line.cost / dearest : 0);
    y_ += 0.6;
    paragraph(line.reason, Face::Regular, kTextPt, kBlack, 0);
    if (!line.remedy.empty()) remedy(line.remedy);
  }

  void note(const std::string& text) {
    y_ += 2;
    paragraph(text, Face::Regular, kNotePt, kQuiet, 0);
  }

 private:
  static constexpr double kIndent = 3;

  std::vector<std::string> broken(const std::string& text, Face face, double size,
                                  double indent) const {
    return typesetter_.broken(text, face, size, column_.width() - indent);
  }
  void word(const std::string& text, Face face, double size, Ink ink) {
    surface_.type(
        {.text = text, .face = face, .sizePt = size, .at = {column_.min.x, y_}, .ink = ink});
  }
  void wordAtRight(const std::string& text, Face face, double size, Ink ink) {
    surface_.type({.text = text,
                   .face = face,
                   .sizePt = size,
                   .at = {column_.max.x, y_},
                   .align = Align::Right,
                   .ink = ink});
  }
  void paragraph(const std::string& text, Face face, double size, Ink ink, double indent) {
    if (text.empty()) return;
    for (const std::string& line : broken(text, face, size, indent)) {
      y_ += kLineMm;
      surface_.type({.text = line,
                     .face = face,
                     .sizePt = size,
                     .at = {column_.min.x + indent, y_},
                     .ink = ink});
    }
  }
  void ruleAcross() {
    Path path;
    path.add({{column_.min.x, y_}, {column_.max.x, y_}}, false);
    surface_.line(path, {.ink = kBlack, .width = 0.25});
  }
  void bar(double share) {
    y_ += 1.1;
    const Rect whole{{column_.min.x, y_}, {column_.max.x, y_ + kBarMm}};
    surface_.fill(Path(whole), greyOf(0.1), FillRule::NonZero);
    const double length = std::max(0.3, whole.width() * std::clamp(share, 0.0, 1.0));
    surface_.fill(Path(Rect{whole.min, {whole.min.x + length, whole.max.y}}), greyOf(0.72),
                  FillRule::NonZero);
    y_ += kBarMm;
  }
  /// The remedy is led in by a small pointer, so that it is told from the reason at a glance.
  void remedy(const std::string& text) {
    const Point at{column_.min.x + 0.4, y_ + kLineMm - 0.85};
    const Polygon pointer{{at + Vector{0, -0.8}, at + Vector{1.5, 0}, at + Vector{0, 0.8}}};
    surface_.fill(Path(pointer), kBlack, FillRule::NonZero);
    paragraph(text, Face::Italic, kTextPt, kBlack, kIndent);
  }

  Surface& surface_;
  Rect column_;
  const Typesetter& typesetter_;
  double y_;
};

std::string withoutCost(const std::vector<CardLine>& card) {
  std::string names;
  for (const CardLine& line : card)
    if (line.cost <= 0) names += (names.empty() ? "" : ", ") + line.rule;
  return names.empty() ? "" : "Without cost: " + names + ".";
}

}  // namespace

std::vector<CardLine> dearestFirst(const std::vector<CardLine>& card) {
  std::vector<CardLine> lines;
  for (const CardLine& line : card)
    if (line.cost > 0) lines.push_back(line);
  std::stable_sort(lines.begin(), lines.end(),
                   [](const CardLine& a, const CardLine& b) { return a.cost > b.cost; });
  return lines;
}

void drawScoreCard(Surface& surface, const RoughPicture& picture, const Rect& column,
                   const Typesetter& typesetter) {
  const double noteRoom = picture.notDrawn.empty() ? 14 : 20;
  CardColumn card(surface, column, typesetter);
  card.heading(picture);
  const std::vector<CardLine> lines = dearestFirst(picture.rough.card);
  std::size_t shown = 0;
  while (shown < lines.size() && card.heightOf(lines[shown]) + noteRoom <= card.room())
    card.entry(lines[shown++], lines.front().cost);
  double rest = 0;
  for (std::size_t i = shown; i < lines.size(); ++i) rest += lines[i].cost;
  if (shown < lines.size())
    card.note(
        fmt::format("And {} smaller costs, {} together.", lines.size() - shown, costInWords(rest)));
  const std::string free = withoutCost(picture.rough.card);
  if (!free.empty()) card.note(free);
  if (!picture.notDrawn.empty()) card.note("Named but not drawn: " + picture.notDrawn + ".");
}

}  // namespace tw
