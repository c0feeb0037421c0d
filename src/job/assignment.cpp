#include "job/assignment.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>

namespace tw {

namespace {

std::string lowered(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  return out;
}

template <class Number>
std::optional<Number> wholeTextAs(std::string_view text) {
  Number number{};
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, number);
  if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return number;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  const std::size_t from = text.find_first_not_of(" \t\r\n");
  if (from == text.npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1);
}

Result<Assignment> assignmentIn(std::string_view text) {
  const std::size_t equals = text.find('=');
  const Assignment found{trimmed(text.substr(0, equals)),
                         equals == text.npos ? "" : trimmed(text.substr(equals + 1))};
  if (equals == text.npos || found.key.empty())
    return badInput(fmt::format("\"{}\" is not of the form KEY=VALUE.", text), {},
                    "Write for example head-mm=8 of a brief, p4-2.shot=close-up of a panel.");
  if (found.value.empty())
    return badInput(
        fmt::format("{} was given no value.", found.key), {},
        "To take it back, give a brief's key the value none, a panel's the value guess.");
  return found;
}

std::optional<bool> yesOrNo(std::string_view text) {
  const std::string word = lowered(text);
  if (word == "yes" || word == "true" || word == "on") return true;
  if (word == "no" || word == "false" || word == "off") return false;
  return std::nullopt;
}

std::optional<int> wholeNumber(std::string_view text) {
  return wholeTextAs<int>(text);
}

std::optional<double> decimalNumber(std::string_view text) {
  const bool percent = text.ends_with('%');
  if (percent) text.remove_suffix(1);
  const std::optional<double> number = wholeTextAs<double>(text);
  if (!number || !std::isfinite(*number)) return std::nullopt;
  return percent ? *number / 100 : *number;
}

tl::unexpected<Problems> wrongValue(const Assignment& assignment, std::string_view expected) {
  return badInput(fmt::format("{}: \"{}\" was found; {} was expected.", assignment.key,
                              assignment.value, expected));
}

}  // namespace tw
