#pragma once

#include <string>

#include "profile/field.hpp"

namespace ventfolio {

/// Something that is used up.
struct Supply {
    Field<std::string> item;
    Field<std::string> size;
    Field<Count> per_month;
    Field<Duration> on_hand;
    Field<Duration> reorder_at;
    Field<std::string> supplier;
    Field<Date> expires;
    Field<bool> single_use;
    Field<Interval> reuse_interval;

    void describe(Visitor& visitor);
};

/// Something in the go-bag.
struct GoBagItem {
    Field<std::string> item;
    Field<Count> number;
    Field<Date> checked_on;
    Field<Date> expires;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
