#include "units/quantity.hpp"

#include <algorithm>
#include <array>

namespace ventfolio {
namespace {

constexpr std::array kUnits{
    unit::cmH2O.unit,
    unit::hPa.unit,
    unit::mbar.unit,
    unit::kPa.unit,
    unit::mmHg.unit,
    unit::psi.unit,
    unit::bar.unit,
    unit::mL.unit,
    unit::L.unit,
    unit::L_per_min.unit,
    unit::mL_per_min.unit,
    unit::s.unit,
    unit::min.unit,
    unit::h.unit,
    unit::days.unit,
    unit::ms.unit,
    unit::mm.unit,
    unit::cm.unit,
    unit::m.unit,
    unit::in.unit,
    unit::ft.unit,
    unit::Fr.unit,
    unit::kg.unit,
    unit::g.unit,
    unit::lb.unit,
    unit::breaths_per_min.unit,
    unit::degC.unit,
    unit::degF.unit,
    unit::beats_per_min.unit,
    unit::times_per_day.unit,
    unit::percent.unit,
    unit::W.unit,
    unit::kW.unit,
    unit::V.unit,
    unit::A.unit,
    unit::Ah.unit,
    unit::pieces.unit,
};

struct Spelling {
    std::string_view written;
    std::string_view symbol;
};

// Spellings that can mean one thing only. "ml" and "l" are left out: they are answered with the right spelling instead.
constexpr std::array kSpellings{
    Spelling{"C", "°C"},
    Spelling{"degC", "°C"},
    Spelling{"F", "°F"},
    Spelling{"degF", "°F"},
    Spelling{"percent", "%"},
    Spelling{"day", "days"},
    Spelling{"minutes", "min"},
    Spelling{"hours", "h"},
    Spelling{"seconds", "s"},
    Spelling{"breaths per minute", "breaths/min"},
    Spelling{"beats per minute", "beats/min"},
    Spelling{"times per day", "times/day"},
    Spelling{"piece", "pieces"},
};

}  // namespace

std::span<const Unit> all_units() { return kUnits; }

const Unit* find_unit(std::string_view symbol) {
    for (const Spelling& spelling : kSpellings)
        if (spelling.written == symbol) symbol = spelling.symbol;
    const auto found = std::ranges::find(kUnits, symbol, &Unit::symbol);
    return found == kUnits.end() ? nullptr : &*found;
}

std::vector<std::string_view> spellings_of(const Unit& unit) {
    std::vector<std::string_view> spellings{unit.symbol};
    for (const Spelling& spelling : kSpellings)
        if (spelling.symbol == unit.symbol) spellings.push_back(spelling.written);
    return spellings;
}

std::string_view name_of(Dimension dimension) {
    switch (dimension) {
        case Dimension::pressure:
            return "a pressure";
        case Dimension::volume:
            return "a volume";
        case Dimension::flow:
            return "a flow";
        case Dimension::duration:
            return "a time";
        case Dimension::breath_rate:
            return "a breathing rate";
        case Dimension::pulse_rate:
            return "a pulse rate";
        case Dimension::daily_rate:
            return "a number of times a day";
        case Dimension::length:
            return "a length";
        case Dimension::mass:
            return "a weight";
        case Dimension::temperature:
            return "a temperature";
        case Dimension::fraction:
            return "a percentage";
        case Dimension::power:
            return "an electrical power";
        case Dimension::voltage:
            return "a voltage";
        case Dimension::current:
            return "an electrical current";
        case Dimension::electric_charge:
            return "a battery capacity";
        case Dimension::count:
            return "a number of pieces";
    }
    return "a quantity";
}

}  // namespace ventfolio
