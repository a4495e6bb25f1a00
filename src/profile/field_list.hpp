#pragma once

#include <span>
#include <string>

#include "profile/field_paths.hpp"

namespace ventfolio {

/// One line for each field, the path first, then grade, what it takes, audiences and help, in columns:
/// "person.weight  expected  kg, g or lb  folder, crew  body weight".
std::string field_list(std::span<const DeclaredField> fields);

/// "essential", "expected" or "optional".
std::string_view name_of(Grade grade);
/// "wall, folder"; "nobody" for none.
std::string names_of(Audiences audiences);
/// What a field takes, in words: "cmH2O, hPa or mbar", "true or false", "year-month-day".
std::string what_it_takes(const DeclaredField& field);

}  // namespace ventfolio
