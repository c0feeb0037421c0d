#include "job/read_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tw {

namespace {

/// A value as people would say it, cut short.
std::string said(const Json& json) {
  if (json.is_null()) return "nothing (null)";
  if (json.is_object()) return "an object";
  if (json.is_array()) return fmt::format("a list of {}", json.size());
  std::string text = json.dump(-1, ' ', false, Json::error_handler_t::replace);
  if (text.size() > 60) text = text.substr(0, 57) + "...\"";
  return firstBadUtf8(text) == text.npos ? text : "a long text";
}

std::string saidRange(const Spec& spec, std::string_view what) {
  return fmt::format("{} from {:.15g} to {:.15g}", what, spec.least, spec.most);
}

std::string_view saidForm(Form form) {
  switch (form) {
    case Form::Word:
      return "a word without spaces or slashes";
    case Form::FileName:
      return "a file name without folders";
    case Form::Date:
      return "a date such as 2027-01-15";
    case Form::Any:
      break;
  }
  return "text";
}

bool hasForm(const std::string& text, Form form) {
  switch (form) {
    case Form::Word:
      return isWord(text);
    case Form::FileName:
      return isFileName(text);
    case Form::Date:
      return text.empty() || isDate(text);
    case Form::Any:
      break;
  }
  return text.find('\0') == text.npos;
}

/// Single-letter insertions, deletions and replacements that turn one word into the other
/// (Wagner–Fischer).
std::size_t editsBetween(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0]++;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({replaced, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row.back();
}

}  // namespace

std::string below(const std::string& path, std::string_view key) {
  std::string out = path + "/";
  for (const char c : key) {
    if (c == '~')
      out += "~0";
    else if (c == '/')
      out += "~1";
    else
      out += c;
  }
  return out;
}

std::string below(const std::string& path, std::size_t index) {
  return fmt::format("{}/{}", path, index);
}

std::string_view nearest(std::string_view wanted, const std::vector<std::string_view>& candidates) {
  if (wanted.size() > 60) return {};
  std::string_view best;
  std::size_t fewest = std::max<std::size_t>(2, wanted.size() / 2) + 1;
  for (const std::string_view candidate : candidates) {
    const std::size_t edits = editsBetween(wanted, candidate);
    if (edits < fewest) {
      fewest = edits;
      best = candidate;
    }
  }
  return best;
}

void Reader::complain(const std::string& path, std::string sentence, std::string advice) {
  if (problems_.size() > kMostProblems) return;
  if (problems_.size() == kMostProblems) {
    sentence = "More problems follow; they are not listed.";
    advice.clear();
  }
  problems_.push_back({Cause::BadInput,
                       std::move(sentence),
                       {.file = file_, .path = path.empty() ? "/" : path},
                       std::move(advice)});
}

void Reader::expected(const std::string& path, std::string_view what, const Json& found) {
  complain(path, fmt::format("Expected {}, found {}.", what, said(found)));
}

void Reader::missing(const std::string& path, std::string_view key, std::string_view help) {
  complain(path, fmt::format("The field \"{}\" is missing ({}).", key, help));
}

void Reader::unknown(const Json& json, const std::string& path,
                     const std::vector<std::string_view>& known) {
  for (const auto& [key, item] : json.items()) {
    if (std::find(known.begin(), known.end(), key) != known.end()) continue;
    const std::string_view near = nearest(key, known);
    complain(below(path, key.substr(0, 60)), "This field is not known here.",
             near.empty() ? fmt::format("Known are: {}.", fmt::join(known, ", "))
                          : fmt::format("Is \"{}\" meant?", near));
  }
}

bool Reader::isObject(const Json& json, const std::string& path, const Spec& spec) {
  if (!json.is_object()) {
    expected(path, "an object in braces", json);
    return false;
  }
  if (json.size() <= spec.mostItems) return true;
  complain(path,
           fmt::format("Expected at most {} entries, found {}.", spec.mostItems, json.size()));
  return false;
}

bool Reader::isList(const Json& json, const std::string& path, const Spec& spec) {
  if (!json.is_array()) {
    expected(path, "a list in square brackets", json);
    return false;
  }
  if (json.size() <= spec.mostItems) return true;
  complain(path,
           fmt::format("Expected at most {} entries, found {}.", spec.mostItems, json.size()));
  return false;
}

void Reader::value(const Json& json, const std::string& path, const Spec&, bool& out) {
  if (json.is_boolean())
    out = json.get<bool>();
  else
    expected(path, "true or false", json);
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, int& out) {
  const double found = json.is_number() ? json.get<double>() : NAN;
  const bool whole = found == std::floor(found);  // false for NaN
  if (whole && found >= spec.least && found <= spec.most)
    out = static_cast<int>(found);
  else
    expected(path, saidRange(spec, "a whole number"), json);
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, double& out) {
  const double found = json.is_number() ? json.get<double>() : NAN;
  if (found >= spec.least && found <= spec.most)
    out = found;
  else
    expected(path, saidRange(spec, "a number"), json);
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, std::string& out) {
  if (!json.is_string()) return expected(path, saidForm(spec.form), json);
  const auto& text = json.get_ref<const std::string&>();
  if (text.size() > spec.mostLength)
    return complain(path, fmt::format("Expected at most {} bytes of text, found {}.",
                                      spec.mostLength, text.size()));
  if (!hasForm(text, spec.form) || (spec.required && text.empty()))
    return expected(path, saidForm(spec.form), json);
  out = text;
}

void Reader::numbers(const Json& json, const std::string& path, const Spec& spec,
                     std::string_view what, double* out, std::size_t count) {
  if (!json.is_array() || json.size() != count) return expected(path, what, json);
  for (std::size_t i = 0; i < count; ++i) value(json[i], below(path, i), spec, out[i]);
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, Point& out) {
  std::array<double, 2> xy{};
  numbers(json, path, spec, "a point [x, y]", xy.data(), xy.size());
  out = {xy[0], xy[1]};
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, Vector& out) {
  std::array<double, 2> xy{};
  numbers(json, path, spec, "a direction [x, y]", xy.data(), xy.size());
  out = {xy[0], xy[1]};
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, Place3& out) {
  std::array<double, 3> xyz{};
  numbers(json, path, spec, "a place [x, y, z]", xyz.data(), xyz.size());
  out = {xyz[0], xyz[1], xyz[2]};
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, Rect& out) {
  std::array<double, 4> r{};
  numbers(json, path, spec, "a rectangle [x, y, width, height]", r.data(), r.size());
  if (r[2] < 0 || r[3] < 0) return expected(path, "a width and height of 0 or more", json);
  out.min = {r[0], r[1]};
  out.max = {rounded(r[0] + r[2], spec.decimals), rounded(r[1] + r[3], spec.decimals)};
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec, Polygon& out) {
  value(json, path, spec, out.points);
}

void Reader::value(const Json& json, const std::string& path, const Spec& spec,
                   std::array<double, 3>& out) {
  numbers(json, path, spec, "three numbers", out.data(), out.size());
}

void Reader::named(const Json& json, const std::string& path,
                   const std::vector<std::string_view>& names, int& out) {
  if (json.is_string()) {
    const auto found = std::find(names.begin(), names.end(), json.get_ref<const std::string&>());
    if (found != names.end()) {
      out = static_cast<int>(found - names.begin());
      return;
    }
  }
  expected(path, fmt::format("one of {}", fmt::join(names, ", ")), json);
}

}  // namespace tw
