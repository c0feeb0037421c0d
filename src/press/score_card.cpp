#include "press/score_card.h"

#include <fmt/format.h>

#include <algorithm>

#include "press/in_words.h"
#include "press/text_column.h"

namespace tw {

namespace {

constexpr double kLineMm = TextColumn::kLineMm;
constexpr double kTextPt = TextColumn::kTextPt, kRulePt = TextColumn::kRulePt;
constexpr double kNotePt = TextColumn::kNotePt;
constexpr double kBarMm = 1.3;

/// Sets lines of the card from the top of the column downward.
class CardColumn {
 public:
  CardColumn(Surface& surface, const Rect& column, const Typesetter& typesetter)
      : text_(surface, column, typesetter) {}

  void heading(const RoughPicture& picture) {
    const Rough& rough = picture.rough;
    text_.move(7);
    text_.word("Rough " + rough.name, Face::Bold, 20, kBlack);
    text_.wordAtRight(costInWords(rough.score), Face::Bold, 20, kBlack);
    text_.move(4.6);
    text_.word(pageInWords(picture) + ", " + rough.treatment, Face::Regular, kTextPt, kQuietInk);
    text_.wordAtRight("total cost, less is better", Face::Regular, kTextPt, kQuietInk);
    text_.move(1.2);
    text_.paragraph(readingInWords(rough.reading), Face::Regular, kTextPt, kBlack);
    text_.move(2.4);
    text_.ruleAcross();
  }

  double heightOf(const CardLine& line) const {
    const std::size_t lines =
        text_.linesOf(line.reason, Face::Regular, kTextPt, 0) +
        text_.linesOf(line.remedy, Face::Italic, kTextPt, TextColumn::kIndent);
    return 9.3 + static_cast<double>(lines) * kLineMm;
  }
  double room() const { return text_.room(); }

  void entry(const CardLine& line, double dearest) {
    text_.move(5.2);
    text_.word(text_.shortened(line.rule, Face::Bold, kRulePt, 24), Face::Bold, kRulePt, kBlack);
    text_.wordAtRight(costInWords(line.cost), Face::Bold, kRulePt, kBlack);
    if (line.panel > 0)
      text_.wordAtRight(fmt::format("panel {}", line.panel), Face::Regular, kNotePt, kQuietInk, 10);
    bar(dearest > 0 ? line.cost / dearest : 0);
    text_.move(0.6);
    text_.paragraph(line.reason, Face::Regular, kTextPt, kBlack);
    if (!line.remedy.empty()) text_.advice(line.remedy);
  }

  void note(const std::string& text) {
    text_.move(2);
    text_.paragraph(text, Face::Regular, kNotePt, kQuietInk);
  }

 private:
  void bar(double share) {
    text_.move(1.1);
    const Rect column = text_.column();
    const Rect whole{{column.min.x, text_.y()}, {column.max.x, text_.y() + kBarMm}};
    text_.surface().fill(Path(whole), greyOf(0.1), FillRule::NonZero);
    const double length = std::max(0.3, whole.width() * std::clamp(share, 0.0, 1.0));
    text_.surface().fill(Path(Rect{whole.min, {whole.min.x + length, whole.max.y}}), greyOf(0.72),
                         FillRule::NonZero);
    text_.move(kBarMm);
  }

  TextColumn text_;
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
