#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// How a crew gets in.
struct Entry {
    Field<std::string> door;
    Field<std::string> stairs;
    Field<std::string> lift;
    Field<Length> narrowest_width;
    Field<std::string> parking;
    Field<std::string> note;
    Field<std::string> key_access;

    void describe(Visitor& visitor);
};

/// Where the person sleeps.
struct BedLocation {
    Field<std::string> floor;
    Field<std::string> room;
    Field<std::string> window_side;

    void describe(Visitor& visitor);
};

/// A flame, and the room it burns in.
struct Flame {
    Field<std::string> what;
    Field<std::string> room;

    void describe(Visitor& visitor);
};

/// Fire near oxygen.
struct Hazards {
    Field<bool> smoker;
    List<Flame> flames;
    Field<TextList> oxygen_rooms;

    void describe(Visitor& visitor);
};

/// Another place where the person spends time.
struct Site {
    Field<std::string> name;
    Field<std::string> phone;
    Field<bool> needs_copies;

    void describe(Visitor& visitor);
};

/// The sheet of paper that the printer at hand takes.
enum class PaperSize : std::uint8_t { letter, a4 };
template <>
struct Words<PaperSize> {
    static constexpr std::array<std::string_view, 2> words{"letter", "a4"};
};

enum class DateOrder : std::uint8_t { day_month_year, month_day_year };
template <>
struct Words<DateOrder> {
    static constexpr std::array<std::string_view, 2> words{"day_month_year", "month_day_year"};
};

enum class DecimalSign : std::uint8_t { point, comma };
template <>
struct Words<DecimalSign> {
    static constexpr std::array<std::string_view, 2> words{"point", "comma"};
};

/// The home. Address and ways in never stand on a wall or in a wallet.
struct Home {
    Field<std::string> address;
    Field<std::string> cross_street;
    Field<std::string> directions;
    Field<std::string> map_point;
    Group<Entry> entry;
    Group<BedLocation> bed_location;
    Field<std::string> pets;
    Field<std::string> weapons_secured;
    Field<std::string> others_needing_help;
    Group<Hazards> hazards;
    List<Site> other_sites;
    Field<std::string> dispatch_number;
    // How the papers are written, where the home does not follow the ways of the usual region.
    Field<std::string> region;
    Field<PaperSize> paper;
    Field<DateOrder> date_order;
    Field<DecimalSign> decimal_sign;

    void describe(Visitor& visitor);
};

/// How the person leaves.
struct Evacuation {
    Field<std::string> people_needed;
    Field<std::string> carried_by;
    Field<std::string> vehicle;
    Field<std::string> shelter_near;
    Field<std::string> shelter_far;
    Field<Duration> travel_time;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
