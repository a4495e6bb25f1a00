#include "calc/next_due_date.hpp"
#include "calc/supply_quantity.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {

std::optional<Answer> supply_quantity(const Inputs& in) {
    const auto quantity = calc::supply_quantity({.days = duration(in, "days").in(unit::days),
                                                 .pieces_per_day = in.number("use"),
                                                 .spare = share(in, "spare"),
                                                 .pack = in.whole("pack")});
    if (!quantity) return std::nullopt;
    return Answer{}
        .give("pieces", static_cast<double>(quantity->pieces))
        .give("packs", static_cast<double>(quantity->packs));
}

std::optional<Answer> days_of_supply(const Inputs& in) {
    const auto days = calc::days_of_supply(in.whole("pieces"), in.number("use"));
    if (!days) return std::nullopt;
    return Answer{}.give("days", static_cast<double>(*days));
}

std::optional<Answer> next_due_date(const Inputs& in) {
    const auto due = calc::next_due_date(in.date("last"), in.interval("every"));
    if (!due) return std::nullopt;
    return Answer{}.give_date("due", *due);
}

std::optional<Answer> days_overdue(const Inputs& in) {
    const auto late = calc::days_overdue(in.date("due"), in.date("on"));
    if (!late) return std::nullopt;
    return Answer{}.give("late", *late);
}

}  // namespace ventfolio::calculators
