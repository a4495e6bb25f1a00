#include "layout/figures/hookup_parts.hpp"

#include <algorithm>
#include <array>

namespace ventfolio {
namespace {

using enum HookupPart;

struct Named {
    HookupPart part;
    std::string_view name;
};
constexpr std::array kNames{
    Named{wall_power, "wall-power"},
    Named{ventilator, "ventilator"},
    Named{built_in_humidifier, "built-in-humidifier"},
    Named{air_filter, "air-filter"},
    Named{concentrator, "concentrator"},
    Named{cylinder, "cylinder"},
    Named{liquid_oxygen, "liquid-oxygen"},
    Named{oxygen_to_inlet, "oxygen-to-inlet"},
    Named{oxygen_to_outlet, "oxygen-to-outlet"},
    Named{oxygen_to_mask, "oxygen-to-mask"},
    Named{outlet_filter, "outlet-filter"},
    Named{short_hose, "short-hose"},
    Named{humidifier, "humidifier"},
    Named{hose, "hose"},
    Named{heated_hose, "heated-hose"},
    Named{water_trap, "water-trap"},
    Named{exhalation_port, "exhalation-port"},
    Named{exhalation_valve, "exhalation-valve"},
    Named{y_piece, "y-piece"},
    Named{pressure_line, "pressure-line"},
    Named{valve_line, "valve-line"},
    Named{person_filter, "person-filter"},
    Named{moisture_exchanger, "moisture-exchanger"},
    Named{flexible_adapter, "flexible-adapter"},
    Named{in_line_suction, "in-line-suction"},
    Named{neck_tube, "neck-tube"},
    Named{mask, "mask"},
    Named{vented_mask, "vented-mask"},
    Named{mouthpiece, "mouthpiece"},
    Named{return_hose, "return-hose"},
    Named{heated_return_hose, "heated-return-hose"},
    Named{return_trap, "return-trap"},
    Named{return_filter, "return-filter"},
};

/// Where a list names parts.
class Listed {
  public:
    explicit Listed(std::span<const HookupPart> parts) : parts_{parts} {}

    bool has(HookupPart part) const { return std::ranges::find(parts_, part) != parts_.end(); }
    std::size_t place(HookupPart part) const {
        return static_cast<std::size_t>(std::ranges::find(parts_, part) - parts_.begin());
    }
    template <class Test>
    std::optional<std::size_t> second(Test test) const {
        bool seen = false;
        for (std::size_t at = 0; at < parts_.size(); ++at) {
            if (!test(parts_[at])) continue;
            if (seen) return at;
            seen = true;
        }
        return std::nullopt;
    }
    template <class Test>
    bool any(Test test) const {
        return std::ranges::any_of(parts_, test);
    }

