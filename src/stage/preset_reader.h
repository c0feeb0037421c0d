// What readers of pose files share: naming the place of a fault and going on, so that all faults of
// a file are told at once.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "base/result.h"

namespace tw {

class PresetReader {
 public:
  PresetReader(const std::string& file, Problems& problems) : file_(file), problems_(problems) {}

 protected:
  /// `path` is a JSON pointer into the file.
  void complain(const std::string& path, std::string sentence) {
    problems_.push_back({Cause::BadInput, std::move(sentence), {file_, 0, path, 0, 0}, {}});
  }

  std::string text(const nlohmann::json& json, const char* key, const std::string& otherwise) {
    if (!json.contains(key)) return otherwise;
    if (json[key].is_string()) return json[key].get<std::string>();
    complain(std::string("/") + key, "Expected text.");
    return otherwise;
  }

  const std::string& file_;
  Problems& problems_;
};

}  // namespace tw
