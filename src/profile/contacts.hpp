#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// A contact by its key in Contacts, or the power company.
enum class ContactRole : std::uint8_t {
    emergency,
    equipment_provider,
    prescriber_on_call,
    clinic,
    primary_care,
    home_nursing,
    hospital,
    utility_company,
    pharmacy,
    family,
    nearby_helper,
    interpreter,
    poison_line
};
template <>
struct Words<ContactRole> {
    static constexpr std::array<std::string_view, 13> words{
        "emergency",     "equipment_provider", "prescriber_on_call", "clinic",   "primary_care",
        "home_nursing",  "hospital",           "utility_company",    "pharmacy", "family",
        "nearby_helper", "interpreter",        "poison_line"};
};

/// Somebody to call.
struct Contact {
    Field<std::string> name;
    Field<std::string> phone;
    Field<std::string> other_phone;
    Field<bool> all_hours;
    Field<Duration> response_time;
    Field<std::string> when_to_call;
    Field<std::string> reason;

    void describe(Visitor& visitor);
};

/// A further contact with a role of its own.
struct OtherContact {
    Field<std::string> role;
    Field<std::string> name;
    Field<std::string> phone;

    void describe(Visitor& visitor);
};

/// Whom to call. The first three must have a number before anything is printed; where nothing is said of `emergency`,
/// its number is that of the region.
struct Contacts {
    Group<Contact> emergency;
    Group<Contact> equipment_provider;
    Group<Contact> prescriber_on_call;
    Group<Contact> clinic;
    Group<Contact> primary_care;
    Group<Contact> home_nursing;
    Group<Contact> hospital;
    Group<Contact> pharmacy;
    Group<Contact> family;
    Group<Contact> nearby_helper;
    Group<Contact> interpreter;
    Group<Contact> poison_line;
    List<OtherContact> others;

    void describe(Visitor& visitor);
};

/// Whom to call next, in order.
struct EscalationStep {
    Field<ContactRole> call;
    Field<std::string> when;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
