// Field listings of beats, their corrections and the cast. Reader, writer and published schema all
// follow these; see field.h.
#pragma once

#include "job/beat.h"
#include "job/field.h"

namespace tw {

template <>
struct FieldsOf<LookNote> {
  static constexpr std::string_view kName = "look_note";
  static constexpr std::string_view kHelp = "What is said of a look and from when on.";
  template <class F>
  static void list(F& f) {
    using T = LookNote;
    f("from", &T::from, word(), "Id of the first beat, in story time; left out: from the start.");
    f("until", &T::until, word(), "Id of the last beat; left out: on and on.");
    f("words", &T::words, required(anyText()), "As in a cast list: helmet, cut on the left cheek.");
    f("instead", &T::instead, anyText(), "In place of the costume before, else over it.");
    f("told", &T::told, anyText(), "The story shows how it comes about.");
    f("source", &T::source, word(), "cast, script or artist.");
  }
};

template <>
struct FieldsOf<Reference> {
  static constexpr std::string_view kName = "reference";
  static constexpr std::string_view kHelp = "A picture that shows what a character looks like.";
  template <class F>
  static void list(F& f) {
    using T = Reference;
    f("file", &T::file, required(fileName()), "Name below art/reference/.");
    f("note", &T::note, anyText(), "What it shows.");
    f("rights", &T::rights, anyText(), "Whose it is and who allowed its use.");
  }
};

template <>
struct FieldsOf<Character> {
  static constexpr std::string_view kName = "character";
  static constexpr std::string_view kHelp = "One member of the cast.";
  template <class F>
  static void list(F& f) {
    using T = Character;
    f("id", &T::id, required(word()), "Stable lower-case word, such as mara.");
    f("name", &T::name, anyText(), "As in the script, such as MARA.");
    f("aliases", &T::aliases, tw::list(100), "Other names the script uses.");
    f("sex", &T::sex, required(anyText()), "Decides the figure's breadths.");
    f("height_m", &T::heightM, required(number(0.2, 10)), "Standing height in metres.");
    f("build", &T::build, anyText(), "slight, medium, heavy, heroic, ideal or child.");
    f("age_years", &T::ageYears, number(0, 150), "Left out for a grown-up of no stated age.");
    f("heads", &T::heads, number(0, 12), "Heads to the stature; left out: by age and build.");
    f("note", &T::note, anyText(), "Anything the artist wants to remember.");
    f("hand", &T::hand, word(), "The hand that works: left, right or both.");
    f("looks", &T::looks, tw::list(2000), "Looks by story time, beside the note.");
    f("references", &T::references, tw::list(200), "Pictures below art/reference/.");
  }
};

template <>
struct FieldsOf<CopyItem> {
  static constexpr std::string_view kName = "copy_item";
  static constexpr std::string_view kHelp = "A balloon, caption, sound effect or title.";
  template <class F>
  static void list(F& f) {
    using T = CopyItem;
    f("id", &T::id, required(word()), "Page, panel and item, such as p3-2-c1.");
    f("kind", &T::kind, required(anyText()), "What sort of lettering it is.");
    f("speaker", &T::speaker, word(), "Id of the character who speaks.");
    f("off_panel", &T::offPanel, anyText(), "The speaker is outside the panel.");
    f("text", &T::text, anyText(), "The words, one paragraph a line.");
    f("words", &T::words, count(0, 100000), "How many words it has.");
  }
};

template <>
struct FieldsOf<BeatFigure> {
  static constexpr std::string_view kName = "beat_figure";
  static constexpr std::string_view kHelp = "Who is in the panel and what they do.";
  template <class F>
  static void list(F& f) {
    using T = BeatFigure;
    f("who", &T::who, required(word()), "Id of a character.");
    f("pose", &T::pose, anyText(), "Name of a pose.");
    f("relation", &T::relation, anyText(), "holds, points at, looks at, runs to and the like.");
    f("target", &T::target, anyText(), "Id of the character or prop that the relation is to.");
  }
};

template <>
struct FieldsOf<Prop> {
  static constexpr std::string_view kName = "prop";
  static constexpr std::string_view kHelp = "A thing in the panel, as a simple body.";
  template <class F>
  static void list(F& f) {
    using T = Prop;
    f("id", &T::id, required(word()), "Stable word.");
    f("name", &T::name, anyText(), "As in the script, such as lantern.");
    f("shape", &T::shape, anyText(), "box, cylinder, ellipsoid or cone.");
    f("size_m", &T::sizeM, required(metres(0, 10000)), "Width, height and depth in metres.");
    f("held_by", &T::heldBy, word(), "Id of the character who holds it.");
    f("hand", &T::hand, word(), "The holder's own left, right or both; empty: as the pose has it.");
    f("model", &T::model, word(), "Name of a file in art/models; empty: by id or name.");
    f("up", &T::up, word(), "The model's upward axis, y or z; empty: y.");
    f("height_m", &T::heightM, metres(0, 10000),
      "Declared height to which the model is scaled; 0: as the file has it, in metres.");
    f("place_m", &T::placeM, metres(-10000, 10000),
      "Metres from the figures' middle: toward the side read last, up, away from the camera.");
    f("turn_deg", &T::turnDeg, degrees(), "Its front turned from the camera.");
  }
};

template <>
struct FieldsOf<PropOverride> {
  static constexpr std::string_view kName = "prop_override";
  static constexpr std::string_view kHelp =
      "The artist's corrections of one thing; absent fields keep the guess.";
  template <class F>
  static void list(F& f) {
    using T = PropOverride;
    f("hand", &T::hand, word(), "left, right, both or any: the hand that holds it.");
    f("shape", &T::shape, word(), "A plain body or piece of a set, such as box or stairs.");
    f("model", &T::model, word(), "Name of a file in art/models.");
    f("up", &T::up, word(), "The model's upward axis, y or z.");
    f("size_m", &T::sizeM, metres(0, 10000), "Width, height and depth in metres.");
    f("place_m", &T::placeM, metres(-10000, 10000),
      "Metres from the figures' middle: toward the side read last, up, away from the camera.");
    f("turn_deg", &T::turnDeg, degrees(), "Its front turned from the camera.");
  }
};

template <>
struct FieldsOf<Beat> {
  static constexpr std::string_view kName = "beat";
  static constexpr std::string_view kHelp = "What one panel has to show.";
  template <class F>
  static void list(F& f) {
    using T = Beat;
    f("id", &T::id, required(word()), "Page and panel, such as p3-2.");
    f("panel", &T::panel, required(count(1, 1000)), "Number on its page, from 1.");
    f("line", &T::line, count(0, 10000000), "Line of the script, from 1.");
    f("scene", &T::scene, word(), "Id of its scene, such as s3.");
    f("description", &T::description, anyText(), "As the script puts it.");
    f("setting", &T::setting, anyText(), "Interior, exterior, underwater and words of the place.");
    f("figures", &T::figures, tw::list(200), "Who is in the panel.");
    f("props", &T::props, tw::list(200), "Things in the panel.");
    f("not_drawn", &T::notDrawn, tw::list(200),
      "Things named that have no shape and are not drawn.");
    f("copy", &T::copy, tw::list(500), "Lettering, in reading order.");
    f("shot", &T::shot, anyText(), "Shot size asked for in words.");
    f("eye", &T::eye, anyText(), "Eye height asked for in words.");
    f("lens_mm", &T::lensMm, number(kShortestLensMm, kLongestLensMm),
      "Lens asked for, on a frame 36 mm wide.");
    f("roll_deg", &T::rollDeg, number(-kMostRollDeg, kMostRollDeg),
      "Roll asked for; over 0 turns the picture counter-clockwise.");
    f("light_asked", &T::light, anyText(), "The artist's own light in trade words.");
    f("dominant", &T::dominant, anyText(), "The page's main panel.");
    f("weight", &T::weight, number(0, 1000), "Area wanted, relative to the other beats.");
  }
};

template <>
struct FieldsOf<CopyWords> {
  static constexpr std::string_view kName = "copy_words";
  static constexpr std::string_view kHelp = "Copy as the artist retyped it.";
  template <class F>
  static void list(F& f) {
    using T = CopyWords;
    f("text", &T::text, anyText(), "Left out: the item is left out.");
    f("words", &T::words, count(0, 100000), "How many.");
  }
};

template <>
struct FieldsOf<BeatOverride> {
  static constexpr std::string_view kName = "override";
  static constexpr std::string_view kHelp =
      "The artist's corrections of one beat; absent fields keep the guess.";
  template <class F>
  static void list(F& f) {
    using T = BeatOverride;
    f("shot", &T::shot, anyText(), "Shot size instead of the guess.");
    f("eye", &T::eye, anyText(), "Eye height instead of the guess.");
    f("lens_mm", &T::lensMm, number(kShortestLensMm, kLongestLensMm), "Lens instead of the guess.");
    f("roll_deg", &T::rollDeg, number(-kMostRollDeg, kMostRollDeg), "Roll instead of the guess.");
    f("light_asked", &T::light, anyText(), "Light instead of the script's, in trade words.");
    f("dominant", &T::dominant, anyText(), "Whether it is the main panel.");
    f("weight", &T::weight, number(0, 1000), "Area wanted, relative to the other beats.");
    f("setting", &T::setting, anyText(), "Setting instead of the guess.");
    f("scene", &T::scene, word(), "Id of the scene it belongs to, instead of the script's.");
    f("poses", &T::poses, anyText(), "Pose by character id.");
    f("does", &T::does, anyText(), "What a character does, by id: points at lantern.");
    f("add_figures", &T::addFigures, tw::list(200), "Ids of characters to add.");
    f("drop_figures", &T::dropFigures, tw::list(200), "Ids of characters to leave out.");
    f("add_props", &T::addProps, tw::list(200), "Things to add.");
    f("drop_props", &T::dropProps, tw::list(200), "Ids of things to leave out.");
    f("props", &T::props, tw::list(200), "Corrections of things by their id.");
    f("copy", &T::copy, tw::list(200), "Retyped words by copy item id.");
  }
};

}  // namespace tw