  private:
    std::span<const HookupPart> parts_;
};

bool is_main_hose(HookupPart part) { return part == hose || part == heated_hose; }
bool is_return_hose(HookupPart part) { return part == return_hose || part == heated_return_hose; }
bool is_way_out(HookupPart part) {
    return part == exhalation_port || part == exhalation_valve || part == y_piece || part == vented_mask;
}
bool is_humidity(HookupPart part) {
    return part == humidifier || part == moisture_exchanger || part == built_in_humidifier;
}

struct Pair {
    HookupPart one;
    HookupPart other;
    const char* why;
};

/// Parts that come only together.
constexpr Pair kNeeds[] = {
    {exhalation_valve, pressure_line, "The exhalation valve has no pressure line."},
    {exhalation_valve, valve_line, "The exhalation valve has no valve line."},
    {pressure_line, exhalation_valve, "The pressure line has no valve to go to."},
    {valve_line, exhalation_valve, "The valve line has no valve to go to."},
    {return_trap, y_piece, "The trap of the return hose has no return hose."},
    {return_filter, y_piece, "The filter of the return hose has no return hose."},
    {short_hose, humidifier, "The short hose has no humidifier to go to."},
    {humidifier, short_hose, "No hose leads from the ventilator to the humidifier."},
};

/// Parts that never come together.
constexpr Pair kExcludes[] = {
    {water_trap, heated_hose, "A heated hose takes no water trap."},
    {return_trap, heated_return_hose, "A heated return hose takes no water trap."},
    {mouthpiece, exhalation_port, "An open mouthpiece takes no exhalation port."},
};

std::optional<HookupFault> fault_of_one(std::span<const HookupPart> parts, const Listed& listed) {
    for (std::size_t at = 0; at < parts.size(); ++at)
        if (std::ranges::find(parts.first(at), parts[at]) != parts.first(at).end())
            return HookupFault{"The same part is listed twice.", at};
    const std::size_t last = parts.empty() ? 0 : parts.size() - 1;
    if (!listed.has(ventilator)) return HookupFault{"There is no ventilator.", last};
    if (!listed.any(is_main_hose)) return HookupFault{"There is no hose to the person.", last};
    if (!listed.any(is_interface))
        return HookupFault{"There is no neck tube, mask or mouthpiece at the person's end.", last};
    return std::nullopt;
}

std::optional<HookupFault> fault_of_choice(const Listed& listed) {
    if (const auto at = listed.second(is_main_hose)) return HookupFault{"There are two hoses to the person.", *at};
    if (const auto at = listed.second(is_return_hose)) return HookupFault{"There are two return hoses.", *at};
    if (const auto at = listed.second(is_interface)) return HookupFault{"The hose cannot end in two places.", *at};
    if (const auto at = listed.second(is_way_out))
        return HookupFault{"Breath may leave in one place only: port, valve, return hose or vented mask.", *at};
    if (const auto at = listed.second(is_humidity))
        return HookupFault{"A humidifier and a moisture exchanger are never together.", *at};
    if (const auto at = listed.second(is_oxygen_tubing)) return HookupFault{"Oxygen enters in one place only.", *at};
    if (const auto at = listed.second(is_oxygen_source)) return HookupFault{"One oxygen source is drawn.", *at};
    return std::nullopt;
}

std::optional<HookupFault> fault_of_pairs(std::span<const HookupPart> parts, const Listed& listed) {
    for (const Pair& pair : kNeeds)
        if (listed.has(pair.one) && !listed.has(pair.other)) return HookupFault{pair.why, listed.place(pair.one)};
    for (const Pair& pair : kExcludes)
        if (listed.has(pair.one) && listed.has(pair.other)) return HookupFault{pair.why, listed.place(pair.one)};
    if (listed.has(y_piece) != listed.any(is_return_hose))
        return HookupFault{"A Y-piece and a return hose come together.",
                           listed.has(y_piece) ? listed.place(y_piece) : parts.size() - 1};
    const auto tubing = std::ranges::find_if(parts, is_oxygen_tubing);
    const auto source = std::ranges::find_if(parts, is_oxygen_source);
    if ((tubing == parts.end()) != (source == parts.end())) {
        const auto there = tubing == parts.end() ? source : tubing;
        return HookupFault{"Oxygen tubing and an oxygen source come together.",
                           static_cast<std::size_t>(there - parts.begin())};
    }
    if (listed.has(oxygen_to_mask) && !listed.has(mask) && !listed.has(vented_mask))
        return HookupFault{"There is no mask for the oxygen to go to.", listed.place(oxygen_to_mask)};
    return std::nullopt;
}

std::optional<HookupFault> fault_of_breath_out(std::span<const HookupPart> parts, const Listed& listed) {
    if (!listed.any(is_way_out) && !listed.has(mouthpiece))
        return HookupFault{"Breath has no way out: no port, valve, return hose or vented mask.", parts.size() - 1};
    // The hoses join at the Y-piece, so nothing stands between them and it.
    const auto first = std::ranges::find_if(parts, is_at_person);
    if (listed.has(y_piece) && *first != y_piece)
        return HookupFault{"A part stands between the hoses and the Y-piece.",
                           static_cast<std::size_t>(first - parts.begin())};
    return std::nullopt;
}

}  // namespace

std::optional<HookupPart> hookup_part(std::string_view name) {
    const auto found = std::ranges::find(kNames, name, &Named::name);
    if (found == kNames.end()) return std::nullopt;
    return found->part;
}

std::string_view name_of(HookupPart part) { return std::ranges::find(kNames, part, &Named::part)->name; }

std::optional<Posture> posture_from(std::string_view word) {
    if (word == "lying") return Posture::lying;
    if (word == "seated") return Posture::seated;
    if (word == "chair") return Posture::in_chair;
    return std::nullopt;
}

std::optional<HookupFault> fault_in(std::span<const HookupPart> parts) {
    const Listed listed{parts};
    if (auto fault = fault_of_one(parts, listed)) return fault;
    if (auto fault = fault_of_choice(listed)) return fault;
    if (auto fault = fault_of_pairs(parts, listed)) return fault;
    return fault_of_breath_out(parts, listed);
}

bool is_at_person(HookupPart part) {
    constexpr std::array kParts{exhalation_port,    exhalation_valve, y_piece,        person_filter,
                                moisture_exchanger, flexible_adapter, in_line_suction};
    return std::ranges::find(kParts, part) != kParts.end();
}

bool is_interface(HookupPart part) {
    return part == neck_tube || part == mask || part == vented_mask || part == mouthpiece;
}

bool is_oxygen_source(HookupPart part) { return part == concentrator || part == cylinder || part == liquid_oxygen; }

bool is_oxygen_tubing(HookupPart part) {
    return part == oxygen_to_inlet || part == oxygen_to_outlet || part == oxygen_to_mask;
}

}  // namespace ventfolio
