#include "job/parse_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <vector>

#include "base/files.h"

namespace tw {

namespace {

int lineAt(std::string_view bytes, std::size_t offset) {
  const auto end = bytes.begin() + static_cast<std::ptrdiff_t>(std::min(offset, bytes.size()));
  return 1 + static_cast<int>(std::count(bytes.begin(), end, '\n'));
}

/// Bytes of the sequence that the lead byte opens; 0 for a byte that cannot lead.
std::size_t sequenceLength(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return 2;
  if (lead >= 0xE0 && lead <= 0xEF) return 3;
  if (lead >= 0xF0 && lead <= 0xF4) return 4;
  return 0;
}

/// RFC 3629 narrows the second byte so that overlong forms, surrogates and values over
/// U+10FFFF stay out.
bool secondByteFits(unsigned char lead, unsigned char second) {
  if (lead == 0xE0) return second >= 0xA0;
  if (lead == 0xED) return second <= 0x9F;
  if (lead == 0xF0) return second >= 0x90;
  if (lead == 0xF4) return second <= 0x8F;
  return true;
}

bool soundSequence(std::string_view bytes, std::size_t at, std::size_t length) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes[at + i]); };
  if (length == 0 || at + length > bytes.size()) return false;
  for (std::size_t i = 1; i < length; ++i)
    if ((byte(i) & 0xC0) != 0x80) return false;
  return length == 1 || secondByteFits(byte(0), byte(1));
}

/// What is wrong before any syntax is looked at.
Result<void> checkBytes(std::string_view bytes, const std::string& file) {
  if (bytes.size() > kLargestTextBytes)
    return badInput(fmt::format("The file has {} bytes; at most {} were expected.", bytes.size(),
                                kLargestTextBytes),
                    {.file = file}, "Is this the right file?");
  if (bytes.find_first_not_of(" \t\r\n") == bytes.npos)
    return badInput("The file is empty; a JSON document was expected.", {.file = file},
                    "An earlier state may be in .history.");
  if (const std::size_t at = bytes.find('\0'); at != bytes.npos)
    return badInput("A zero byte was found; a JSON document is plain text.",
                    {.file = file, .line = lineAt(bytes, at)}, "Is this the right file?");
  if (const std::size_t at = firstBadUtf8(bytes); at != bytes.npos)
    return badInput("The text is not valid UTF-8 here.", {.file = file, .line = lineAt(bytes, at)},
                    "Save the file as UTF-8.");
  return {};
}

/// Hears of every value as it is parsed: notes nesting and keys that stand twice.
class Watch {
 public:
  bool operator()(int depth, Json::parse_event_t event, Json& value) {
    if (depth > kDeepestNesting) tooDeep_ = true;
    if (tooDeep_) return false;
    const auto level = static_cast<std::size_t>(depth);
    if (event == Json::parse_event_t::object_start) {
      if (keys_.size() <= level + 1) keys_.resize(level + 2);
      keys_[level + 1].clear();
    }
    if (event == Json::parse_event_t::key) noteKey(level, value.get_ref<const std::string&>());
    return true;
  }
  bool tooDeep() const { return tooDeep_; }
  const std::string& doubled() const { return doubled_; }

 private:
  void noteKey(std::size_t level, const std::string& key) {
    if (keys_.size() <= level) keys_.resize(level + 1);
    if (!keys_[level].insert(key).second && doubled_.empty()) doubled_ = key;
  }

  bool tooDeep_ = false;
  std::string doubled_;
  std::vector<std::set<std::string>> keys_;
};

/// The parser's own words, without its prefix and without bytes that are no plain text.
std::string reasonIn(std::string_view what) {
  const std::size_t cut = what.find("column ");
  const std::size_t colon = cut == what.npos ? cut : what.find(": ", cut);
  std::string out(colon == what.npos ? what : what.substr(colon + 2));
  std::replace_if(
      out.begin(), out.end(), [](char c) { return c < ' ' || c > '~'; }, '?');
  if (out.size() > 160) out = out.substr(0, 160) + "...";
  return out;
}

tl::unexpected<Problems> notJson(std::string_view bytes, const std::string& file,
                                 const Json::parse_error& error) {
  const std::string_view what = error.what();
  const int line = lineAt(bytes, error.byte > 0 ? error.byte - 1 : 0);
  if (what.find("unexpected end of input") != what.npos)
    return badInput("The file ends too early: brackets or quotes are still open.",
                    {.file = file, .line = line},
                    "It may have been cut off; an earlier state may be in .history.");
  return badInput(fmt::format("This is not valid JSON ({}).", reasonIn(what)),
                  {.file = file, .line = line}, "Correct the text at that line.");
}

}  // namespace

std::size_t firstBadUtf8(std::string_view bytes) {
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t length = sequenceLength(static_cast<unsigned char>(bytes[at]));
    if (!soundSequence(bytes, at, length)) return at;
    at += length;
  }
  return bytes.npos;
}

Result<Json> parseJson(std::string_view bytes, const std::string& fileName) {
  if (Result<void> sound = checkBytes(bytes, fileName); !sound)
    return tl::unexpected(sound.error());
  Watch watch;
  Json tree;
  try {
    tree = Json::parse(bytes, std::ref(watch));
  } catch (const Json::parse_error& error) {
    return notJson(bytes, fileName, error);
  } catch (const Json::exception&) {  // the only other one is a number beyond a double's range
    return badInput("A number is too large to be meant.", {.file = fileName},
                    "Look for numbers with a large exponent such as 1e999.");
  }
  if (watch.tooDeep())
    return badInput(fmt::format("Brackets are nested more than {} deep.", kDeepestNesting),
                    {.file = fileName}, "Is this the right file?");
  if (!watch.doubled().empty())
    return badInput(fmt::format("The key \"{}\" stands twice in one object.", watch.doubled()),
                    {.file = fileName}, "Keep one of them.");
  return tree;
}

}  // namespace tw
