// Writes our types as JSON by their field listings, so that a person can read and edit the file.
// Stable order, few decimals, two-space indentation, short things on one line.
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

/// An object by FieldsOf<T>. Fields that need not be there and have their default are left out
/// unless `complete` is asked for; what is not set at all is always left out.
template <class T>
OrderedJson objectOf(const T& value, bool complete = false);

/// The tree as text, ending in a newline.
std::string textOf(const OrderedJson& tree);

template <class T>
class FieldWriter {
 public:
  FieldWriter(const T& value, bool complete) : from_(value), complete_(complete) {}

  template <class M>
  void operator()(std::string_view key, M T::*member, Spec spec, std::string_view) {
    if (!spec.required && !complete_ && from_.*member == usual_.*member) return;
    spec.complete = complete_;
    OrderedJson item = jsonOf(from_.*member, spec);
    if (!item.is_null()) tree_.push_back({std::string(key), std::move(item)});
  }
  OrderedJson take() { return std::move(tree_); }

 private:
  const T& from_;
  const T usual_{};
  const bool complete_;
  OrderedJson tree_ = OrderedJson::object();
};

template <class T>
OrderedJson objectOf(const T& value, bool complete) {
  FieldWriter<T> writer(value, complete);
  FieldsOf<T>::list(writer);
  return writer.take();
}

template <class T>
OrderedJson jsonOf(const T& value, const Spec& spec) {
  if constexpr (std::is_enum_v<T>)
    return std::string(nameOf(value));
  else
    return objectOf(value, spec.complete);
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
