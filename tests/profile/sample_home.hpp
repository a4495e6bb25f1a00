#pragma once

#include <array>
#include <string>
#include <vector>

#include "profile/read_described.hpp"

/// A small profile with one field of each kind, so that a test of the reader does not depend on the dictionary.
namespace sample {

using namespace ventfolio;

enum class Humidity { heated, exchanger, none };
enum class Position { lying, half_sitting };

struct Alarms {
    Field<Pressure> high_pressure;
    Field<Pressure> low_pressure;
    Field<BreathRate> low_rate;

    void describe(Visitor& visitor) {
        visitor.leaf({.key = "high_pressure",
                      .help = "alarm when the pressure is above",
                      .units = "cmH2O hPa",
                      .least = 5,
                      .most = 100,
                      .off = true,
                      .setting = true,
                      .example = "31 cmH2O"},
                     high_pressure);
        visitor.leaf({.key = "low_pressure", .units = "cmH2O hPa", .least = 0, .most = 60, .off = true}, low_pressure);
        visitor.leaf({.key = "low_rate", .units = "breaths/min", .off = true}, low_rate);
    }
};

struct Contact {
    Field<std::string> name;
    Field<std::string> phone;

    void describe(Visitor& visitor) {
        visitor.leaf({.key = "name", .grade = Grade::expected, .help = "full name"}, name);
        visitor.leaf({.key = "phone",
                      .grade = Grade::essential,
                      .help = "number to dial",
                      .shape = TextShape::phone,
                      .example = "555-0101"},
                     phone);
    }
};

struct Home {
    Field<std::string> record_number;
    Field<std::string> room;
    Field<Date> last_visit;
    Field<Moment> effective_at;
    Field<ClockSpan> night;
    Field<Interval> tube_change;
    Field<Revision> revision;
    Field<Mass> weight;
    Field<Volume> tidal_volume;
    Field<Temperature> humidifier;
    Field<Fraction> oxygen_level;
    Field<Range<Dimension::flow>> leak;
    Field<Humidity> humidity;
    Field<Position> position;
    Field<bool> stairs;
    Field<TextList> allergies;
    Field<std::string> slot;
    Group<Alarms> alarms;
    List<Contact> contacts;

    void describe(Visitor& visitor);
};

}  // namespace sample

template <>
struct ventfolio::Words<sample::Humidity> {
    static constexpr std::array<std::string_view, 3> words{"heated", "exchanger", "none"};
};
template <>
struct ventfolio::Words<sample::Position> {
    static constexpr std::array<std::string_view, 2> words{"lying", "half_sitting"};
};

inline void sample::Home::describe(Visitor& visitor) {
    visitor.leaf({.key = "record_number", .shape = TextShape::record_number, .example = "DEMO-1"}, record_number);
    visitor.leaf({.key = "room", .none = true, .longest = 20}, room);
    visitor.leaf({.key = "last_visit"}, last_visit);
    visitor.leaf({.key = "effective_at"}, effective_at);
    visitor.leaf({.key = "night"}, night);
    visitor.leaf({.key = "tube_change"}, tube_change);
    visitor.leaf({.key = "revision"}, revision);
    visitor.leaf({.key = "weight", .units = "kg g lb", .least = 0.5, .most = 350}, weight);
    visitor.leaf({.key = "tidal_volume", .units = "mL L", .least = 10, .most = 2500}, tidal_volume);
    visitor.leaf({.key = "humidifier", .least = 25, .most = 41}, humidifier);
    visitor.leaf({.key = "oxygen_level"}, oxygen_level);
    visitor.leaf({.key = "leak", .units = "L/min", .example = "{from: 20 L/min, to: 30 L/min}"}, leak);
    visitor.leaf({.key = "humidity"}, humidity);
    visitor.leaf({.key = "position"}, position);
    visitor.leaf({.key = "stairs"}, stairs);
    visitor.leaf({.key = "allergies", .none = true}, allergies);
    visitor.leaf({.key = "slot", .shape = TextShape::identifier}, slot);
    visitor.group({.key = "alarms"}, alarms);
    visitor.list({.key = "contacts", .none = true}, contacts);
}

namespace sample {

struct Read {
    Home home;
    std::vector<Finding> findings;
};

inline Read read(std::string yaml) {
    Read read;
    read.findings = read_into(read.home, {"home.yaml", std::move(yaml)});
    return read;
}

/// "unit-missing 3:12", one for each finding.
inline std::vector<std::string> names_and_places(const std::vector<Finding>& findings) {
    std::vector<std::string> lines;
    for (const Finding& finding : findings) {
        const Place& place = finding.marks.front().place;
        lines.push_back(finding.rule + " " + std::to_string(place.line) + ":" + std::to_string(place.column));
    }
    return lines;
}

}  // namespace sample
