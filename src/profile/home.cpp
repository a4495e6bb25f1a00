#include "profile/home.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Entry::describe(Visitor& visitor) {
    visitor.leaf({.key = "door", .grade = Grade::expected, .on = folder | crew | fire, .help = "which door to use",
                  .ask = "family", .longest = 80, .example = "rear door, by the ramp"}, door);
    visitor.leaf({.key = "stairs", .grade = Grade::expected, .on = folder | crew | fire, .help = "stairs on the way",
                  .ask = "family", .none = true, .longest = 80, .example = "8 steps to the front door"}, stairs);
    visitor.leaf({.key = "lift", .on = wall | folder | crew | fire, .help = "lift, and whether it works without power",
                  .ask = "family", .none = true, .longest = 80, .example = "stops in an outage"}, lift);
    visitor.leaf({.key = "narrowest_width", .on = folder | crew | fire, .help = "narrowest place for a stretcher",
                  .units = "cm in m", .least = 30, .most = 400, .ask = "family", .example = "86 cm"}, narrowest_width);
    visitor.leaf({.key = "parking", .on = folder | crew | fire, .help = "where a crew can park", .longest = 80,
                  .example = "alley behind the house"}, parking);
    visitor.leaf({.key = "note", .on = folder | crew | fire, .help = "turns and other obstacles; never a code",
                  .longest = 120, .example = "tight turn at the bedroom door"}, note);
    visitor.leaf({.key = "key_access", .help = "how a crew gets a key: by phone to dispatch only; never printed",
                  .longest = 120, .example = "by phone to dispatch only"}, key_access);
}

void BedLocation::describe(Visitor& visitor) {
    visitor.leaf({.key = "floor", .grade = Grade::essential, .on = folder | crew | fire, .help = "floor",
                  .ask = "family", .longest = 40, .example = "ground floor"}, floor);
    visitor.leaf({.key = "room", .grade = Grade::essential, .on = folder | crew | fire, .help = "room",
                  .ask = "family", .longest = 60, .example = "rear left bedroom"}, room);
    visitor.leaf({.key = "window_side", .on = folder | crew | fire, .help = "which side the window is on",
                  .longest = 60, .example = "window to the garden"}, window_side);
}

void Flame::describe(Visitor& visitor) {
    visitor.leaf({.key = "what", .grade = Grade::essential, .on = wall | folder | fire, .help = "what burns",
                  .longest = 60, .example = "gas stove"}, what);
    visitor.leaf({.key = "room", .grade = Grade::essential, .on = wall | folder | fire, .help = "in which room",
                  .longest = 40, .example = "kitchen"}, room);
}

void Hazards::describe(Visitor& visitor) {
    visitor.leaf({.key = "smoker", .grade = Grade::expected, .on = folder, .help = "somebody smokes in the home",
                  .ask = "family", .example = "false"}, smoker);
    visitor.list({.key = "flames", .grade = Grade::expected, .help = "stoves, fireplaces, candles", .ask = "family",
                  .none = true}, flames);
    visitor.leaf({.key = "oxygen_rooms", .grade = Grade::expected, .on = wall | folder | crew | fire,
                  .help = "rooms where oxygen is used or stored; none", .ask = "family", .none = true,
                  .example = "[bedroom]"}, oxygen_rooms);
}

void Site::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = folder | fire, .help = "what it is", .longest = 80,
                  .example = "Tamarack Day Program"}, name);
    visitor.leaf({.key = "phone", .on = folder, .help = "phone number", .shape = TextShape::phone,
                  .example = "555-0177"}, phone);
    visitor.leaf({.key = "needs_copies", .on = folder, .help = "papers are kept there too",
                  .example = "true"}, needs_copies);
}

