#include "stage/look_fields.h"

#include <algorithm>
#include <array>
#include <variant>

#include "base/result.h"

namespace tw {
namespace {

struct Entry {
  LookField field;
  std::variant<double Look::*, bool Look::*, Hair Look::*, Hat Look::*, Collar Look::*,
               Front Look::*, Cut Look::*>
      member;
};

const std::vector<Entry>& entries() {
  using enum LookFieldKind;
  static const std::vector<std::string_view> kCuts{"long", "short", "bare"};
  static const std::vector<Entry> all{
      {{"top", Value, 1, {}}, &Look::top},
      {{"legs", Value, 1, {}}, &Look::legs},
      {{"skirt", Value, 1, {}}, &Look::skirt},
      {{"shoes", Value, 1, {}}, &Look::shoes},
      {{"hands", Value, 1, {}}, &Look::hands},
      {{"hair", Value, 1, {}}, &Look::hair},
      {{"hat", Value, 1, {}}, &Look::hat},
      {{"scarf", Value, 1, {}}, &Look::scarf},
      {{"top ease", Number, 1, {}}, &Look::topEase},
      {{"leg ease", Number, 1, {}}, &Look::legEase},
      {{"skirt length", Number, 1, {}}, &Look::skirtLength},
      {{"flare", Number, 1, {}}, &Look::flare},
      {{"boots", Number, 0.9, {}}, &Look::boots},
      {{"cuffs", Flag, 1, {}}, &Look::cuffs},
      {{"belt", Flag, 1, {}}, &Look::belt},
      {{"pockets", Flag, 1, {}}, &Look::pockets},
      {{"patches", Flag, 1, {}}, &Look::patches},
      {{"gloves", Flag, 1, {}}, &Look::gloves},
      {{"scarf worn", Flag, 1, {}}, &Look::scarfWorn},
      {{"apron", Flag, 1, {}}, &Look::apron},
      {{"beard", Flag, 1, {}}, &Look::beard},
      {{"moustache", Flag, 1, {}}, &Look::moustache},
      {{"hair cut", Choice, 1, {"short", "curly", "bun", "bob", "long", "tail", "bald"}},
       &Look::hairCut},
      {{"hat kind", Choice, 1, {"none", "cap", "brim", "helmet", "hood"}}, &Look::hatKind},
      {{"collar", Choice, 1, {"none", "round", "shirt", "stand", "wide"}}, &Look::collar},
      {{"front", Choice, 1, {"none", "buttons", "zip", "lapels"}}, &Look::front},
      {{"sleeves", Choice, 1, kCuts}, &Look::sleeves},
      {{"leg cut", Choice, 1, kCuts}, &Look::legCut}};
  return all;
}

const Entry* entryNamed(std::string_view name) {
  const auto& all = entries();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const Entry& entry) { return entry.field.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace

const LookField* lookFieldNamed(std::string_view name) {
  const Entry* entry = entryNamed(name);
  return entry ? &entry->field : nullptr;
}

void applyTo(Look& look, const LookChange& change, const std::map<std::string, double>& values,
             const std::string& shade) {
  const Entry* entry = entryNamed(change.field);
  ensure(entry != nullptr, "a change of a look names a field that was checked");
  const LookField& field = entry->field;
  const auto set = [&]<class T>(T Look::*member) {
    if constexpr (std::is_same_v<T, double>) {
      const bool isValue = field.kind == LookFieldKind::Value;
      look.*member = isValue ? values.at(shade.empty() ? change.word : shade) : change.number;
    } else if constexpr (std::is_same_v<T, bool>) {
      look.*member = change.number > 0;
    } else {
      const auto at = std::find(field.choices.begin(), field.choices.end(), change.word);
      look.*member = static_cast<T>(at - field.choices.begin());
    }
  };
  std::visit(set, entry->member);
}

}  // namespace tw
