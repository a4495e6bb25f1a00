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

}  // namespace

void add_record_data(TemplateData::Object& data, const Household& home, const Printer& printer) {
    add_renewals(data, home, printer);
}

}  // namespace ventfolio
