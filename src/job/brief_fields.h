// Field listing of the brief. Reader, writer and published schema all follow it; what contradicts
// itself across fields is for brief_contradictions.cpp.
#pragma once

#include "job/brief.h"
#include "job/field.h"

namespace tw {

template <>
struct FieldsOf<KeepClear> {
  static constexpr std::string_view kName = "keep_clear";
  static constexpr std::string_view kHelp = "An area in which nothing that matters may stand.";
  template <class F>
  static void list(F& f) {
    f("name", &KeepClear::name, required(anyText()), "Logo, credits and the like.");
    f("rect", &KeepClear::rect, required(mm()), "x, y, width and height, mm on the page.");
  }
};

template <>
struct FieldsOf<Brief> {
  static constexpr std::string_view kName = "brief";
  static constexpr std::string_view kHelp = "What the editor asks of a page.";
  template <class F>
  static void list(F& f) {
    using T = Brief;
    f("least_small_panels", &T::leastSmallPanels, count(0, 100), "Fewest panels but the dominant.");
    f("most_small_panels", &T::mostSmallPanels, count(0, 100), "Most panels but the dominant.");
    f("dominant_beat", &T::dominantBeat, word(), "Id of the beat that must dominate.");
    f("least_dominant_share", &T::leastDominantShare, number(0, 1),
      "Least share of all panels' area for it.");
    f("focus", &T::focus, word(), "Id of the character the page is about.");
    f("least_head_mm", &T::leastHeadMm, number(0, 1000), "Head height in every panel at print.");
    f("largest_in_panel", &T::largestInPanel, anyText(), "The focus is the largest figure.");
    f("whole_figure", &T::wholeFigure, anyText(), "The dominant figure is uncropped.");
    f("liftable", &T::liftable, anyText(), "The dominant figure is uncropped and unobscured.");
    f("keep_clear", &T::keepClear, mm(), "Areas to be left free.");
    f("bleeds", &T::bleeds, anyText(), "Whether panels may bleed.");
    f("most_words", &T::mostWords, count(0, 100000), "Most words on the page.");
    f("direction", &T::direction, anyText(), "Reading direction.");
    f("due", &T::due, date(), "Date on which the page is due.");
  }
};

}  // namespace tw
