#include "geometry/length_words.h"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace tw {

namespace {

constexpr double kMostMm = 10'000;  // no sheet is ten metres long
constexpr double kPointsPerInch = 72;

struct Unit {
  std::string_view word;
  double mm;
};
constexpr std::array<Unit, 12> kUnits{{{"mm", 1},
                                       {"millimetres", 1},
                                       {"millimeters", 1},
                                       {"cm", 10},
                                       {"in", kMmPerInch},
                                       {"in.", kMmPerInch},
                                       {"inch", kMmPerInch},
                                       {"inches", kMmPerInch},
                                       {"\"", kMmPerInch},
                                       {"″", kMmPerInch},
                                       {"”", kMmPerInch},
                                       {"pt", kMmPerInch / kPointsPerInch}}};

struct Fraction {
  std::string_view sign, words;
};
constexpr std::array<Fraction, 9> kFractions{{{"½", "1/2"},
                                              {"¼", "1/4"},
                                              {"¾", "3/4"},
                                              {"⅛", "1/8"},
                                              {"⅜", "3/8"},
                                              {"⅝", "5/8"},
                                              {"⅞", "7/8"},
                                              {"⅓", "1/3"},
                                              {"⅔", "2/3"}}};

/// Fractions of one character become "n/m" after a space, a comma a point, signs one kind of minus.
std::string plain(std::string_view words) {
  std::string out(words);
  const auto replace = [&](std::string_view from, const std::string& to) {
    for (std::size_t at = out.find(from); at != std::string::npos;
         at = out.find(from, at + to.size()))
      out.replace(at, from.size(), to);
  };
  for (const Fraction& f : kFractions) replace(f.sign, " " + std::string(f.words));
  replace(",", ".");
  replace("−", "-");
  return out;
}

/// Takes what it can read from the front of the words.
class Words {
 public:
  explicit Words(std::string_view words) : rest_(words) { skipSpace(); }

  bool take(char c) {
    if (rest_.empty() || rest_.front() != c) return false;
    rest_.remove_prefix(1);
    return true;
  }

  /// Digits, with a fraction after a point when `decimals`.
  std::optional<double> number(bool decimals) {
    std::size_t length = 0;
    bool point = false;
    while (length < rest_.size() && (isDigit(rest_[length]) || (rest_[length] == '.' && !point))) {
      if (rest_[length] == '.') {
        if (!decimals) break;
        point = true;
      }
      ++length;
    }
    double value = 0;
    const auto read =
        std::from_chars(rest_.data(), rest_.data() + length, value, std::chars_format::fixed);
    if (read.ec != std::errc() || read.ptr != rest_.data() + length) return std::nullopt;
    rest_.remove_prefix(length);
    return value;
  }

  void skipSpace() {
    while (take(' ') || take('\t')) {
    }
  }
  bool atDigit() const { return !rest_.empty() && isDigit(rest_.front()); }
  std::string_view rest() const { return rest_; }

 private:
  static bool isDigit(char c) { return c >= '0' && c <= '9'; }
  std::string_view rest_;
};

/// "12.5", "1/2", "3 1/4" or "3-1/4".
std::optional<double> amount(Words& words) {
  const auto first = words.number(true);
  if (!first) return std::nullopt;
  if (words.take('/')) {
    const auto below = words.number(false);
    return below && *below > 0 ? std::optional(*first / *below) : std::nullopt;
  }
  Words part = words;
  part.skipSpace();
  part.take('-');
  part.skipSpace();
  if (!part.atDigit()) return first;
  const auto above = part.number(false);
  if (!above || !part.take('/')) return std::nullopt;
  const auto below = part.number(false);
  if (!below || *below <= 0) return std::nullopt;
  words = part;
  return *first + *above / *below;
}

std::string lower(std::string_view words) {
  std::string out(words);
  while (!out.empty() && (out.back() == ' ' || out.back() == '\t')) out.pop_back();
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

std::optional<double> unitNamed(const std::string& word, LengthUnit unit) {
  if (word.empty()) return unit == LengthUnit::Inches ? kMmPerInch : 1;
  for (const Unit& u : kUnits)
    if (u.word == word) return u.mm;
  return std::nullopt;
}

tl::unexpected<Problems> noLength(std::string_view words) {
  return badInput(fmt::format("“{}” is no length.", words), {},
                  "Write a number with mm, cm, in or pt, such as 12.5 mm or 3 1/4 in.");
}

}  // namespace

Result<double> readLength(std::string_view said, LengthUnit unit) {
  const std::string text = plain(said);
  Words words(text);
  const bool minus = words.take('-');
  words.skipSpace();
  const auto value = amount(words);
  if (!value) return noLength(said);
  words.skipSpace();
  const auto mm = unitNamed(lower(words.rest()), unit);
  if (!mm) return noLength(said);
  const double length = (minus ? -1 : 1) * *value * *mm;
  if (std::abs(length) > kMostMm)
    return badInput(fmt::format("“{}” is longer than ten metres.", said));
  return length;
}

std::string lengthWords(double mm, LengthUnit unit) {
  const bool inches = unit == LengthUnit::Inches;
  std::string number = inches ? fmt::format("{:.3f}", mm / kMmPerInch) : fmt::format("{:.2f}", mm);
  while (number.back() == '0') number.pop_back();
  if (number.back() == '.') number.pop_back();
  if (number == "-0") number = "0";
  return number + (inches ? " in" : " mm");
}

}  // namespace tw