void Home::describe(Visitor& visitor) {
    visitor.leaf({.key = "address", .grade = Grade::essential, .on = folder | crew | utility | fire,
                  .help = "street, number and town", .ask = "family", .longest = 160,
                  .example = "12 Millrace Row, Apt 5, Anyford 00000"}, address);
    visitor.leaf({.key = "cross_street", .on = folder | crew | fire, .help = "nearest crossing", .longest = 80,
                  .example = "at Cooper Bend Road"}, cross_street);
    visitor.leaf({.key = "directions", .on = folder | crew | fire, .help = "how to find it",
                  .example = "second gate after the mill"}, directions);
    visitor.leaf({.key = "map_point", .on = folder | crew | fire, .help = "latitude and longitude", .longest = 40,
                  .example = "45.10 N, 93.20 W"}, map_point);
    visitor.group({.key = "entry", .grade = Grade::expected, .help = "how a crew gets in", .ask = "family"}, entry);
    visitor.group({.key = "bed_location", .grade = Grade::expected, .help = "where the person sleeps",
                   .ask = "family"}, bed_location);
    visitor.leaf({.key = "pets", .on = folder | fire, .help = "pets", .none = true, .longest = 80,
                  .example = "one dog, shy"}, pets);
    visitor.leaf({.key = "weapons_secured", .help = "whether weapons are locked up; never printed", .longest = 80,
                  .example = "locked safe"}, weapons_secured);
    visitor.leaf({.key = "others_needing_help", .help = "other people in the home who need help; never printed",
                  .longest = 120, .example = "grandmother, walks with a frame"}, others_needing_help);
    visitor.group({.key = "hazards", .help = "fire near oxygen", .ask = "family"}, hazards);
    visitor.list({.key = "other_sites", .help = "school, work, day program", .none = true}, other_sites);
    visitor.leaf({.key = "dispatch_number", .on = folder | fire,
                  .help = "number under which dispatch knows this address", .longest = 40,
                  .example = "LF-0418"}, dispatch_number);
    visitor.leaf({.key = "region", .help = "region whose emergency number, paper and dates the papers have; never printed",
                  .shape = TextShape::identifier, .longest = 20, .example = "us"}, region);
    visitor.leaf({.key = "paper", .help = "size of the paper, if not that of the region; never printed",
                  .example = "a4"}, paper);
    visitor.leaf({.key = "date_order", .help = "how dates are written, if not as in the region; never printed",
                  .example = "day_month_year"}, date_order);
    visitor.leaf({.key = "decimal_sign", .help = "sign before decimals, if not that of the region; never printed",
                  .example = "point"}, decimal_sign);
}

void Evacuation::describe(Visitor& visitor) {
    visitor.leaf({.key = "people_needed", .grade = Grade::essential, .on = wall | folder | crew | fire,
                  .help = "how many people it takes, and for what", .ask = "family", .longest = 80,
                  .example = "3 people"}, people_needed);
    visitor.leaf({.key = "carried_by", .grade = Grade::expected, .on = wall | folder | crew | fire,
                  .help = "sling, chair or sled, and its weight", .ask = "family", .longest = 80,
                  .example = "sling and powered chair, 140 kg"}, carried_by);
    visitor.leaf({.key = "vehicle", .grade = Grade::expected, .on = wall | folder,
                  .help = "vehicle that can take person and machine", .ask = "family", .longest = 80,
                  .example = "van with ramp"}, vehicle);
    visitor.leaf({.key = "shelter_near", .grade = Grade::expected, .on = wall | folder,
                  .help = "a near place with power", .ask = "family", .longest = 120,
                  .example = "Larkmoor Falls General"}, shelter_near);
    visitor.leaf({.key = "shelter_far", .grade = Grade::expected, .on = wall | folder,
                  .help = "a place out of the storm or fire area", .ask = "family", .longest = 120,
                  .example = "aunt Niamh in Corvane"}, shelter_far);
    visitor.leaf({.key = "travel_time", .grade = Grade::essential, .on = wall | folder,
                  .help = "time to the place with power", .units = "min h", .least = 0, .most = 1440, .ask = "family",
                  .example = "25 min"}, travel_time);
}

}  // namespace ventfolio
