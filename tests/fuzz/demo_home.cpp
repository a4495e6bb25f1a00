#include "demo_home.hpp"

#include <fstream>
#include <iterator>

#include "packet/print_home.hpp"
#include "packet/worded_home.hpp"
#include "promise.hpp"

namespace ventfolio::fuzz {
namespace {

SourceText demo_profile() {
    std::ifstream file{VENTFOLIO_DEMO_HOME, std::ios::binary};
    promise(file.good(), "the demo home can be read", VENTFOLIO_DEMO_HOME);
    return {"home.yaml", {std::istreambuf_iterator<char>{file}, std::istreambuf_iterator<char>{}}};
}

TemplateData made_data() {
    const CheckedHome checked = check_home(demo_profile(), demo_day(), &stationery().region);
    promise(!any_refuses(checked.findings), "the demo home is not refused");
    const Household home{checked.profile, demo_day()};
    return WordedHomes{home, checked.findings, stationery(), nullptr}.in(stationery()).data;
}

}  // namespace

Date demo_day() { return *Date::parse("2026-02-03"); }

const Stationery& stationery() {
    static std::vector<Finding> faults;
    static const Stationery one = built_in_stationery("en", "us", faults);
    return one;
}

const TemplateData& demo_data() {
    static const TemplateData data = made_data();
    return data;
}

const TemplateData& demo_prescription() { return demo_data().object()->at("prescriptions").items()->front(); }

}  // namespace ventfolio::fuzz
