// Field listing of the sheet. Reader, writer and published schema all follow it; what contradicts
// itself across fields is for sheet_contradictions.cpp.
#pragma once

#include "job/field.h"
#include "job/sheet.h"

namespace tw {

template <>
struct FieldsOf<Margins> {
  static constexpr std::string_view kName = "margins";
  static constexpr std::string_view kHelp = "Distances from the trim to the live area, mm.";
  template <class F>
  static void list(F& f) {
    using T = Margins;
    f("top", &T::top, required(mm()), "At the head.");
    f("bottom", &T::bottom, required(mm()), "At the foot.");
    f("inner", &T::inner, required(mm()), "At the binding; on a spread on each side of the fold.");
    f("outer", &T::outer, required(mm()), "At the fore edge.");
  }
};

template <>
struct FieldsOf<Canvas> {
  static constexpr std::string_view kName = "canvas";
  static constexpr std::string_view kHelp = "Scan or canvas of the trim with its bleed.";
  template <class F>
  static void list(F& f) {
    using T = Canvas;
    f("dpi", &T::dpi, required(count(1, 10000)), "Pixels per inch.");
    f("width", &T::width, required(count(1, 1000000)), "Pixels across.");
    f("height", &T::height, required(count(1, 1000000)), "Pixels down.");
  }
};

template <>
struct FieldsOf<Sheet> {
  static constexpr std::string_view kName = "sheet";
  static constexpr std::string_view kHelp = "The paper a page is made for. All lengths in mm.";
  template <class F>
  static void list(F& f) {
    using T = Sheet;
    f("name", &T::name, required(word()), "File name of the preset without .json.");
    f("title", &T::title, anyText(), "For people.");
    f("source", &T::source, required(anyText()), "Where the numbers come from, in words.");
    f("trim_width", &T::trimWidth, required(mm()), "Width after cutting; of a spread both pages.");
    f("trim_height", &T::trimHeight, required(mm()), "Height after cutting.");
    f("bleed", &T::bleed, required(mm()), "Printed beyond the trim on every side.");
    f("live", &T::live, required(anyText()), "Distances from the trim to the live area.");
    f("gutter_across", &T::gutterAcross, required(mm()), "Between panels side by side.");
    f("gutter_down", &T::gutterDown, required(mm()), "Between tiers.");
    f("least_panel_width", &T::leastPanelWidth, mm(), "Narrowest panel.");
    f("least_panel_height", &T::leastPanelHeight, mm(), "Lowest panel.");
    f("board_width", &T::boardWidth, mm(), "Drawn area of the original; 0 = not stated.");
    f("board_height", &T::boardHeight, mm(), "Drawn area of the original; 0 = not stated.");
    f("reduction", &T::reduction, number(-1000, 1000), "Print size over drawn size.");
    f("board_holds", &T::boardHolds, word(), "What the drawn area prints as: live, trim or bleed.");
    f("spread", &T::spread, anyText(), "Two facing pages as one.");
    f("page_width", &T::pageWidth, mm(), "Trim of one page of a spread; 0 = half the spread.");
    f("canvas", &T::canvas, anyText(), "Scan or canvas as the source states it.");
  }
};

}  // namespace tw
