#include "press/reading_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

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
constexpr double kMarkRoom = 6.5;

std::string amount(double value, const std::string& unit) {
  const bool whole = std::abs(value - std::round(value)) < 0.05 || std::abs(value) >= 20;
  std::string out = whole ? fmt::format("{:.0f}", value) : fmt::format("{:.1f}", value);
  return unit.empty() ? out : out + " " + unit;
}

std::string evidenceOf(const Finding& finding) {
  std::string out(nameOf(finding.evidence));
  return finding.source.empty() ? out : out + ": " + finding.source;
}

std::string triedInWords(const TriedRemedy& tried, const std::string& unit) {
  std::string out = fmt::format("Tried: {}: {} → {}", tried.change, amount(tried.before, unit),
                                amount(tried.after, unit));
  if (!tried.helps) return out + ", no help.";
  return tried.aside.empty() ? out + "." : out + fmt::format(", but it costs: {}.", tried.aside);
}

/// Findings from the first column to the second, then a line on what is left.
class FindingColumns {
 public:
  FindingColumns(Surface& surface, std::vector<Rect> columns, const Typesetter& typesetter)
      : surface_(surface), columns_(std::move(columns)), typesetter_(typesetter) {
    open();
  }

  TextColumn& text() { return *text_; }

  /// False when there is no room left.
  bool add(const Finding& finding, std::size_t number) {
    if (heightOf(finding) > text_->room() - kFoot) {
      if (at_ + 1 >= columns_.size()) return false;
      ++at_;
      open();
    }
    write(finding, number);
    return true;
  }

 private:
  static constexpr double kFoot = 8, kLine = TextColumn::kLineMm;

  void open() { text_.emplace(surface_, columns_[at_], typesetter_); }

  double heightOf(const Finding& f) const {
    std::size_t lines = text_->linesOf(f.reason, Face::Regular, TextColumn::kTextPt, kMarkRoom);
    for (const std::string& line : adviceOf(f))
      lines +=
          text_->linesOf(line, Face::Italic, TextColumn::kTextPt, kMarkRoom + TextColumn::kIndent);
    lines += text_->linesOf(evidenceOf(f), Face::Regular, TextColumn::kNotePt, kMarkRoom);
    return 7.2 + static_cast<double>(lines) * kLine;
  }

  static std::vector<std::string> adviceOf(const Finding& f) {
    if (!f.silencedWhy.empty()) return {"Silenced: " + f.silencedWhy};
    std::vector<std::string> out;
    for (const TriedRemedy& tried : f.tried) out.push_back(triedInWords(tried, f.unit));
    if (f.tried.empty() || !f.tried.front().helps) out.insert(out.begin(), f.remedy);
    return out;
  }

  void write(const Finding& f, std::size_t number) {
    text_->move(5.6);
    drawFindingMark(surface_, {text_->column().min.x + 2.6, text_->y() - 1}, f.severity, number,
                    !f.silencedWhy.empty());
    text_->word(text_->shortened(f.rule, Face::Bold, TextColumn::kRulePt, 42), Face::Bold,
                TextColumn::kRulePt, kBlack, kMarkRoom);
    const std::string where = f.panel > 0 ? fmt::format("panel {}", f.panel) : "page";
    text_->wordAtRight(fmt::format("{}, {}", nameOf(f.severity), where), Face::Regular,
                       TextColumn::kNotePt, kQuietInk);
    text_->paragraph(f.reason, Face::Regular, TextColumn::kTextPt, kBlack, kMarkRoom);
    for (const std::string& line : adviceOf(f)) text_->advice(line, kMarkRoom);
    text_->paragraph(evidenceOf(f), Face::Regular, TextColumn::kNotePt, kQuietInk, kMarkRoom);
  }

  Surface& surface_;
  std::vector<Rect> columns_;
  const Typesetter& typesetter_;
  std::size_t at_ = 0;
  std::optional<TextColumn> text_;
};

class SheetArtist {
 public:
  SheetArtist(const RoughPicture& picture, const ReadingSheet& sheet, const Typesetter& typesetter)
      : picture_(picture), sheet_(sheet), typesetter_(typesetter) {}

  Rect paper() const {
    Rect paper = picture_.sheet.bleedRect().outset(kSlugMm);
    paper.max.x += 2 * (kGapMm + kColumnMm) + kMarginMm;
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
    drawTrimMarks(surface, picture_, typesetter_);
    drawRests(surface, picture_, sheet_.rests);
    drawPath(surface, sheet_.path);
    drawPartings(surface, picture_, sheet_.partings, typesetter_);
    OrderNumbers(picture_, typesetter_, 1).drawOn(surface, kFinestMm);
    drawFindingMarks(surface, picture_, sheet_.findings);
    drawReadingKey(surface, picture_);
  }

  std::vector<Rect> columns() const {
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
    FindingColumns columns(surface, this->columns(), typesetter_);
    heading(columns.text());
    std::size_t told = 0;
    while (told < sheet_.findings.size() && columns.add(sheet_.findings[told], told + 1)) ++told;
    columns.text().move(2);
    if (told < sheet_.findings.size())
      columns.text().paragraph(fmt::format("And {} more; `tierwright read` lists them all.",
                                           sheet_.findings.size() - told),
                               Face::Regular, TextColumn::kNotePt, kQuietInk);
  }

  void heading(TextColumn& text) const {
    text.move(7);
    text.word("How it will be read", Face::Bold, 16, kBlack);
    text.move(4.6);
    text.word(fmt::format("{}, {}, rough {}", picture_.jobTitle, pageInWords(picture_),
                          picture_.rough.name),
              Face::Regular, TextColumn::kTextPt, kQuietInk);
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
    return fmt::format("{} {:.0f} % go to panel {}{}{}.", from, 100 * move.share, move.to,
                       move.cause.empty() ? "" : ": ", move.cause);
  }

  const RoughPicture& picture_;
  const ReadingSheet& sheet_;
  const Typesetter& typesetter_;
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
  const std::string title =
      fmt::format("{}, {}: how it will be read", picture.jobTitle, pageInWords(picture));
  return writeSingleSheet(file,
                          {title, artist.paper(), [&](Surface& surface) { artist.draw(surface); }},
                          typesetter, dpi);
}

}  // namespace tw
