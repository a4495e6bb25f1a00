#pragma once

#include <cmath>

#include "calc/age.hpp"
#include "rules/calculator_bindings.hpp"
#include "rules/calculators/answer.hpp"
#include "rules/calculators/inputs.hpp"

/// Short words for the bindings, which do nothing but carry arguments to a calculator and results back.
namespace ventfolio::calculators {

inline Pressure pressure(const Inputs& in, std::string_view name) { return in.get<Dimension::pressure>(name); }
inline Volume volume(const Inputs& in, std::string_view name) { return in.get<Dimension::volume>(name); }
inline Flow flow(const Inputs& in, std::string_view name) { return in.get<Dimension::flow>(name); }
inline Duration duration(const Inputs& in, std::string_view name) { return in.get<Dimension::duration>(name); }
inline BreathRate rate(const Inputs& in, std::string_view name) { return in.get<Dimension::breath_rate>(name); }
inline Length length(const Inputs& in, std::string_view name) { return in.get<Dimension::length>(name); }
inline Mass mass(const Inputs& in, std::string_view name) { return in.get<Dimension::mass>(name); }
inline Temperature temperature(const Inputs& in, std::string_view name) { return in.get<Dimension::temperature>(name); }
inline Fraction fraction(const Inputs& in, std::string_view name) { return in.get<Dimension::fraction>(name); }
/// A percentage as a share of 1.
inline double share(const Inputs& in, std::string_view name) { return fraction(in, name).in(unit::percent) / 100; }
inline Power power(const Inputs& in, std::string_view name) { return in.get<Dimension::power>(name); }
inline Voltage voltage(const Inputs& in, std::string_view name) { return in.get<Dimension::voltage>(name); }
inline Current current(const Inputs& in, std::string_view name) { return in.get<Dimension::current>(name); }
inline ElectricCharge charge(const Inputs& in, std::string_view name) {
    return in.get<Dimension::electric_charge>(name);
}
inline int whole(const Inputs& in, std::string_view name) { return static_cast<int>(in.whole(name)); }

/// An age given as years, months, weeks or days.
inline calc::Age age(const Inputs& in, std::string_view name) {
    constexpr double kDaysPerYear = 365.25;
    const auto down = [](double value) { return static_cast<int>(std::floor(value + calc::kTolerance)); };
    const double years = in.number(name);
    const int whole_years = down(years);
    return {.years = whole_years,
            .months = down((years - whole_years) * 12),
            .days = 0,
            .total_days = down(years * kDaysPerYear)};
}

inline std::string_view yes_or_no(bool yes) { return yes ? "yes" : "no"; }

}  // namespace ventfolio::calculators
