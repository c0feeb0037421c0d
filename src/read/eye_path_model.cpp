#include "read/eye_path_model.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/files.h"
#include "job/read_json.h"

namespace tw {
namespace {

using M = EyePathModel;

constexpr const char* kPreset = "read/eye_path.json";

struct Entry {
  std::string_view key;
  double M::*value;
  double least, most;
};

constexpr std::array kEntries{
    Entry{"reading_fixation_ms", &M::readingFixationMs, 1, 10000},
    Entry{"fixations_per_word", &M::fixationsPerWord, 0.05, 5},
    Entry{"letters_per_word", &M::lettersPerWord, 1, 30},
    Entry{"reading_regressions", &M::readingRegressions, 0, 0.9},
    Entry{"saccade_ms", &M::saccadeMs, 1, 10000},
    Entry{"picture_fixation_ms", &M::pictureFixationMs, 1, 10000},
    Entry{"picture_fixation_by_copy_ms", &M::pictureFixationByCopyMs, 1, 10000},
    Entry{"landing_fixation_ms", &M::landingFixationMs, 1, 10000},
    Entry{"landing_on_picture", &M::landingOnPicture, 0, 1},
    Entry{"spread_of_fixations", &M::spreadOfFixations, 0, 2},
    Entry{"spread_of_readers", &M::spreadOfReaders, 0, 2},
    Entry{"pictures_without_copy", &M::picturesWithoutCopy, 0, 10},
    Entry{"pictures_after_copy", &M::picturesAfterCopy, 0, 10},
    Entry{"pictures_per_doubling", &M::picturesPerDoubling, 0, 10},
    Entry{"pictures_per_part", &M::picturesPerPart, 0, 10},
    Entry{"weight_of_face", &M::weightOfFace, 0.001, 100},
    Entry{"weight_of_figure", &M::weightOfFigure, 0.001, 100},
    Entry{"weight_of_hand", &M::weightOfHand, 0.001, 100},
    Entry{"weight_of_prop", &M::weightOfProp, 0.001, 100},
    Entry{"weight_of_spot", &M::weightOfSpot, 0.001, 100},
    Entry{"weight_of_ground", &M::weightOfGround, 0.001, 100},
    Entry{"focus_bonus", &M::focusBonus, 1, 100},
    Entry{"gaze_effect_g", &M::gazeEffectG, 0, 10},
    Entry{"return_inhibited_from_ms", &M::returnInhibitedFromMs, 1, 10000},
    Entry{"return_inhibited_fully_ms", &M::returnInhibitedFullyMs, 1, 10000},
    Entry{"return_inhibited_until_ms", &M::returnInhibitedUntilMs, 1, 10000},
    Entry{"return_inhibition", &M::returnInhibition, 0, 1},
    Entry{"skip_base", &M::skipBase, 0, 1},
    Entry{"skip_without_copy", &M::skipWithoutCopy, 0, 10},
    Entry{"skip_going_on", &M::skipGoingOn, 0, 10},
    Entry{"skip_before_dense", &M::skipBeforeDense, 0, 10},
    Entry{"skip_low_in_stack", &M::skipLowInStack, 0, 10},
    Entry{"skip_up_to_share", &M::skipUpToShare, 0, 1},
    Entry{"dense_from_words", &M::denseFromWords, 0, 1000},
    Entry{"dense_words", &M::denseWords, 0, 1000},
    Entry{"preview_second", &M::previewSecond, 0, 1},
    Entry{"pull_reach", &M::pullReach, 0.001, 10},
    Entry{"back_without_copy", &M::backWithoutCopy, 0, 1},
    Entry{"back_with_copy", &M::backWithCopy, 0, 1},
    Entry{"glance_back", &M::glanceBack, 0, 0.9},
    Entry{"glance_on_picture", &M::glanceOnPicture, 0, 1},
    Entry{"fork_closed_at", &M::forkClosedAt, 0.5, 1},
    Entry{"fork_copy", &M::forkCopy, 0, 10},
};

const std::vector<std::string_view> kCertainties{
    "read", "abstract", "2nd-hand", "memory high", "memory medium", "memory low", "ours"};

class ModelReader {
 public:
  explicit ModelReader(const std::string& file) : reader_(file) {}

  Result<EyePathModel> read(const Json& json) {
    EyePathModel model;
    const auto constants = json.is_object() ? json.find("constants") : json.end();
    if (constants == json.end() || !constants->is_object()) {
      reader_.expected("/constants", "the constants in braces", json);
      return tl::unexpected(reader_.take());
    }
    std::vector<std::string_view> known;
    for (const Entry& entry : kEntries) {
      known.push_back(entry.key);
      const auto found = constants->find(entry.key);
      if (found == constants->end())
        reader_.missing("/constants", entry.key, "Copy it from the file that ships.");
      else
        constant(*found, below("/constants", entry.key), entry, model);
    }
    reader_.unknown(*constants, "/constants", known);
    if (reader_.isSound()) relations(model);
    if (!reader_.isSound()) return tl::unexpected(reader_.take());
    return model;
  }

 private:
  /// Values that cannot hold together.
  void relations(const M& m) {
    if (m.denseFromWords >= m.denseWords)
      reader_.complain("/constants/dense_words", "It must be more than dense_from_words.");
    if (m.returnInhibitedFromMs > m.returnInhibitedFullyMs ||
        m.returnInhibitedFullyMs >= m.returnInhibitedUntilMs)
      reader_.complain("/constants/return_inhibited_until_ms",
                       "Expected return_inhibited_from_ms <= _fully_ms < _until_ms.");
  }

  void constant(const Json& json, const std::string& path, const Entry& entry, M& model) {
    if (!json.is_object()) return reader_.expected(path, "value, source, certainty, meaning", json);
    reader_.unknown(json, path, {"value", "source", "certainty", "meaning"});
    const auto value = json.find("value");
    const bool sound = value != json.end() && value->is_number() &&
                       value->get<double>() >= entry.least && value->get<double>() <= entry.most;
    if (sound)
      model.*entry.value = value->get<double>();
    else
      reader_.expected(below(path, "value"),
                       fmt::format("a number from {} to {}", entry.least, entry.most),
                       value == json.end() ? Json() : *value);
    for (const char* key : {"source", "meaning"}) text(json, path, key);
    if (text(json, path, "certainty")) certainty(json["certainty"], below(path, "certainty"));
  }

  bool text(const Json& json, const std::string& path, const char* key) {
    const auto found = json.find(key);
    if (found != json.end() && found->is_string() && !found->get<std::string>().empty())
      return true;
    reader_.expected(below(path, key), "a text", found == json.end() ? Json() : *found);
    return false;
  }

  void certainty(const Json& json, const std::string& path) {
    const std::string word = json.get<std::string>();
    if (std::find(kCertainties.begin(), kCertainties.end(), word) == kCertainties.end())
      reader_.expected(path, "how sure it is, such as read, abstract, memory high or ours", json);
  }

  Reader reader_;
};

}  // namespace

double EyePathModel::gazeLogOdds() const {
  return gazeEffectG * std::numbers::pi / std::numbers::sqrt3;
}

Result<EyePathModel> readEyePathText(std::string_view bytes, const std::string& fileName) {
  const Result<Json> json = parseJson(bytes, fileName);
  if (!json) return tl::unexpected(json.error());
  return ModelReader(fileName).read(*json);
}

Result<EyePathModel> loadEyePathModel() {
  const auto path = presetPath(kPreset);
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  return readEyePathText(*bytes, kPreset);
}

}  // namespace tw
