// Answers the drawing surface with the operators of one PDF content stream, in whole steps of
// 1/100 mm. Type is kept aside for the book, which sets all of it with cairo; it lies above the
// shapes of its layer.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "press/surface.h"

namespace tw {

inline constexpr double kPdfStepsPerMm = 100;

class PdfSurface final : public Surface {
 public:
  /// Gives each sketch a number; the stream calls it /S<number>.
  using NumberOf = std::function<int(const Sketch&)>;

  explicit PdfSurface(NumberOf numberOf) : numberOf_(std::move(numberOf)) {}

  void fill(const Path& path, Ink ink, FillRule rule) override;
  void line(const Path& path, const Pen& pen) override;
  void clip(const Path& path, FillRule rule) override;
  void unclip() override;
  void type(const TypeLine& line) override;
  void place(const Sketch& sketch, double scale, Point at) override;
  void openGroup(const std::string& id, const std::string& title, bool shown) override;
  void closeGroup() override;

  const std::string& content() const { return content_; }
  const std::vector<TypeLine>& lines() const { return lines_; }
  const std::vector<int>& sketches() const { return sketches_; }

 private:
  NumberOf numberOf_;
  std::string content_;
  std::vector<TypeLine> lines_;
  std::vector<int> sketches_;  ///< those placed, in order, each once
};

/// Points (1/72 in) with up to four decimals and no idle zeros.
std::string pdfNumber(double value);

}  // namespace tw
