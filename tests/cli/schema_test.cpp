#include <doctest/doctest.h>

#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <filesystem>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "cli/program.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"

/// What an editor makes of a profile with the schema that `schema` prints; python3-jsonschema stands for the editor.
/// It knows nothing of this program.
namespace ventfolio::testing {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

/// A plain scalar as YAML 1.2.2, section 10.3.2 (core schema) reads it; what is in quotation marks is a text.
Json scalar(const YAML::Node& node) {
    const std::string& text = node.Scalar();
    if (node.Tag() == "!") return text;
    for (const char* word : {"true", "True", "TRUE"})
        if (text == word) return true;
    for (const char* word : {"false", "False", "FALSE"})
        if (text == word) return false;
    if (text.empty() || text == "~" || text == "null" || text == "Null" || text == "NULL") return nullptr;
    const Json number = Json::parse(text, nullptr, false);
    return number.is_number() ? number : Json(text);
}

Json as_json(const YAML::Node& node) {
    Json json;
    switch (node.Type()) {
        case YAML::NodeType::Map:
            json = Json::object();
            for (const auto& entry : node) json[entry.first.Scalar()] = as_json(entry.second);
            return json;
        case YAML::NodeType::Sequence:
            json = Json::array();
            for (const auto& item : node) json.push_back(as_json(item));
            return json;
        case YAML::NodeType::Scalar:
            return scalar(node);
        default:
            return nullptr;
    }
}

std::map<std::string, Json> demo_homes() {
    std::map<std::string, Json> homes;
    for (const auto& file : fs::directory_iterator{fs::path{VENTFOLIO_SOURCE_DIR} / "profiles"})
        if (file.path().extension() == ".yaml")
            homes.emplace(file.path().stem().string(), as_json(YAML::Load(contents(file.path()))));
    return homes;
}

const DeclaredField* declared(const std::string& path) {
    static const std::map<std::string, DeclaredField> fields = [] {
        std::map<std::string, DeclaredField> all;
        for (DeclaredField& field : declared_fields_of<Profile>()) all.emplace(field.path, std::move(field));
        return all;
    }();
    const auto found = fields.find(declared_path(path));
    return found == fields.end() ? nullptr : &found->second;
}

/// Calls `change` with every field that is there, and with the group that holds it.
void each_field(Json& node, const std::string& path,
                const std::function<void(const std::string& path, const DeclaredField&, Json& value)>& change) {
    if (!node.is_structured()) return;
    for (auto item = node.begin(); item != node.end(); ++item) {
        const std::string key = node.is_object() ? item.key() : std::to_string(item - node.begin());
        const std::string below = path.empty() ? key : path + "." + key;
        if (const DeclaredField* field = declared(below))
            change(below, *field, item.value());
        else
            each_field(item.value(), below, change);
    }
}

// Validates each of many documents, and writes the place of every fault that is found, also of those inside of a choice
// of forms (anyOf): all that was wrong about a value, keys that no schema has, keys that are missing.
constexpr const char* kValidator = R"py(import json, jsonschema
schema = json.load(open('schema.json'))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
def places(error):
    path = [str(step) for step in error.absolute_path]
    if error.validator == 'additionalProperties':
        for key in set(error.instance) - set(error.schema['properties']): yield path + [key]
    elif error.validator == 'required':
        for key in set(error.validator_value) - set(error.instance): yield path + [key]
    else:
        yield path
    for inner in error.context: yield from places(inner)
refused = []
for document in json.load(open('documents.json')):
    refused.append(sorted({'.'.join(place) for error in validator.iter_errors(document) for place in places(error)}))
print(json.dumps(refused))
)py";

/// For each document the paths that the schema refuses.
std::vector<std::set<std::string>> refused(const Scratch& folder, const Json& documents) {
    folder.save("schema.json", ventfolio_in(folder, "schema").out);
    folder.save("documents.json", documents.dump());
    folder.save("validate.py", kValidator);
    const Ran ran = folder.run("/usr/bin/python3 validate.py");
    REQUIRE_MESSAGE(ran.status == 0, ran.err);
    return Json::parse(ran.out).get<std::vector<std::set<std::string>>>();
}

bool is_text(const DeclaredField& field) { return field.kind == ValueKind::text || field.kind == ValueKind::text_list; }

std::string joined_words(const std::set<std::string>& words) {
    std::string all;
    for (const std::string& word : words) all += word + "\n";
    return all;
}

TEST_CASE("the schema takes every demo home") {
    const Scratch folder;
    Json documents = Json::array();
    for (const auto& [name, home] : demo_homes()) documents.push_back(home);
    REQUIRE(documents.size() >= 7);
    for (const std::set<std::string>& faults : refused(folder, documents)) CHECK(joined_words(faults) == "");
}

