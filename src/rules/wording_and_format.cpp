#include "rules/checks.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "units/text.hpp"

namespace ventfolio::check {

void translation_not_reviewed(const Household& home, Report& report) {
    const auto& second = home.profile.person->languages->second_on_paper;
    if (!second) return;
    for (const Translation& translation : home.profile.translations)
        if (translation.language && lower_ascii(*translation.language) == lower_ascii(*second) &&
            translation.reviewed_by)
            return;
    report.at(second, "nobody is recorded as its reviewer").with("language", second);
}

}  // namespace ventfolio::check
