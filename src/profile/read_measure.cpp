#include "profile/read_measure.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>

#include "units/ascii.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

struct OtherSpelling {
    std::string_view written;  ///< in small letters, without blanks
    std::string_view symbol;
};

// Common spellings that a profile does not accept, with the symbol that they usually mean. A spelling with two meanings
// ("bpm") stands here twice: the field decides.
constexpr std::array kOtherSpellings{
    OtherSpelling{"ml", "mL"},           OtherSpelling{"cc", "mL"},
    OtherSpelling{"milliliters", "mL"},  OtherSpelling{"l", "L"},
    OtherSpelling{"liter", "L"},         OtherSpelling{"liters", "L"},
    OtherSpelling{"litres", "L"},        OtherSpelling{"lpm", "L/min"},
    OtherSpelling{"l/m", "L/min"},       OtherSpelling{"bpm", "breaths/min"},
    OtherSpelling{"bpm", "beats/min"},   OtherSpelling{"/min", "breaths/min"},
    OtherSpelling{"/min", "beats/min"},  OtherSpelling{"1/min", "breaths/min"},
    OtherSpelling{"1/min", "beats/min"}, OtherSpelling{"breaths", "breaths/min"},
    OtherSpelling{"beats", "beats/min"}, OtherSpelling{"/day", "times/day"},
    OtherSpelling{"sec", "s"},           OtherSpelling{"secs", "s"},
    OtherSpelling{"second", "s"},        OtherSpelling{"mins", "min"},
    OtherSpelling{"minute", "min"},      OtherSpelling{"hr", "h"},
    OtherSpelling{"hrs", "h"},           OtherSpelling{"hour", "h"},
    OtherSpelling{"d", "days"},          OtherSpelling{"lbs", "lb"},
    OtherSpelling{"pounds", "lb"},       OtherSpelling{"kgs", "kg"},
    OtherSpelling{"inch", "in"},         OtherSpelling{"inches", "in"},
    OtherSpelling{"feet", "ft"},         OtherSpelling{"foot", "ft"},
    OtherSpelling{"french", "Fr"},       OtherSpelling{"ch", "Fr"},
    OtherSpelling{"watts", "W"},         OtherSpelling{"watt", "W"},
    OtherSpelling{"volts", "V"},         OtherSpelling{"volt", "V"},
    OtherSpelling{"amps", "A"},          OtherSpelling{"pcs", "pieces"},
    OtherSpelling{"pc", "pieces"},       OtherSpelling{"cmh20", "cmH2O"},
    OtherSpelling{"cmwater", "cmH2O"},   OtherSpelling{"millibar", "mbar"},
    OtherSpelling{"torr", "mmHg"},       OtherSpelling{"°", "°C"},
};

const Unit* meant_unit(std::string_view symbol, std::span<const Unit> accepted) {
    const std::string small = lower_ascii(with_replaced(std::string{symbol}, " ", ""));
    for (const Unit& unit : accepted)
        if (lower_ascii(unit.symbol) == small) return &unit;
    for (const OtherSpelling& other : kOtherSpellings)
        if (other.written == small)
            for (const Unit& unit : accepted)
                if (unit.symbol == other.symbol) return &unit;
    std::vector<std::string> symbols;
    for (const Unit& unit : accepted) symbols.emplace_back(unit.symbol);
    const auto near = nearest(symbol, symbols);
    const auto found = near ? std::ranges::find(accepted, std::string_view{*near}, &Unit::symbol) : accepted.end();
    return found == accepted.end() ? nullptr : &*found;
}

/// "3,5" is 3.5, but "1,200" may be 1.2 or 1200: then nothing.
std::string repaired_number(std::string_view number) {
    std::string repaired = with_replaced(std::string{number}, "\u2212", "-");
    if (repaired.starts_with('+')) repaired.erase(0, 1);
    const auto comma = repaired.find(',');
    const bool one_comma = comma != std::string::npos && repaired.find(',', comma + 1) == std::string::npos &&
                           repaired.find('.') == std::string::npos;
    if (one_comma && repaired.size() - comma - 1 != 3) repaired[comma] = '.';
    return repaired;
}

std::string with_plain_blanks(std::string_view text) {
    return with_replaced(with_replaced(std::string{text}, "\u00A0", " "), "\u202F", " ");
}

