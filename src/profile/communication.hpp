#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// The picture beside a signal.
enum class SignalPicture : std::uint8_t {
    eyes_up,
    eyes_down,
    eyes_left,
    eyes_right,
    blink,
    nod,
    shake_head,
    hand,
    switch_press,
    board,
    speech
};
template <>
struct Words<SignalPicture> {
    static constexpr std::array<std::string_view, 11> words{"eyes_up",      "eyes_down", "eyes_left",  "eyes_right",
                                                            "blink",        "nod",       "shake_head", "hand",
                                                            "switch_press", "board",     "speech"};
};

/// How the person says something.
struct Signal {
    Field<std::string> how;
    Field<SignalPicture> picture;

    void describe(Visitor& visitor);
};

/// A device to talk with.
struct CommunicationDevice {
    Field<std::string> what;
    Field<std::string> power;
    Field<std::string> location;
    Field<std::string> mount;
    Field<std::string> backup;

    void describe(Visitor& visitor);
};

/// How to talk with this person. Keys avoid the words that some tools read as true and false.
struct Communication {
    Group<Signal> signal_for_yes;
    Group<Signal> signal_for_no;
    Group<Signal> signal_for_help;
    Group<Signal> signal_for_pain;
    Field<TextList> methods;
    Field<std::string> understands;
    Group<CommunicationDevice> device;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
