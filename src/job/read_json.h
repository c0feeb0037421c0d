// Reads a JSON tree into our types by their field listings and gathers every problem on the way:
// the field, what was expected, what was found. A value that is refused keeps its default.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "geometry/shapes.h"
#include "job/beat.h"
#include "job/field.h"
#include "job/parse_json.h"
#include "job/rough.h"

namespace tw {

/// Problems kept per document; a hostile file must not make a report of its own size.
inline constexpr std::size_t kMostProblems = 50;

class Reader {
 public:
  explicit Reader(std::string file) : file_(std::move(file)) {}

  /// Reads an object by FieldsOf<T>; `path` is its JSON Pointer.
  template <class T>
  void object(const Json& json, const std::string& path, T& out);

  void value(const Json& json, const std::string& path, const Spec& spec, bool& out);
  void value(const Json& json, const std::string& path, const Spec& spec, int& out);
  void value(const Json& json, const std::string& path, const Spec& spec, double& out);
  void value(const Json& json, const std::string& path, const Spec& spec, std::string& out);
  void value(const Json& json, const std::string& path, const Spec& spec, Point& out);
  void value(const Json& json, const std::string& path, const Spec& spec, Vector& out);
  void value(const Json& json, const std::string& path, const Spec& spec, Place3& out);
  void value(const Json& json, const std::string& path, const Spec& spec, Rect& out);
  void value(const Json& json, const std::string& path, const Spec& spec, Polygon& out);
  void value(const Json& json, const std::string& path, const Spec& spec,
             std::array<double, 3>& out);
  template <class T>
  void value(const Json& json, const std::string& path, const Spec& spec, std::optional<T>& out);
  template <class T>
  void value(const Json& json, const std::string& path, const Spec& spec, std::vector<T>& out);
  template <class T>
  void value(const Json& json, const std::string& path, const Spec& spec,
             std::map<std::string, T>& out);
  template <class T>
  void value(const Json& json, const std::string& path, const Spec& spec, T& out);

  void complain(const std::string& path, std::string sentence, std::string advice = {});
  /// "Expected WHAT, found VALUE."
  void expected(const std::string& path, std::string_view what, const Json& found);
  void missing(const std::string& path, std::string_view key, std::string_view help);
  void unknown(const Json& json, const std::string& path,
               const std::vector<std::string_view>& known);

  bool isSound() const { return problems_.empty(); }
  Problems take() { return std::move(problems_); }

 private:
  template <class E>
  void choice(const Json& json, const std::string& path, E& out);
  bool isObject(const Json& json, const std::string& path, const Spec& spec);
  bool isList(const Json& json, const std::string& path, const Spec& spec);
  void numbers(const Json& json, const std::string& path, const Spec& spec, std::string_view what,
               double* out, std::size_t count);
  void named(const Json& json, const std::string& path, const std::vector<std::string_view>& names,
             int& out);

  std::string file_;
  Problems problems_;
};

/// One step down: "/panels/3", with ~ and / escaped as RFC 6901 asks.
std::string below(const std::string& path, std::string_view key);
std::string below(const std::string& path, std::size_t index);
/// The candidate with the fewest single-letter edits, or empty when none is near.
std::string_view nearest(std::string_view wanted, const std::vector<std::string_view>& candidates);

template <class E>
inline constexpr int kKinds = 0;
template <>
inline constexpr int kKinds<ShotSize> = kShotSizes;
template <>
inline constexpr int kKinds<EyeHeight> = 5;
template <>
inline constexpr int kKinds<CopyKind> = 7;
template <>
inline constexpr int kKinds<ReadingDirection> = 2;
template <>
inline constexpr int kKinds<Sex> = 2;

/// The names of a closed set, in order.
template <class E>
std::vector<std::string_view> namesOf() {
  std::vector<std::string_view> names;
  for (int i = 0; i < kKinds<E>; ++i) names.push_back(nameOf(static_cast<E>(i)));
  return names;
}

/// Fills the fields of one object; called once per field by the listing.
template <class T>
struct FieldReader {
  Reader& reader;
  const Json& json;
  const std::string& path;
  T& out;
  std::vector<std::string_view> known = {};

  template <class M>
  void operator()(std::string_view key, M T::*member, const Spec& spec, std::string_view help) {
    known.push_back(key);
    const auto found = json.find(key);
    if (found != json.end())
      reader.value(*found, below(path, key), spec, out.*member);
    else if (spec.required)
      reader.missing(path, key, help);
  }
};

template <class T>
void Reader::object(const Json& json, const std::string& path, T& out) {
  if (!isObject(json, path, {})) return;
  FieldReader<T> fields{*this, json, path, out};
  FieldsOf<T>::list(fields);
  unknown(json, path, fields.known);
}

template <class T>
void Reader::value(const Json& json, const std::string& path, const Spec&, T& out) {
  if constexpr (std::is_enum_v<T>)
    choice(json, path, out);
  else
    object(json, path, out);
}

template <class E>
void Reader::choice(const Json& json, const std::string& path, E& out) {
  int index = -1;
  named(json, path, namesOf<E>(), index);
  if (index >= 0) out = static_cast<E>(index);
}

template <class T>
void Reader::value(const Json& json, const std::string& path, const Spec& spec,
                   std::optional<T>& out) {
  const std::size_t before = problems_.size();
  T read{};
  value(json, path, spec, read);
  if (problems_.size() == before) out = std::move(read);
}

template <class T>
void Reader::value(const Json& json, const std::string& path, const Spec& spec,
                   std::vector<T>& out) {
  if (!isList(json, path, spec)) return;
  out.clear();
  for (const Json& item : json) {
    const std::string place = below(path, out.size());
    value(item, place, spec, out.emplace_back());
  }
}

template <class T>
void Reader::value(const Json& json, const std::string& path, const Spec& spec,
                   std::map<std::string, T>& out) {
  if (!isObject(json, path, spec)) return;
  out.clear();
  for (const auto& [key, item] : json.items()) value(item, below(path, key), spec, out[key]);
}

}  // namespace tw
