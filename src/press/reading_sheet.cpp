#include "press/reading_sheet.h"

#include <fmt/format.h>

#include <algorithm>

#include "job/amount_words.h"
#include "press/finding_mark.h"
#include "press/in_words.h"
#include "press/overlays.h"
#include "press/page_art.h"
#include "press/pale_surface.h"
#include "press/reading_marks.h"
#include "press/single_sheet.h"
#include "press/text_column.h"

namespace tw {

namespace {

constexpr double kColumnMm = 82, kGapMm = 6, kMarginMm = 8;
constexpr double kPale = 0.42;  // of the rough's own inks
constexpr double kMarkRoom = 6.5, kEntryHead = 5.6;
constexpr double kFootMm = 7.5;  // kept for a line on what is left

std::string triedInWords(const TriedRemedy& tried, const std::string& unit) {
  std::string out =
      fmt::format("Tried: {}: {} → {}", tried.change, amountInWords(tried.before, unit),
                  amountInWords(tried.after, unit));
  return tried.aside.empty() ? out + "." : out + fmt::format(", but it costs: {}.", tried.aside);
}

/// How much is told of a finding: where not all fit, the least useful goes first.
struct Detail {
  std::size_t tried = 3;  ///< changes that were tried
  bool measured = true;
  bool advice = true;
};
constexpr Detail kFull{3, true, true}, kNearlyFull{2, true, true};
constexpr Detail kDetails[] = {
    kFull, kNearlyFull, {1, true, true}, {1, false, true}, {0, false, false}};

/// What was measured against which limit, and how sure the ground of the rule is.
std::string evidenceOf(const Finding& finding, const Detail& detail) {
  std::string out;
  if (detail.measured && !finding.measure.empty())
    out = fmt::format("measured: {}, limit {}; ", finding.measure,
                      amountInWords(finding.limit, finding.unit));
  out += nameOf(finding.evidence);
  return finding.source.empty() || !detail.measured ? out : out + ": " + finding.source;
}

std::vector<std::string> adviceOf(const Finding& f, const Detail& detail) {
  if (!f.silencedWhy.empty()) return {"Silenced: " + f.silencedWhy};
  if (!detail.advice) return {};
  std::vector<std::string> out;
  if (f.tried.empty() || !f.tried.front().helps) out.push_back(f.remedy);
  for (std::size_t i = 0; i < std::min(f.tried.size(), detail.tried); ++i)
    out.push_back(triedInWords(f.tried[i], f.unit));
  return out;
}

double entryHeight(const TextColumn& text, const Finding& f, const Detail& detail) {
  std::size_t lines = text.linesOf(f.reason, Face::Regular, TextColumn::kTextPt, kMarkRoom);
  for (const std::string& line : adviceOf(f, detail))
    lines += text.linesOf(line, Face::Italic, TextColumn::kTextPt, kMarkRoom + TextColumn::kIndent);
  lines += text.linesOf(evidenceOf(f, detail), Face::Regular, TextColumn::kNotePt, kMarkRoom);
  return kEntryHead + static_cast<double>(lines) * TextColumn::kLineMm;
}

void writeEntry(TextColumn& text, const Finding& f, const Detail& detail, std::size_t number) {
  text.move(kEntryHead);
  drawFindingMark(text.surface(), {text.column().min.x + 2.6, text.y() - 1}, f.severity, number,
                  !f.silencedWhy.empty());
  text.word(text.shortened(f.rule, Face::Bold, TextColumn::kRulePt, 42), Face::Bold,
            TextColumn::kRulePt, kBlack, kMarkRoom);
  const std::string where = f.panel > 0 ? fmt::format("panel {}", f.panel) : "page";
  text.wordAtRight(fmt::format("{}, {}", nameOf(f.severity), where), Face::Regular,
                   TextColumn::kNotePt, kQuietInk);
  text.paragraph(f.reason, Face::Regular, TextColumn::kTextPt, kBlack, kMarkRoom);
  for (const std::string& line : adviceOf(f, detail)) text.advice(line, kMarkRoom);
  text.paragraph(evidenceOf(f, detail), Face::Regular, TextColumn::kNotePt, kQuietInk, kMarkRoom);
}

/// Takes what is written while it is only measured.
class Unseen final : public Surface {
 public:
  void fill(const Path&, Ink, FillRule) override {}
  void line(const Path&, const Pen&) override {}
  void clip(const Path&, FillRule) override {}
  void unclip() override {}
  void type(const TypeLine&) override {}
  void place(const Sketch&, double, Point) override {}
  void openGroup(const std::string&, const std::string&, bool) override {}
  void closeGroup() override {}
};

class SheetArtist {
 public:
  SheetArtist(const RoughPicture& picture, const ReadingSheet& sheet, const Typesetter& typesetter)
      : picture_(picture), sheet_(sheet), typesetter_(typesetter), plan_(planned()) {}

  Rect paper() const {
    Rect paper = picture_.sheet.bleedRect().outset(kSlugMm);
    paper.max.x += plan_.columns * (kGapMm + kColumnMm) + kMarginMm;
    return paper;
  }

  void draw(Surface& surface) const {
    surface.fill(Path(paper()), kPaper, FillRule::NonZero);
    drawPage(surface);
    drawWords(surface);
  }

