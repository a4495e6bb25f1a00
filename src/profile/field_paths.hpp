#pragma once

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "profile/field.hpp"

namespace ventfolio {

/// One field of something described, and the path under which findings, acceptances and comparisons name it:
/// "prescriptions.0.alarms.high_pressure".
struct FieldAt {
    std::string path;
    FieldInfo info;
    const FieldBase* field = nullptr;  ///< belongs to what was described, and lives as long
    bool reachable = true;             ///< every group that it stands in is given
};

/// All fields in the order of their declaration, those of absent groups too; of lists, the items that are there.
std::vector<FieldAt> fields_shown(const std::function<void(ConstVisitor&)>& show);

template <class T>
std::vector<FieldAt> fields_of(const T& described) {
    return fields_shown([&](ConstVisitor& visitor) { visit(described, visitor); });
}

/// The field with this path; null when there is none.
const FieldAt* find_field(std::span<const FieldAt> fields, std::string_view path);

/// One field as it is declared, whether or not a profile has it. The items of a list share one path:
/// "prescriptions.N.alarms.high_pressure".
struct DeclaredField {
    std::string path;
    FieldInfo info;
    ValueKind kind = ValueKind::text;
    std::optional<Dimension> dimension = std::nullopt;
    std::vector<std::string_view> choices;
};

/// All that `blank`, which must be empty, can hold.
std::vector<DeclaredField> declared_fields(const std::function<void(Visitor&)>& blank);

template <class T>
std::vector<DeclaredField> declared_fields_of() {
    T blank;
    return declared_fields([&](Visitor& visitor) { blank.describe(visitor); });
}

/// With each number between dots replaced by N: the declaration that a path belongs to.
std::string declared_path(std::string_view path);

}  // namespace ventfolio
