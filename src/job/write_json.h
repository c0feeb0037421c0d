// Writes our types as JSON by their field listings: stable order, few decimals, two-space
// indentation, short things on one line, so that a person can read and edit the file.
#pragma once

#include <array>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "geometry/shapes.h"
#include "job/beat.h"
#include "job/field.h"
#include "job/rough.h"

namespace tw {

/// JSON whose fields keep the order of the listing.
using OrderedJson = nlohmann::ordered_json;

OrderedJson jsonOf(bool value, const Spec& spec);
OrderedJson jsonOf(int value, const Spec& spec);
OrderedJson jsonOf(double value, const Spec& spec);
OrderedJson jsonOf(const std::string& value, const Spec& spec);
OrderedJson jsonOf(Point value, const Spec& spec);
OrderedJson jsonOf(Vector value, const Spec& spec);
OrderedJson jsonOf(const Place3& value, const Spec& spec);
OrderedJson jsonOf(const Rect& value, const Spec& spec);
OrderedJson jsonOf(const Polygon& value, const Spec& spec);
OrderedJson jsonOf(const std::array<double, 3>& value, const Spec& spec);
template <class T>
OrderedJson jsonOf(const std::optional<T>& value, const Spec& spec);
template <class T>
OrderedJson jsonOf(const std::vector<T>& value, const Spec& spec);
template <class T>
OrderedJson jsonOf(const std::map<std::string, T>& value, const Spec& spec);
template <class T>
OrderedJson jsonOf(const T& value, const Spec& spec);

/// An object by FieldsOf<T>. Fields that need not be there and have their default are left out.
template <class T>
OrderedJson objectOf(const T& value);

/// The tree as text, ending in a newline.
std::string textOf(const OrderedJson& tree);

template <class T>
class FieldWriter {
 public:
  explicit FieldWriter(const T& value) : from_(value) {}

  template <class M>
  void operator()(std::string_view key, M T::*member, const Spec& spec, std::string_view) {
    if (!spec.required && from_.*member == usual_.*member) return;
    tree_.push_back({std::string(key), jsonOf(from_.*member, spec)});
  }
  OrderedJson take() { return std::move(tree_); }

 private:
  const T& from_;
  const T usual_{};
  OrderedJson tree_ = OrderedJson::object();
};

template <class T>
OrderedJson objectOf(const T& value) {
  FieldWriter<T> writer(value);
  FieldsOf<T>::list(writer);
  return writer.take();
}

template <class T>
OrderedJson jsonOf(const T& value, const Spec&) {
  if constexpr (std::is_enum_v<T>)
    return std::string(nameOf(value));
  else
    return objectOf(value);
}

template <class T>
OrderedJson jsonOf(const std::optional<T>& value, const Spec& spec) {
  return value ? jsonOf(*value, spec) : OrderedJson();
}

template <class T>
OrderedJson jsonOf(const std::vector<T>& value, const Spec& spec) {
  OrderedJson out = OrderedJson::array();
  for (const T& item : value) out.push_back(jsonOf(item, spec));
  return out;
}

template <class T>
OrderedJson jsonOf(const std::map<std::string, T>& value, const Spec& spec) {
  OrderedJson out = OrderedJson::object();
  for (const auto& [key, item] : value) out.push_back({key, jsonOf(item, spec)});
  return out;
}

}  // namespace tw