struct Parts {
    std::string_view number;
    std::string_view symbol;
};

Parts parts_of(std::string_view text) {
    std::size_t length = 0;
    while (length < text.size()) {
        if (std::string_view{"+-.,0123456789"}.find(text[length]) != std::string_view::npos)
            ++length;
        else if (text.substr(length).starts_with("\u2212"))
            length += 3;
        else
            break;
    }
    return {text.substr(0, length), trimmed(text.substr(length))};
}

std::string number_with(std::string_view number, std::span<const Unit> accepted) {
    std::vector<std::string> ways;
    for (const Unit& unit : accepted) ways.push_back(fmt::format("{} {}", number, unit.symbol));
    return listed(ways, " or ");
}

std::string symbols_of(std::span<const Unit> accepted) {
    std::vector<std::string> symbols;
    for (const Unit& unit : accepted) symbols.emplace_back(unit.symbol);
    return listed(symbols);
}

std::string how_to_write(std::string_view text, const FieldInfo& info, std::span<const Unit> accepted) {
    if (const auto meant = meant_measure(text, accepted)) return fmt::format("Write {}.", *meant);
    return fmt::format("Write a number, a blank and a unit{}. Units accepted here: {}.", with_example(info),
                       symbols_of(accepted));
}

std::string why_no_number(std::string_view text) {
    if (text.find_first_of("<>") != std::string_view::npos || text.find("\u2264") != std::string_view::npos ||
        text.find("\u2265") != std::string_view::npos)
        return "the number itself is due, without a sign for more or less";
    const Parts parts = parts_of(text);
    if (text.find('-', 1) != std::string_view::npos || text.find(" to ") != std::string_view::npos ||
        text.find("\u2013") != std::string_view::npos)
        return "one number is due here, not two";
    if (parts.number.find(',') != std::string_view::npos)
        return "a comma can mean two things; the decimal sign is a point";
    return "this is not a number and a unit";
}

ValueRemark number_unreadable(std::string_view text, const FieldInfo& info, std::span<const Unit> accepted) {
    ValueRemark remark{"number-unreadable", fmt::format("{} cannot be read: {}.", quoted(text), why_no_number(text)),
                       "not a number", how_to_write(text, info, accepted)};
    const Parts parts = parts_of(text);
    const auto comma = parts.number.find(',');
    if (comma != std::string_view::npos && !meant_measure(text, accepted)) {
        const std::string whole = with_replaced(std::string{parts.number}, ",", "");
        const std::string fraction = with_replaced(std::string{parts.number}, ",", ".");
        if (Decimal::parse(whole) && Decimal::parse(fraction))
            remark.to_do =
                fmt::format("Write {} or {}, whichever is meant, and then the unit. Units accepted here: {}.", whole,
                            fraction, symbols_of(accepted));
    }
    return remark;
}

ValueRemark wrong_kind(std::string_view symbol, const FieldInfo& info, Dimension due, std::span<const Unit> accepted) {
    const Unit& unit = *find_unit(symbol);
    if (unit.dimension == due)
        return {"unit-not-accepted-here", fmt::format("{} is not written in {} here.", quoted(info.key), unit.symbol),
                "another unit is due",
                fmt::format("Write it in {}, as the device or the order shows it.", symbols_of(accepted))};
    return {"unit-of-wrong-kind",
            fmt::format("{} takes {}, but {} is the unit of {}.", quoted(info.key), name_of(due), unit.symbol,
                        name_of(unit.dimension)),
            fmt::format("not {}", name_of(due)),
            fmt::format("Check that the value stands behind the right key. Units accepted here: {}.",
                        symbols_of(accepted))};
}

/// Whether what follows a number is no unit but more of the number: "12 - 14 cmH2O", "12 to 14 cmH2O", "1 200 mL".
bool goes_on(std::string_view symbol) {
    const bool another_number = is_digit(symbol.front()) && symbol.find('/') == std::string_view::npos;
    return another_number || symbol.starts_with("to ") || symbol.starts_with("\u2013") ||
           std::string_view{"-+*=("}.find(symbol.front()) != std::string_view::npos;
}

