#pragma once

#include <string>

#include "profile/field.hpp"

namespace ventfolio {

/// A number that an acceptance covers. When it changes, the acceptance no longer counts.
struct AcceptedNumber {
    Field<std::string> name;
    Field<std::string> value;

    void describe(Visitor& visitor);
};

/// A clinician has seen a finding and means it.
struct Acceptance {
    Field<std::string> rule;
    Field<std::string> prescription;
    Field<std::string> by;
    Field<Date> date;
    Field<std::string> reason;
    List<AcceptedNumber> covers;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
