#include "layout/figures/hookup_plan.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

using enum HookupPart;

constexpr double kHose = 5.2;
constexpr double kHoseRadius = 5;
constexpr double kPressureLine = 2.6;
constexpr double kValveLine = 1.0;
constexpr double kOxygen = 1.5;
constexpr double kCord = 1.0;
constexpr double kRing = 0.8;  ///< white round a disc

// Heights above the floor.
constexpr double kTable = 38;
constexpr double kOutlet = kTable + 7;
constexpr double kHumidifierTop = 26.5;
constexpr double kTrapLow = 14;
constexpr double kBed = 27;
constexpr double kSocket = 22;

constexpr double kMachineWidth = 28;
constexpr double kPressurePort = 8;  ///< of the small lines, from its left side
constexpr double kValvePort = 13;
constexpr double kNameGap = 2.3;  ///< between the pressure line and its name
constexpr double kSourceWidth = 16;
constexpr double kSourceHeight = 34;

/// Half the width of a part at the person's end, where its disc touches it.
double half_width(HookupPart part) {
    if (part == moisture_exchanger) return 6;
    if (part == person_filter) return 5.5;
    return 4.5;
}

class Planner {
  public:
    explicit Planner(const HookupOrder& order) : order_{order}, r_{order.disc / 2}, ring_{r_ + kRing} {}

    HookupPlan plan() {
        plan_.disc = order_.disc;
        place_columns();
        place_loops();
        place_levels();
        add_scenery();
        add_source();
        add_machine();
        add_humidifier();
        add_person_end();
        add_main_hose();
        add_return();
        add_oxygen();
        add_small_lines();
        finish();
        return std::move(plan_);
    }

  private:
    bool has(HookupPart part) const { return std::ranges::find(order_.parts, part) != order_.parts.end(); }
    std::size_t place(HookupPart part) const {
        return static_cast<std::size_t>(std::ranges::find(order_.parts, part) - order_.parts.begin());
    }
    bool has_source() const { return std::ranges::any_of(order_.parts, is_oxygen_source); }
    bool lying() const { return order_.posture == Posture::lying; }
    bool on_mask() const { return has(mask) || has(vented_mask); }
    bool returns() const { return has(y_piece); }
    /// The ventilator rides on the chair.
    bool rides() const { return order_.posture == Posture::in_chair && !has(humidifier); }
    HookupPart main_hose() const { return has(heated_hose) ? heated_hose : hose; }
    double pitch() const { return std::max(9.2, order_.disc + 1.6); }
    double slot(HookupPart part) const { return pitch() + (part == y_piece ? 5 : 0); }
    double base_height() const { return order_.disc + 1.6; }
    bool to_face() const { return !has(neck_tube); }
    /// Where the hose meets the person, above the floor.
    double interface_level() const { return lying() ? kBed + (to_face() ? 13 : 12) : to_face() ? 57 : 50; }
    /// From there to the parts above, so far that the discs of both have room.
    double interface_height() const {
        if (lying()) return std::max(to_face() ? 7.0 : 9.0, 2 * (order_.disc + 0.9) - pitch());
        return std::max(to_face() ? 9.0 : 5.0, 2 * (order_.disc - 0.9) - pitch());
    }

    void place_columns();
    void place_person_columns(double riser_clear);
    void place_lines();
    void place_loops();
    void place_levels();
    void add_scenery();
    void add_source();
    void add_machine();
    void add_inside_machine();
    void add_outlet();
    void add_humidifier();
    void add_person_end();
    void add_interface();
    void add_main_hose();
    void add_return();
    void add_oxygen();
    void add_small_lines();
    void finish();

    void disc(double x, double y, std::size_t place) { plan_.discs.push_back({{x, y}, place}); }
    void piece(HookupPart part, double left, double top, double width, double height) {
        plan_.pieces.push_back({part, left, top, width, height, place(part)});
    }
    void scenery(HookupScenery::Kind kind, double left, double top, double width, double height) {
        plan_.scenery.push_back({kind, left, top, width, height});
    }

    const HookupOrder& order_;
    double r_;
    double ring_;
    HookupPlan plan_;