ValueRemark explain_fault(MeasureFault fault, std::string_view text, const FieldInfo& info, Dimension dimension,
                          std::span<const Unit> accepted) {
    const Parts parts = parts_of(text);
    if (fault == MeasureFault::unknown_unit && goes_on(parts.symbol)) fault = MeasureFault::not_a_number;
    switch (fault) {
        case MeasureFault::without_unit:
            return {"unit-missing", fmt::format("{} is {} without a unit.", quoted(info.key), parts.number), "no unit",
                    fmt::format("Write {}, as the device or the order shows it.", number_with(parts.number, accepted))};
        case MeasureFault::glued:
            return {"blank-before-unit-missing",
                    fmt::format("In {} the number and the unit stick together.", quoted(text)),
                    "a blank is due before the unit", how_to_write(text, info, accepted)};
        case MeasureFault::unknown_unit:
            return {"unit-unknown", fmt::format("{} is not a unit that is known here.", quoted(parts.symbol)),
                    "unknown unit",
                    fmt::format("{} Units accepted here: {}.",
                                meant_measure(text, accepted)
                                    ? fmt::format("Did you mean {}?", *meant_measure(text, accepted))
                                    : "Write the unit as in the list.",
                                symbols_of(accepted))};
        case MeasureFault::wrong_dimension:
            return wrong_kind(parts.symbol, info, dimension, accepted);
        case MeasureFault::empty:
        case MeasureFault::not_a_number:
            break;
    }
    return number_unreadable(text, info, accepted);
}

/// Outside, with room for the last binary digit: a value exactly at a limit is inside.
bool outside(double value, std::optional<double> least, std::optional<double> most) {
    constexpr double kRoom = 1e-9;
    return (least && value < *least - kRoom * std::abs(*least)) || (most && value > *most + kRoom * std::abs(*most));
}

std::string limit(double value, const Unit& unit) {
    return fmt::format("{} {}", Decimal::rounded(value, 6).plain(), unit.symbol);
}

std::optional<ValueRemark> outside_range(const Measure& measure, const FieldInfo& info, const Unit& declared) {
    const double value = (measure.canonical() - declared.offset) / declared.factor;
    if (!outside(value, info.least, info.most)) return std::nullopt;
    const std::string possible =
        info.least && info.most ? fmt::format("{} to {}", limit(*info.least, declared), limit(*info.most, declared))
        : info.least            ? "at least " + limit(*info.least, declared)
                                : "at most " + limit(*info.most, declared);
    return ValueRemark{
        "outside-typing-range",
        fmt::format("{} is {}, but only {} is possible here.", quoted(info.key), measure.text(), possible),
        fmt::format("possible: {}", possible), "Check the number, its decimal point and its unit."};
}

}  // namespace

std::vector<Unit> accepted_units(const FieldInfo& info, Dimension dimension) {
    std::vector<Unit> units;
    for (const std::string& symbol : split(info.units, ' '))
        if (const Unit* unit = symbol.empty() ? nullptr : find_unit(symbol)) units.push_back(*unit);
    if (units.empty()) units.assign(units_of(dimension).begin(), units_of(dimension).end());
    return units;
}

std::optional<std::string> meant_measure(std::string_view text, std::span<const Unit> accepted) {
    const Parts parts = parts_of(text);
    const Unit* unit = find_unit(parts.symbol);
    if (!unit && !parts.symbol.empty()) unit = meant_unit(parts.symbol, accepted);
    if (!unit) return std::nullopt;
    const std::string meant = fmt::format("{} {}", repaired_number(parts.number), unit->symbol);
    if (!std::holds_alternative<Measure>(parse_measure(meant, accepted))) return std::nullopt;
    return meant;
}

ValueOrRemark read_measure(std::string_view written, const FieldInfo& info, Dimension dimension) {
    const std::vector<Unit> accepted = accepted_units(info, dimension);
    const std::string text{trimmed(with_plain_blanks(written))};
    const auto parsed = parse_measure(text, accepted);
    if (const auto* fault = std::get_if<MeasureFault>(&parsed))
        return explain_fault(*fault, text, info, dimension, accepted);
    const Measure& measure = std::get<Measure>(parsed);
    if (auto remark = outside_range(measure, info, accepted.front())) return *std::move(remark);
    return Value{measure};
}

}  // namespace ventfolio
