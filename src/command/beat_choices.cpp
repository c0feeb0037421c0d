#include "command/beat_choices.h"

#include <fmt/format.h>

#include <algorithm>

#include "job/read_json.h"
#include "job/story_time.h"

namespace tw {

namespace {

std::string numberText(double value) {
  return fmt::format("{:.6g}", value);
}

std::string yesNo(bool value) {
  return value ? "yes" : "no";
}

template <class E>
std::vector<ChoiceWord> wordsOf() {
  std::vector<ChoiceWord> out;
  for (const auto& name : namesOf<E>()) out.push_back({std::string(name), {}});
  return out;
}

std::vector<ChoiceWord> wordsOf(const std::vector<std::string>& values) {
  std::vector<ChoiceWord> out;
  for (const std::string& value : values) out.push_back({value, {}});
  return out;
}

class ChoiceList {
 public:
  ChoiceList(const Page& page, const Beat& script, const Job& job, const KnownWords& known,
             const std::vector<LightName>& lights)
      : script_(script), now_(script), job_(job), known_(known), lights_(lights) {
    if (const auto change = page.overrides.find(script.id); change != page.overrides.end()) {
      change_ = change->second;
      now_ = withOverride(script, change_);
    }
  }

  std::vector<BeatChoice> all() {
    framing();
    place();
    for (const BeatFigure& figure : now_.figures) ofFigure(figure);
    people();
    things();
    return std::move(out_);
  }

 private:
  BeatChoice& add(std::string key, std::string label, ChoiceKind kind, bool corrected) {
    BeatChoice choice;
    choice.key = std::move(key);
    choice.label = std::move(label);
    choice.kind = kind;
    choice.corrected = corrected;
    out_.push_back(std::move(choice));
    return out_.back();
  }

  template <class E>
  void oneOf(const char* key, const char* label, const std::optional<E>& now,
             const std::optional<E>& script, bool corrected) {
    BeatChoice& c = add(key, label, ChoiceKind::OneOf, corrected);
    c.words = wordsOf<E>();
    if (now) c.value = nameOf(*now);
    if (script) c.asScript = nameOf(*script);
  }

  void number(const char* key, const char* label, const std::optional<double>& now,
              const std::optional<double>& script, bool corrected, double least, double most,
              const char* unit) {
    BeatChoice& c = add(key, label, ChoiceKind::Number, corrected);
    if (now) c.value = numberText(*now);
    if (script) c.asScript = numberText(*script);
    c.least = least;
    c.most = most;
    c.unit = unit;
  }

  void framing() {
    oneOf("shot", "Shot", now_.shot, script_.shot, change_.shot.has_value());
    oneOf("eye", "Eye height", now_.eye, script_.eye, change_.eye.has_value());
    number("lens", "Lens", now_.lensMm, script_.lensMm, change_.lensMm.has_value(), kShortestLensMm,
           kLongestLensMm, "mm");
    number("roll", "Camera roll", now_.rollDeg, script_.rollDeg, change_.rollDeg.has_value(),
           -kMostRollDeg, kMostRollDeg, "degrees");
    number("weight", "Weight on the page", now_.weight, script_.weight, change_.weight.has_value(),
           0.1, 1000, "");
    BeatChoice& c =
        add("dominant", "Dominates the page", ChoiceKind::OneOf, change_.dominant.has_value());
    c.words = wordsOf(std::vector<std::string>{"yes", "no"});
    c.value = yesNo(now_.dominant);
    c.asScript = yesNo(script_.dominant);
  }

  void place() {
    BeatChoice& setting = add("setting", "Setting", ChoiceKind::Words, change_.setting.has_value());
    setting.words = wordsOf(std::vector<std::string>{"interior", "exterior", "underwater", "none"});
    setting.value = now_.setting;
    setting.asScript = script_.setting;
    BeatChoice& light = add("light", "Light", ChoiceKind::Words, change_.light.has_value());
    for (const LightName& one : lights_) light.words.push_back({one.name, one.title});
    light.value = now_.light;
    light.asScript = script_.light;
    BeatChoice& scene = add("scene", "Scene", ChoiceKind::OneOf, change_.scene.has_value());
    for (const StoryScene& one : correctedScenes(job_))
      scene.words.push_back({one.id, fmt::format("{}: {}", one.id, titleOf(one))});
    scene.value = now_.scene;
    scene.asScript = script_.scene;
  }

  std::string nameOfFigure(const std::string& who) const {
    const Character* character = job_.character(who);
    return character == nullptr ? who : character->name;
  }

  static std::string doingText(const BeatFigure& figure) {
    if (figure.relation.empty()) return "nothing";
    return figure.target.empty() ? figure.relation : figure.relation + " " + figure.target;
  }

  void ofFigure(const BeatFigure& figure) {
    const auto before = std::ranges::find(script_.figures, figure.who, &BeatFigure::who);
    const bool inScript = before != script_.figures.end();
    const std::string name = nameOfFigure(figure.who);
    BeatChoice& pose = add("pose." + figure.who, name + ": pose", ChoiceKind::OneOf,
                           change_.poses.contains(figure.who));
    pose.words = wordsOf(known_.poses);
    pose.value = figure.pose;
    if (inScript) pose.asScript = before->pose;
    BeatChoice& does = add("does." + figure.who, name + ": does", ChoiceKind::Words,
                           change_.does.contains(figure.who));
    does.words.push_back({"nothing", {}});
    for (const std::string& relation : known_.relations)
      for (const ChoiceWord& target : targetsFor(figure.who))
        does.words.push_back({relation + " " + target.value, relation + " " + target.meaning});
    does.value = doingText(figure);
    if (inScript) does.asScript = doingText(*before);
  }

  std::vector<ChoiceWord> targetsFor(const std::string& who) const {
    std::vector<ChoiceWord> out;
    for (const BeatFigure& other : now_.figures)
      if (other.who != who) out.push_back({other.who, nameOfFigure(other.who)});
    for (const Prop& prop : now_.props) out.push_back({prop.id, prop.name});
    return out;
  }

  void people() {
    BeatChoice& in = add("add", "Put in", ChoiceKind::Act, !change_.addFigures.empty());
    for (const Character& one : job_.cast)
      if (std::ranges::find(now_.figures, one.id, &BeatFigure::who) == now_.figures.end())
        in.words.push_back({one.id, one.name});
    BeatChoice& out = add("drop", "Take out", ChoiceKind::Act, !change_.dropFigures.empty());
    for (const BeatFigure& figure : now_.figures)
      out.words.push_back({figure.who, nameOfFigure(figure.who)});
  }

  void things() {
    BeatChoice& in = add("prop.add", "Put in a thing", ChoiceKind::Act, !change_.addProps.empty());
    if (known_.models) in.words = wordsOf(*known_.models);
    BeatChoice& out =
        add("prop.drop", "Take out a thing", ChoiceKind::Act, !change_.dropProps.empty());
    for (const Prop& prop : now_.props) out.words.push_back({prop.id, prop.name});
  }

  const Beat& script_;
  Beat now_;
  BeatOverride change_;
  const Job& job_;
  const KnownWords& known_;
  const std::vector<LightName>& lights_;
  std::vector<BeatChoice> out_;
};

}  // namespace

std::vector<BeatChoice> beatChoices(const Page& page, const std::string& beat, const Job& job,
                                    const KnownWords& known, const std::vector<LightName>& lights) {
  const auto script = std::ranges::find(page.beats, beat, &Beat::id);
  if (script == page.beats.end()) return {};
  return ChoiceList(page, *script, job, known, lights).all();
}

}  // namespace tw