    // Columns.
    double machine_ = 0;
    double machine_right_ = 0;
    double filter_ = 0;   ///< centre of the filter at the outlet
    double adapter_ = 0;  ///< centre of the oxygen adapter at the outlet
    double bend_ = 0;     ///< where the hose from the outlet turns
    double return_ = 0;   ///< where the return hose turns to the machine
    double return_dip_ = 0;
    double humidifier_out_ = 0;
    double riser_ = 0;  ///< the hose to the person goes up here
    double chain_ = 0;  ///< the parts at the person's end
    double head_ = 0;
    double inner_line_ = 0;
    double outer_line_ = 0;
    double oxygen_down_ = 0;
    bool names_at_valve_ = false;

    // Levels.
    double oxygen_loop_ = 0;
    double pressure_loop_ = 0;
    double valve_loop_ = 0;
    double return_loop_ = 0;
    double main_loop_ = 0;
    double floor_ = 0;
    double machine_top_ = 0;
    double machine_height_ = 28;
    double return_port_ = 0;
    double chain_bottom_ = 0;
    double chain_top_ = 0;
};

// --- Columns, from the left

void Planner::place_columns() {
    const double left = has_source() ? kSourceWidth + 5 : 0;
    machine_ = std::max(left + (has(wall_power) || has_source() ? 4 : 1), ring_);
    // The pressure line has its name on its left.
    if (has(exhalation_valve) && !has(oxygen_to_mask))
        machine_ = std::max(machine_, order_.pressure_name.width + kNameGap - kPressurePort);
    machine_right_ = machine_ + kMachineWidth;
    double x = machine_right_ + 3;
    if (has(outlet_filter)) {
        filter_ = x + 4.5;
        x += 9;
    }
    if (has(oxygen_to_outlet)) {
        adapter_ = x + 3;
        x += 6;
    }
    bend_ = std::max(x + 6, has(outlet_filter) ? filter_ + order_.disc + 0.6 : 0);
    double clear = 0;  // the hose to the person goes up right of it
    if (returns()) {
        return_ = machine_right_ + (has(return_filter) ? 17 : 7);
        return_dip_ = return_ + 12;
        const double right = has(return_trap) ? return_ + 6 + 4 + order_.disc + kRing : return_ + kHose / 2;
        clear = right + std::max(kHose / 2 + 1.6, r_ + 0.6);
    }
    if (has(exhalation_valve))
        clear = machine_ + kValvePort + 1.6 + order_.valve_name.width + std::max(1 + kHose / 2, r_ + 0.6);
    if (has(humidifier)) {
        humidifier_out_ = std::max(bend_ + 13, clear);
        riser_ = humidifier_out_ + (has(water_trap) ? 22 : 0);
    } else {
        riser_ = std::max(bend_ + (has(water_trap) ? 11 : 0), clear);
    }
    place_person_columns(riser_ + std::max(0.0, order_.disc - 7.6));
    place_lines();
}

void Planner::place_person_columns(double clear) {
    if (lying()) {
        chain_ = clear + 25;
        head_ = on_mask() || has(mouthpiece) ? chain_ : chain_ - 11;
        return;
    }
    const double low = has(water_trap) ? 42 : has(humidifier) ? 43 : 41;
    chain_ = clear + (order_.posture == Posture::in_chair ? low : low - 2);
    head_ = chain_ - 21;
}

/// The small lines, and oxygen to a mask, come down right of the parts at the person's end.
void Planner::place_lines() {
    double right = chain_ + 6 + order_.disc + 1.6;  // of the discs
    if (has(exhalation_valve)) {
        // One name above the upper line, inside the loop; the other below the lower line, right of the discs.
        const double named = std::max(right + 1, chain_ + 4.5 + order_.valve_name.width + 2);
        const double all = std::max(named + 4.5 + kPressureLine / 2, right + 1 + order_.pressure_name.width);
        names_at_valve_ = !has(oxygen_to_mask) && all <= order_.width;
        inner_line_ = names_at_valve_ ? named : right + 1;
        outer_line_ = inner_line_ + 4.5;
        right = names_at_valve_ ? all : outer_line_ + kPressureLine / 2;
    }
    if (has(oxygen_to_mask)) {
        oxygen_down_ = right + 2.5;
        right = oxygen_down_ + kOxygen;
    }
    const double person_right = lying() ? std::clamp(order_.width, chain_ + 20, chain_ + 38) : chain_ + 8;
    plan_.width = order_.width;
    plan_.needed_width = std::max(right, person_right);
}

