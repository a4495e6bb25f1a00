#include "packet/sheet_furniture.hpp"

#include <fmt/format.h>

#include "packet/documents.hpp"
#include "packet/translation_note.hpp"
#include "sheets/inline_pieces.hpp"
#include "sheets/printer.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// The word in front of an identifier; an age stands alone.
std::optional<std::string_view> label_of(std::string_view field) {
    if (field == "person.birth_date") return "born";
    if (field == "utility_company.account") return "account";
    if (field == "home.dispatch_number") return "dispatch_number";
    if (field == "record_number") return "record";
    return std::nullopt;
}

/// "Born 11 February 1978   Record DEMO-1", on a wallet card "47 years"
Inlines second_line(const Document& document, const WordBook& words) {
    Inlines line;
    for (const PrintedValue& value : document.identifiers) {
        if (&value == &document.identifiers.front()) continue;
        if (!line.empty()) line.push_back(text_piece("   "));
        if (const auto label = label_of(value.field))
            line.push_back(text_piece(std::string{words.at(*label)} + std::string{kNoBreakSpace}));
        line.push_back(value_piece(value));
    }
    return line;
}

Inlines mark_of_unchecked(const WordBook& words, const Stationery* second) {
    Inlines mark{text_piece(std::string{words.at("not_yet_checked")})};
    if (second == nullptr) return mark;
    mark.push_back(line_break());
    mark.push_back(text_piece(std::string{second->words.at("not_yet_checked")}));
    mark.back().second = true;
    return mark;
}

}  // namespace

Furniture furniture_for(const Document& document, const Household& home, const Stationery& stationery,
                        const std::string& code) {
    const WordBook& words = stationery.of(document.sheet).words;
    const Printer printer{words, stationery.region};
    const Orders& orders = *home.profile.orders;
    const std::string revision = orders.revision.given() ? orders.revision->text() : "";
    Furniture furniture;
    furniture.who = {value_piece(document.identifiers.front())};
    furniture.identifier = second_line(document, words);
    furniture.page_of = words.at("page_of");
    const auto audience = audience_from(document.front("audience").value_or(""));
    // From when and until when the settings hold is nothing for strangers.
    const bool letter = audience && (*audience == utility || *audience == fire);
    furniture.revision = {text_piece(revision)};
    std::string foot = revision + ".";
    if (!letter && orders.effective_at.given()) {
        furniture.revision = {
            text_piece(fmt::format("{}   {} {}", revision, words.at("from"), printer.date(orders.effective_at->date)))};
        foot += fmt::format(" {} {}.", words.at("in_force"), printer.moment(*orders.effective_at));
    }
    if (!letter && orders.review_due.given())
        foot += fmt::format(" {} {}.", words.at("review_by"), printer.date(*orders.review_due));
    foot += fmt::format(" {}", words.at("current_only"));
    const bool oxygen = home.profile.oxygen.given() && home.profile.oxygen->use.given();
    const std::string_view last = letter ? "letter_says" : oxygen ? "limits_with_oxygen" : "limits";
    furniture.foot = {{text_piece(std::move(foot))}, {text_piece(std::string{words.at(last)})}};
    add_translation_note(words, furniture);
    if (const Stationery* under = stationery.under(document.sheet)) {
        furniture.foot.push_back({text_piece(std::string{under->words.at(last)})});
        add_translation_note(under->words, furniture);
    }
    furniture.code = code;
    if (document.not_yet_checked) furniture.mark = mark_of_unchecked(words, stationery.under(document.sheet));
    return furniture;
}

}  // namespace ventfolio