TEST_CASE("the schema refuses each wrong value of each field of every demo home, at its place") {
    struct Fault {
        const char* what;
        std::function<bool(const DeclaredField&)> can_be_told;
        Json value;
    };
    const auto any = [](const DeclaredField&) { return true; };
    const auto no_text = [](const DeclaredField& field) { return !is_text(field); };
    const auto of_shape = [](TextShape shape) {
        return [shape](const DeclaredField& field) { return is_text(field) && field.info.shape == shape; };
    };
    const auto of_kind = [](ValueKind kind) {
        return [kind](const DeclaredField& field) { return field.kind == kind; };
    };
    const Fault faults[] = {
        {"a group where a value is due", any, {{"wrong", "1"}}},
        {"nothing behind the colon", any, nullptr},
        {"a list in a list", any, Json::array({Json::array({"x"})})},
        {"an empty text", any, ""},
        {"words", no_text, "nonsense and words"},
        {"a number alone", no_text, 7},
        {"a number without a blank before its unit", of_kind(ValueKind::measure), "7cmH2O"},
        {"a unit that nobody has", of_kind(ValueKind::measure), "7 parsec"},
        {"a comma for the decimal point", of_kind(ValueKind::measure), "7,5 mL"},
        {"one end of a range", of_kind(ValueKind::range), {{"from", "7 mL"}}},
        {"a measure where a range is due", of_kind(ValueKind::range), "7 mL"},
        {"a day in another order", of_kind(ValueKind::date), "03.02.2026"},
        {"a month that no year has", of_kind(ValueKind::date), "2026-13-01"},
        {"a day without a time", of_kind(ValueKind::moment), "2026-02-03"},
        {"an hour that no day has", of_kind(ValueKind::moment), "2026-02-03 25:00"},
        {"one time of a span", of_kind(ValueKind::clock_span), "8 PM"},
        {"no number of days", of_kind(ValueKind::interval), "0 days"},
        {"a word for a truth", of_kind(ValueKind::flag), "yes"},
        {"a choice in capitals", of_kind(ValueKind::choice), "NECK_TUBE"},
        {"a revision without its R", of_kind(ValueKind::revision), "1"},
        {"a text longer than any", of_shape(TextShape::free), std::string(10'000, 'x')},
        {"words for a phone number", of_shape(TextShape::phone), "call the clinic"},
        {"small letters for a record number", of_shape(TextShape::record_number), "demo 1"},
        {"capitals for an identifier", of_shape(TextShape::identifier), "Bed"},
    };
    const std::map<std::string, Json> homes = demo_homes();
    Json documents = Json::array();
    std::vector<std::set<std::string>> planted;
    std::vector<std::string> whats;
    for (const Fault& fault : faults) {
        std::size_t fields = 0;
        for (const auto& [name, home] : homes) {
            Json wrong = home;
            std::set<std::string> paths;
            each_field(wrong, "", [&](const std::string& path, const DeclaredField& field, Json& value) {
                if (!fault.can_be_told(field)) return;
                value = fault.value;
                paths.insert(path);
            });
            fields += paths.size();
            documents.push_back(std::move(wrong));
            planted.push_back(std::move(paths));
            whats.push_back(name + ": " + fault.what);
        }
        CAPTURE(std::string{fault.what});
        CHECK(fields > 0);
    }
    const std::vector<std::set<std::string>> found = refused(Scratch{}, documents);
    REQUIRE(found.size() == planted.size());
    for (std::size_t at = 0; at < found.size(); ++at) {
        CAPTURE(whats[at]);
        std::set<std::string> missed;
        for (const std::string& path : planted[at])
            if (!found[at].contains(path)) missed.insert(path);
        CHECK(joined_words(missed) == "");
    }
}

/// Adds a key that nobody declared to every group, and takes every essential field away.
void plant_keys(Json& node, const std::string& path, bool add, std::set<std::string>& planted) {
    const std::string prefix = path.empty() ? "" : path + ".";
    if (node.is_array())
        for (std::size_t at = 0; at < node.size(); ++at)
            plant_keys(node[at], prefix + std::to_string(at), add, planted);
    if (!node.is_object() || declared(path) != nullptr) return;
    std::vector<std::string> keys;
    for (const auto& item : node.items()) keys.push_back(item.key());
    for (const std::string& key : keys) {
        const DeclaredField* field = declared(prefix + key);
        if (field == nullptr) {
            plant_keys(node[key], prefix + key, add, planted);
        } else if (!add && field->info.grade == Grade::essential) {
            node.erase(key);
            planted.insert(prefix + key);
        }
    }
    if (!add) return;
    node["no_such_key"] = "x";
    planted.insert(prefix + "no_such_key");
}

TEST_CASE("the schema refuses a key that no group has and a group without its essential keys, wherever it stands") {
    Json documents = Json::array();
    std::vector<std::set<std::string>> planted;
    for (const bool add : {true, false})
        for (const auto& [name, home] : demo_homes()) {
            planted.emplace_back();
            Json wrong = home;
            plant_keys(wrong, "", add, planted.back());
            CHECK(planted.back().size() > 30);
            documents.push_back(std::move(wrong));
        }
    const std::vector<std::set<std::string>> found = refused(Scratch{}, documents);
    for (std::size_t at = 0; at < found.size(); ++at)
        for (const std::string& path : planted[at]) CHECK_MESSAGE(found[at].contains(path), path);
}

}  // namespace
}  // namespace ventfolio::testing
