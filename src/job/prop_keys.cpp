#include "job/prop_keys.h"

#include <fmt/format.h>

#include <algorithm>

#include "job/field.h"
#include "job/read_json.h"

namespace tw {

namespace {

using Triple = std::array<double, 3>;

constexpr std::string_view kGuess = "guess";
constexpr double kFarthestM = 10000;
const std::vector<std::string_view> kKeys = {"hand",  "place", "turn", "size",
                                             "shape", "model", "up"};

/// Three numbers with commas or spaces between them.
std::optional<Triple> tripleIn(std::string_view text) {
  Triple out{};
  std::size_t count = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(", "), text.size());
    const std::optional<double> number = decimalNumber(text.substr(0, end));
    if (!number || count == 3) return std::nullopt;
    out[count++] = *number;
    text.remove_prefix(end);
    text.remove_prefix(std::min(text.find_first_not_of(", "), text.size()));
  }
  return count == 3 ? std::optional(out) : std::nullopt;
}

bool isWithin(const Triple& t, double least, double most) {
  return std::ranges::all_of(t, [&](double v) { return v >= least && v <= most; });
}

template <class T>
Result<void> setOrGuess(std::optional<T>& field, const Assignment& a, std::optional<T> value,
                        std::string_view expected) {
  if (a.value != kGuess && !value) return wrongValue(a, expected);
  field = a.value == kGuess ? std::nullopt : std::move(value);
  return {};
}

std::optional<std::string> oneOf(std::string_view value,
                                 std::initializer_list<std::string_view> words) {
  if (std::ranges::find(words, value) == words.end()) return std::nullopt;
  return std::string(value);
}

Result<void> setPlace(PropOverride& own, const Assignment& a) {
  std::optional<Triple> place = tripleIn(a.value);
  if (place && !isWithin(*place, -kFarthestM, kFarthestM)) place.reset();
  return setOrGuess(own.placeM, a, place,
                    "three numbers of metres, such as 1.5,0,2 (aside, up, away), or guess,");
}

Result<void> setSize(PropOverride& own, const Assignment& a) {
  std::optional<Triple> size = tripleIn(a.value);
  if (size && !isWithin(*size, 0.001, kFarthestM)) size.reset();
  return setOrGuess(own.sizeM, a, size,
                    "width, height and depth in metres, such as 2,1.2,0.8, or guess,");
}

Result<void> setTurn(PropOverride& own, const Assignment& a) {
  std::optional<double> turn = decimalNumber(a.value);
  if (turn && !(*turn >= -360 && *turn <= 360)) turn.reset();
  return setOrGuess(own.turnDeg, a, turn, "degrees from -360 to 360, or guess,");
}

Result<void> setShape(PropOverride& own, const Assignment& a, const KnownWords& known) {
  if (a.value != kGuess)
    if (auto shape = mustBeKnown(a.value, known.shapes, "shape"); !shape) return shape;
  return setOrGuess(own.shape, a,
                    isWord(a.value) ? std::optional(std::string(a.value)) : std::nullopt,
                    "the name of a shape, or guess,");
}

Result<void> setModel(PropOverride& own, const Assignment& a, const KnownWords& known) {
  if (a.value != kGuess && known.models) {
    if (known.models->empty())
      return badInput("The job has no models.", {}, "Put a Wavefront OBJ file into art/models.");
    if (auto model = mustBeKnown(a.value, *known.models, "model"); !model) return model;
  }
  return setOrGuess(own.model, a,
                    isWord(a.value) ? std::optional(std::string(a.value)) : std::nullopt,
                    "the name of a file in art/models without .obj, or guess,");
}

Result<void> setOwn(PropOverride& own, std::string_view key, const Assignment& a,
                    const KnownWords& known) {
  if (key == "hand")
    return setOrGuess(own.hand, a, oneOf(a.value, {"left", "right", "both", "any"}),
                      "left, right, both, any or guess");
  if (key == "place") return setPlace(own, a);
  if (key == "turn") return setTurn(own, a);
  if (key == "size") return setSize(own, a);
  if (key == "shape") return setShape(own, a, known);
  if (key == "model") return setModel(own, a, known);
  if (key == "up") return setOrGuess(own.up, a, oneOf(a.value, {"y", "z"}), "y, z or guess");
  const std::string_view near = nearest(key, kKeys);
  return badInput(fmt::format("A thing has no key \"{}\".", key), {},
                  near.empty() ? fmt::format("Known are: {}.", fmt::join(kKeys, ", "))
                               : fmt::format("Is \"{}\" meant?", near));
}

Result<void> mustBeShown(const Beat& beat, const std::string& id) {
  if (std::ranges::find(beat.props, id, &Prop::id) != beat.props.end()) return {};
  std::vector<std::string> ids;
  for (const Prop& prop : beat.props) ids.push_back(prop.id);
  return badInput(fmt::format("The panel shows no \"{}\".", id), {},
                  ids.empty() ? fmt::format("Put it in first: {}.prop.add={}.", beat.id, id)
                              : fmt::format("It shows: {}. Or put it in first: {}.prop.add={}.",
                                            fmt::join(ids, ", "), beat.id, id));
}

std::string textOf(const Triple& t) {
  return fmt::format("{:.6g},{:.6g},{:.6g}", t[0], t[1], t[2]);
}

}  // namespace

Result<void> mustBeKnown(std::string_view word, const std::vector<std::string>& known,
                         std::string_view kind) {
  if (known.empty() || std::ranges::find(known, word) != known.end()) return {};
  const std::vector<std::string_view> names(known.begin(), known.end());
  const std::string_view near = nearest(word, names);
  return badInput(fmt::format("There is no {} \"{}\".", kind, word), {},
                  near.empty() ? fmt::format("Known are: {}.", fmt::join(known, ", "))
                               : fmt::format("Is \"{}\" meant?", near));
}

Result<void> setPropKey(BeatOverride& change, const Beat& beat, std::string_view thingAndKey,
                        const Assignment& a, const KnownWords& known) {
  const std::size_t dot = thingAndKey.rfind('.');
  if (dot == std::string_view::npos)
    return badInput(fmt::format("A beat has no key \"prop.{}\".", thingAndKey), {},
                    "Write prop.add, prop.drop or prop.THING.KEY, such as prop.lantern.hand.");
  const std::string id(thingAndKey.substr(0, dot));
  if (auto shown = mustBeShown(withOverride(beat, change), id); !shown) return shown;
  PropOverride own = change.props.contains(id) ? change.props[id] : PropOverride{};
  if (auto done = setOwn(own, thingAndKey.substr(dot + 1), a, known); !done) return done;
  if (own == PropOverride{})
    change.props.erase(id);
  else
    change.props[id] = std::move(own);
  return {};
}

std::vector<std::pair<std::string, std::string>> describeProp(const PropOverride& change) {
  std::vector<std::pair<std::string, std::string>> out;
  if (change.hand) out.emplace_back("hand", *change.hand);
  if (change.placeM) out.emplace_back("place", textOf(*change.placeM));
  if (change.turnDeg) out.emplace_back("turn", fmt::format("{:.6g}", *change.turnDeg));
  if (change.sizeM) out.emplace_back("size", textOf(*change.sizeM));
  if (change.shape) out.emplace_back("shape", *change.shape);
  if (change.model) out.emplace_back("model", *change.model);
  if (change.up) out.emplace_back("up", *change.up);
  return out;
}

}  // namespace tw
