#pragma once

#include <string>

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
