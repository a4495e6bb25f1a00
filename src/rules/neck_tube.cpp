#include "calc/cuff_pressure.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

std::string cuff_words(const NeckTube& tube) {
    return tube.cuff.is_none() ? "no cuff" : "a " + written(tube.cuff) + " cuff";
}

std::string missing_of_cuff_order(const NeckTube& tube) {
    if (tube.cuff.missing()) return "what fills it";
    const CuffOrder& order = *tube.cuff_order;
    if (tube.cuff.is(Cuff::foam)) return {};
    if (!order.pressure && !order.volume) return "the pressure or the amount";
    return order.up ? std::string{} : "when it is up and when down";
}

}  // namespace

namespace check {

void spare_tube_missing(const Household& home, Report& report) {
    if (home.neck_tube == nullptr) return;
    if (!home.neck_tube->spare_same.given()) report.at(home.neck_tube->spare_same).with("which", "same-size");
    if (!home.neck_tube->spare_smaller.given()) report.at(home.neck_tube->spare_smaller).with("which", "smaller");
}

void same_size_spare_differs(const Household& home, Report& report) {
    if (home.neck_tube == nullptr) return;
    const auto& size = home.neck_tube->spare_same->size;
    const auto& worn = home.neck_tube->inner_diameter;
    if (!size || !worn || same(*size, *worn)) return;
    report.at(size, "another size").also(worn, "the tube in place").with("id_mm", worn).with("spare", size);
}

void smaller_spare_not_smaller(const Household& home, Report& report) {
    if (home.neck_tube == nullptr) return;
    const auto& size = home.neck_tube->spare_smaller->size;
    const auto& worn = home.neck_tube->inner_diameter;
    if (!size || !worn || below(*size, *worn)) return;
    report.at(size, "not smaller").also(worn, "the tube in place").with("spare", size).with("id_mm", worn);
}

void smaller_spare_far_smaller(const Household& home, Report& report) {
    if (home.neck_tube == nullptr) return;
    const auto& size = home.neck_tube->spare_smaller->size;
    const auto& worn = home.neck_tube->inner_diameter;
    if (!size || !worn || !above(*worn - *size, threshold::kSpareTubeSmallerMost)) return;
    report.at(size, "far smaller").also(worn, "the tube in place").with("spare", size).with("id_mm", worn);
}

void upper_airway_unknown(const Household& home, Report& report) {
    if (home.neck_tube != nullptr && home.profile.airway->upper.missing()) report.at(home.profile.airway->upper);
}

void young_opening_marked_healed(const Household& home, Report& report) {
    if (home.neck_tube == nullptr) return;
    const auto& made = home.neck_tube->opening_made_on;
    const auto& healed = home.neck_tube->opening_healed;
    if (!made || !healed.is(true)) return;
    const int days = days_between(*made, home.on);
    if (days < 0 || days >= threshold::kOpeningFreshBelow) return;
    report.at(healed, "marked as healed").also(made).with("days", std::to_string(days) + " days");
}

void cuff_pressure_unusual(const Household& home, Report& report) {
    if (home.neck_tube == nullptr || !home.neck_tube->cuff.is(Cuff::air)) return;
    const auto& pressure = home.neck_tube->cuff_order->pressure;
    if (!pressure || (at_or_above(*pressure, calc::kCuffBand.low) && at_or_below(*pressure, calc::kCuffBand.high)))
        return;
    report.at(pressure, "outside 15 to 30 cmH2O").with("pressure", pressure);
}

void cuff_order_missing(const Household& home, Report& report) {
    if (home.neck_tube == nullptr || home.neck_tube->cuff.is_none()) return;
    const std::string what = missing_of_cuff_order(*home.neck_tube);
    if (!what.empty())
        report.at(home.neck_tube->cuff, "no order for it").also(home.neck_tube->cuff_order).with("what", what);
}

void cuff_order_contradicts_cuff(const Household& home, Report& report) {
    if (home.neck_tube == nullptr || !home.neck_tube->cuff_order.given()) return;
    const NeckTube& tube = *home.neck_tube;
    const CuffOrder& order = *tube.cuff_order;
    const auto clash = [&](const Spot& at, std::string words) {
        report.at(at, "does not fit").also(tube.cuff).with("cuff", cuff_words(tube)).with("order", std::move(words));
    };
    if (tube.cuff.is_none())
        clash(tube.cuff_order, "how to fill one");
    else if (tube.cuff.is(Cuff::water) && order.pressure)
        clash(order.pressure, "a pressure of " + written(order.pressure));
    else if (tube.cuff.is(Cuff::foam) && order.volume)
        clash(order.volume, "an amount of " + written(order.volume));
    else if (tube.cuff.is(Cuff::foam) && order.pressure)
        clash(order.pressure, "a pressure of " + written(order.pressure));
}

void fenestrated_tube_under_ventilation(const Household& home, Report& report) {
    if (home.neck_tube == nullptr || !home.uses(InterfaceKind::neck_tube)) return;
    const NeckTube& tube = *home.neck_tube;
    const bool open = tube.inner_tube.is_none() || tube.inner_tube_fenestrated.is(true);
    if (tube.fenestrated.is(true) && open) report.at(tube.fenestrated, "a window").also(tube.inner_tube);
}

}  // namespace check
}  // namespace ventfolio
