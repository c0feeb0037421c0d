// The published JSON of `tierwright continuity --json`: docs/formats/continuity-output.schema.json.
#include "command/continuity.h"
#include "job/story_time.h"
#include "job/write_json.h"

namespace tw {

namespace {

OrderedJson placeJson(const ContinuityPlace& place) {
  return {{"beat", place.beat},
          {"page", place.page},
          {"panel", place.panel},
          {"scene", place.scene},
          {"heading", place.heading}};
}

OrderedJson sceneJson(const StoryScene& scene) {
  return {{"id", scene.id},         {"heading", titleOf(scene)},
          {"place", scene.place},   {"time", scene.time},
          {"strand", scene.strand}, {"years", jsonOf(scene.years, number(-1e6, 1e6))}};
}

}  // namespace

std::string continuityJson(const StoryContinuity& story) {
  OrderedJson scenes = OrderedJson::array(), looks = OrderedJson::array(),
              findings = OrderedJson::array();
  for (const StoryScene& scene : story.scenes) scenes.push_back(sceneJson(scene));
  for (const LookShown& look : story.looks)
    looks.push_back({{"who", look.who},
                     {"scene", look.scene},
                     {"beat", look.beat},
                     {"worn", look.worn},
                     {"marks", look.marks},
                     {"hands", look.hands},
                     {"changed", look.changed}});
  for (const ContinuityFinding& f : story.findings)
    findings.push_back({{"rule", f.rule},
                        {"level", std::string(nameOf(f.severity))},
                        {"evidence", "common practice, no source"},
                        {"who", f.who},
                        {"thing", f.thing},
                        {"reason", f.sentence},
                        {"remedy", f.remedy},
                        {"here", placeJson(f.here)},
                        {"there", placeJson(f.there)}});
  return textOf({{"scenes", scenes}, {"looks", looks}, {"findings", findings}});
}

}  // namespace tw
