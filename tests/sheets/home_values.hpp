#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <optional>
#include <string>

#include "packet/print_home_sheets.hpp"
#include "profile/read_profile.hpp"
#include "sheets/home_data.hpp"
#include "units/text.hpp"

namespace ventfolio::testing {

/// The template data of a demo home with edits, asked by dotted names.
class HomeValues {
  public:
    explicit HomeValues(std::string_view home, std::string_view edits = {}, Date on = demo_day(),
                        std::optional<Moment> outage_start = {})
        : profile_{read_profile(edits.empty() ? demo_profile(home) : edited_profile(home, edits)).profile},
          household_{profile_, on} {
        household_.outage_start = outage_start;
        data_ = home_data(household_, {stationery().words, stationery().region}, {});
    }

    const Household& household() const { return household_; }

    const TemplateData& at(const std::string& name) const {
        const TemplateData* at = &data_;
        for (const std::string& step : split(name, '.')) {
            if (const TemplateData::Items* items = at->items()) {
                REQUIRE_MESSAGE(std::stoul(step) < items->size(), name);
                at = &items->at(std::stoul(step));
                continue;
            }
            REQUIRE_MESSAGE(at->object() != nullptr, name);
            const auto found = at->object()->find(step);
            REQUIRE_MESSAGE(found != at->object()->end(), name << ": " << step);
            at = &found->second;
        }
        return *at;
    }

    /// "yes", "no", "missing", the number of items, or the text with blanks.
    std::string said(const std::string& name) const {
        const TemplateData& found = at(name);
        if (found.missing()) return "missing";
        if (found.flag()) return *found.flag() ? "yes" : "no";
        if (found.items()) return fmt::format("{}", found.items()->size());
        REQUIRE_MESSAGE(found.value() != nullptr, name);
        return plain_blanks(found.value()->text());
    }

  private:
    Profile profile_;
    Household household_;
    TemplateData data_;
};

}  // namespace ventfolio::testing
