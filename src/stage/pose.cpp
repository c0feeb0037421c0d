#include <algorithm>
#include <cmath>
#include <filesystem>
#include <functional>

#include "base/files.h"
#include "stage/read_pose.h"

namespace tw {
namespace {

using Json = nlohmann::json;

constexpr const char* kRoot = "root";  // the whole figure's turn among those of its joints

using ReadOne = std::function<void(const Json&, const std::string& name, const std::string& file)>;

/// Hands every JSON object of a folder to the reader, by name.
void readFolder(const char* preset, Problems& problems, const ReadOne& read) {
  const Result<std::filesystem::path> folder = presetPath(preset);
  std::vector<std::filesystem::path> files;
  std::error_code error;
  if (folder)
    for (const auto& entry : std::filesystem::directory_iterator(*folder, error))
      if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  for (const std::filesystem::path& path : files) {
    const Result<std::string> bytes = readFile(path);
    const Json json = bytes ? Json::parse(*bytes, nullptr, false) : Json();
    const std::string file = path.filename().string();
    if (!bytes)
      problems.insert(problems.end(), bytes.error().begin(), bytes.error().end());
    else if (!json.is_object())
      problems.push_back({Cause::BadInput, "Expected a pose as a JSON object.", {file}, {}});
    else
      read(json, path.stem().string(), file);
  }
}

}  // namespace

Result<PoseLibrary> PoseLibrary::load() {
  const Result<std::filesystem::path> folder = presetPath("poses");
  if (!folder) return tl::unexpected(folder.error());
  PoseLibrary library;
  Problems problems;
  readFolder("poses", problems, [&](const Json& json, const auto& name, const auto& file) {
    const Pose pose = readPose(json, name, file, problems);
    Pose other = mirrored(pose);
    other.name = name + std::string(kMirroredSuffix);
    library.poses_[other.name] = std::move(other);
    library.poses_[name] = pose;
  });
  readFolder("pairs", problems, [&](const Json& json, const auto& name, const auto& file) {
    library.pairs_.push_back(readPair(json, name, file, problems));
    for (const Pose& pose : library.pairs_.back().poses) library.poses_[pose.name] = pose;
  });
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
  for (const auto& [name, pose] : poses_)
    if (name.find(':') == std::string::npos) all.push_back(name);
  return all;
}

Pose withTurns(const Pose& pose, const std::map<std::string, std::array<double, 3>>& turnsDeg) {
  Pose out = pose;
  for (const auto& [joint, turn] : turnsDeg) {
    if (joint == kRoot)
      out.rootTurnDeg = turn;
    else if (isTurningJoint(joint))
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
