// Stories made up for tests: pages of panels with the shot, the heads and the words asked for, with
// a rough each. For tests only.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "geometry/polygon.h"
#include "job/job.h"

namespace tw::example {

inline constexpr const char* kWords[] = {"one", "two", "three", "four", "five"};

/// A panel and its picture.
struct Told {
  Beat beat;
  RoughPanel seen;

  Told& in(const std::string& scene) {
    beat.scene = scene;
    return *this;
  }
  Told& shot(ShotSize size) {
    seen.staging.choice.shot = size;
    return *this;
  }
  /// One more figure, its face 10 mm wide about that x.
  Told& figure(const std::string& who, double headMm, double x = 40, bool whole = false) {
    beat.figures.push_back({who, "stands", {}, {}});
    SeenFigure figure;
    figure.who = who;
    figure.visible = whole ? 1 : 0.5;
    figure.share = 0.3;
    figure.headMm = headMm;
    figure.cut = whole ? "whole" : "waist";
    figure.mouth = {x, 20};
    figure.face = polygonOf(Rect{{x - 5, 10}, {x + 5, 24}});
    seen.figures.push_back(figure);
    seen.staging.figures.push_back({who, "stands", false, {x / 100, 0, 0}, 0, 0, {}});
    return *this;
  }
  Told& says(const std::string& who, int words) {
    CopyItem item;
    item.id = fmt::format("c{}", beat.copy.size() + 1);
    item.speaker = who;
    for (int i = 0; i < words; ++i)
      item.text += (i > 0 ? " " : "") + std::string(kWords[static_cast<std::size_t>(i) % 5]);
    item.words = words;
    beat.copy.push_back(item);
    return *this;
  }
};

/// A medium shot seen from the front, from 4 m.
inline Told panel(const std::string& description = "Somebody stands.") {
  Told out;
  out.beat.description = description;
  out.beat.scene = "s1";
  out.beat.setting = "exterior";
  out.seen.staging.camera.eye = {0.5, 1.6, -4};
  return out;
}

/// Panels of one height side by side over a trim of 170 × 260 mm (a spread: 340).
inline Page page(int number, std::vector<Told> panels, bool spread = false) {
  Page out;
  out.number = number;
  out.spread = spread;
  Rough rough;
  rough.name = "A";
  const double wide = (spread ? 340.0 : 170.0) / static_cast<double>(panels.size());
  for (std::size_t i = 0; i < panels.size(); ++i) {
    Told& told = panels[i];
    told.beat.id = told.seen.beat = fmt::format("p{}-{}", number, i + 1);
    told.beat.panel = static_cast<int>(i) + 1;
    const double left = wide * static_cast<double>(i);
    told.seen.outline = polygonOf(Rect{{left, 0}, {left + wide, 260}});
    out.beats.push_back(told.beat);
    rough.panels.push_back(told.seen);
  }
  out.roughs = {rough};
  return out;
}

inline Job job(std::vector<Page> pages) {
  Job out;
  out.title = "An example";
  out.sheet.trimWidth = 170;
  out.sheet.trimHeight = 260;
  out.sheet.live = {10, 10, 8, 8};
  out.sheet.name = "example";
  StoryScene scene;
  scene.id = "s1";
  scene.heading = "EXT. PIER - DAY";
  scene.place = "pier";
  out.scenes = {scene};
  for (const char* who : {"ada", "ben", "cleo"}) {
    Character character;
    character.id = character.name = who;
    out.cast.push_back(character);
  }
  out.pages = std::move(pages);
  return out;
}

inline std::vector<const Finding*> named(const std::vector<Finding>& all, std::string_view rule) {
  std::vector<const Finding*> out;
  for (const Finding& finding : all)
    if (finding.rule == rule) out.push_back(&finding);
  return out;
}

}  // namespace tw::example
