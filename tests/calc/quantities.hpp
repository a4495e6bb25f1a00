#pragma once

#include <doctest/doctest.h>
#include <array>
#include <cmath>
#include <limits>

#include "units/calendar.hpp"
#include "units/quantity.hpp"

/// Short names for quantities, so that the rows of a test read like the table they come from.
///
/// The source of each row begins with how it is known:
///   pub  published, and read in the source named
///   mem  published or standard, from memory: to be confirmed in the source named
///   lib  given by an independent library
///   der  follows from the formula alone: shows that nothing moved, proves nothing about the world
namespace ventfolio::calc {

inline Pressure cmH2O(double n) { return Pressure::of(n, unit::cmH2O); }
inline Pressure mmHg(double n) { return Pressure::of(n, unit::mmHg); }
inline Pressure psi(double n) { return Pressure::of(n, unit::psi); }
inline Volume mL(double n) { return Volume::of(n, unit::mL); }
inline Volume litres(double n) { return Volume::of(n, unit::L); }
inline Flow L_per_min(double n) { return Flow::of(n, unit::L_per_min); }
inline Duration seconds(double n) { return Duration::of(n, unit::s); }
inline Duration minutes(double n) { return Duration::of(n, unit::min); }
inline Duration hours(double n) { return Duration::of(n, unit::h); }
inline BreathRate breaths(double n) { return BreathRate::of(n, unit::breaths_per_min); }
inline Length mm(double n) { return Length::of(n, unit::mm); }
inline Length cm(double n) { return Length::of(n, unit::cm); }
inline Length Fr(double n) { return Length::of(n, unit::Fr); }
inline Mass kg(double n) { return Mass::of(n, unit::kg); }
inline Power watts(double n) { return Power::of(n, unit::W); }
inline Voltage volts(double n) { return Voltage::of(n, unit::V); }
inline Current amperes(double n) { return Current::of(n, unit::A); }

inline Date day(std::string_view iso) {
    const auto date = Date::parse(iso);
    REQUIRE_MESSAGE(date.has_value(), "a row of the test holds a day that does not exist");
    return *date;
}

/// How far a result lies from what is expected.
inline double off(double actual, double expected) { return std::abs(actual - expected); }

/// Numbers that no calculator may turn into a number of its own.
inline constexpr std::array kHostile{std::numeric_limits<double>::quiet_NaN(),
                                     std::numeric_limits<double>::infinity(),
                                     -std::numeric_limits<double>::infinity(),
                                     -1.0,
                                     1e-300,
                                     1e300};

/// A number that may stand on paper: finite and not negative.
inline bool sound(double number) { return std::isfinite(number) && number >= 0; }

}  // namespace ventfolio::calc
