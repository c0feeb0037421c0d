#include "job/write_json.h"

namespace tw {

namespace {

constexpr std::size_t kLineWidth = 100;
constexpr std::size_t kLargestOnOneLine = 40;  // entries; saves measuring long lists in vain

std::string scalarText(const OrderedJson& value) {
  return value.dump(-1, ' ', false, OrderedJson::error_handler_t::replace);
}

/// The value on one line, or cut off as soon as it is longer than `most`.
void appendOneLine(const OrderedJson& value, std::size_t most, std::string& out) {
  if (out.size() > most) return;
  if (!value.is_structured()) {
    out += scalarText(value);
    return;
  }
  out += value.is_object() ? '{' : '[';
  bool first = true;
  for (const auto& [key, item] : value.items()) {
    if (!first) out += ", ";
    first = false;
    if (value.is_object()) out += scalarText(key) + ": ";
    appendOneLine(item, most, out);
    if (out.size() > most) return;
  }
  out += value.is_object() ? '}' : ']';
}

bool fitsOneLine(const OrderedJson& value, std::size_t width, std::string& line) {
  if (value.is_structured() && value.size() > kLargestOnOneLine) return false;
  appendOneLine(value, width, line);
  return !value.is_structured() || line.size() <= width;
}

bool isNumberOrPoint(const OrderedJson& value) {
  if (value.is_number()) return true;
  return value.is_array() && value.size() <= 3 && !value.empty() && value[0].is_number();
}

void append(const OrderedJson& value, std::size_t indent, std::size_t taken, std::string& out);

/// Numbers and points, as many to a line as fit.
void appendFilled(const OrderedJson& list, std::size_t indent, std::string& out) {
  const std::string margin(indent + 2, ' ');
  std::size_t column = kLineWidth;
  for (std::size_t i = 0; i < list.size(); ++i) {
    std::string item;
    appendOneLine(list[i], kLineWidth, item);
    if (i + 1 < list.size()) item += ',';
    if (column + 1 + item.size() > kLineWidth) {
      out += '\n' + margin;
      column = margin.size();
    } else {
      out += ' ';
      ++column;
    }
    out += item;
    column += item.size();
  }
}

void appendBroken(const OrderedJson& value, std::size_t indent, std::string& out) {
  const std::string margin(indent + 2, ' ');
  bool first = true;
  for (const auto& [key, item] : value.items()) {
    out += (first ? "\n" : ",\n") + margin;
    first = false;
    const std::string label = value.is_object() ? scalarText(key) + ": " : "";
    out += label;
    append(item, indent + 2, margin.size() + label.size(), out);
  }
}

void append(const OrderedJson& value, std::size_t indent, std::size_t taken, std::string& out) {
  std::string line;
  const std::size_t room = taken + 1 < kLineWidth ? kLineWidth - taken - 1 : 0;
  if (fitsOneLine(value, room, line)) {
    out += line;
    return;
  }
  out += value.is_object() ? '{' : '[';
  if (value.is_array() && isNumberOrPoint(value[0]))
    appendFilled(value, indent, out);
  else
    appendBroken(value, indent, out);
  out += '\n' + std::string(indent, ' ') + (value.is_object() ? '}' : ']');
}

}  // namespace

OrderedJson jsonOf(bool value, const Spec&) {
  return value;
}

OrderedJson jsonOf(int value, const Spec&) {
  return value;
}

OrderedJson jsonOf(double value, const Spec& spec) {
  const double kept = rounded(value, spec.decimals);
  const auto whole = static_cast<std::int64_t>(kept > -1e15 && kept < 1e15 ? kept : 0.5);
  if (static_cast<double>(whole) == kept) return whole;  // "12", not "12.0"
  return kept;
}

OrderedJson jsonOf(const std::string& value, const Spec&) {
  return value;
}

OrderedJson jsonOf(Point value, const Spec& spec) {
  return OrderedJson::array({jsonOf(value.x, spec), jsonOf(value.y, spec)});
}

OrderedJson jsonOf(Vector value, const Spec& spec) {
  return OrderedJson::array({jsonOf(value.x, spec), jsonOf(value.y, spec)});
}

OrderedJson jsonOf(const Place3& value, const Spec& spec) {
  return OrderedJson::array({jsonOf(value.x, spec), jsonOf(value.y, spec), jsonOf(value.z, spec)});
}

OrderedJson jsonOf(const Rect& value, const Spec& spec) {
  const Point min{rounded(value.min.x, spec.decimals), rounded(value.min.y, spec.decimals)};
  const Point max{rounded(value.max.x, spec.decimals), rounded(value.max.y, spec.decimals)};
  return OrderedJson::array({jsonOf(min.x, spec), jsonOf(min.y, spec), jsonOf(max.x - min.x, spec),
                             jsonOf(max.y - min.y, spec)});
}

OrderedJson jsonOf(const Polygon& value, const Spec& spec) {
  return jsonOf(value.points, spec);
}

OrderedJson jsonOf(const std::array<double, 3>& value, const Spec& spec) {
  return OrderedJson::array(
      {jsonOf(value[0], spec), jsonOf(value[1], spec), jsonOf(value[2], spec)});
}

std::string textOf(const OrderedJson& tree) {
  std::string out;
  append(tree, 0, 0, out);
  return out + '\n';
}

}  // namespace tw
