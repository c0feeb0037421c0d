// One page as the rules see it: its corrected beats, whom each is about, what the brief demands
// and how large, how shaped and how airy each panel should be. Made once per page.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrange/layout.h"
#include "job/job.h"
#include "letter/lettering.h"
#include "review/continuity.h"

namespace tw {

struct PanelCase {
  Beat beat;
  std::string focus;  ///< character id, or empty: the panel has no figure
  bool dominant = false;
  bool briefFocus = false;  ///< the brief's focus character is in this panel
  double weightShare = 0;   ///< of the page's area, from the beats' weights
  double aspectWish = 0;    ///< width / height, 0 = none
  Letterer::Wanted copy;    ///< room the copy wants
  double leastHeadMm = 0;   ///< demanded here
  bool largest = false;     ///< focus must be the largest figure
  bool whole = false;       ///< focus uncropped
  bool liftable = false;    ///< … and unobscured
};

struct PageCase {
  const Job* job = nullptr;
  const Page* page = nullptr;
  Sheet sheet;
  bool rightHand = true;
  Brief brief;
  std::vector<PanelCase> panels;  ///< in reading order
  std::optional<std::size_t> dominant;
  std::vector<ContinuityFinding> continuity;  ///< of this page's beats

  ArrangeRequest arrangeRequest() const;
};

/// Bad input when the page has no beats, or more than kMostPanelsOnPage.
Result<PageCase> pageCaseOf(const Job& job, const Page& page, const Letterer& letterer);

inline constexpr std::size_t kMostPanelsOnPage = 16;

/// Whom a panel of that beat is about: the brief's focus if it is there, else the first figure.
std::string focusOf(const Beat& beat, const Brief& brief);

/// The aspect that a beat's shot, figures and poses ask of their panel; 0 = no wish.
double aspectWishOf(const Beat& beat);

}  // namespace tw
