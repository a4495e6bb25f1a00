#include "sheets/record_data.hpp"

#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

TemplateData renew_by(const Caregiver& person, const Printer& printer) {
    if (!person.last_signed_off.given()) return {};
    const Date until = person.last_signed_off->plus_months(threshold::kSignoffValid);
    return calculated("renew-by", folder, plain_parts(printer.date(until)));
}

void add_renewals(TemplateData::Object& data, const Household& home, const Printer& printer) {
    TemplateData::Items people = *data.at("caregivers").items();
    for (std::size_t at = 0; at < people.size(); ++at)
        (*people[at].object())["renew_by"] = renew_by(home.profile.caregivers[at], printer);
    data["caregivers"] = std::move(people);
}

bool agreed(const Group<Permission>& permission) {
    return permission.given() && permission->answer.is(PermissionAnswer::agreed) && permission->date.given();
}

void add_letters(TemplateData::Object& data, const Household& home) {
    const Consent& consent = *home.profile.consent;
    data["utility_letter_agreed"] = agreed(consent.utility_letter);
    data["fire_letter_agreed"] = agreed(consent.fire_letter);
    data["needs_every_breath"] = home.dependent;
    data["has_batteries"] = !home.profile.batteries.empty();
    // Bands that a power company can act on; common practice, no source.
    constexpr double kShort = 2;
    constexpr double kLong = 8;
    const bool known = home.outage.power.has_value();
    const double hours = known ? home.outage.power->in(unit::h) : 0;
    data["battery_time_unknown"] = !known;
    data["battery_under_two_hours"] = known && hours < kShort;
    data["battery_two_to_eight_hours"] = known && hours >= kShort && hours <= kLong;
    data["battery_over_eight_hours"] = known && hours > kLong;
}

}  // namespace

void add_record_data(TemplateData::Object& data, const Household& home, const Printer& printer) {
    add_renewals(data, home, printer);
    add_letters(data, home);
}

}  // namespace ventfolio
