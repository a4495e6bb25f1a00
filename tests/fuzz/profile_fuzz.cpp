#include <cstddef>
#include <cstdint>

#include "demo_home.hpp"
#include "packet/print_home.hpp"
#include "profile/compare.hpp"
#include "profile/field_paths.hpp"
#include "promise.hpp"
#include "sheets/home_data.hpp"

namespace ventfolio::fuzz {
namespace {

/// Whatever a template can print of a home says something.
void check_no_blank(const TemplateData& data) {
    if (const PrintedValue* value = data.value()) promise(!value->text().empty(), "no value is blank", value->field);
    if (const TemplateData::Object* object = data.object())
        for (const auto& [name, member] : *object) check_no_blank(member);
    if (const TemplateData::Items* items = data.items())
        for (const TemplateData& item : *items) check_no_blank(item);
}

void check_profile(const SourceText& source) {
    const CheckedHome home = check_home(source, demo_day(), &stationery().region);
    check_findings(home.findings, source.text.size());
    if (!home.readable) {
        promise(any_refuses(home.findings), "what is not readable is refused");
        return;
    }
    for (const FieldAt& at : fields_of(home.profile))
        if (at.reachable && at.info.grade == Grade::essential)
            promise(!at.field->missing(), "a readable home has all that is essential", at.path);
    promise(compare(home.profile, home.profile).empty(), "a home is the same as itself");
    const Household household{home.profile, demo_day()};
    check_no_blank(home_data(household, {stationery().words, stationery().region}, home.findings));
}

}  // namespace
}  // namespace ventfolio::fuzz

/// A profile from anywhere: read, judged, and all that a template can print of it.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    ventfolio::fuzz::check_profile({"home.yaml", {reinterpret_cast<const char*>(data), size}});
    return 0;
}
