// A check of a JSON document against the part of JSON Schema (draft 2020-12) that the schemas in
// docs/formats use, so that tests need no program from outside. An unknown keyword is itself a
// finding: a schema can never pass because a keyword was overlooked.
#pragma once

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>
#include <string>
#include <vector>

namespace tw::tests {

class SchemaCheck {
 public:
  explicit SchemaCheck(nlohmann::json schema) : root_(std::move(schema)) {}

  /// What the document breaks, one line each; empty when it follows the schema.
  std::vector<std::string> findings(const nlohmann::json& document) {
    found_.clear();
    check(root_, document, "");
    return found_;
  }

 private:
  using Json = nlohmann::json;

  void add(const std::string& path, const std::string& what) {
    if (found_.size() < 20) found_.push_back((path.empty() ? "/" : path) + ": " + what);
  }

  void check(const Json& schema, const Json& value, const std::string& path) {
    for (const auto& [keyword, rule] : schema.items()) apply(keyword, rule, schema, value, path);
  }

  void apply(const std::string& keyword, const Json& rule, const Json& schema, const Json& value,
             const std::string& path) {
    if (keyword == "$schema" || keyword == "$id" || keyword == "$defs" || keyword == "title" ||
        keyword == "description" || keyword == "default")
      return;
    if (keyword == "$ref") return check(root_.at(pointerOf(rule)), value, path);
    if (keyword == "oneOf") return checkOneOf(rule, value, path);
    if (keyword == "type") return want(hasType(rule, value), path, "not of type " + rule.dump());
    if (keyword == "const") return want(value == rule, path, "is not " + rule.dump());
    if (keyword == "enum") return want(isIn(rule, value), path, "not one of " + rule.dump());
    if (value.is_number() && checkNumber(keyword, rule, value, path)) return;
    if (value.is_string() && checkText(keyword, rule, value, path)) return;
    if (value.is_array() && checkList(keyword, rule, value, path)) return;
    if (value.is_object() && checkObject(keyword, rule, schema, value, path)) return;
    if (!isKnown(keyword)) add(path, "schema keyword not known: " + keyword);
  }

  void want(bool holds, const std::string& path, const std::string& what) {
    if (!holds) add(path, what);
  }

  static Json::json_pointer pointerOf(const Json& ref) {
    return Json::json_pointer(ref.get<std::string>().substr(1));
  }
  static bool isIn(const Json& list, const Json& value) {
    return std::find(list.begin(), list.end(), value) != list.end();
  }
  static bool isKnown(const std::string& keyword) {
    static const std::vector<std::string> kWords = {
        "minimum",       "maximum",   "minLength", "maxLength", "pattern",
        "items",         "minItems",  "maxItems",  "required",  "additionalProperties",
        "maxProperties", "properties"};
    return std::find(kWords.begin(), kWords.end(), keyword) != kWords.end();
  }
  static bool hasType(const Json& type, const Json& value) {
    if (type == "integer")
      return value.is_number() && value.get<double>() == std::floor(value.get<double>());
    if (type == "number") return value.is_number();
    return type == value.type_name();
  }

  bool checkNumber(const std::string& keyword, const Json& rule, const Json& value,
                   const std::string& path) {
    if (keyword == "minimum") want(value >= rule, path, "less than " + rule.dump());
    if (keyword == "maximum") want(value <= rule, path, "more than " + rule.dump());
    return keyword == "minimum" || keyword == "maximum";
  }

  bool checkText(const std::string& keyword, const Json& rule, const Json& value,
                 const std::string& path) {
    const auto& text = value.get_ref<const std::string&>();
    if (keyword == "minLength") want(text.size() >= rule.get<std::size_t>(), path, "too short");
    if (keyword == "maxLength") want(text.size() <= rule.get<std::size_t>(), path, "too long");
    if (keyword == "pattern")
      want(std::regex_search(text, std::regex(rule.get<std::string>())), path, "pattern");
    return keyword == "minLength" || keyword == "maxLength" || keyword == "pattern";
  }

  bool checkList(const std::string& keyword, const Json& rule, const Json& value,
                 const std::string& path) {
    if (keyword == "minItems") want(value.size() >= rule, path, "too few entries");
    if (keyword == "maxItems") want(value.size() <= rule, path, "too many entries");
    if (keyword == "items")
      for (std::size_t i = 0; i < value.size(); ++i)
        check(rule, value[i], path + "/" + std::to_string(i));
    return keyword == "minItems" || keyword == "maxItems" || keyword == "items";
  }

  bool checkObject(const std::string& keyword, const Json& rule, const Json& schema,
                   const Json& value, const std::string& path) {
    if (keyword == "required")
      for (const Json& key : rule)
        want(value.contains(key.get<std::string>()), path, "missing " + key.dump());
    if (keyword == "maxProperties") want(value.size() <= rule, path, "too many entries");
    if (keyword == "properties")
      for (const auto& [key, field] : rule.items())
        if (value.contains(key)) check(field, value[key], path + "/" + key);
    if (keyword == "additionalProperties") checkOthers(rule, schema, value, path);
    return keyword == "required" || keyword == "maxProperties" || keyword == "properties" ||
           keyword == "additionalProperties";
  }

  void checkOthers(const Json& rule, const Json& schema, const Json& value,
                   const std::string& path) {
    for (const auto& [key, item] : value.items()) {
      if (schema.contains("properties") && schema["properties"].contains(key)) continue;
      if (rule == false)
        add(path + "/" + key, "not a known field");
      else
        check(rule, item, path + "/" + key);
    }
  }

  void checkOneOf(const Json& schemas, const Json& value, const std::string& path) {
    int fits = 0;
    for (const Json& schema : schemas) {
      SchemaCheck part(root_);
      part.check(schema, value, path);
      fits += part.found_.empty() ? 1 : 0;
    }
    want(fits == 1, path, "fits " + std::to_string(fits) + " of the alternatives");
  }

  Json root_;
  std::vector<std::string> found_;
};

}  // namespace tw::tests
