// Field listings of the two kinds of file in a job folder: job.json and pages/NN.json. Reader,
// writer and published schema all follow them; see field.h.
#pragma once

#include "job/beat_fields.h"
#include "job/brief_fields.h"
#include "job/job.h"
#include "job/rough_fields.h"
#include "job/scene_fields.h"
#include "job/sheet_fields.h"

namespace tw {

inline constexpr int kMostPages = 10000;

/// What job.json holds: the job with its pages as numbers only.
struct JobFile {
  std::string title, client, due;
  Sheet sheet;
  std::vector<Character> cast;
  std::string scriptFile;
  std::vector<int> pages;
  std::vector<StoryScene> scenes;
  std::map<std::string, SceneChange> sceneChanges;
  bool operator==(const JobFile&) const = default;
};

template <>
struct FieldsOf<JobFile> {
  static constexpr std::string_view kName = "job";
  static constexpr std::string_view kHelp = "job.json: the assignment, its sheet, cast and pages.";
  template <class F>
  static void list(F& f) {
    using T = JobFile;
    f("title", &T::title, anyText(), "Title of the story.");
    f("client", &T::client, anyText(), "Who ordered it.");
    f("due", &T::due, date(), "Date on which the job is due.");
    f("script", &T::scriptFile, fileName(), "Name of the script file below script/.");
    f("sheet", &T::sheet, required(anyText()), "The paper it is made for.");
    f("cast", &T::cast, tw::list(1000), "The characters.");
    f("pages", &T::pages, required(count(1, kMostPages)), "Numbers of the pages, rising.");
    f("scenes", &T::scenes, tw::list(5000), "In the script's order.");
    f("scene_changes", &T::sceneChanges, tw::list(5000), "The artist's corrections by scene id.");
  }
};

template <>
struct FieldsOf<Silenced> {
  static constexpr std::string_view kName = "silenced";
  static constexpr std::string_view kHelp = "A finding that the artist has answered.";
  template <class F>
  static void list(F& f) {
    using T = Silenced;
    f("rule", &T::rule, required(anyText()), "Name of the rule, as findings give it.");
    f("beat", &T::beat, word(), "Id of the panel's beat; left out: the page as a whole.");
    f("reason", &T::reason, required(anyText()), "Why it may stay as it is.");
  }
};

template <>
struct FieldsOf<Pins> {
  static constexpr std::string_view kName = "pins";
  static constexpr std::string_view kHelp = "What new roughs must keep.";
  template <class F>
  static void list(F& f) {
    using T = Pins;
    f("arrangement", &T::arrangement, anyText(), "A rough's arrangement; left out: any.");
    f("treatment", &T::treatment, anyText(), "A rough's treatment; left out: any.");
    f("stagings", &T::stagings, tw::list(1000), "Stagings to keep, by beat id.");
  }
};

template <>
struct FieldsOf<Underlay> {
  static constexpr std::string_view kName = "underlay";
  static constexpr std::string_view kHelp = "A picture laid under a page or panel to work over.";
  template <class F>
  static void list(F& f) {
    using T = Underlay;
    f("file", &T::file, required(fileName()), "Name below art/.");
    f("beat", &T::beat, word(), "Id of the panel's beat; left out: the page's.");
    f("at", &T::at, required(mm()), "mm on the page.");
    f("strength", &T::strength, number(0, 1), "0 unseen to 1 as it is.");
  }
};

template <>
struct FieldsOf<Page> {
  static constexpr std::string_view kName = "page";
  static constexpr std::string_view kHelp = "pages/NN.json: one page, or a spread.";
  template <class F>
  static void list(F& f) {
    using T = Page;
    f("number", &T::number, required(count(1, kMostPages)), "Of a spread its left page's number.");
    f("spread", &T::spread, anyText(), "Two facing pages as one.");
    f("title", &T::title, anyText(), "Title of the page, if the script gives one.");
    f("beats", &T::beats, required(tw::list(1000)), "As broken down, corrections not applied.");
    f("overrides", &T::overrides, tw::list(1000), "The artist's corrections by beat id.");
    f("brief", &T::brief, required(anyText()), "What the editor asks of the page.");
    f("choice", &T::choice, word(), "Name of the rough chosen.");
    f("note", &T::note, anyText(), "Anything the artist wants to remember.");
    f("silenced", &T::silenced, tw::list(1000), "Findings that the artist has answered.");
    f("pins", &T::pins, anyText(), "What new roughs must keep.");
    f("underlays", &T::underlays, tw::list(200), "Pictures to work over.");
    f("roughs", &T::roughs, tw::list(200), "The candidates, best first.");
  }
};

}  // namespace tw
