#pragma once

#include <string>

#include "profile/field.hpp"

namespace ventfolio {

/// Who certifies to the power company that power is needed to live.
struct UtilityCertifier {
    Field<std::string> name;
    Field<std::string> licence;
    Field<Date> certified_on;
    Field<Date> expires;

    void describe(Visitor& visitor);
};

/// The power company: it learns that powered life-sustaining equipment is used here, and no more.
struct UtilityCompany {
    Field<std::string> name;
    Field<std::string> account;
    Field<std::string> account_holder;
    Field<std::string> outage_phone;
    Field<Date> registered_until;
    Field<std::string> letter_to;
    Field<std::string> contact_name;
    Field<std::string> contact_phone;
    Group<UtilityCertifier> certifier;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
