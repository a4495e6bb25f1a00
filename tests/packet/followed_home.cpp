#include "followed_home.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "packet/documents.hpp"
#include "packet/sheet_furniture.hpp"
#include "record/sheet_code.hpp"
#include "rules/edited_home.hpp"
#include "sheets/printer.hpp"

namespace ventfolio::testing {
namespace {

PacketRecord record_of(const std::vector<Document>& documents, const Profile& profile, Date on) {
    PacketRecord record;
    record.record_number = *profile.record_number;
    record.revision = profile.orders->revision->text();
    record.effective = profile.orders->effective_at->iso();
    record.printed_on = on.iso();
    for (const Document& document : documents) {
        RecordedSheet sheet;
        sheet.name = document.sheet;
        sheet.place = document.place;
        sheet.title = plain_text(document.title);
        sheet.code = sheet_code(document);
        sheet.revision = record.revision;
        sheet.effective = record.effective;
        sheet.printed_on = record.printed_on;
        record.sheets.push_back(std::move(sheet));
    }
    return record;
}

}  // namespace

Date update_day() { return *Date::parse("2026-03-14"); }

FollowedHome::FollowedHome(const SourceText& was, const SourceText& now, const Stationery& language)
    : language_{language}, was_{check_home(was, demo_day())}, now_{check_home(now, update_day())} {
    REQUIRE_MESSAGE(was_.readable, summary(was_.findings));
    REQUIRE_MESSAGE(now_.readable, summary(now_.findings));
    home_was_ = std::make_unique<Household>(was_.profile, demo_day());
    home_now_ = std::make_unique<Household>(now_.profile, update_day());
    const std::vector<std::string> sheets = language_.in_order();
    documents_was_ = make_documents(*home_was_, was_.findings, language_, sheets, of_sheets_);
    record_ = record_of(documents_was_, was_.profile, demo_day());
    const Printer printer{language_.words, language_.region};
    followed_ = {&record_, home_was_.get(), edited_changes(*home_was_, *home_now_, printer),
                 derived_changes(*home_was_, *home_now_, printer)};
    documents_ = make_documents(*home_now_, now_.findings, language_, sheets, of_sheets_, &followed_);
}

std::vector<Document> FollowedHome::documents_after(const PacketRecord& record) {
    FollowedPacket followed = followed_;
    followed.record = &record;
    return make_documents(*home_now_, now_.findings, language_, language_.in_order(), of_sheets_, &followed);
}

std::string FollowedHome::refusals() const {
    std::vector<Finding> all;
    const auto refuses = [](const Finding& finding) { return finding.severity == Severity::refuse; };
    for (const auto* findings : {&was_.findings, &now_.findings, &of_sheets_})
        std::ranges::copy_if(*findings, std::back_inserter(all), refuses);
    return summary(all);
}

bool FollowedHome::has(std::string_view name) const {
    return std::ranges::find(documents_, name, &Document::name) != documents_.end();
}

const Document& FollowedHome::named(std::string_view name) const {
    const auto found = std::ranges::find(documents_, name, &Document::name);
    REQUIRE_MESSAGE(found != documents_.end(), std::string{name});
    return *found;
}

SetSheet FollowedHome::placed(std::string_view name, const PageSetup& setup) {
    static Measurer measurer;
    const Document& document = named(name);
    const Furniture furniture = furniture_for(document, *home_now_, language_, sheet_code(document));
    return {document, furniture, lay_out(document, furniture, setup, measurer, of_sheets_)};
}

}  // namespace ventfolio::testing
