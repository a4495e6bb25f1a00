#include <doctest/doctest.h>

#include <regex.h>
#include <nlohmann/json.hpp>

#include "profile/field_list.hpp"
#include "profile/finding_list.hpp"
#include "profile/profile.hpp"
#include "profile/sample_home.hpp"
#include "profile/schema.hpp"
#include "profile/starter.hpp"
#include "units/text.hpp"

using namespace ventfolio;

namespace {

template <class T>
auto blank() {
    return [](Visitor& visitor) {
        T empty;
        empty.describe(visitor);
    };
}

/// With each key that stands behind a # taken into use. Words stand behind a # and a blank.
std::string all_in_use(const std::string& yaml) {
    std::vector<std::string> lines = split(yaml, '\n');
    for (std::string& line : lines) {
        const auto at = line.find_first_not_of(' ');
        if (at != std::string::npos && line[at] == '#' && line.substr(at + 1, 1) != " ") line.erase(at, 1);
    }
    return joined(lines, "\n");
}

/// Whether a pattern of the schema takes a text. JSON Schema asks for the expressions of ECMA-262; these are written so
/// that they mean the same to the C library's engine, which is not ours.
bool matches(const std::string& pattern, const std::string& text) {
    regex_t compiled;
    CAPTURE(pattern);
    REQUIRE(regcomp(&compiled, pattern.c_str(), REG_EXTENDED | REG_NOSUB) == 0);
    const bool found = regexec(&compiled, text.c_str(), 0, nullptr, 0) == 0;
    regfree(&compiled);
    return found;
}

}  // namespace

TEST_CASE("the starter leaves essential keys empty, so that a forgotten one is refused") {
    const std::string starter = starter_profile(blank<sample::Home>());
    CHECK(starter.find("\n#record_number:\n") != std::string::npos);
    CHECK(starter.find("# alarm when the pressure is above (optional; cmH2O or hPa). Example: 31 cmH2O. Or off.\n") !=
          std::string::npos);

    Profile profile;
    const auto findings = read_into(profile, {"home.yaml", starter_profile(blank<Profile>())});
    std::size_t empty = 0;
    for (const Finding& finding : findings) {
        CAPTURE(finding.message);
        CHECK((finding.rule == "value-empty" || finding.rule == "expected-field-missing"));
        if (finding.rule == "value-empty") ++empty;
    }
    CHECK(empty > 20);
    const std::string whole = starter_profile(blank<Profile>());
    CHECK(whole.find("Fill in the " + std::to_string(empty) + " blanks") != std::string::npos);
    const std::size_t end = whole.find("# ======== End of the first part");
    REQUIRE(end != std::string::npos);
    for (const Finding& finding : findings)
        if (finding.rule == "value-empty") CHECK(finding.marks[0].place.begin < end);
}

TEST_CASE("a group that must be there and has no essential key has its expected ones as blanks") {
    struct Limits {
        Field<std::string> optional_one;
        Field<std::string> expected_one;
        void describe(Visitor& visitor) {
            visitor.leaf({.key = "optional_one"}, optional_one);
            visitor.leaf({.key = "expected_one", .grade = Grade::expected}, expected_one);
        }
    };
    struct One {
        Group<Limits> limits;
        void describe(Visitor& visitor) { visitor.group({.key = "limits", .grade = Grade::essential}, limits); }
    };
    const std::string starter = starter_profile(blank<One>());
    CHECK(starter.find("Fill in the 1 blanks") != std::string::npos);
    CHECK(starter.find("\nlimits:\n") != std::string::npos);
    CHECK(starter.find("\n  expected_one:\n") != std::string::npos);
    CHECK(starter.find("\n  #optional_one:\n") != std::string::npos);
}

TEST_CASE("words that can be chosen are listed once") {
    const std::string starter = starter_profile(blank<Profile>());
    CHECK(starter.find("# neck_tube, mask or mouthpiece (essential). Example: neck_tube\n") != std::string::npos);
    CHECK(starter.find("# date of birth, year-month-day (essential). Example: 1978-02-11\n") != std::string::npos);
    CHECK(starter.find("# how the order was given (essential; written, electronic or spoken). Example: written\n") !=
          std::string::npos);
}

