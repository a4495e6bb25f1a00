#include "profile/schema.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "profile/read_measure.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kDate = "(19|20|21)[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])";
constexpr std::string_view kClockTime =
    "(noon|midnight|0*([1-9]|1[0-2])(:[0-5][0-9])? ?(AM|PM)|0*([0-9]|1[0-9]|2[0-3]):[0-5][0-9])";
constexpr std::string_view kNumber = R"(-?([0-9]+(\.[0-9]+)?|\.[0-9]+))";

std::string escaped(std::string_view text) {
    std::string pattern;
    for (const char letter : text) {
        if (std::string_view{R"(\^$.|?*+()[]{}/)"}.find(letter) != std::string_view::npos) pattern += '\\';
        pattern += letter;
    }
    return pattern;
}

/// A number, a blank and one of the unit's spellings; before "%" the blank may be missing, as the reader has it.
std::string measure_pattern(const FieldInfo& info, Dimension dimension) {
    std::vector<std::string> ways;
    for (const Unit& unit : accepted_units(info, dimension))
        for (const std::string_view spelling : spellings_of(unit))
            ways.push_back((unit.symbol == "%" ? "[ \\u00a0\\u202f]*" : "[ \\u00a0\\u202f]+") + escaped(spelling));
    return fmt::format("^{}({})$", kNumber, joined(ways, "|"));
}

Json text_with(std::string_view pattern) { return {{"type", "string"}, {"pattern", pattern}}; }

/// A text may look like a number or a truth value to an editor; the reader takes every scalar as text.
Json text_schema(const FieldInfo& info) {
    switch (info.shape) {
        case TextShape::record_number:
            return {{"type", Json::array({"string", "number"})}, {"pattern", "^[A-Z0-9-]{1,32}$"}};
        case TextShape::identifier:
            return {{"type", Json::array({"string", "number"})}, {"pattern", "^[a-z0-9-]{1,32}$"}};
        case TextShape::phone:
            return {{"type", Json::array({"string", "number"})}, {"pattern", "^\\+?[0-9 -]{2,20}$"}};
        case TextShape::free:
            break;
    }
    return {{"type", Json::array({"string", "number", "boolean"})}, {"minLength", 1}, {"maxLength", info.longest}};
}

Json value_schema(const FieldInfo& info, const FieldBase& field) {
    switch (field.kind()) {
        case ValueKind::text:
            return text_schema(info);
        case ValueKind::text_list:
            return {{"type", "array"}, {"minItems", 1}, {"items", text_schema(info)}};
        case ValueKind::flag:
            return {{"type", "boolean"}};
        case ValueKind::date:
            return text_with(fmt::format("^{}$", kDate));
        case ValueKind::moment:
            return text_with(fmt::format("^{} {}$", kDate, kClockTime));
        case ValueKind::clock_span:
            return text_with(fmt::format("^{} +to +{}$", kClockTime, kClockTime));
        case ValueKind::interval:
            return text_with("^0*[1-9][0-9]* (day|week|month|year)s?$");
        case ValueKind::revision:
            return text_with("^R[0-9]{1,4}[a-z]?$");
        case ValueKind::measure:
            return text_with(measure_pattern(info, *field.dimension()));
        case ValueKind::range: {
            const Json end = text_with(measure_pattern(info, *field.dimension()));
            return {{"type", "object"},
                    {"properties", {{"from", end}, {"to", end}}},
                    {"required", {"from", "to"}},
                    {"additionalProperties", false}};
        }
        case ValueKind::choice: {
            Json words = Json::array();
            for (const std::string_view word : field.choices()) words.push_back(word);
            return {{"enum", words}};
        }
    }
    return {};
}

/// Also `unknown`, and `none` and `off` where they are answers.
Json with_answers(Json schema, const FieldInfo& info) {
    Json answers = Json::array({"unknown"});
    if (info.none) answers.push_back("none");
    if (info.off) answers.push_back("off");
    Json either{{"anyOf", Json::array({std::move(schema), {{"enum", std::move(answers)}}})}};
    if (!info.help.empty()) either["description"] = info.help;
    if (!info.example.empty()) either["examples"] = Json::array({info.example});
    return either;
}

class SchemaWriter final : public Visitor {
  public:
    template <class Walk>
    static Json object(Walk walk) {
        SchemaWriter writer;
        walk(writer);
        Json schema{{"type", "object"}, {"properties", std::move(writer.properties_)}};
        if (!writer.required_.empty()) schema["required"] = std::move(writer.required_);
        schema["additionalProperties"] = false;
        return schema;
    }

    void leaf(const FieldInfo& info, FieldBase& field) override { add(info, value_schema(info, field)); }
    void group(const FieldInfo& info, GroupBase& group) override {
        add(info, object([&](Visitor& visitor) { group.describe(visitor); }));
    }
    void list(const FieldInfo& info, ListBase& list) override {
        add(info, {{"type", "array"}, {"minItems", 1}, {"items", object([&](Visitor& visitor) {
                                                            list.describe_element(visitor);
                                                        })}});
    }

  private:
    void add(const FieldInfo& info, Json schema) {
        properties_[std::string{info.key}] = with_answers(std::move(schema), info);
        if (info.grade == Grade::essential) required_.push_back(info.key);
    }

    Json properties_ = Json::object();
    Json required_ = Json::array();
};

}  // namespace

std::string json_schema(const std::function<void(Visitor&)>& blank) {
    Json schema{
        {"$schema", "https://json-schema.org/draft/2020-12/schema"},
        {"title", "Profile of one home"},
        {"description", "Read by ventfolio. Quantities carry their unit; `unknown` is an answer to every key."}};
    schema.update(SchemaWriter::object(blank));
    return schema.dump(2) + "\n";
}

}  // namespace ventfolio
