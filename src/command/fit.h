// How large can this figure be drawn? Three answers side by side for one figure of a staged panel,
// all computed from its silhouette: whole in the panel, cut by the panel's border at a lawful line,
// and run over the border into neighbours.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/fit_largest.h"
#include "job/job.h"
#include "stage/whole_figure.h"

namespace tw {

struct FitRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rough = "A";
  int panel = 1;           ///< of the rough, as read, from 1
  std::string who;         ///< character id; empty: the panel's focus
  double marginMm = 2;     ///< kept between the figure and every border that does not cut it
  bool mayMirror = false;  ///< the figure may be turned about
};

/// The whole figure with everything it carries inside the panel.
struct WholeAnswer {
  Fit fit;            ///< from the figure as it is in the panel now (scale 1) to its new place
  double headMm = 0;  ///< chin to crown there
  double filled = 0;  ///< share of the panel's area that the figure fills
  std::optional<Fit> alone;  ///< with what it hauls left for the border to cut
};

/// One line at which the border may cut the figure.
struct CutOption {
  std::string line;  ///< "thigh", "waist", … (shot_size.h)
  Fit fit;
  double headMm = 0;
  double lost = 0;      ///< share of the silhouette, props too, beyond the border
  bool handsIn = true;  ///< both hands are kept
  Side border;          ///< of the panel, where the figure is cut
  Region kept;          ///< what is left of the figure, mm on the page, in its new place
};
struct CutAnswer {
  std::vector<CutOption> options;  ///< from the least lost to the most
  std::size_t best = 0;
  std::string why;  ///< why that one
};

struct CoveredPanel {
  int panel = 0;     ///< of the rough, from 1
  double share = 0;  ///< of its area
  double areaMm2 = 0;
  double facesMm2 = 0, copyMm2 = 0;  ///< of its faces and balloons
};
/// The figure stands over the border of its panel. What it hauls does not: the border cuts it.
struct OverAnswer {
  Fit fit;  ///< found on a grid, so `within` says nothing here; see largestScale, boundScale
  double headMm = 0;
  double ownShare = 0;      ///< of the silhouette without what it hauls: stays on its own panel
  double hauledShare = 1;   ///< of what it hauls: shows within its own panel
  double largestScale = 0;  ///< the largest found lawful; between the grid's places may lie more
  double boundScale = 0;    ///< no larger one is possible
  std::vector<CoveredPanel> covered;
  std::string why;
};

/// Limits of the third answer. Our own judgement, no source.
inline constexpr double kMostOfNeighbour = 0.2;  ///< of a neighbour's area
inline constexpr double kNoGain = 1.03;          ///< less larger than whole is no gain
inline constexpr double kLeastAtHome = 0.5;      ///< of the silhouette on its own panel
inline constexpr double kLeastHauled = 0.3;      ///< of what it hauls, to be seen there
/// The grid on which the third answer is searched.
inline constexpr double kOverGridMm = 2, kOverScaleStep = 0.0025;
/// A cut that loses more than this share of the silhouette is not recommended by itself.
inline constexpr double kMostLost = 1.0 / 3;

struct FitAnswers {
  int page = 1;
  std::string rough;
  int panel = 1;
  double marginMm = 0;
  double wantedHeadMm = 0;  ///< asked for by the brief; 0 = any
  WholeFigure figure;       ///< as staged now
  Region room;              ///< the panel less what lies on it; within the live area if it bleeds
  std::optional<WholeAnswer> whole;
  std::optional<CutAnswer> cut;    ///< nothing: no lawful line
  std::optional<OverAnswer> over;  ///< nothing: no gain without covering too much
  bool roomOnPage = true;          ///< the live area would let it be larger than the panel does
  Rough roughPage;                 ///< the page it is on
  Sheet sheet;
  bool rightHand = true;
};

Result<FitAnswers> fitFigure(const FitRequest& request);
/// The same of a job in memory; `request.job` is not read.
Result<FitAnswers> fitFigure(const Job& job, const Stager& stager, const LightWords& lights,
                             const FitRequest& request);

/// The JSON of docs/formats/fit-output.schema.json.
std::string fitJson(const FitAnswers& answers);
/// Draws the three side by side.
Result<void> drawFitPng(const std::filesystem::path& file, const FitAnswers& answers);
Result<void> drawFitSvg(const std::filesystem::path& file, const FitAnswers& answers);

/// One sentence for each answer, in the order whole, cut, over.
std::vector<std::string> fitSentences(const FitAnswers& answers);

}  // namespace tw