TEST_CASE("a group of the same keys is explained once among its neighbours, where it stands first") {
    struct Contact {
        Field<std::string> phone;
        void describe(Visitor& visitor) {
            visitor.leaf({.key = "phone", .grade = Grade::essential, .help = "number to dial"}, phone);
        }
    };
    struct Three {
        Group<Contact> hospital;
        Group<Contact> provider;
        Group<Contact> family;
        void describe(Visitor& visitor) {
            visitor.group({.key = "hospital"}, hospital);
            visitor.group({.key = "provider", .grade = Grade::essential}, provider);
            visitor.group({.key = "family"}, family);
        }
    };
    const std::string starter = starter_profile(blank<Three>());
    CHECK(starter.find("# provider (essential).\nprovider:\n  # number to dial (essential; text).\n  phone:\n") !=
          std::string::npos);
    CHECK(starter.find("# hospital (optional). Same keys as provider.\n#hospital:\n  #phone:\n") != std::string::npos);
    CHECK(starter.find("# family (optional). Same keys as provider.\n#family:\n  #phone:\n") != std::string::npos);
}

TEST_CASE("every key of the starter can be taken into use by removing its number sign") {
    Profile profile;
    const auto findings = read_into(profile, {"home.yaml", all_in_use(starter_profile(blank<Profile>()))});
    const auto declared = declared_fields_of<Profile>();
    CHECK(findings.size() == std::min<std::size_t>(declared.size(), FindingList::kMost + 1));
    for (const Finding& finding : findings) {
        CAPTURE(finding.message);
        CHECK((finding.rule == "value-empty" || finding.rule == "more-faults-than-listed"));
    }
}

TEST_CASE("every example of the dictionary can be read") {
    Profile profile;
    const SourceText source{"home.yaml", example_profile(blank<Profile>())};
    for (const Finding& finding : read_into(profile, source)) {
        CAPTURE(finding.message);
        CAPTURE(source.line(finding.marks[0].place.line));
        CHECK(finding.severity == Severity::warn);
    }
    for (const FieldAt& at : fields_of(profile)) {
        CAPTURE(at.path);
        CHECK(at.field->state != FieldState::absent);
    }
}

TEST_CASE("essential keys come first in each group of the starter") {
    struct Two {
        Field<std::string> optional_one;
        Field<std::string> expected_one;
        Field<std::string> essential_one;
        void describe(Visitor& visitor) {
            visitor.leaf({.key = "optional_one"}, optional_one);
            visitor.leaf({.key = "expected_one", .grade = Grade::expected}, expected_one);
            visitor.leaf({.key = "essential_one", .grade = Grade::essential}, essential_one);
        }
    };
    const std::string starter = starter_profile(blank<Two>());
    CHECK(starter.find("\nessential_one:") < starter.find("#expected_one:"));
    CHECK(starter.find("#expected_one:") < starter.find("#optional_one:"));
}

TEST_CASE("the schema names types, required keys and nothing else") {
    const auto schema = nlohmann::json::parse(json_schema(blank<sample::Home>()));
    CHECK(schema["$schema"] == "https://json-schema.org/draft/2020-12/schema");
    CHECK(schema["additionalProperties"] == false);
    CHECK(!schema.contains("required"));
    const auto& properties = schema["properties"];
    CHECK(properties["stairs"]["anyOf"][0]["type"] == "boolean");
    CHECK(properties["stairs"]["anyOf"][1]["enum"] == nlohmann::json{"unknown"});
    CHECK(properties["room"]["anyOf"][1]["enum"] == nlohmann::json{"unknown", "none"});
    CHECK(properties["position"]["anyOf"][0]["enum"] == nlohmann::json{"lying", "half_sitting"});
    CHECK(properties["alarms"]["anyOf"][0]["properties"]["high_pressure"]["description"] ==
          "alarm when the pressure is above");
    const auto& contact = properties["contacts"]["anyOf"][0]["items"];
    CHECK(contact["required"] == nlohmann::json{"phone"});
    CHECK(contact["additionalProperties"] == false);
}

