// A drawing surface that only remembers, for this folder's tests.
#pragma once

#include <vector>

#include "press/surface.h"

namespace tw {

class Recorder final : public Surface {
 public:
  void fill(const Path& path, Ink, FillRule) override { fills.push_back(path); }
  void line(const Path& path, const Pen& pen) override {
    lines.push_back(path);
    pens.push_back(pen);
  }
  void clip(const Path&, FillRule) override { ++depth; }
  void unclip() override { --depth; }
  void type(const TypeLine& line) override { words.push_back(line); }
  void place(const Sketch& sketch, double scale, Point at) override {
    scales.push_back(scale);
    places.push_back({at + (sketch.bounds().min - Point{}) * scale,
                      at + (sketch.bounds().max - Point{}) * scale});
  }
  void openGroup(const std::string& id, const std::string&, bool) override {
    groups.push_back(id);
    ++depth;
  }
  void closeGroup() override { --depth; }

  std::vector<Path> fills, lines;
  std::vector<Pen> pens;
  std::vector<TypeLine> words;
  std::vector<Rect> places;
  std::vector<double> scales;
  std::vector<std::string> groups;
  int depth = 0;
};

}  // namespace tw
