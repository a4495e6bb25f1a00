#include "calc/cough_flow.hpp"

#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {
namespace {

std::string_view word_for(calc::CoughStrength strength) {
    switch (strength) {
        case calc::CoughStrength::ineffective:
            return "ineffective";
        case calc::CoughStrength::weak:
            return "weak";
        case calc::CoughStrength::sufficient:
            break;
    }
    return "sufficient";
}

}  // namespace

std::optional<Answer> cough_flow(const Inputs& in) {
    const Flow peak = flow(in, "peak");
    const auto strength = calc::cough_strength(peak);
    if (!strength) return std::nullopt;
    return Answer{}.give_word("strength", word_for(*strength)).give("each-second", peak.in(unit::L_per_s));
}

std::optional<Answer> cough_pressures(const Inputs& in) {
    const auto pressures = calc::cough_pressures(pressure(in, "in"), pressure(in, "out"));
    if (!pressures) return std::nullopt;
    return Answer{}.give("swing", pressures->swing).give_word("goal", yes_or_no(pressures->reaches_goal));
}

}  // namespace ventfolio::calculators
