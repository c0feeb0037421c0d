#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "base/files.h"
#include "stage/figure.h"

namespace tw {
namespace {

using Json = nlohmann::json;

constexpr const char* kRoot = "root";  // the whole figure's turn among those of its joints

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
class PoseReader {
 public:
  PoseReader(const std::string& file, Problems& problems) : file_(file), problems_(problems) {}

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
    pose.pointer = text(json, "pointer", "");
    if (!pose.pointer.empty() && !jointNamed(pose.pointer))
      complain("/pointer", "“" + pose.pointer + "” is not a joint.");
    readHands(json, pose);
    if (json.contains("root")) pose.rootTurnDeg = turn(json["root"], "/root");
    readTurns(json, pose);
    return pose;
  }

 private:
  void complain(const std::string& path, std::string sentence) {
    problems_.push_back({Cause::BadInput, std::move(sentence), {file_, 0, path, 0, 0}, {}});
  }

  std::string text(const Json& json, const char* key, const std::string& otherwise) {
    if (!json.contains(key)) return otherwise;
    if (json[key].is_string()) return json[key].get<std::string>();
    complain(std::string("/") + key, "Expected text.");
    return otherwise;
  }

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

  const std::string& file_;
  Problems& problems_;
};

std::vector<std::filesystem::path> poseFiles(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator(folder, error))
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

void readPose(const std::filesystem::path& path, std::map<std::string, Pose>& poses,
              Problems& problems) {
  const std::string file = path.filename().string(), name = path.stem().string();
  const Result<std::string> bytes = readFile(path);
  if (!bytes) {
    problems.insert(problems.end(), bytes.error().begin(), bytes.error().end());
    return;
  }
  const Json json = Json::parse(*bytes, nullptr, false);
  if (!json.is_object()) {
    problems.push_back({Cause::BadInput, "Expected a pose as a JSON object.", {file}, {}});
    return;
  }
  poses[name] = PoseReader(file, problems).read(json, name);
}

}  // namespace

Result<PoseLibrary> PoseLibrary::load() {
  const Result<std::filesystem::path> folder = presetPath("poses");
  if (!folder) return tl::unexpected(folder.error());
  PoseLibrary library;
  Problems problems;
  for (const auto& file : poseFiles(*folder)) readPose(file, library.poses_, problems);
  if (!library.poses_.contains("stand"))
    problems.push_back({Cause::BadInput, "There is no pose “stand” to fall back to.", {}, {}});
  if (!problems.empty()) return tl::unexpected(problems);
  return library;
}

const Pose* PoseLibrary::find(const std::string& name) const {
  const auto found = poses_.find(name);
  return found == poses_.end() ? nullptr : &found->second;
}

const Pose& PoseLibrary::orStand(const std::string& name) const {
  if (const Pose* pose = find(name)) return *pose;
  return poses_.at("stand");  // load() promises it
}

std::vector<std::string> PoseLibrary::names() const {
  std::vector<std::string> all;
  for (const auto& [name, pose] : poses_) all.push_back(name);
  return all;
}

Pose withTurns(const Pose& pose, const std::map<std::string, std::array<double, 3>>& turnsDeg) {
  Pose out = pose;
  for (const auto& [joint, turn] : turnsDeg) {
    if (joint == kRoot)
      out.rootTurnDeg = turn;
    else if (turnNames().contains(joint))
      out.turnsDeg[joint] = turn;
  }
  return out;
}

std::map<std::string, std::array<double, 3>> turnsThatDiffer(const Pose& from, const Pose& to) {
  constexpr double kSameDeg = 0.001;
  const auto differs = [](const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return std::abs(a[0] - b[0]) > kSameDeg || std::abs(a[1] - b[1]) > kSameDeg ||
           std::abs(a[2] - b[2]) > kSameDeg;
  };
  std::map<std::string, std::array<double, 3>> out;
  if (differs(from.rootTurnDeg, to.rootTurnDeg)) out[kRoot] = to.rootTurnDeg;
  std::map<std::string, std::array<double, 3>> all = from.turnsDeg;
  for (auto& [joint, turn] : all) turn = {0, 0, 0};
  for (const auto& [joint, turn] : to.turnsDeg) all[joint] = turn;
  for (const auto& [joint, turn] : all) {
    const auto before = from.turnsDeg.find(joint);
    const std::array<double, 3> old =
        before == from.turnsDeg.end() ? std::array<double, 3>{0, 0, 0} : before->second;
    if (differs(old, turn)) out[joint] = turn;
  }
  return out;
}

Pose mirrored(const Pose& pose) {
  Pose out = pose;
  out.turnsDeg.clear();
  for (const auto& [joint, turn] : pose.turnsDeg) {
    if (joint.starts_with("left "))
      out.turnsDeg["right " + joint.substr(5)] = turn;
    else if (joint.starts_with("right "))
      out.turnsDeg["left " + joint.substr(6)] = turn;
    else
      out.turnsDeg[joint] = {turn[0], -turn[1], -turn[2]};
  }
  out.rootTurnDeg = {pose.rootTurnDeg[0], -pose.rootTurnDeg[1], -pose.rootTurnDeg[2]};
  std::swap(out.leftHand, out.rightHand);
  if (const auto joint = jointNamed(pose.pointer)) out.pointer = nameOf(mirrored(*joint));
  return out;
}

}  // namespace tw
