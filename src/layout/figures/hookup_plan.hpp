#pragma once

#include <optional>
#include <span>
#include <vector>

#include "layout/drawing.hpp"
#include "layout/figures/hookup_parts.hpp"

/// Where everything of a hook-up stands, before a line of it is drawn. All lengths are millimetres, from the top left
/// corner of the drawing, y downwards.
namespace ventfolio {

struct HookupSize {
    double width = 0;
    double height = 0;
};

/// A list of parts to be drawn, in the order in which they are built.
struct HookupOrder {
    std::span<const HookupPart> parts;
    Posture posture = Posture::lying;
    double width = 176;        ///< that the drawing may take
    double disc = 7.6;         ///< width of a numbered disc
    HookupSize pressure_name;  ///< of the words at the ends of the pressure line
    HookupSize valve_name;     ///< the same of the valve line
};

/// A hose, a line or a cord: from corner to corner, rounded there.
struct HookupPipe {
    enum class Look { hose, heated_hose, oxygen, pressure_line, valve_line, cord };
    Look look = Look::hose;
    std::vector<Point> corners;
    std::size_t place = 0;  ///< of the part in the list

    double width() const;  ///< outer
};

/// A part, in a box that it fills.
struct HookupPiece {
    HookupPart part{};
    double left = 0;
    double top = 0;
    double width = 0;
    double height = 0;
    std::size_t place = 0;
};

/// What parts stand on, and who they are for.
struct HookupScenery {
    enum class Kind { table, tray, bed, seat, wheelchair, person_lying, person_seated };
    Kind kind = Kind::table;
    double left = 0;
    double top = 0;
    double width = 0;
    double height = 0;
};

struct HookupDisc {
    Point centre;
    std::size_t place = 0;
};

/// Room for the name of a line beside one of its ends.
struct HookupName {
    double left = 0;
    double top = 0;
    double width = 0;
    double height = 0;
    bool right_aligned = false;
    std::size_t place = 0;
};

struct HookupPlan {
    double width = 0;
    double height = 0;
    double needed_width = 0;  ///< if that is more than `width`, it is too wide to be drawn
    double disc = 0;          ///< width of a disc
    std::vector<HookupScenery> scenery;
    std::vector<HookupPipe> pipes;  ///< hoses first; the small lines lie over everything
    std::vector<HookupPiece> pieces;
    std::vector<HookupDisc> discs;  ///< one for each part of the list
    std::vector<HookupName> names;
};

/// Places a list of parts without a fault (see fault_in): machine left, person right, the humidifier on the floor
/// between them and lower than the person; absent parts close up. Hoses run level or upright. What runs back from the
/// person nests over the hose, the outer one there being the outer one at the machine, so that nothing crosses.
HookupPlan plan_hookup(const HookupOrder& order);

}  // namespace ventfolio
