#include <algorithm>
#include <cmath>

#include "stage/preset_reader.h"
#include "stage/read_pose.h"

namespace tw {
namespace {

using Json = nlohmann::json;

/// Reads one pose for two and gathers what is wrong with it.
class PairReader : PresetReader {
 public:
  using PresetReader::PresetReader;

  PairPose read(const Json& json, const std::string& name) {
    PairPose pair;
    pair.name = name;
    pair.title = text(json, "title", "");
    if (pair.title.empty()) complain("/title", "A pose for two has a title.");
    pair.relations = words(json, "relations");
    pair.phrases = words(json, "phrases");
    pair.viewDeg = number(json, "view", pair.viewDeg, 180);
    pair.leastShare = number(json, "least_share", pair.leastShare, 10);
    pair.mostShare = number(json, "most_share", pair.mostShare, 10);
    for (const std::size_t i : {0u, 1u}) readRole(json, i, pair);
    readPlace(json, pair);
    readContacts(json, pair);
    return pair;
  }

 private:
  std::vector<std::string> words(const Json& json, const char* key) {
    std::vector<std::string> out;
    if (!json.contains(key)) return out;
    if (!json[key].is_array()) complain(std::string("/") + key, "Expected a list of words.");
    for (const Json& word : json[key])
      if (word.is_string()) out.push_back(word.get<std::string>());
    return out;
  }

  double number(const Json& json, const char* key, double otherwise, double most) {
    if (!json.contains(key)) return otherwise;
    const Json& value = json[key];
    if (value.is_number() && std::abs(value.get<double>()) <= most) return value.get<double>();
    complain(std::string("/") + key, "Expected a number within " + std::to_string(most) + ".");
    return otherwise;
  }

  Vec3 offset(const Json& json, const char* key) {
    if (!json.contains(key)) return Vec3::Zero();
    const Json& v = json[key];
    const bool sound =
        v.is_array() && v.size() == 3 && std::all_of(v.begin(), v.end(), [](const Json& x) {
          return x.is_number() && std::abs(x.get<double>()) <= 2;
        });
    if (sound) return {v[0].get<double>(), v[1].get<double>(), v[2].get<double>()};
    complain(std::string("/") + key, "Expected three shares of the stature: left, up, front.");
    return Vec3::Zero();
  }

  Joint joint(const Json& json, const char* key, Joint otherwise) {
    const std::string name = text(json, key, std::string(nameOf(otherwise)));
    if (const auto known = jointNamed(name)) return *known;
    complain(std::string("/") + key, "“" + name + "” is not a joint.");
    return otherwise;
  }

  static bool isTrue(const Json& json, const char* key) {
    return json.contains(key) && json[key].is_boolean() && json[key].get<bool>();
  }

  void readRole(const Json& json, std::size_t i, PairPose& pair) {
    const char* key = i == 0 ? "first" : "second";
    if (!json.contains(key) || !json[key].is_object())
      return complain(std::string("/") + key, "Expected the pose of this figure.");
    pair.roles[i] = text(json[key], "role", key);
    pair.poses[i] = readPose(json[key], pair.name + ":" + pair.roles[i], file_, problems_);
  }

  void readPlace(const Json& json, PairPose& pair) {
    if (!json.contains("place") || !json["place"].is_object())
      return complain("/place", "Expected how the second stands to the first.");
    const Json& place = json["place"];
    pair.placed = joint(place, "second", pair.placed);
    pair.by = joint(place, "first", pair.by);
    pair.off = offset(place, "off");
    pair.turnDeg = number(place, "turn", pair.turnDeg, 180);
    pair.lifted = isTrue(place, "lifted");
  }

  void readContacts(const Json& json, PairPose& pair) {
    if (!json.contains("contacts") || !json["contacts"].is_array())
      return complain("/contacts", "Expected whose hands are on what.");
    for (const Json& each : json["contacts"]) {
      const std::string hand = text(each, "hand", "");
      HandHold contact;
      contact.firsts = hand.starts_with("first");
      contact.left = hand.ends_with("left");
      const bool named = contact.firsts || hand.starts_with("second");
      if (!named || (!contact.left && !hand.ends_with("right")))
        complain("/contacts", "“" + hand + "” is no hand, such as “first left”.");
      contact.on = joint(each, "on", Joint::Chest);
      contact.off = offset(each, "off");
      contact.own = isTrue(each, "own");
      contact.palm = isTrue(each, "palm");
      pair.holds.push_back(contact);
    }
  }
};

}  // namespace

PairPose readPair(const Json& json, const std::string& name, const std::string& file,
                  Problems& problems) {
  return PairReader(file, problems).read(json, name);
}

}  // namespace tw
