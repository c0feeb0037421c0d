// A page of three beats made in code, with its one best rough; for this folder's tests only.
#pragma once

#include <doctest/doctest.h>

#include "compose/compose.h"
#include "compose/measured_page.h"
#include "review/page_case.h"

namespace tw {

class SmallPage {
 public:
  SmallPage() {
    job_.title = "The Ferry";
    job_.sheet = sheet();
    for (const char* id : {"ada", "bo"}) {
      Character who;
      who.id = id;
      who.name = id;
      job_.cast.push_back(std::move(who));
    }
    Page page;
    page.number = 4;
    page.beats = {beat(1, "stand"), beat(2, "point"), beat(3, "run")};
    page.beats[1].dominant = true;
    page.beats[1].weight = 2;
    job_.pages = {page};
    auto workshop = Workshop::make(job_);
    REQUIRE(workshop);
    workshop_.emplace(std::move(*workshop));
    auto lights = LightWords::load();
    REQUIRE(lights);
    lights_ = std::move(*lights);
    Progress progress;
    auto composed = compose(job_, job_.pages[0], *workshop_, {.keep = 1}, progress);
    REQUIRE(composed);
    rough = composed->roughs.front();
    auto wishes = pageCaseOf(job_, job_.pages[0], workshop_->letterer);
    REQUIRE(wishes);
    wishes_ = std::move(*wishes);
  }

  MeasuredPage measured() const { return *measuredOf(rough); }
  Result<MeasuredPage> measuredOf(Rough any) const {
    return MeasuredPage::of(wishes_, *workshop_, lights_, std::move(any));
  }

  const PageCase& wishes() const { return wishes_; }
  const Workshop& workshop() const { return *workshop_; }
  const Job& job() const { return job_; }
  /// To be changed; what follows from it is not made again.
  Page& page() { return job_.pages[0]; }

  static Beat beat(int number, const std::string& pose) {
    Beat out;
    out.id = "p4-" + std::to_string(number);
    out.panel = number;
    out.setting = "exterior";
    out.figures = {{"ada", pose, number == 2 ? "points at" : "", number == 2 ? "bo" : ""}};
    if (number != 3) out.figures.push_back({"bo", "stand", "", ""});
    CopyItem said;
    said.id = out.id + "-c1";
    said.speaker = "ada";
    said.text = "There is the ferry now.";
    said.words = 5;
    out.copy = {said};
    return out;
  }

  Rough rough;

 private:
  static Sheet sheet() {
    Sheet sheet;
    sheet.name = "small";
    sheet.trimWidth = 160;
    sheet.trimHeight = 240;
    sheet.bleed = 3;
    sheet.live = {8, 8, 8, 8};
    sheet.gutterAcross = sheet.gutterDown = 4;
    return sheet;
  }

  Job job_;
  std::optional<Workshop> workshop_;
  LightWords lights_;
  PageCase wishes_;
};

}  // namespace tw
