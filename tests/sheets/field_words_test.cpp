#include <doctest/doctest.h>
#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <map>
#include <set>

#include "packet/print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "sheets/field_labels.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Every field, group and list that a profile can have.
std::set<std::string> declared_parts() {
    std::set<std::string> paths;
    for (const DeclaredField& field : declared_fields_of<Profile>()) {
        const std::vector<std::string> steps = split(field.path, '.');
        for (std::size_t length = 1; length <= steps.size(); ++length)
            if (steps[length - 1] != "N") paths.insert(joined(std::span{steps}.first(length), "."));
    }
    return paths;
}

std::set<std::string> keys_of(const std::string& section) {
    const YAML::Node root = YAML::LoadFile(VENTFOLIO_SOURCE_DIR "/templates/en/words.yaml");
    std::set<std::string> keys;
    for (const auto& entry : root[section]) {
        CHECK_MESSAGE(!entry.second.Scalar().empty(), entry.first.Scalar());
        CHECK_MESSAGE(keys.insert(fmt::format("{}.{}", section, entry.first.Scalar())).second, entry.first.Scalar());
    }
    REQUIRE(!keys.empty());
    return keys;
}

}  // namespace

TEST_CASE("whatever a profile can hold has a name in the words, and no name is left over") {
    const WordBook& words = stationery().words;
    for (const char* section : {"fields", "fields_before", "fields_item"}) {
        std::set<std::string> left_over = keys_of(section);
        for (const std::string& path : declared_parts()) {
            const auto key = word_key(words, section, path);
            if (std::string_view{section} == "fields") CHECK_MESSAGE(key.has_value(), path);
            if (key) left_over.erase(*key);
        }
        for (const std::string& key : left_over) CHECK_MESSAGE(false, key << " names nothing");
    }
}

TEST_CASE("no two fields of one thing are called the same") {
    std::map<std::string, std::string> seen;
    for (const DeclaredField& field : declared_fields_of<Profile>()) {
        // Items of different lists are told apart by the item's own name.
        const auto list = field.path.find(".N");
        const std::string thing = list == std::string::npos ? "" : field.path.substr(0, list);
        const std::string label = field_label(stationery().words, field.path);
        const auto [other, fresh] = seen.try_emplace(fmt::format("{}: {}", thing, label), field.path);
        CHECK_MESSAGE(fresh, label << ": " << other->second << " and " << field.path);
        CHECK_MESSAGE(label.find('_') == std::string::npos, label);
    }
}

TEST_CASE("the longest ending of a path that has a name counts") {
    // Source of the rows: the words of the file, read by eye.
    struct Row {
        const char* path;
        const char* label;
    };
    constexpr Row rows[] = {
        {"prescriptions.0.rate", "Breaths per minute"},
        {"prescriptions.12.backup_breaths.rate", "Backup breaths per minute"},
        {"prescriptions.N.tidal_volume", "Volume of one breath"},
        {"prescriptions.0.expected.tidal_volume", "Expected volume of one breath"},
        {"prescriptions.0.backup_breaths.tidal_volume", "Volume of a backup breath"},
        {"prescriptions.0.alarms.high_pressure", "High-pressure alarm"},
        {"prescriptions.1.alarms.low_minute_volume", "Low minute volume alarm"},
        {"contacts.hospital.phone", "Hospital, phone"},
        {"airway.neck_tube.spare_smaller.size", "Neck tube, smaller spare, size"},
        {"medicines", "Medicines"},
        {"power.generator", "Generator"},
    };
    for (const Row& row : rows) CHECK(field_label(stationery().words, row.path) == row.label);
    CHECK_THROWS_AS(static_cast<void>(field_label(stationery().words, "no_such_field")), MissingWord);
}
