#pragma once

#include <span>

/// Published values, asked for through the registry, so that reading, units, formula and result are all on the way.
///
/// The source of each row begins with how it is known:
///   pub   published, and read in the source named
///   mem   published or standard, from memory: to be confirmed in the source named
///   lib   given by an independent library or program
///   der   follows from the formula alone: shows that nothing moved, proves nothing about the world
///   none  no published value was found, or no second one; the row that stands beside it is derived
namespace ventfolio::testing {

struct PublishedRow {
    const char* calculator;
    const char* arguments;
    const char* result;  ///< "fraction" or "fraction.high"; minutes where a result is printed in hours
    double expected = 0;
    double within = 0;
    const char* source = "";
    const char* text = nullptr;  ///< of results in words and days
    /// What GNU units is asked for, in which unit, in place of `expected`.
    const char* expression = nullptr;
    const char* in = nullptr;
};

std::span<const PublishedRow> published_body_and_breath();
std::span<const PublishedRow> published_gas();
std::span<const PublishedRow> published_power_and_paper();
std::span<const PublishedRow> published_airway_and_alarms();
std::span<const PublishedRow> published_by_units();

}  // namespace ventfolio::testing
