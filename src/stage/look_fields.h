// The fields of a look by the names that the wardrobe's file gives them: one listing for the check
// of the file and for the dressing itself.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "stage/look.h"
#include "stage/wardrobe.h"

namespace tw {

enum class LookFieldKind { Value, Number, Flag, Choice };

/// What the file may say for a field. `most` of numbers; `choices` of choices.
struct LookField {
  std::string_view name;
  LookFieldKind kind;
  double most = 1;
  std::vector<std::string_view> choices;
};
const LookField* lookFieldNamed(std::string_view name);

/// Sets the field of a change that the reader has checked. `shade` stands for every value when it
/// is not empty.
void applyTo(Look& look, const LookChange& change, const std::map<std::string, double>& values,
             const std::string& shade);

}  // namespace tw
