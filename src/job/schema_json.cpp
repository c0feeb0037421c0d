// Each listing is walked once; types that are objects become entries of $defs, referred to by
// name, so that a type used in several places is described once.
#include "job/schema_json.h"

#include "job/job_fields.h"
#include "job/output_json.h"
#include "job/read_json.h"
#include "job/write_json.h"

namespace tw {

namespace {

class SchemaMaker {
 public:
  /// The schema of an object by its listing, without the $defs.
  template <class T>
  OrderedJson object();

  template <class T>
  OrderedJson of(const Spec& spec, const T& type);
  template <class T>
  OrderedJson of(const Spec& spec, const std::optional<T>&) {
    return of(spec, T{});
  }
  template <class T>
  OrderedJson of(const Spec& spec, const std::vector<T>&) {
    return {{"type", "array"}, {"items", of(spec, T{})}, {"maxItems", spec.mostItems}};
  }
  template <class T>
  OrderedJson of(const Spec& spec, const std::map<std::string, T>&) {
    return {{"type", "object"},
            {"additionalProperties", of(spec, T{})},
            {"maxProperties", spec.mostItems}};
  }
  OrderedJson of(const Spec&, bool) { return {{"type", "boolean"}}; }
  OrderedJson of(const Spec& spec, int) { return ranged("integer", spec); }
  OrderedJson of(const Spec& spec, double) { return ranged("number", spec); }
  OrderedJson of(const Spec& spec, const std::string&) { return text(spec); }
  OrderedJson of(const Spec& spec, const Point&) { return numbers(spec, 2); }
  OrderedJson of(const Spec& spec, const Vector&) { return numbers(spec, 2); }
  OrderedJson of(const Spec& spec, const Place3&) { return numbers(spec, 3); }
  OrderedJson of(const Spec& spec, const std::array<double, 3>&) { return numbers(spec, 3); }
  OrderedJson of(const Spec& spec, const Rect&) { return numbers(spec, 4); }
  OrderedJson of(const Spec& spec, const Polygon&) { return of(spec, std::vector<Point>{}); }

  OrderedJson takeDefinitions() { return std::move(definitions_); }

 private:
  static OrderedJson ranged(const char* type, const Spec& spec) {
    return {{"type", type},
            {"minimum", jsonOf(spec.least, {.decimals = 6})},
            {"maximum", jsonOf(spec.most, {.decimals = 6})}};
  }
  static OrderedJson numbers(const Spec& spec, int count) {
    return {{"type", "array"},
            {"items", ranged("number", spec)},
            {"minItems", count},
            {"maxItems", count}};
  }
  static OrderedJson text(const Spec& spec);

  OrderedJson definitions_ = OrderedJson::object();
};

OrderedJson SchemaMaker::text(const Spec& spec) {
  OrderedJson out = {{"type", "string"}};
  if (spec.required) out["minLength"] = 1;
  out["maxLength"] = spec.mostLength;
  if (spec.form == Form::Word) out["pattern"] = R"(^[^\u0000-\u0020/\\\u007f]*$)";
  if (spec.form == Form::FileName) out["pattern"] = R"(^(?!\.\.?$)[^\u0000-\u001f/\\\u007f]*$)";
  if (spec.form == Form::Date) out["pattern"] = R"(^([0-9]{4}-[0-9]{2}-[0-9]{2})?$)";
  return out;
}

/// Collects properties and required keys; called once per field by the listing.
template <class T>
struct FieldSchemas {
  SchemaMaker& maker;
  const T usual = T();
  OrderedJson properties = OrderedJson::object();
  OrderedJson required = OrderedJson::array();

  FieldSchemas(SchemaMaker& schemas) : maker(schemas) {}

  template <class M>
  void operator()(std::string_view key, M T::*member, const Spec& spec, std::string_view help) {
    OrderedJson field = {{"description", std::string(help)}};
    field.update(maker.of(spec, usual.*member));
    if (spec.required)
      required.push_back(std::string(key));
    else if (const OrderedJson value = jsonOf(usual.*member, spec); value.is_primitive())
      if (!value.is_null()) field["default"] = value;
    properties.push_back({std::string(key), std::move(field)});
  }
};

template <class T>
OrderedJson SchemaMaker::object() {
  FieldSchemas<T> fields(*this);
  FieldsOf<T>::list(fields);
  OrderedJson out = {{"description", std::string(FieldsOf<T>::kHelp)}, {"type", "object"}};
  out.push_back({"properties", std::move(fields.properties)});
  if (!fields.required.empty()) out.push_back({"required", std::move(fields.required)});
  out.push_back({"additionalProperties", false});
  return out;
}

template <class T>
OrderedJson SchemaMaker::of(const Spec&, const T&) {
  if constexpr (std::is_enum_v<T>) {
    OrderedJson names = OrderedJson::array();
    for (const std::string_view name : namesOf<T>()) names.push_back(std::string(name));
    OrderedJson out = OrderedJson::object();
    out.push_back({"enum", std::move(names)});
    return out;
  } else {
    const std::string name(FieldsOf<T>::kName);
    if (!definitions_.contains(name)) {
      OrderedJson made = object<T>();
      definitions_.push_back({name, std::move(made)});
    }
    OrderedJson out = OrderedJson::object();
    out.push_back({"$ref", "#/$defs/" + name});
    return out;
  }
}

/// Files of a job carry the format version first.
void requireFormat(OrderedJson& schema) {
  OrderedJson properties = OrderedJson::object();
  properties.push_back(
      {"format", {{"description", "Version of the file format."}, {"const", kFormat}}});
  for (const auto& [key, field] : schema["properties"].items()) properties.push_back({key, field});
  schema["properties"] = std::move(properties);
  schema["required"].insert(schema["required"].begin(), "format");
}

template <class T>
PublishedSchema published(bool withFormat) {
  SchemaMaker maker;
  OrderedJson object = maker.object<T>();
  if (withFormat) requireFormat(object);
  const std::string file = std::string(FieldsOf<T>::kName) + ".schema.json";
  OrderedJson out = OrderedJson::object();
  out.push_back({"$schema", "https://json-schema.org/draft/2020-12/schema"});
  out.push_back({"$id", file});
  out.push_back({"title", std::string(FieldsOf<T>::kName)});
  for (const auto& [key, value] : object.items()) out.push_back({key, value});
  OrderedJson definitions = maker.takeDefinitions();
  if (!definitions.empty()) out.push_back({"$defs", std::move(definitions)});
  return {file, textOf(out)};
}

}  // namespace

std::vector<PublishedSchema> publishedSchemas() {
  return {published<JobFile>(true), published<Page>(true), published<Sheet>(false),
          published<BeatsOutput>(false), published<BriefOutput>(false)};
}

}  // namespace tw