TEST_CASE("the schema's patterns and the reader agree on what a quantity is") {
    const auto schema = nlohmann::json::parse(json_schema(blank<sample::Home>()));
    const auto accepts = [&](const char* key, const std::string& text) {
        const auto pattern = schema["properties"][key]["anyOf"][0]["pattern"].get<std::string>();
        // The C library reads bytes here: the class of blanks is narrowed to the plain one.
        return matches(with_replaced(pattern, "\\u00a0\\u202f", ""), text);
    };
    struct Row {
        const char* key;
        const char* text;
        bool good;
    };
    constexpr Row rows[] = {
        {"weight", "35 kg", true},           {"weight", "35.5 lb", true},
        {"weight", ".5 kg", true},           {"weight", "35", false},
        {"weight", "35kg", false},           {"weight", "35 KG", false},
        {"weight", "35 cm", false},          {"weight", "5. kg", false},
        {"weight", "1e1 kg", false},         {"weight", "3,5 kg", false},
        {"humidifier", "37 °C", true},       {"humidifier", "37 C", true},
        {"humidifier", "98.6 degF", true},   {"oxygen_level", "92 %", true},
        {"oxygen_level", "92%", true},       {"oxygen_level", "92 percent", true},
        {"tidal_volume", "350 mL", true},    {"tidal_volume", "350 ml", false},
        {"revision", "R2a", true},           {"revision", "R2ab", false},
        {"tube_change", "1 week", true},     {"tube_change", "weekly", false},
        {"tube_change", "0 days", false},    {"last_visit", "2026-13-03", false},
        {"last_visit", "2026-00-03", false}, {"last_visit", "2026-02-32", false},
        {"last_visit", "2026-02-03", true},  {"last_visit", "26-02-03", false},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.key});
        CAPTURE(std::string{row.text});
        CHECK(accepts(row.key, row.text) == row.good);
        CHECK(sample::read(std::string{row.key} + ": " + row.text + "\n").findings.empty() == row.good);
    }
}

TEST_CASE("fields are found by their path, in all items of a list") {
    const auto read = sample::read(
        "alarms: {high_pressure: 31 cmH2O}\ncontacts: [{name: A, phone: 555-0101}, {name: B, phone: 555-0102}]\n");
    const auto fields = fields_of(read.home);
    const FieldAt* pressure = find_field(fields, "alarms.high_pressure");
    REQUIRE(pressure);
    CHECK(pressure->field == &read.home.alarms->high_pressure);
    CHECK(pressure->info.setting);
    CHECK(pressure->reachable);
    REQUIRE(find_field(fields, "contacts.1.phone"));
    CHECK(find_field(fields, "contacts.1.phone")->field == &read.home.contacts[1].phone);
    CHECK(!find_field(fields, "contacts.2.phone"));
    CHECK(!find_field(fields, "alarms"));
    const auto nothing = sample::read("room: bed\n");
    CHECK(!find_field(fields_of(nothing.home), "alarms.high_pressure")->reachable);
}

TEST_CASE("declared paths are unique and lead from any path of a profile") {
    const auto declared = declared_fields_of<Profile>();
    std::vector<std::string> paths;
    for (const DeclaredField& field : declared) paths.push_back(field.path);
    std::ranges::sort(paths);
    CHECK(std::ranges::adjacent_find(paths) == paths.end());
    Profile profile;
    CHECK(read_into(profile, {"home.yaml", example_profile(blank<Profile>())}).size() < 500);
    for (const FieldAt& at : fields_of(profile)) {
        CAPTURE(at.path);
        CHECK(std::ranges::binary_search(paths, declared_path(at.path)));
    }
}

TEST_CASE("the field list begins each line with the path") {
    const std::string list = field_list(declared_fields_of<sample::Home>());
    const auto lines = split(list, '\n');
    REQUIRE(lines.size() == declared_fields_of<sample::Home>().size() + 1);
    CHECK(lines[0].starts_with("record_number "));
    CHECK(list.find("contacts.N.phone      essential  text                      nobody            number to dial\n") !=
          std::string::npos);
    CHECK(list.find("alarms.high_pressure  optional   cmH2O or hPa ") != std::string::npos);
}
