#include "stage/read_pose.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "stage/preset_reader.h"

namespace tw {
namespace {

using Json = nlohmann::json;

const std::set<std::string>& turnNames() {
  static const std::set<std::string> names = [] {
    std::set<std::string> all{"waist", "chest", "neck", "head"};
    for (const char* side : {"left ", "right "})
      for (const char* joint :
           {"girdle", "shoulder", "elbow", "wrist", "hip", "knee", "ankle", "toes"})
        all.insert(std::string(side) + joint);
    return all;
  }();
  return names;
}

/// Reads one pose and gathers what is wrong with it.
class PoseReader : PresetReader {
 public:
  using PresetReader::PresetReader;

  Pose read(const Json& json, std::string name) {
    Pose pose;
    pose.name = std::move(name);
    pose.title = text(json, "title", pose.name);
    pose.support = text(json, "support", pose.support);
    pose.line = text(json, "line", "I");
    pose.motion = number(json, "motion", 0, 0, 1);
    pose.lift = number(json, "lift", 0, 0, 2);
    pose.seat = number(json, "seat", 0, 0, 1);
    pose.jawDeg = number(json, "jaw", 0, 0, 40);
    pose.viewDeg = number(json, "view", pose.viewDeg, -180, 180);
    pose.held = text(json, "held", "");
    pose.pointer = text(json, "pointer", "");
    if (!pose.pointer.empty() && !jointNamed(pose.pointer))
      complain("/pointer", "“" + pose.pointer + "” is not a joint.");
    readHands(json, pose);
    if (json.contains("root")) pose.rootTurnDeg = turn(json["root"], "/root");
    readTurns(json, pose);
    return pose;
  }

 private:
  double number(const Json& json, const char* key, double otherwise, double least, double most) {
    if (!json.contains(key)) return otherwise;
    const Json& value = json[key];
    if (value.is_number() && value.get<double>() >= least && value.get<double>() <= most)
      return value.get<double>();
    complain(std::string("/") + key, "Expected a number from " + std::to_string(least) + " to " +
                                         std::to_string(most) + ".");
    return otherwise;
  }

  std::array<double, 3> turn(const Json& value, const std::string& path) {
    std::array<double, 3> out{0, 0, 0};
    const bool sound = value.is_array() && value.size() == 3 &&
                       std::all_of(value.begin(), value.end(), [](const Json& v) {
                         return v.is_number() && std::abs(v.get<double>()) <= 360;
                       });
    if (!sound) {
      complain(path, "Expected three angles in degrees, each from -360 to 360.");
      return out;
    }
    for (std::size_t i = 0; i < 3; ++i) out[i] = value[i].get<double>();
    return out;
  }

  void readHands(const Json& json, Pose& pose) {
    if (!json.contains("hands")) return;
    for (const bool left : {true, false}) {
      const char* side = left ? "left" : "right";
      const std::string shape = text(json["hands"], side, "relaxed");
      if (const auto known = handShapeNamed(shape))
        (left ? pose.leftHand : pose.rightHand) = *known;
      else
        complain(std::string("/hands/") + side, "“" + shape + "” is not a shape of the hand.");
    }
  }

  void readTurns(const Json& json, Pose& pose) {
    if (!json.contains("turns")) return;
    for (const auto& [joint, value] : json["turns"].items()) {
      if (turnNames().contains(joint))
        pose.turnsDeg[joint] = turn(value, "/turns/" + joint);
      else
        complain("/turns/" + joint, "“" + joint + "” is not a joint that turns.");
    }
  }
};

}  // namespace

bool isTurningJoint(const std::string& name) {
  return turnNames().contains(name);
}

Pose readPose(const Json& json, const std::string& name, const std::string& file,
              Problems& problems) {
  return PoseReader(file, problems).read(json, name);
}

}  // namespace tw
