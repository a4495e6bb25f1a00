#include "rules/checks.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"

namespace ventfolio {
namespace {

bool covers_the_mouth(const DerivedPrescription& rx) {
    const auto& type = rx.order->interface->mask->type;
    return rx.mask && (type.is(MaskType::oronasal) || type.is(MaskType::total_face));
}

}  // namespace

namespace check {

void mask_smothers_if_stopped(const Household& home, Report& report) {
    const auto& removes = home.profile.dependence->can_remove_mask_self;
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Mask& mask = *rx.order->interface->mask;
        if (!covers_the_mouth(rx) || !mask.anti_asphyxia_valve.is(false)) continue;
        if (rx.dependent || removes.is(false))
            report.at(mask.anti_asphyxia_valve, "no safety valve").also(mask.type).with("rx", rx.name);
    }
}

void vomit_risk_with_full_mask(const Household& home, Report& report) {
    const auto& removes = home.profile.dependence->can_remove_mask_self;
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!covers_the_mouth(rx) || !removes.is(false)) continue;
        report.at(rx.order->interface->mask->type, "covers the mouth")
            .also(removes)
            .with("rx", rx.name)
            .with("name", home.name());
    }
}

}  // namespace check
}  // namespace ventfolio
