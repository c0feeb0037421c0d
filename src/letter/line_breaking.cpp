// Breaking lines for a balloon.
//
// Idea. Knuth and Plass break a whole paragraph at once by dynamic programming over the last
// break, and let each line have its own length ("Breaking Paragraphs into Lines", Software:
// Practice and Experience 11, 1981). Balloon copy is ragged and centred, so instead of the glue's
// stretch we charge the squared departure of a line from its place in the profile.
// Words. *Profile*: wanted line lengths relative to the longest. *Scale*: length of a line of
// profile 1 if all copy were spread evenly. *Weak end*: a line that stops on an article or the
// like; *orphan*: a last line of one short word.
// Steps. 1. scale = copy's width / sum of the profile; 2. best[l][j] = least cost of setting
// chunks 0…j in l lines, from best[l − 1][i] and the line i…j; 3. walk back.
// Cost: lines × chunks², a few thousand sums for a long balloon.
// Badly done: no grammar beyond a few weak words; overlong words are split without a dictionary.

#include "letter/line_breaking.h"

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>

namespace tw {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
/// A line too long widens the whole balloon, one too short only leaves air.
constexpr double kTooLongFactor = 2;
/// In squared shares of the scale; chosen by eye.
constexpr double kOrphan = 0.08, kWeakEnd = 0.015, kPauseEnd = -0.002;
constexpr double kHopeless = 2.5;     ///< scales; no good line is longer
constexpr double kOrphanWidth = 0.5;  ///< of the scale

bool endsWeakly(const std::string& word) {
  static constexpr std::array<const char*, 12> kWeak{"A",  "AN", "THE", "OF", "TO",  "I",
                                                     "IN", "AT", "MY",  "ON", "AND", "YOUR"};
  return std::find(kWeak.begin(), kWeak.end(), word) != kWeak.end();
}

bool endsWithPause(const std::string& word) {
  return !word.empty() && std::string(".,;:!?-").find(word.back()) != std::string::npos;
}

class Breaker {
 public:
  Breaker(const std::vector<Chunk>& chunks, double spaceEm, const std::vector<double>& profile)
      : chunks_(chunks), spaceEm_(spaceEm), profile_(profile) {
    double total = 0;
    for (const Chunk& chunk : chunks) total += chunk.widthEm + (chunk.spaceAfter ? spaceEm : 0);
    for (const Chunk& chunk : chunks) weakEnd_.push_back(endsWeakly(bareWords(chunk.text)) ? 1 : 0);
    for (const Chunk& chunk : chunks)
      pauseEnd_.push_back(endsWithPause(bareWords(chunk.text)) ? 1 : 0);
    scale_ = total / std::accumulate(profile.begin(), profile.end(), 0.0);
  }

  std::optional<BrokenLines> solve() const;

 private:
  double lineCost(std::size_t line, std::size_t last, double width, std::size_t words) const;
  BrokenLines walkBack(const std::vector<std::vector<std::size_t>>& from, double cost) const;