// --- Levels

/// What runs over the top, the outermost first, far enough apart for the discs on it.
void Planner::place_loops() {
    double edge = 0.4;       // of the loop above, half its width
    double disc_edge = 0.4;  // of the disc on it
    const auto next = [&](double width, bool with_disc) {
        const double half = width / 2;
        const double reach = with_disc ? std::max(half, ring_) : half;
        const double y = std::max(edge + reach, disc_edge + half) + 0.6;
        edge = y + half;
        disc_edge = y + reach;
        return y;
    };
    if (has(oxygen_to_mask)) oxygen_loop_ = next(kOxygen, false);
    if (has(exhalation_valve)) {
        pressure_loop_ = next(kPressureLine, true);
        valve_loop_ = next(kValveLine, true);
    }
    if (returns()) return_loop_ = next(kHose, true);
    main_loop_ = next(kHose, false);
}

/// The drawing is as tall as its tallest part needs.
void Planner::place_levels() {
    machine_height_ = has(return_trap) ? 37 : 28;
    double parts = 0;
    for (const HookupPart part : order_.parts)
        if (is_at_person(part)) parts += slot(part);
    const double base = interface_level() + interface_height();
    double machine_top = ring_ + 0.4 + (has(oxygen_to_mask) ? oxygen_loop_ + kOxygen / 2 : 0);
    if (has(exhalation_valve)) {
        machine_top = std::max(machine_top, valve_loop_ + 1.5 + order_.valve_name.height + 1.5);
        machine_top = std::max(machine_top, pressure_loop_ + 2 + order_.pressure_name.height + 1.5);
    }
    if (returns()) {
        const double port = return_loop_ + (has(return_filter) ? std::max(10.0, kHose / 2 + order_.disc + 5.6) : 10.0);
        machine_top = std::max(machine_top, port - 5);
    }
    const double above_bend = 2 * kHoseRadius + 2;
    floor_ = std::max({machine_top + machine_height_ + kTable, main_loop_ + kHoseRadius + 3 + parts + base,
                       main_loop_ + above_bend + kOutlet, oxygen_loop_ + 10 + kSourceHeight});
    machine_top_ = floor_ - kTable - machine_height_;
    return_port_ = machine_top_ + 5;
    chain_bottom_ = floor_ - base;
    chain_top_ = chain_bottom_ - parts;
    plan_.height = floor_;
}

// --- What is there

void Planner::add_scenery() {
    using Kind = HookupScenery::Kind;
    const double table = floor_ - kTable;
    if (rides())
        scenery(Kind::tray, machine_ - 2, table, chain_ - 31 - (machine_ - 2), 1.4);
    else
        scenery(Kind::table, machine_ - 2, table, kMachineWidth + 4, kTable);
    if (lying()) {
        const double left = head_ - 9;
        const double right = std::clamp(order_.width - 0.5, chain_ + 20, chain_ + 38);
        scenery(Kind::bed, left, floor_ - kBed, right - left, kBed);
        scenery(Kind::person_lying, head_ - 6.5, floor_ - kBed - 15, right - 2 - (head_ - 6.5), 15);
        return;
    }
    scenery(order_.posture == Posture::in_chair ? Kind::wheelchair : Kind::seat, head_ - 16, floor_ - 54, 38, 54);
    scenery(Kind::person_seated, head_ - 9, floor_ - 65, 31, 65);
}

void Planner::add_source() {
    for (const HookupPart part : order_.parts) {
        if (!is_oxygen_source(part)) continue;
        piece(part, 0.5, floor_ - kSourceHeight, kSourceWidth - 1, kSourceHeight - 0.5);
        disc(kSourceWidth / 2, floor_ - 3 - r_, place(part));
    }
}

