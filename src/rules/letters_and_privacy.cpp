#include "rules/checks.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio::check {
namespace {

constexpr const char* kPowerCompany = "the power company";
constexpr const char* kFireService = "the fire and ambulance service";

}  // namespace

void letter_without_consent(const Household& home, Report& report) {
    const Consent& consent = *home.profile.consent;
    const auto unsigned_letter = [&](const Group<Permission>& permission, std::string recipient) {
        if (!permission->answer || (permission->answer.is(PermissionAnswer::agreed) && !permission->date))
            report.at(permission).with("recipient", std::move(recipient));
    };
    unsigned_letter(consent.utility_letter, kPowerCompany);
    unsigned_letter(consent.fire_letter, kFireService);
}

void letter_refused(const Household& home, Report& report) {
    const Consent& consent = *home.profile.consent;
    if (consent.utility_letter->answer.is(PermissionAnswer::refused))
        report.at(consent.utility_letter).with("recipient", kPowerCompany);
    if (consent.fire_letter->answer.is(PermissionAnswer::refused))
        report.at(consent.fire_letter).with("recipient", kFireService);
}

void directive_needs_confirming(const Household& home, Report& report) {
    const Directive& directive = *home.profile.directive;
    if (directive.status.missing()) {
        report.at(directive.status).with("state", "not asked, or not known");
        return;
    }
    if (!directive.status.is(DirectiveStatus::order_on_file)) return;
    const auto& confirmed = directive.confirmed_on;
    if (!confirmed)
        report.at(directive.status).with("state", "never confirmed");
    else if (confirmed->plus_months(threshold::kDirectiveConfirmInterval) < home.on)
        report.at(confirmed, "over a year ago").with("state", "last confirmed on " + confirmed->iso());
}

void signed_order_place_missing(const Household& home, Report& report) {
    const Directive& directive = *home.profile.directive;
    if (directive.status.is(DirectiveStatus::order_on_file) && !directive.location_of_original)
        report.at(directive.location_of_original).also(directive.status);
}

void directive_record_contradictory(const Household& home, Report& report) {
    const Directive& directive = *home.profile.directive;
    if (!directive.status.is(DirectiveStatus::none_recorded)) return;
    const FieldBase* facts[] = {&directive.kind, &directive.signed_by, &directive.signed_on, &directive.expires,
                                &directive.location_of_original};
    for (const FieldBase* fact : facts) {
        if (!fact->given()) continue;
        report.at(*fact, "of an order").also(directive.status);
        return;
    }
}

}  // namespace ventfolio::check
