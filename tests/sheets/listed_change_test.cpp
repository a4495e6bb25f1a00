#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "packet/print_home_sheets.hpp"
#include "profile/read_profile.hpp"
#include "sheets/listed_change.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

const Printer& printer() {
    static const Printer printer{stationery().words, stationery().region};
    return printer;
}

struct Changes {
    std::vector<ListedChange> edited;
    std::vector<ListedChange> derived;
};

Changes between(const Profile& was, const Profile& now) {
    const Household before{was, demo_day()};
    const Household after{now, demo_day()};
    return {edited_changes(before, after, printer()), derived_changes(before, after, printer())};
}

Changes with_edits(std::string_view home, std::string_view edits) {
    return between(read_profile(demo_profile(home)).profile, read_profile(edited_profile(home, edits)).profile);
}

std::vector<std::string> lines(const std::vector<ListedChange>& changes) {
    std::vector<std::string> all;
    for (const ListedChange& change : changes) all.push_back(in_one_line(change, printer()));
    return all;
}

}  // namespace

TEST_CASE("show") {
    const Changes c = between(read_profile(demo_profile("adult-tracheostomy")).profile,
                              read_profile(demo_profile("adult-tracheostomy-revision-2")).profile);
    for (auto& l : lines(c.edited)) MESSAGE(l);
    for (auto& l : lines(c.derived)) MESSAGE(l);
    for (auto [home, edits] :
         {std::pair{"adult-tracheostomy",
                    "prescriptions.0.oxygen.flow: 3 L/min\nprescriptions.1.volume_assured.pressure_most: 24 "
                    "cmH2O\nprescriptions.0.alarms.high_rate: off\npower.inverter: {waveform: "
                    "pure_sine}\nremote_alarm: none\nmedicines: unknown\ncaregivers.1.phone: 555-0158\n"},
          std::pair{
              "adult-tracheostomy",
              "devices.1.slots.1.slot: 3\nbatteries.0.tested_at.0.revision: R2\nremove: care_tasks.3\ncopies.1.place: "
              "x\nhome.hazards.smoker: true\nperson.height: 150 cm\nperson.birth_date: 1979-01-01"}}) {
        const Changes d = with_edits(home, edits);
        for (auto& l : lines(d.edited)) MESSAGE(l);
        for (auto& l : lines(d.derived)) MESSAGE(l);
    }
}