void Planner::add_machine() {
    piece(ventilator, machine_, machine_top_, kMachineWidth, machine_height_);
    disc(machine_, machine_top_, place(ventilator));
    add_inside_machine();
    if (has(wall_power)) {
        HookupPipe cord{HookupPipe::Look::cord, {}, place(wall_power)};
        const double x = machine_ - 3;
        const double y = floor_ - kTable - 4;
        cord.corners = {{machine_, y}, {x, y}, {x, floor_ - kSocket}, {machine_ + 7, floor_ - kSocket}};
        plan_.pipes.push_back(cord);
        piece(wall_power, machine_ + 7, floor_ - kSocket - 5, 7, 10);
        disc(machine_ + 14 + r_ - 0.4, floor_ - kSocket, place(wall_power));
    }
    add_outlet();
}

/// The part of the front that is free holds what is built in.
void Planner::add_inside_machine() {
    const double low = machine_top_ + machine_height_ - 2;
    if (has(air_filter)) {
        piece(air_filter, machine_ + 2, low - 8.5, 6.5, 8.5);
        disc(machine_ + 9 + r_, low - r_ - 0.4, place(air_filter));
    }
    if (has(built_in_humidifier)) {
        piece(built_in_humidifier, machine_right_ - 9, low - 9, 9, 9);
        disc(machine_right_ - 1 - r_, machine_top_ + 3 + r_, place(built_in_humidifier));
    }
}

void Planner::add_outlet() {
    const double y = floor_ - kOutlet;
    if (has(outlet_filter)) {
        piece(outlet_filter, filter_ - 3.5, y - 4.4, 7, 8.8);
        disc(filter_, y - 4.4 - r_ + kRing, place(outlet_filter));
    }
    if (!has(humidifier)) return;
    HookupPipe pipe{HookupPipe::Look::hose, {}, place(short_hose)};
    pipe.corners = {{machine_right_, y}, {bend_, y}, {bend_, floor_ - kHumidifierTop}};
    plan_.pipes.push_back(pipe);
    disc(bend_, floor_ - kHumidifierTop - r_ - 3, place(short_hose));
}

void Planner::add_humidifier() {
    if (!has(humidifier)) return;
    piece(humidifier, bend_ - 8, floor_ - kHumidifierTop, humidifier_out_ - bend_ + 16, kHumidifierTop);
    disc((bend_ + humidifier_out_) / 2, floor_ - base_height() / 2, place(humidifier));
}

void Planner::add_person_end() {
    double bottom = chain_top_;
    for (const HookupPart part : order_.parts) {
        if (!is_at_person(part)) continue;
        const double top = bottom;
        bottom += slot(part);
        const double half = half_width(part);
        piece(part, chain_ - half, top, 2 * half, bottom - top);
        // The lines of a valve leave on its right.
        const double off = half + r_ - 0.2;
        const double y = part == y_piece ? bottom - pitch() / 2 : (top + bottom) / 2;
        disc(part == exhalation_valve ? chain_ - off : chain_ + off, y, place(part));
    }
    add_interface();
}

void Planner::add_interface() {
    const auto found = std::ranges::find_if(order_.parts, is_interface);
    const double low = floor_ - interface_level();
    if (lying()) {
        piece(*found, chain_ - 4.5, chain_bottom_, 9, low - chain_bottom_);
        const double side = has(oxygen_to_mask) ? -1 : 1;
        disc(chain_ + side * (4.5 + r_ - 0.2), chain_bottom_ + (low - chain_bottom_) / 2 - 0.4, place(*found));
        return;
    }
    // From neck or face level to the right, then up.
    const double left = head_ + (to_face() ? 5.5 : 3);
    piece(*found, left, chain_bottom_, chain_ + 2.2 - left, low + 2.2 - chain_bottom_);
    disc(chain_ + 2.8 + r_, (chain_bottom_ + low) / 2 + 1.4, place(*found));
}

