#include "calc/catheter_size.hpp"
#include "calc/cuff_pressure.hpp"
#include "calc/suction.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {
namespace {

void give_size(Answer& answer, std::string_view name, std::string_view name_of_none,
               const std::optional<Length>& size) {
    if (size)
        answer.give(name, *size);
    else
        answer.give_word(name_of_none, "none");
}

}  // namespace

std::optional<Answer> catheter_size(const Inputs& in) {
    const Length bore = length(in, "inner-diameter");
    if (!calc::within(bore, 2, 11, unit::mm)) return std::nullopt;
    Answer answer;
    give_size(answer, "half", "half-none", calc::largest_catheter(bore, 0.5, calc::RatioLimit::up_to));
    give_size(answer, "two-thirds", "two-thirds-none", calc::largest_catheter(bore, 2.0 / 3, calc::RatioLimit::below));
    give_size(answer, "seven-tenths", "seven-tenths-none", calc::largest_catheter(bore, 0.7, calc::RatioLimit::below));
    return answer;
}

std::optional<Answer> catheter_fit(const Inputs& in) {
    const auto fit = calc::catheter_fit(length(in, "catheter"), length(in, "inner-diameter"));
    if (!fit) return std::nullopt;
    return Answer{}.give("ratio", 100 * fit->ratio).give("area", 100 * fit->area_blocked);
}

std::optional<Answer> suction_depth(const Inputs& in) {
    const auto depth = calc::suction_depth(
        {.tube = length(in, "tube"), .connector = length(in, "connector"), .past_tip = length(in, "past-tip")});
    if (!depth) return std::nullopt;
    return Answer{}.give("to-tip", depth->to_tip).give("deepest", depth->deepest);
}

std::optional<Answer> suction_pressure(const Inputs& in) {
    const auto band = calc::suction_pressure_band(age(in, "age"));
    if (!band) return std::nullopt;
    Answer answer;
    if (band->usual_low)
        answer.give("usual", calc::Band<Pressure>{*band->usual_low, band->usual_high});
    else
        answer.give("most", band->usual_high);
    return answer.give("never", band->never_reach);
}

std::optional<Answer> cuff_pressure(const Inputs& in) {
    const auto cuff = calc::cuff_pressure(pressure(in, "pressure"));
    if (!cuff) return std::nullopt;
    return Answer{}
        .give("water", cuff->cmH2O)
        .give("mercury", cuff->mmHg)
        .give_word("in-band", yes_or_no(cuff->in_band));
}

}  // namespace ventfolio::calculators
