#include "script/lexicon.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "base/files.h"
#include "script/tokens.h"

namespace tw {

namespace {

using Json = nlohmann::json;
using Words = std::vector<std::string>;

Json readPreset(const char* name) {
  const std::string below = std::string("lexicon/") + name;
  const Result<std::filesystem::path> path = presetPath(below);
  if (!path) throw std::runtime_error(path.error().front().sentence);
  const Result<std::string> bytes = readFile(*path);
  if (!bytes) throw std::runtime_error(bytes.error().front().sentence);
  try {
    return Json::parse(*bytes);
  } catch (const Json::exception& error) {
    throw std::runtime_error(path->string() + ": " + error.what());
  }
}

CueWords readCues(const Json& json) {
  CueWords cues;
  for (const auto& [kind, words] : json.at("keywords").items())
    for (const std::string word : words)
      cues.keywords[word] = kind == "sfx"     ? CopyKind::Sfx
                            : kind == "title" ? CopyKind::Title
                                              : CopyKind::Caption;
  const std::map<std::string, Modifier> kinds = {
      {"whisper", Modifier::Whisper}, {"shout", Modifier::Shout}, {"thought", Modifier::Thought},
      {"caption", Modifier::Caption}, {"off", Modifier::Off},     {"plain", Modifier::Plain}};
  for (const auto& [kind, words] : json.at("modifiers").items())
    for (const std::string word : words) cues.modifiers.emplace(word, kinds.at(kind));
  for (const std::string word : json.at("voices")) cues.voices.insert(word);
  for (const std::string word : json.at("not_speakers")) cues.notSpeakers.insert(word);
  for (const std::string word : json.at("not_names")) cues.notNames.insert(word);
  return cues;
}

void readGrammar(const Json& json, Grammar& grammar) {
  const auto set = [&](const char* name) { return json.at(name).get<Grammar::Words>(); };
  grammar.articles = set("articles");
  grammar.prepositions = set("prepositions");
  grammar.adverbs = set("adverbs");
  grammar.conjunctions = set("conjunctions");
  grammar.clauseWords = set("clause_words");
  grammar.be = set("be");
  grammar.modals = set("modals");
  grammar.absentBefore = set("absent_before");
  for (const std::string phrase : json.at("absent_after"))
    grammar.absentAfter.add(phraseOf(phrase), true);
}

/// The action of `json`, taking what it leaves out from `usual`.
Action readAction(const Json& json, const Action& usual) {
  return {json.value("pose", usual.pose), json.value("relation", usual.relation),
          json.value("strength", usual.strength)};
}

Verb readVerb(const Json& json, std::string lemma) {
  Verb verb;
  verb.lemma = std::move(lemma);
  verb.plain = readAction(json, {});
  verb.stative = json.value("stative", false);
  verb.passivePose = json.value("passive", "");
  if (json.contains("with_target")) verb.withTarget = readAction(json["with_target"], verb.plain);
  if (!json.contains("then")) return verb;
  for (const auto& [phrase, action] : json["then"].items())
    verb.particles.emplace_back(phraseOf(phrase), readAction(action, verb.plain));
  std::ranges::stable_sort(
      verb.particles, [](const auto& a, const auto& b) { return a.first.size() > b.first.size(); });
  return verb;
}

void addForms(Lexicon& lexicon, const std::string& lemma, const Json& irregular) {
  const int verb = static_cast<int>(lexicon.verbs.size()) - 1;
  auto& forms = lexicon.verbForms;
  forms.emplace(lemma, VerbMatch{verb, VerbForm::Base});
  forms.emplace(thirdPersonOf(lemma), VerbMatch{verb, VerbForm::Third});
  if (irregular.contains(lemma)) {
    for (const std::string form : irregular[lemma])
      forms.emplace(form, VerbMatch{verb, form.ends_with("ing") ? VerbForm::Ing : VerbForm::Past});
  } else {
    forms.emplace(pastFormOf(lemma), VerbMatch{verb, VerbForm::Past});
  }
  forms.emplace(ingFormOf(lemma), VerbMatch{verb, VerbForm::Ing});
}

void readVerbs(const Json& json, Lexicon& lexicon) {
  for (const Json& entry : json.at("verbs"))
    for (const std::string lemma : entry.at("verbs")) {
      lexicon.verbs.push_back(readVerb(entry, lemma));
      addForms(lexicon, lemma, json.at("irregular"));
    }
  for (const Json& entry : json.at("phrases"))
    lexicon.poses.add(phraseOf(entry.at("phrase").get<std::string>()), readAction(entry, {}));
}

void readThings(const Json& json, Lexicon& lexicon) {
  for (const std::string part : json.at("body_parts")) lexicon.bodyParts.insert(part);
  for (const Json& entry : json.at("things")) {
    const Thing thing{entry.at("name"),
                      entry.at("shape"),
                      entry.at("size_m").get<std::array<double, 3>>(),
                      entry.value("handheld", false),
                      entry.value("noun_only", false),
                      entry.value("material", false)};
    Words names = entry.value("also", Words{});
    names.push_back(thing.name);
    for (const std::string& name : names) {
      lexicon.things.add(phraseOf(name), thing);
      lexicon.things.add(phraseOf(pluralOf(name)), thing);
    }
  }
}

void readNotThings(const Json& json, Lexicon& lexicon) {
  for (const std::string word : json.at("words")) lexicon.notThings.insert(word);
  lexicon.notThingEndings = json.at("endings").get<Words>();
}

void readPlaces(const Json& json, Lexicon& lexicon) {
  for (const auto& [kind, words] : json.at("explicit").items())
    for (const std::string word : words) lexicon.places.add(phraseOf(word), {kind, word, true});
  for (const auto& [kind, words] : json.at("places").items())
    for (const std::string word : words) lexicon.places.add(phraseOf(word), {kind, word, false});
  for (const std::string word : json.at("times"))
    lexicon.places.add(phraseOf(word), {"", word, false});
}

void readShots(const Json& json, Lexicon& lexicon) {
  const std::set<std::string> notAfter = json.at("not_after").get<std::set<std::string>>();
  auto& table = lexicon.shots;
  for (const auto& [size, words] : json.at("shots").items())
    for (const std::string word : words) table.add(phraseOf(word), {.shot = shotSizeFrom(size)});
  for (const auto& [size, words] : json.at("caps_only").items())
    for (const std::string word : words)
      table.add(phraseOf(word), {.shot = shotSizeFrom(size), .capsOnly = true});
  for (const auto& [size, words] : json.at("start_only").items())
    for (const std::string word : words)
      table.add(phraseOf(word), {.shot = shotSizeFrom(size), .startOnly = true});
  for (const auto& [eye, words] : json.at("eyes").items())
    for (const std::string word : words)
      table.add(phraseOf(word), {.eye = eyeHeightFrom(eye), .notAfter = notAfter});
  for (const auto& [mm, words] : json.at("lenses_mm").items())
    for (const std::string word : words) table.add(phraseOf(word), {.lensMm = std::stod(mm)});
  for (const auto& [degrees, words] : json.at("rolls_deg").items())
    for (const std::string word : words) table.add(phraseOf(word), {.rollDeg = std::stod(degrees)});
  for (const auto& [weight, words] : json.at("dominant").items())
    for (const std::string word : words) table.add(phraseOf(word), {.dominant = std::stod(weight)});
  for (const std::string word : json.at("dominant_at_start"))
    table.add(phraseOf(word), {.dominant = 2.5, .startOnly = true});
  for (const auto& [weight, words] : json.at("weights").items())
    for (const std::string word : words) table.add(phraseOf(word), {.weight = std::stod(weight)});
  for (const auto& [weight, words] : json.at("weights_at_start").items())
    for (const std::string word : words)
      table.add(phraseOf(word), {.weight = std::stod(weight), .startOnly = true});
}

/// A word may say several things ("boy": male, child, 1.30 m): they are gathered before they
/// enter the table.
void readPeople(const Json& json, Lexicon& lexicon) {
  std::map<std::string, PersonWord> people;
  for (const std::string word : json.at("female")) people[word].sex = Sex::Female;
  for (const std::string word : json.at("male")) people[word].sex = Sex::Male;
  for (const auto& [build, words] : json.at("builds").items())
    for (const std::string word : words) people[word].build = build;
  for (const auto& [height, words] : json.at("heights_m").items())
    for (const std::string word : words) people[word].heightM = std::stod(height);
  for (const auto& [age, words] : json.at("ages_years").items())
    for (const std::string word : words) people[word].ageYears = std::stod(age);
  for (const std::string number : json.at("numbers")) lexicon.numbers.push_back(number);
  for (const auto& [add, words] : json.at("add_m").items())
    for (const std::string word : words) people[word].addM = std::stod(add);
  for (const auto& [word, person] : people) lexicon.people.add(phraseOf(word), person);
  lexicon.usualFemaleM = json.at("usual_m").at("female");
  lexicon.usualMaleM = json.at("usual_m").at("male");
}

}  // namespace

Result<Lexicon> loadLexicon() {
  try {
    Lexicon lexicon;
    lexicon.cues = readCues(readPreset("cues.json"));
    readGrammar(readPreset("grammar.json"), lexicon.grammar);
    readVerbs(readPreset("verbs.json"), lexicon);
    readThings(readPreset("things.json"), lexicon);
    readNotThings(readPreset("not_things.json"), lexicon);
    readPlaces(readPreset("places.json"), lexicon);
    readShots(readPreset("shots.json"), lexicon);
    readPeople(readPreset("people.json"), lexicon);
    Result<LookWords> looks = LookWords::load();
    if (!looks) return tl::unexpected(looks.error());
    lexicon.looks = std::move(*looks);
    return lexicon;
  } catch (const std::exception& error) {
    return ourFault(std::string("The lexicon could not be read: ") + error.what(), {},
                    "Restore presets/lexicon from the program's own copy.");
  }
}

}  // namespace tw
