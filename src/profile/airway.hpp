#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Whether air can pass from the mouth to the lungs.
enum class UpperAirway : std::uint8_t { open, open_but_difficult, blocked, laryngectomy };
template <>
struct Words<UpperAirway> {
    static constexpr std::array<std::string_view, 4> words{"open", "open_but_difficult", "blocked", "laryngectomy"};
};

/// What fills the cuff of a neck tube; `none` is an answer too.
enum class Cuff : std::uint8_t { air, water, foam };
template <>
struct Words<Cuff> {
    static constexpr std::array<std::string_view, 3> words{"air", "water", "foam"};
};

/// When the cuff is filled.
enum class CuffUp : std::uint8_t { day_and_night, night_only, day_only, never };
template <>
struct Words<CuffUp> {
    static constexpr std::array<std::string_view, 4> words{"day_and_night", "night_only", "day_only", "never"};
};

/// The tube inside the neck tube; `none` is an answer too.
enum class InnerTube : std::uint8_t { reusable, disposable };
template <>
struct Words<InnerTube> {
    static constexpr std::array<std::string_view, 2> words{"reusable", "disposable"};
};

/// Waking hours, sleeping hours or both.
enum class WakingState : std::uint8_t { awake, asleep, both };
template <>
struct Words<WakingState> {
    static constexpr std::array<std::string_view, 3> words{"awake", "asleep", "both"};
};

/// A neck tube kept ready.
struct SpareTube {
    Field<Length> size;
    Field<std::string> location;
    Field<Date> expires;

    void describe(Visitor& visitor);
};

/// How the cuff is filled. Usual: 20 to 30 cmH2O; the volume on the label of the tube.
struct CuffOrder {
    Field<Pressure> pressure;
    Field<Volume> volume;
    Field<CuffUp> up;
    Field<std::string> note;

    void describe(Visitor& visitor);
};

/// A one-way valve: air goes in, and must leave past the tube. With a filled cuff nobody can breathe out.
struct SpeakingValve {
    Field<bool> allowed;
    Field<WakingState> state;
    Field<std::string> when;
    Field<Duration> longest_time;
    Field<bool> supervised;
    Field<bool> in_line;
    Field<bool> cuff_flat_first;
    Field<bool> exchanger_off;
    Field<std::string> own_settings;

    void describe(Visitor& visitor);
};

/// A plug that closes the neck tube.
struct Cap {
    Field<bool> allowed;
    Field<WakingState> state;
    Field<std::string> when;

    void describe(Visitor& visitor);
};

/// A tube through the neck into the windpipe (tracheostomy tube). Sizes keep their zeros, as on the box.
struct NeckTube {
    Field<Length> inner_diameter;
    Field<bool> measured_with_inner_tube;
    Field<Length> inner_tube_diameter;
    Field<Length> outer_diameter;
    Field<Length> length;
    Field<std::string> style;
    Field<Cuff> cuff;
    Group<CuffOrder> cuff_order;
    Field<InnerTube> inner_tube;
    Field<bool> inner_tube_needed_for_bag;
    Field<bool> inner_tube_fenestrated;
    Field<bool> fenestrated;

    Field<Date> opening_made_on;
    Field<bool> opening_healed;
    Field<Date> last_changed;
    Field<Interval> change_interval;
    Field<std::string> changed_by;
    Group<SpareTube> spare_same;
    Group<SpareTube> spare_smaller;
    Group<SpeakingValve> speaking_valve;
    Group<Cap> cap;

    void describe(Visitor& visitor);

  private:
    void describe_opening_and_care(Visitor& visitor);
};

/// The way the breath takes.
struct Airway {
    Field<UpperAirway> upper;
    Field<std::string> upper_note;
    Group<NeckTube> neck_tube;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