void Planner::add_main_hose() {
    HookupPipe pipe{
        main_hose() == heated_hose ? HookupPipe::Look::heated_hose : HookupPipe::Look::hose, {}, place(main_hose())};
    const double low = floor_ - kTrapLow;
    if (has(humidifier)) {
        pipe.corners = {{humidifier_out_, floor_ - kHumidifierTop}};
        if (has(water_trap)) {
            const double over = floor_ - kHumidifierTop - kHoseRadius - kHose / 2 - 1;
            pipe.corners.insert(
                pipe.corners.end(),
                {{humidifier_out_, over}, {humidifier_out_ + 11, over}, {humidifier_out_ + 11, low}, {riser_, low}});
        }
    } else {
        const double y = floor_ - kOutlet;
        pipe.corners = {{machine_right_, y}};
        if (has(water_trap))
            pipe.corners.insert(pipe.corners.end(), {{bend_, y}, {bend_, low}, {riser_, low}});
        else
            pipe.corners.push_back({riser_, y});
    }
    if (has(water_trap)) {
        const double centre = has(humidifier) ? riser_ - 5.5 : (bend_ + riser_) / 2;
        piece(water_trap, centre - 4, low + kHose / 2 - 0.6, 8, 9.5);
        disc(centre + 4 + r_, low + 7.5, place(water_trap));
    }
    const double end = returns() ? chain_ - 5 : chain_;
    pipe.corners.insert(pipe.corners.end(), {{riser_, main_loop_}, {end, main_loop_}, {end, chain_top_}});
    const double from = has(water_trap) ? low : has(humidifier) ? floor_ - kHumidifierTop : floor_ - kOutlet;
    disc(riser_, (from + main_loop_) / 2, pipe.place);
    plan_.pipes.push_back(std::move(pipe));
}

void Planner::add_return() {
    if (!returns()) return;
    const HookupPart part = has(heated_return_hose) ? heated_return_hose : return_hose;
    HookupPipe pipe{
        part == heated_return_hose ? HookupPipe::Look::heated_hose : HookupPipe::Look::hose, {}, place(part)};
    pipe.corners = {{chain_ + 5, chain_top_}, {chain_ + 5, return_loop_}};
    if (has(return_trap)) {
        const double low = return_port_ + 11;
        pipe.corners.insert(pipe.corners.end(), {{return_dip_, return_loop_}, {return_dip_, low}, {return_, low}});
        const double centre = (return_ + return_dip_) / 2;
        piece(return_trap, centre - 4, low + kHose / 2 - 0.6, 8, 8.5);
        disc(centre + 4 + r_, low + 5.4, place(return_trap));
    } else {
        pipe.corners.push_back({return_, return_loop_});
    }
    pipe.corners.insert(pipe.corners.end(), {{return_, return_port_}, {machine_right_, return_port_}});
    if (has(return_filter)) {
        const double x = machine_right_ + 7;
        piece(return_filter, x - 3.5, return_port_ - 4.4, 7, 8.8);
        disc(x, return_port_ - 4.4 - r_ + kRing, place(return_filter));
    }
    disc((std::max(return_dip_, riser_) + chain_) / 2, return_loop_, pipe.place);
    plan_.pipes.push_back(std::move(pipe));
}

void Planner::add_oxygen() {
    const auto found = std::ranges::find_if(order_.parts, is_oxygen_tubing);
    if (found == order_.parts.end()) return;
    const double x = kSourceWidth / 2;
    const double top = floor_ - kSourceHeight;
    HookupPipe pipe{HookupPipe::Look::oxygen, {}, place(*found)};
    if (*found == oxygen_to_inlet) {
        const double y = machine_top_ + 12;
        piece(oxygen_to_inlet, machine_ - 2.6, y - 1.9, 3, 3.8);
        pipe.corners = {{x, top}, {x, y}, {machine_ - 2.6, y}};
        disc(x, (top + y) / 2, pipe.place);
    } else if (*found == oxygen_to_outlet) {
        const double y = floor_ - 10;
        piece(oxygen_to_outlet, adapter_ - 2.5, floor_ - kOutlet - 3.4, 5, 8);
        const double down = kSourceWidth + 2.5;
        pipe.corners = {{x, top},  {x, top - 5},  {down, top - 5},
                        {down, y}, {adapter_, y}, {adapter_, floor_ - kOutlet + 4.6}};
        disc(machine_ + kMachineWidth / 2, y, pipe.place);
    } else {
        const double y = lying() ? chain_bottom_ + 4.5 : floor_ - 49;
        const double end = lying() ? chain_ + 4 : head_ + 9;
        pipe.corners = {{x, top}, {x, oxygen_loop_}, {oxygen_down_, oxygen_loop_}, {oxygen_down_, y}, {end, y}};
        if (!lying()) pipe.corners.push_back({end, floor_ - 53.5});
        disc(x, top - r_ - 4, pipe.place);
    }
    plan_.pipes.push_back(std::move(pipe));
}

