// Makes any document a file can hold: numbers on the grid that files keep, texts with quotes,
// line ends and letters beyond ASCII, lists that may be empty. For property tests.
#pragma once

#include <rapidcheck.h>

#include <cmath>

#include "job/document.h"

namespace tw::tests {

inline double anyNumber(double least, double most, int decimals) {
  const double power = std::pow(10.0, decimals);
  const auto from = static_cast<std::int64_t>(std::ceil(least * power));
  const auto to = static_cast<std::int64_t>(std::floor(most * power));
  return rounded(static_cast<double>(*rc::gen::inRange(from, to + 1)) / power, decimals);
}

template <class T>
T oneOf(std::initializer_list<T> choices) {
  return *rc::gen::elementOf(std::vector<T>(choices));
}

inline std::string anyText() {
  return oneOf<std::string>({"", "a", "\"quoted\" \\ / ", "two\nlines\tand a tab", "Ünïcode – 鐘 🔔",
                             "{\"not\": \"a field\"}", "# ~ %s \r"});
}

inline std::string anyWord() {
  return oneOf<std::string>({"mara", "p3-2", "o'dell", "a.b", "x_1", "鐘", "~", "-"});
}

/// Fills any field by its listing, so that a new field is tested as soon as it is listed.
struct AnyFields {
  template <class T>
  static T object() {
    T out;
    Filler<T> filler{out};
    FieldsOf<T>::list(filler);
    return out;
  }

  template <class T>
  struct Filler {
    T& out;
    template <class M>
    void operator()(std::string_view, M T::*member, const Spec& spec, std::string_view) {
      fill(out.*member, spec);
    }
  };

  static void fill(bool& v, const Spec&) { v = *rc::gen::arbitrary<bool>(); }
  static void fill(int& v, const Spec& s) {
    v = *rc::gen::inRange(static_cast<int>(s.least), static_cast<int>(s.most) + 1);
  }
  static void fill(double& v, const Spec& s) { v = anyNumber(s.least, s.most, s.decimals); }
  static void fill(std::string& v, const Spec& s) {
    if (s.form == Form::Date)
      v = oneOf<std::string>({"", "2027-01-15", "2028-02-29"});
    else if (s.form != Form::Any)
      v = s.required ? anyWord() : oneOf<std::string>({"", anyWord()});
    else
      v = anyText();
    if (s.form == Form::Any && s.required) v.append("x");
  }
  static void fill(Point& v, const Spec& s) { fill(v.x, s), fill(v.y, s); }
  static void fill(Vector& v, const Spec& s) { fill(v.x, s), fill(v.y, s); }
  static void fill(Place3& v, const Spec& s) { fill(v.x, s), fill(v.y, s), fill(v.z, s); }
  static void fill(Rect& v, const Spec& s) {
    const double half = s.most / 2;
    v.min = {anyNumber(-half, half, 4), anyNumber(-half, half, 4)};
    v.max = {rounded(v.min.x + anyNumber(0, half, 4), 4),
             rounded(v.min.y + anyNumber(0, half, 4), 4)};
  }
  static void fill(Polygon& v, const Spec& s) { fill(v.points, s); }
  static void fill(std::array<double, 3>& v, const Spec& s) {
    for (double& part : v) fill(part, s);
  }
  template <class T>
  static void fill(std::optional<T>& v, const Spec& s) {
    if (*rc::gen::arbitrary<bool>()) fill(v.emplace(), s);
  }
  template <class T>
  static void fill(std::vector<T>& v, const Spec& s) {
    v.resize(static_cast<std::size_t>(*rc::gen::inRange(0, 3)));
    for (T& item : v) fill(item, s);
  }
  template <class T>
  static void fill(std::map<std::string, T>& v, const Spec& s) {
    for (int i = *rc::gen::inRange(0, 3); i > 0; --i) fill(v[anyWord()], s);
  }
  template <class T>
  static void fill(T& v, const Spec&) {
    if constexpr (std::is_enum_v<T>)
      v = static_cast<T>(*rc::gen::inRange(0, kindsOf(v)));
    else
      v = object<T>();
  }
  static int kindsOf(ShotSize) { return kShotSizes; }
  static int kindsOf(EyeHeight) { return 5; }
  static int kindsOf(CopyKind) { return 7; }
  static int kindsOf(ReadingDirection) { return 2; }
  static int kindsOf(Sex) { return 2; }
};

/// A page whose beats have ids of their own, as the reader demands.
inline Page anyPage() {
  Page page = AnyFields::object<Page>();
  for (std::size_t i = 0; i < page.beats.size(); ++i) page.beats[i].id += std::to_string(i);
  return page;
}

}  // namespace tw::tests
