// What `tierwright beats --json` and `tierwright brief --json` print. Unlike the files of a job
// these name every field, also those that have their default.
#pragma once

#include <string>
#include <vector>

#include "job/job_fields.h"

namespace tw {

struct BeatsOfPage {
  int page = 1;
  bool spread = false;
  std::string title;
  std::vector<Beat> beats;
  bool operator==(const BeatsOfPage&) const = default;
};

struct BeatsOutput {
  std::vector<BeatsOfPage> pages;
  bool operator==(const BeatsOutput&) const = default;
};

struct BriefOutput {
  int page = 1;
  bool spread = false;
  Brief brief;
  std::vector<std::string> problems;  ///< contradictions, one sentence each
  bool operator==(const BriefOutput&) const = default;
};

template <>
struct FieldsOf<BeatsOfPage> {
  static constexpr std::string_view kName = "page";
  static constexpr std::string_view kHelp = "The beats of one page, or of a spread.";
  template <class F>
  static void list(F& f) {
    using T = BeatsOfPage;
    f("page", &T::page, required(count(1, kMostPages)), "Of a spread its left page's number.");
    f("spread", &T::spread, required(anyText()), "Two facing pages as one.");
    f("title", &T::title, anyText(), "Title of the page, if the script gives one.");
    f("beats", &T::beats, required(tw::list(1000)), "With the artist's corrections applied.");
  }
};

template <>
struct FieldsOf<BeatsOutput> {
  static constexpr std::string_view kName = "beats-output";
  static constexpr std::string_view kHelp = "What tierwright beats --json prints.";
  template <class F>
  static void list(F& f) {
    f("pages", &BeatsOutput::pages, required(tw::list(kMostPages)), "By rising number.");
  }
};

template <>
struct FieldsOf<BriefOutput> {
  static constexpr std::string_view kName = "brief-output";
  static constexpr std::string_view kHelp = "What tierwright brief --json prints.";
  template <class F>
  static void list(F& f) {
    using T = BriefOutput;
    f("page", &T::page, required(count(1, kMostPages)), "Of a spread its left page's number.");
    f("spread", &T::spread, required(anyText()), "Two facing pages as one.");
    f("brief", &T::brief, required(anyText()), "What the editor asks of the page.");
    f("problems", &T::problems, required(tw::list(1000)), "Contradictions, a sentence each.");
  }
};

/// The beats of these pages, corrections applied.
std::string beatsJson(const std::vector<const Page*>& pages);
/// The brief of one page of the job, with its contradictions.
std::string briefJson(const Page& page, const Job& job);

}  // namespace tw
