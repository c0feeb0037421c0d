// What a field of a document may hold: bounds, decimals, form and whether it must be there.
// One listing per type (FieldsOf, in the *_fields.h headers) feeds the reader, the writer and the
// published schema, so the three cannot drift apart.
#pragma once

#include <cstddef>
#include <string_view>

namespace tw {

/// Forms of text. A word is what ids and preset names are made of; a file name has no folder.
enum class Form { Any, Word, FileName, Date };

struct Spec {
  double least = 0, most = 0;         ///< of numbers, both allowed
  int decimals = 0;                   ///< kept in files
  std::size_t mostItems = 10000;      ///< of lists and maps
  std::size_t mostLength = 1u << 20;  ///< of texts, bytes
  Form form = Form::Any;
  bool required = false;
  bool complete = false;  ///< write fields below it even when they have their default
};

inline constexpr double kLargestMm = 100000;      // 100 m: beyond any sheet, board or overshoot
inline constexpr double kLargestMetres = 100000;  // beyond any horizon that a panel shows

/// Lengths in mm on the page, kept to 1/10000 mm.
constexpr Spec mm(double least = -kLargestMm, double most = kLargestMm) {
  return {.least = least, .most = most, .decimals = 4, .mostItems = 200000};
}
/// Lengths in the panel's space, kept to 1/1000 mm.
constexpr Spec metres(double least = -kLargestMetres, double most = kLargestMetres) {
  return {.least = least, .most = most, .decimals = 6};
}
constexpr Spec degrees() {
  return {.least = -36000, .most = 36000, .decimals = 6};
}
/// Turns of joints by name.
constexpr Spec jointTurns() {
  return {.least = -360, .most = 360, .decimals = 3, .mostItems = 64};
}
constexpr Spec number(double least, double most) {
  return {.least = least, .most = most, .decimals = 6};
}
constexpr Spec count(int least, int most) {
  return {.least = static_cast<double>(least), .most = static_cast<double>(most)};
}
constexpr Spec anyText() {
  return {};
}
constexpr Spec word() {
  return {.mostLength = 200, .form = Form::Word};
}
constexpr Spec fileName() {
  return {.mostLength = 255, .form = Form::FileName};
}
constexpr Spec date() {
  return {.mostLength = 10, .form = Form::Date};
}
constexpr Spec list(std::size_t most) {
  return {.mostItems = most};
}
constexpr Spec required(Spec spec) {
  spec.required = true;
  return spec;
}

/// Specialised per type: kName and kHelp for the schema, and
/// `template <class F> static void list(F& f)` that calls f(key, &Type::member, spec, help).
template <class T>
struct FieldsOf;

/// An ISO 8601 calendar date that exists: "2027-02-28" but not "2027-02-29".
bool isDate(std::string_view text);
/// No space, slash, backslash or control character; what ids and names of presets are made of.
bool isWord(std::string_view text);
/// A name without folders that is neither "." nor "..".
bool isFileName(std::string_view text);
/// Rounded so that it prints with at most that many decimals.
double rounded(double value, int decimals);

}  // namespace tw
