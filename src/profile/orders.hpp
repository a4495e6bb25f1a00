#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// How the prescriber gave the order.
enum class OrderMethod : std::uint8_t { written, electronic, spoken };
template <>
struct Words<OrderMethod> {
    static constexpr std::array<std::string_view, 3> words{"written", "electronic", "spoken"};
};

/// A spoken order read back to the prescriber, number by number.
struct ReadBack {
    Field<std::string> by;
    Field<Moment> at;

    void describe(Visitor& visitor);
};

/// Somebody who stands behind the numbers.
struct NamedCheck {
    Field<std::string> name;
    Field<std::string> credential;
    Field<Date> date;

    void describe(Visitor& visitor);
};

/// A prescriber's exception from a rule of safety: who allowed it, and when.
struct OrderedException {
    Field<std::string> by;
    Field<Date> date;

    void describe(Visitor& visitor);
};

/// The order behind this revision of the papers. The two names may be absent in a draft; every page then says so.
struct Orders {
    Field<Revision> revision;
    Field<Revision> supersedes;
    Field<std::string> prescriber;
    Field<std::string> prescriber_licence;
    Field<std::string> prescriber_phone;
    Field<Date> order_date;
    Field<OrderMethod> method;
    Group<ReadBack> read_back;
    Field<Moment> effective_at;
    Group<NamedCheck> verified_by;
    Group<NamedCheck> second_check;
    Field<Date> review_due;
    Field<std::string> reason;
    Field<std::string> follow_up;
    Field<Date> follow_up_due;
    Field<TextList> tell;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