 private:
  void drawPage(Surface& surface) const {
    PaleSurface pale(surface, kPale);
    PageArt(picture_, typesetter_).drawOn(pale, kFinestMm);
    // A bare layout of panels is no rough and is cut nowhere.
    if (!picture_.rough.name.empty())
      drawTrimMarks(surface, picture_, typesetter_);
    else
      surface.line(Path(picture_.sheet.trimRect()), {.ink = greyOf(0.3), .width = 0.15});
    drawRests(surface, picture_, sheet_.rests, typesetter_);
    drawPath(surface, picture_, sheet_.path, typesetter_);
    drawPartings(surface, picture_, sheet_.partings, typesetter_);
    OrderNumbers(picture_, typesetter_, 1).drawOn(surface, kFinestMm);
    drawFindingMarks(surface, picture_, sheet_.findings, typesetter_);
    drawReadingKey(surface, picture_, sheet_, typesetter_);
  }

  /// Which findings are told, how fully, and in which column each.
  struct Plan {
    int columns = 1;
    Detail detail;
    std::vector<int> columnOf;  ///< of each finding that is told
  };

  /// One column when all fit in it; else two, with no more left out than must be.
  Plan planned() const {
    Unseen nothing;
    Plan plan;
    const auto isAll = [&] { return plan.columnOf.size() == sheet_.findings.size(); };
    for (const Detail& detail : {kFull, kNearlyFull})
      if (plan = filled(1, detail, nothing); isAll()) return plan;
    for (const Detail& detail : kDetails)
      if (plan = filled(2, detail, nothing); isAll()) return plan;
    return plan;
  }

  Plan filled(int columns, const Detail& detail, Surface& nothing) const {
    Plan plan{columns, detail, {}};
    const std::vector<Rect> boxes = columnBoxes();
    TextColumn first(nothing, boxes[0], typesetter_);
    heading(first);
    double room = first.room();
    int column = 0;
    for (std::size_t i = 0; i < sheet_.findings.size(); ++i) {
      const double high = entryHeight(first, sheet_.findings[i], detail);
      const bool isLastEntry = i + 1 == sheet_.findings.size();
      const auto fits = [&] {
        return high <= room - (column + 1 == columns && !isLastEntry ? kFootMm : 0);
      };
      if (!fits() && column + 1 < columns)
        room = boxes[static_cast<std::size_t>(++column)].height();
      if (!fits()) break;
      room -= high;
      plan.columnOf.push_back(column);
    }
    return plan;
  }

  std::vector<Rect> columnBoxes() const {
    const Rect trim = picture_.sheet.trimRect();
    const double left = picture_.sheet.bleedRect().max.x + kSlugMm;
    std::vector<Rect> out;
    for (int i = 0; i < 2; ++i) {
      const double x = left + kGapMm + i * (kColumnMm + kGapMm);
      out.push_back({{x, trim.min.y}, {x + kColumnMm, trim.max.y}});
    }
    return out;
  }

  void drawWords(Surface& surface) const {
    std::vector<TextColumn> columns;
    for (const Rect& box : columnBoxes()) columns.emplace_back(surface, box, typesetter_);
    heading(columns[0]);
    const std::size_t told = plan_.columnOf.size();
    for (std::size_t i = 0; i < told; ++i)
      writeEntry(columns[static_cast<std::size_t>(plan_.columnOf[i])], sheet_.findings[i],
                 plan_.detail, i + 1);
    if (told == sheet_.findings.size()) return;
    TextColumn& last = columns[static_cast<std::size_t>(plan_.columns) - 1];
    last.move(2);
    last.paragraph(fmt::format("And {} more, numbered as in `tierwright read`, which lists them "
                               "all.",
                               sheet_.findings.size() - told),
                   Face::Regular, TextColumn::kNotePt, kQuietInk);
  }

  void heading(TextColumn& text) const {
    text.move(7);
    text.word("How it will be read", Face::Bold, 16, kBlack);
    text.move(4.6);
    const std::string about = !sheet_.about.empty()
                                  ? sheet_.about
                                  : fmt::format("{}, {}, rough {}", picture_.jobTitle,
                                                pageInWords(picture_), picture_.rough.name);
    text.word(text.shortened(about, Face::Regular, TextColumn::kTextPt, 0), Face::Regular,
              TextColumn::kTextPt, kQuietInk);
    text.move(1);
    for (const std::string& fact : sheet_.facts)
      text.paragraph(fact, Face::Regular, TextColumn::kTextPt, kBlack);
    for (const PanelMove& move : sheet_.partings)
      text.paragraph(partingInWords(move), Face::Regular, TextColumn::kTextPt, kBlack);
    text.move(2.4);
    text.ruleAcross();
  }

  static std::string partingInWords(const PanelMove& move) {
    const std::string from =
        move.from > 0 ? fmt::format("After panel {}", move.from) : std::string("At the start");
    return fmt::format("{}, {:.0f} % go to panel {}{}{}.", from, 100 * move.share, move.to,
                       move.cause.empty() ? "" : ": ", move.cause);
  }

  const RoughPicture& picture_;
  const ReadingSheet& sheet_;
  const Typesetter& typesetter_;
  Plan plan_;
};

}  // namespace

void drawReadingSheet(Surface& surface, const RoughPicture& picture, const ReadingSheet& sheet,
                      const Typesetter& typesetter) {
  SheetArtist(picture, sheet, typesetter).draw(surface);
}

Result<void> writeReadingSheet(const std::filesystem::path& file, const RoughPicture& picture,
                               const ReadingSheet& sheet, double dpi) {
  const Typesetter typesetter;
  const SheetArtist artist(picture, sheet, typesetter);
  const std::string title = fmt::format(
      "{}: how it will be read",
      sheet.about.empty() ? picture.jobTitle + ", " + pageInWords(picture) : sheet.about);
  return writeSingleSheet(file,
                          {title, artist.paper(), [&](Surface& surface) { artist.draw(surface); }},
                          typesetter, dpi);
}

}  // namespace tw
