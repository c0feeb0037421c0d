// The published JSON of `tierwright read JOB --json`: docs/formats/read-output.schema.json.
#include "command/finding_json.h"
#include "command/read_page.h"
#include "job/field.h"
#include "job/write_json.h"

namespace tw {

namespace {

OrderedJson pointJson(Point p) {
  return OrderedJson::array({rounded(p.x, 2), rounded(p.y, 2)});
}

/// Panels are told from 1; 0 stands for the entry.
OrderedJson orderJson(const PageRead& read) {
  OrderedJson likely = OrderedJson::array(), steps = OrderedJson::array();
  for (const int panel : read.readings.order.order) likely.push_back(panel + 1);
  for (const Move& move : read.readings.order.moves)
    steps.push_back({{"from", move.from + 1},
                     {"to", move.to + 1},
                     {"share", rounded(move.share, 4)},
                     {"cause", move.cause}});
  return {{"likely", std::move(likely)},
          {"followed", rounded(read.measured.order.followed, 4)},
          {"steps", std::move(steps)}};
}

OrderedJson panelEyesJson(const PanelEyes& p, int number) {
  return {{"panel", number},
          {"fixations", rounded(p.looks, 2)},
          {"on_copy", rounded(p.copyLooks, 2)},
          {"on_picture", rounded(p.pictureLooks, 2)},
          {"dwell_s", rounded(p.dwellMs / 1000, 3)},
          {"dwell_deviation_s", rounded(p.dwellDeviationMs / 1000, 3)},
          {"passed_over", rounded(p.passedOver, 4)},
          {"never_seen", rounded(p.neverSeen, 4)},
          {"came_back", rounded(p.cameBack, 4)},
          {"first_on_picture", rounded(p.firstOnPicture, 4)},
          {"handed_on", rounded(p.handedOn, 4)}};
}

OrderedJson pathJson(const EyePath& path) {
  OrderedJson out = OrderedJson::array();
  for (const EyeFixation& f : path.fixations)
    out.push_back({{"at", pointJson(f.at)},
                   {"ms", rounded(f.ms, 1)},
                   {"panel", f.panel + 1},
                   {"on_copy", f.on == SeenKind::Copy}});
  return out;
}

OrderedJson eyesJson(const EyeReading& eyes) {
  OrderedJson panels = OrderedJson::array();
  for (std::size_t i = 0; i < eyes.panels.size(); ++i)
    panels.push_back(panelEyesJson(eyes.panels[i], static_cast<int>(i) + 1));
  return {{"readers", eyes.readers},
          {"fixations", rounded(eyes.looks, 2)},
          {"seconds", rounded(eyes.ms / 1000, 3)},
          {"quick_s", rounded(eyes.quickMs / 1000, 3)},
          {"slow_s", rounded(eyes.slowMs / 1000, 3)},
          {"handed_on", rounded(eyes.handedOn, 4)},
          {"panels", std::move(panels)},
          {"path", pathJson(eyes.typical)}};
}

OrderedJson leadsJson(const PageRead& read) {
  OrderedJson out = OrderedJson::array();
  for (std::size_t i = 0; i < read.measured.arrivals.size(); ++i) {
    const Arrival& a = read.measured.arrivals[i];
    const Lead& lead = read.measured.rough.panels[i].lead;
    out.push_back({{"panel", i + 1},
                   {"strength", rounded(lead.strength, 4)},
                   {"why", lead.why},
                   {"next", rounded(a.next, 4)},
                   {"other", rounded(a.other, 4)},
                   {"off", rounded(a.off, 4)},
                   {"toward_entry", rounded(a.towardEntry, 4)}});
  }
  return out;
}

OrderedJson prominenceJson(const PageRead& read) {
  OrderedJson out = OrderedJson::array();
  for (std::size_t i = 0; i < read.readings.squints.size(); ++i) {
    const Squint& s = read.readings.squints[i];
    const FocusProminence p = prominenceOf(read, i);
    OrderedJson one{{"panel", i + 1}, {"focus", p.who}};
    if (!p.who.empty()) {
      one["head_mm"] = rounded(p.headMm, 2);
      one["rank_in_cast"] = p.rank;
      one["visible"] = rounded(p.visible, 4);
    }
    one["contrast"] = rounded(s.contrast, 4);
    one["squint"] = {{"strength", rounded(s.strength, 4)},
                     {"elsewhere", rounded(s.elsewhere, 4)},
                     {"rank", s.rank},
                     {"holds", rounded(s.holds, 4)},
                     {"elsewhere_at", pointJson(s.elsewhereAt)}};
    out.push_back(std::move(one));
  }
  return out;
}

OrderedJson pictureJson(const OnePicture& picture) {
  OrderedJson panels = OrderedJson::array(), centres = OrderedJson::array(),
              fights = OrderedJson::array(), black = OrderedJson::array();
  for (std::size_t i = 0; i < picture.panels.size(); ++i)
    panels.push_back({{"panel", i + 1},
                      {"strength", rounded(picture.panels[i].strength, 4)},
                      {"black", rounded(picture.panels[i].black, 4)},
                      {"light", rounded(picture.panels[i].light, 4)}});
  for (const Peak& peak : picture.centres) centres.push_back(pointJson(peak.at));
  for (const FocusFight& fight : picture.fights)
    fights.push_back(
        {{"panels", {fight.a + 1, fight.b + 1}}, {"apart_mm", rounded(fight.apartMm, 2)}});
  for (const double share : picture.black) black.push_back(rounded(share, 4));
  return {{"strongest", picture.strongest + 1},
          {"dominant_holds", rounded(picture.dominantHolds, 4)},
          {"panels", std::move(panels)},
          {"centres", std::move(centres)},
          {"fights", std::move(fights)},
          {"black_by_quarter", std::move(black)},
          {"balance", {rounded(picture.balance.x, 4), rounded(picture.balance.y, 4)}}};
}

}  // namespace

std::string pageReadJson(const PageRead& read) {
  return textOf({{"page", read.page},
                 {"rough", read.measured.rough.name},
                 {"order", orderJson(read)},
                 {"eyes", eyesJson(read.readings.eyes)},
                 {"leads", leadsJson(read)},
                 {"handed_on", rounded(read.measured.rough.reading.handedOn, 4)},
                 {"prominence", prominenceJson(read)},
                 {"picture", pictureJson(read.readings.picture)},
                 {"findings", findingsJson(read.findings)}});
}

}  // namespace tw
