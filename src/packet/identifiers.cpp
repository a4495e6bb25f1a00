#include "packet/identifiers.hpp"

#include "sheets/home_data.hpp"

namespace ventfolio {
namespace {

PrintedValue identifier(std::string field, std::string text, Audiences audiences) {
    PrintedValue value;
    value.field = std::move(field);
    value.audiences = audiences;
    value.parts = plain_parts(std::move(text));
    return value;
}

/// For a letter: the name and the number that its reader uses, else our own.
std::vector<PrintedValue> letter_identifiers(Audience audience, const Profile& profile) {
    std::vector<PrintedValue> values{identifier("person.legal_name", profile.person->legal_name.or_else(""),
                                                folder | crew | wallet | utility | fire)};
    const auto& account = profile.utility_company->account;
    const auto& dispatch = profile.home->dispatch_number;
    if (audience == utility && account.given())
        values.push_back(identifier("utility_company.account", *account, folder | utility));
    else if (audience == fire && dispatch.given())
        values.push_back(identifier("home.dispatch_number", *dispatch, folder | fire));
    else
        values.push_back(identifier("record_number", profile.record_number.or_else(""), 0xFF));
    return values;
}

}  // namespace

std::vector<PrintedValue> identifiers_for(Audience audience, const Household& home, const Printer& printer) {
    const Person& person = *home.profile.person;
    const std::string record = home.profile.record_number.or_else("");
    if (audience == wall)
        return {identifier("person.preferred_name", person.preferred_name.or_else(""), 0xFF),
                identifier("record_number", record, 0xFF)};
    if (audience == wallet) {
        std::vector<PrintedValue> values{
            identifier("person.legal_name", person.legal_name.or_else(""), folder | crew | wallet)};
        if (const auto age = printed_age(home, printer)) values.push_back(*age);
        return values;
    }
    if (audience == utility || audience == fire) return letter_identifiers(audience, home.profile);
    std::vector<PrintedValue> values{identifier("person.legal_name", person.legal_name.or_else(""), folder | crew)};
    if (person.birth_date.given())
        values.push_back(identifier("person.birth_date", printer.date(*person.birth_date), folder | crew));
    values.push_back(identifier("record_number", record, 0xFF));
    return values;
}

}  // namespace ventfolio