void Planner::add_small_lines() {
    if (!has(exhalation_valve)) return;
    const auto valve =
        std::ranges::find(plan_.pieces, exhalation_valve, [](const HookupPiece& one) { return one.part; });
    const double middle = valve->top + valve->height / 2;
    const double edge = chain_ + 5.4;
    const auto line = [&](HookupPart part, HookupPipe::Look look, double loop, double down, double at_valve,
                          double at_machine) {
        HookupPipe pipe{look, {}, place(part)};
        pipe.corners = {
            {edge, at_valve}, {down, at_valve}, {down, loop}, {at_machine, loop}, {at_machine, machine_top_}};
        plan_.pipes.push_back(std::move(pipe));
    };
    const double outer_port = machine_ + kPressurePort;
    const double inner_port = machine_ + kValvePort;
    line(pressure_line, HookupPipe::Look::pressure_line, pressure_loop_, outer_line_, middle + 2.2, outer_port);
    line(valve_line, HookupPipe::Look::valve_line, valve_loop_, inner_line_, middle - 2.2, inner_port);
    const double span = inner_line_ - inner_port;
    disc(inner_port + 0.4 * span, pressure_loop_, place(pressure_line));
    disc(inner_port + 0.62 * span, valve_loop_, place(valve_line));

    const HookupSize& outer = order_.pressure_name;
    const HookupSize& inner = order_.valve_name;
    const auto name = [&](double left, double top, const HookupSize& size, bool right_aligned, HookupPart part) {
        plan_.names.push_back({left, top, size.width, size.height, right_aligned, place(part)});
    };
    const double bottom = machine_top_ - 1.5;
    const double left = outer_port - kNameGap - outer.width;
    const double free_from = has(oxygen_to_mask) ? kSourceWidth / 2 + 2 : 0;
    if (left >= free_from - 0.001) name(left, bottom - outer.height - r_ - kRing, outer, true, pressure_line);
    name(inner_port + 1.6, bottom - inner.height, inner, false, valve_line);
    if (!names_at_valve_) return;
    name(chain_ + 4.5, middle - 2.2 - 1.5 - inner.height, inner, false, valve_line);
    name(chain_ + 6 + order_.disc + 2, middle + 2.2 + kPressureLine / 2 + 0.6, outer, false, pressure_line);
}

/// In the middle of the width, and whole discs within it.
void Planner::finish() {
    const double shift = std::max(0.0, (plan_.width - plan_.needed_width) / 2);
    const auto move_x = [&](double& x) { x += shift; };
    for (HookupScenery& one : plan_.scenery) move_x(one.left);
    for (HookupPiece& one : plan_.pieces) move_x(one.left);
    for (HookupName& one : plan_.names) move_x(one.left);
    for (HookupDisc& one : plan_.discs) move_x(one.centre.x);
    for (HookupPipe& one : plan_.pipes)
        for (Point& corner : one.corners) move_x(corner.x);
}

}  // namespace

double HookupPipe::width() const {
    switch (look) {
        case Look::hose:
        case Look::heated_hose:
            return kHose;
        case Look::oxygen:
            return kOxygen;
        case Look::pressure_line:
            return kPressureLine;
        case Look::valve_line:
            return kValveLine;
        case Look::cord:
            break;
    }
    return kCord;
}

HookupPlan plan_hookup(const HookupOrder& order) { return Planner{order}.plan(); }

}  // namespace ventfolio
