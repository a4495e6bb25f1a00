#include "packet/worded_home.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "markup/render.hpp"
#include "packet/documents.hpp"
#include "packet/index_data.hpp"
#include "packet/notice_data.hpp"
#include "sheets/change_data.hpp"
#include "sheets/checking_data.hpp"
#include "sheets/home_data.hpp"
#include "sheets/own_code.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr Audiences kEverywhere = 0xFF;

}  // namespace

Lists lists_of(const std::string& sheet, const Stationery& stationery) {
    const FrontMatterLine* line = stationery.parts_of(sheet).front().from->front("lists");
    if (line == nullptr) return Lists::nothing;
    if (line->value == "codes") return Lists::codes;
    if (line->value == "changes") return Lists::changes;
    return line->value == "findings" ? Lists::findings : Lists::nothing;
}

WordedHomes::WordedHomes(const Household& home, std::span<const Finding> of_profile, const Stationery& stationery,
                         const FollowedPacket* followed)
    : home_{home}, of_profile_{of_profile}, stationery_{stationery}, followed_{followed} {
    for (const Stationery* language : {&stationery, stationery.for_strangers, stationery.second})
        if (language != nullptr) languages_.push_back(worded(*language));
    number_leaves();
}

WordedHome WordedHomes::worded(const Stationery& stationery) const {
    const Printer printer{stationery.words, stationery.region};
    WordedHome worded{&stationery, printer, home_data(home_, printer, of_profile_)};
    (*worded.data.object())["follows_packet"] = followed_ != nullptr;
    (*worded.data.object())["own_code"] = own_code("to come");
    return worded;
}

std::size_t WordedHomes::place_of(const Stationery& language) const {
    const auto found = std::ranges::find(languages_, &language, &WordedHome::stationery);
    return found == languages_.end() ? 0 : static_cast<std::size_t>(found - languages_.begin());
}

void WordedHomes::know(Lists what, const std::string& sheet, const std::vector<const Document*>& made,
                       std::span<const Finding> of_sheets) {
    know(what, sheet, made, of_sheets, languages_[place_of(stationery_.of(sheet))]);
    if (const Stationery* under = stationery_.under(sheet))
        know(what, sheet, made, of_sheets, languages_[place_of(*under)]);
}

void WordedHomes::know(Lists what, const std::string& sheet, const std::vector<const Document*>& made,
                       std::span<const Finding> of_sheets, WordedHome& worded) {
    if (what == Lists::findings) {
        std::vector<Finding> all{of_profile_.begin(), of_profile_.end()};
        all.insert(all.end(), of_sheets.begin(), of_sheets.end());
        leave_one_of_each(all);
        add_checking_data(*worded.data.object(), home_, worded.printer, all);
    }
    if (what == Lists::changes && followed_ != nullptr) know_changes(worded, sheet, made);
    if (what == Lists::codes) add_index_data(*worded.data.object(), sheet, made, home_, worded.printer, followed_);
}

/// Sheets that are made after a notice of changes have no code yet.
void WordedHomes::know_changes(WordedHome& worded, const std::string& notice,
                               const std::vector<const Document*>& made) {
    TemplateData::Object& data = *worded.data.object();
    add_change_data(data, {*followed_->home, home_, followed_->edited, followed_->derived}, worded.printer);
    LaterSheets later{notice, {}};
    for (const std::string& sheet : stationery_.in_order())
        if (lists_of(sheet, stationery_) == Lists::codes) later.after.push_back(sheet);
    add_notice_data(data, paper_walk(*followed_, home_.profile, made, later, stationery_), *followed_, worded.printer);
}

/// The leaves of this home count from 1 in their sheet, so that one chart can send the reader to another:
/// `leaf.tube_out` is the number of alarm-response/tube-out. Leaves that the home does not have are missing.
void WordedHomes::number_leaves() {
    TemplateData::Object numbers;
    for (const std::string& sheet : stationery_.in_order()) {
        int number = 0;
        for (const Stationery::Part& part : stationery_.parts_of(sheet)) {
            if (part.leaf.empty()) continue;
            std::vector<Finding> reported_when_made;
            const bool made = applies(*part.from, of(sheet).data, reported_when_made);
            const PrintedValue shown =
                calculated("leaf." + part.leaf, kEverywhere, plain_parts(fmt::format("{}", made ? ++number : 0)));
            numbers[with_replaced(part.leaf, "-", "_")] = made ? TemplateData{shown} : TemplateData{};
        }
    }
    for (WordedHome& worded : languages_) (*worded.data.object())["leaf"] = numbers;
}

}  // namespace ventfolio
