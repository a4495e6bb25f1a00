#include <doctest/doctest.h>

#include <fstream>
#include <iterator>

#include "profile/read_profile.hpp"

using namespace ventfolio;

namespace {

constexpr std::array<std::string_view, 7> kHomes{"adult-tracheostomy", "adult-tracheostomy-revision-2",
                                                 "child-tracheostomy", "adult-mask",
                                                 "adult-long-names",   "toddler-dual-limb",
                                                 "adult-mains-only"};

ReadResult read_home(std::string_view name) {
    const std::string path = std::string{VENTFOLIO_SOURCE_DIR "/profiles/"} + std::string{name} + ".yaml";
    std::ifstream file{path, std::ios::binary};
    REQUIRE_MESSAGE(file, path);
    return read_profile({path, std::string{std::istreambuf_iterator<char>{file}, {}}});
}

/// Every phone number of a home.
class Phones final : public ConstVisitor {
  public:
    void leaf(const FieldInfo& info, const FieldBase& field) override {
        if (info.shape == TextShape::phone && field.given()) found.push_back(std::get<std::string>(field.value()));
    }
    void group(const FieldInfo&, const GroupBase& group) override {
        if (group.given()) visit(group, *this);
    }
    void list(const FieldInfo&, const ListBase& list) override {
        for (std::size_t i = 0; i < list.size(); ++i) visit(list, i, *this);
    }
    std::vector<std::string> found;
};

}  // namespace

TEST_CASE("every demo home reads without a finding, so nothing prints NOT RECORDED") {
    for (const std::string_view name : kHomes) {
        const ReadResult home = read_home(name);
        for (const Finding& finding : home.findings)
            FAIL_CHECK(name, ", line ", finding.marks.front().place.line, ": ", finding.message);
        CHECK_FALSE(home.profile.record_number->empty());
    }
}

TEST_CASE("phone numbers of the demo homes are the emergency number or reserved for fiction") {
    // North American Numbering Plan: 555-0100 to 555-0199 are kept for fiction (from memory).
    for (const std::string_view name : kHomes) {
        Phones phones;
        visit(read_home(name).profile, phones);
        CHECK(phones.found.size() >= 8);
        for (const std::string& phone : phones.found) {
            INFO(name, ": ", phone);
            CHECK((phone == "911" || (phone.starts_with("555-01") && phone.size() == 8)));
        }
    }
}

TEST_CASE("each prescription of a demo home is in a slot, at the revision that changed it") {
    for (const std::string_view name : kHomes) {
        const Profile home = read_home(name).profile;
        for (const Prescription& prescription : home.prescriptions) {
            INFO(name, ": ", *prescription.id);
            int slots = 0;
            for (const Device& device : home.devices)
                for (const Slot& slot : device.slots) {
                    if (*slot.prescription != *prescription.id) continue;
                    ++slots;
                    CHECK(*slot.revision == *prescription.changed_in);
                }
            CHECK(slots >= 1);
        }
    }
}

TEST_CASE("the second revision follows the first and changes only the bed prescription's orders") {
    const Profile first = read_home("adult-tracheostomy").profile;
    const Profile second = read_home("adult-tracheostomy-revision-2").profile;
    CHECK(*first.record_number == *second.record_number);
    CHECK(*second.orders->supersedes == *first.orders->revision);
    CHECK(*second.orders->revision > *first.orders->revision);
    CHECK(second.prescriptions[0].inspiratory_pressure.measure().text() == "18 cmH2O");
    CHECK(first.prescriptions[0].inspiratory_pressure.measure().text() == "16 cmH2O");
    CHECK(second.prescriptions[1].changed_in->number == 1);
}

TEST_CASE("the demo homes hold what the published limits allow") {
    // Tracheostomy cuff 20 to 30 cmH2O (from memory); suction up to 200 mmHg, children 120 mmHg (AARC, 2022);
    // humidifier 34 to 41 degrees Celsius at the Y (AARC, 2012).
    const Profile adult = read_home("adult-tracheostomy").profile;
    const Profile child = read_home("child-tracheostomy").profile;
    const double cuff = (*adult.airway->neck_tube->cuff_order->pressure).in(unit::cmH2O);
    CHECK(cuff >= 20);
    CHECK(cuff <= 30);
    CHECK((*adult.suction->pressure).in(unit::mmHg) <= 200);
    CHECK((*child.suction->pressure).in(unit::mmHg) <= 120);
    for (const Profile* home : {&adult, &child}) {
        const double warmth = (*home->prescriptions[0].humidity->temperature).in(unit::degC);
        CHECK(warmth >= 34);
        CHECK(warmth <= 41);
    }
}
