// A drawn page dimmed, with a heat map of where the eye goes laid over it, spots, focuses and leads
// marked: what `tierwright read --panels … --png` writes. It knows nothing of how they were found.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/grey_picture.h"

namespace tw {

struct HeatPanel {
  Polygon outline;            ///< mm on the page
  int number = 0;             ///< as read, from 1
  int width = 0, height = 0;  ///< cells of the map
  std::vector<double> heat;   ///< 0 … 1, row by row, over `covers`
  Rect covers;
  std::vector<Point> spots;  ///< the strongest first
  std::vector<Rect> copy;    ///< areas of lettering, marked or proposed
  Rect focus;
  bool focusMarked = false;
  Point leadFrom;
  Vector lead;  ///< zero: none
  bool leadMarked = false;
};

struct AttentionPicture {
  std::string title;
  std::vector<std::string> sentences;  ///< below the page
  GreyPicture page;
  Rect pageBox;
  std::vector<HeatPanel> panels;
  std::vector<Point> centres;  ///< of the page as one picture, the strongest first
};

Result<std::string> attentionPng(const AttentionPicture& picture);
Result<void> writeAttentionPng(const std::filesystem::path& file, const AttentionPicture& picture);

}  // namespace tw