  const std::vector<Chunk>& chunks_;
  double spaceEm_;
  const std::vector<double>& profile_;
  double scale_ = 1;
  std::vector<char> weakEnd_, pauseEnd_;  ///< by chunk: what a line that stops there is like
};

double Breaker::lineCost(std::size_t line, std::size_t last, double width,
                         std::size_t words) const {
  const double off = (width - profile_[line] * scale_) / scale_;
  double cost = off * off * (off > 0 ? kTooLongFactor : 1) / static_cast<double>(profile_.size());
  const bool isLast = line + 1 == profile_.size();
  if (isLast) {
    if (words == 1 && profile_.size() > 1 && width < kOrphanWidth * scale_) cost += kOrphan;
  } else if (weakEnd_[last]) {
    cost += words == 1 ? 3 * kWeakEnd : kWeakEnd;
  } else if (pauseEnd_[last]) {
    cost += kPauseEnd;
  }
  return cost;
}

std::optional<BrokenLines> Breaker::solve() const {
  const std::size_t n = chunks_.size(), lines = profile_.size();
  if (n < lines || lines == 0) return std::nullopt;
  std::vector<double> before(n + 1, kNever), best(n + 1);
  before[0] = 0;
  std::vector<std::vector<std::size_t>> from(lines, std::vector<std::size_t>(n + 1, 0));
  for (std::size_t line = 0; line < lines; ++line) {
    std::fill(best.begin(), best.end(), kNever);
    for (std::size_t start = 0; start < n; ++start) {
      if (before[start] == kNever) continue;
      double width = 0;
      for (std::size_t end = start; end < n; ++end) {
        width += chunks_[end].widthEm;
        if (end > start && width > kHopeless * scale_) break;
        const double cost = before[start] + lineCost(line, end, width, end - start + 1);
        if (cost < best[end + 1]) {
          best[end + 1] = cost;
          from[line][end + 1] = start;
        }
        if (chunks_[end].mustBreak) break;
        if (chunks_[end].spaceAfter) width += spaceEm_;
      }
    }
    before.swap(best);
  }
  if (before[n] == kNever) return std::nullopt;
  return walkBack(from, before[n]);
}

BrokenLines Breaker::walkBack(const std::vector<std::vector<std::size_t>>& from,
                              double cost) const {
  BrokenLines result;
  result.raggedness = cost;
  std::size_t end = chunks_.size();
  for (std::size_t line = profile_.size(); line-- > 0;) {
    const std::size_t start = from[line][end];
    std::string text;
    for (std::size_t i = start; i < end; ++i) {
      text += chunks_[i].text;
      if (i + 1 < end && chunks_[i].spaceAfter) text += ' ';
    }
    result.lines.push_back(std::move(text));
    end = start;
  }
  std::reverse(result.lines.begin(), result.lines.end());
  return result;
}

/// Bytes of the longest beginning of `word` that fits, whole characters only, at least one.
std::size_t fittingBytes(const std::string& word, double mostEm, const TypeMeasure& type) {
  std::size_t fits = 0;
  for (std::size_t i = 1; i <= word.size(); ++i) {
    if (i < word.size() && (static_cast<unsigned char>(word[i]) & 0xC0) == 0x80) continue;
    if (fits > 0 && type.widthEm(word.substr(0, i) + "-") > mostEm) break;
    fits = i;
  }
  const std::size_t hyphen = word.find_last_of('-', fits > 0 ? fits - 1 : 0);
  return hyphen != std::string::npos && hyphen > 0 ? hyphen + 1 : fits;
}

}  // namespace

std::optional<BrokenLines> breakLines(const std::vector<Chunk>& chunks, double spaceEm,
                                      const std::vector<double>& profile) {
  return Breaker(chunks, spaceEm, profile).solve();
}

std::vector<Chunk> withOverlongSplit(const std::vector<Chunk>& chunks, double mostEm,
                                     const TypeMeasure& type) {
  std::vector<Chunk> result;
  for (Chunk rest : chunks) {
    while (rest.widthEm > mostEm) {
      rest.text = bareWords(rest.text);  // a word that must be cut loses its stress
      const std::size_t cut = fittingBytes(rest.text, mostEm, type);
      if (cut >= rest.text.size()) break;
      std::string head = rest.text.substr(0, cut);
      if (head.back() != '-') head += '-';
      result.push_back({head, type.widthEm(head), false, false});
      rest.text = rest.text.substr(cut);
      // Measuring what is left of a very long word again and again would take for ever.
      rest.widthEm -= result.back().widthEm;
      if (rest.widthEm < 2 * mostEm) rest.widthEm = type.widthEm(rest.text);
    }
    result.push_back(std::move(rest));
  }
  return result;
}

std::vector<Chunk> joinedTo(std::vector<Chunk> chunks, std::size_t most, double spaceEm) {
  if (chunks.size() <= most) return chunks;
  const std::size_t per = (chunks.size() + most - 1) / most;
  std::vector<Chunk> result;
  for (std::size_t i = 0; i < chunks.size(); ++i) {
    if (i % per == 0) {
      result.push_back(std::move(chunks[i]));
      continue;
    }
    Chunk& last = result.back();
    if (last.spaceAfter) last.text += ' ';
    last.widthEm += chunks[i].widthEm + (last.spaceAfter ? spaceEm : 0);
    last.text += chunks[i].text;
    last.spaceAfter = chunks[i].spaceAfter;
    last.mustBreak = chunks[i].mustBreak;
  }
  return result;
}

}  // namespace tw
