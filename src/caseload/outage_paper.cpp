#include "caseload/outage_paper.hpp"

#include <fmt/format.h>
#include <filesystem>

#include "packet/single_sheet.hpp"
#include "packet/translation_note.hpp"
#include "sheets/inline_pieces.hpp"
#include "sheets/printed_dates.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Numbers that no line may break.
Inline value(const char* name, Printer::Parts parts, bool strong = false) {
    return value_piece(calculated(name, folder, std::move(parts)), strong);
}

class CallList {
  public:
    CallList(std::span<const HomeInOutage> homes, const OutageQuestion& question, const Stationery& stationery)
        : homes_{homes}, question_{question}, words_{stationery.words}, printer_{stationery.words, stationery.region} {}

    Document document() const {
        Document document;
        document.name = document.sheet = "outage-list";
        document.language = words_.language();
        document.template_file = "words.yaml";
        document.front_matter = {{"orientation", "landscape"}};
        document.title = {text_piece(word("title"))};
        for (std::size_t first = 0; first < homes_.size();) {
            const Standing standing = standing_of(homes_[first]);
            std::size_t end = first;
            while (end < homes_.size() && standing_of(homes_[end]) == standing) ++end;
            document.blocks.push_back(heading(standing));
            const auto part = homes_.subspan(first, end - first);
            document.blocks.push_back(standing == Standing::not_judged ? table_of_not_judged(part) : table_of(part));
            first = end;
        }
        return document;
    }

    Furniture furniture() const {
        Furniture furniture;
        furniture.who = {text_piece(with_hours("who"))};
        furniture.identifier = {text_piece(fmt::format("{}, {}", homes_counted(), when()))};
        furniture.page_of = words_.at("page_of");
        furniture.foot = {{text_piece(word("foot"))}, {text_piece(std::string{words_.at("limits_with_oxygen")})}};
        add_translation_note(words_, furniture);
        return furniture;
    }

  private:
    std::string word(std::string_view key) const { return std::string{words_.at(fmt::format("outage_list.{}", key))}; }

    Standing standing_of(const HomeInOutage& home) const { return home.standing(question_.needed); }

    static std::string text_of(const Printer::Parts& parts) {
        std::string text;
        for (const PrintedPart& part : parts) text += part.text;
        return text;
    }

    std::string with_hours(std::string_view key) const {
        return with_replaced(word(key), "{hours}", text_of(printer_.hours_and_minutes(question_.needed)));
    }

    std::string homes_counted() const {
        return fmt::format("{}{}{}", homes_.size(), kNoBreakSpace, word(homes_.size() == 1 ? "home" : "homes"));
    }

    std::string when() const {
        if (question_.starting) return fmt::format("{} {}", word("from"), printer_.moment(*question_.starting));
        return printer_.date(question_.on);
    }

    Block heading(Standing standing) const {
        Block block;
        block.kind = Block::Kind::heading;
        block.level = 2;
        block.attributes.classes = {"ruled"};
        block.inlines = {text_piece(with_hours("parts." + with_replaced(std::string{name_of(standing)}, " ", "_")))};
        return block;
    }

    /// The columns that are written in by hand end every table.
    Block table(const std::vector<const char*>& columns) const {
        Block table;
        table.kind = Block::Kind::table;
        for (const char* column : columns) table.head.cells.push_back({{text_piece(word(column))}});
        for (const char* column : {"done", "called_at", "spoke_with", "result"})
            table.head.cells.push_back({{text_piece(word(column))}});
        table.alignments.assign(table.head.cells.size(), Alignment::automatic);
        return table;
    }

    static TableRow row(std::vector<Inlines> cells) {
        TableRow row;
        for (Inlines& one : cells) row.cells.push_back({std::move(one)});
        row.cells.push_back({{box_to_tick()}});
        for (int by_hand = 0; by_hand < 3; ++by_hand) row.cells.emplace_back();
        return row;
    }

    Block table_of(std::span<const HomeInOutage> homes) const {
        Block block = table({"record", "power", "oxygen", "unaided", "leave_by", "call"});
        for (const HomeInOutage& home : homes)
            block.rows.push_back(
                row({who(home), time(home.power), oxygen(home), unaided(home), leaving(home), calls(home)}));
        return block;
    }

    Block table_of_not_judged(std::span<const HomeInOutage> homes) const {
        Block block = table({"record", "profile", "call"});
        for (const HomeInOutage& home : homes)
            block.rows.push_back(
                row({who(home), {text_piece(std::filesystem::path{home.file}.filename().string())}, calls(home)}));
        return block;
    }

    Inlines who(const HomeInOutage& home) const {
        if (home.record_number.empty()) return {text_piece(word("no_record"))};
        Inlines cell{value("record", {{PrintedPart::Kind::number, home.record_number}}, true)};
        if (question_.names && !home.person.empty()) {
            cell.push_back(line_break());
            cell.push_back(text_piece(home.person));
        }
        return cell;
    }

    Inlines time(const std::optional<long long>& minutes) const {
        if (!minutes) return {text_piece(word("not_known"))};
        return {value("time", elapsed(*minutes, printer_))};
    }

    Inlines oxygen(const HomeInOutage& home) const {
        if (home.oxygen_needed) return time(home.oxygen);
        if (!home.oxygen) return {text_piece(word("not_needed"))};
        Inlines cell = time(home.oxygen);
        cell.push_back(line_break());
        cell.push_back(text_piece(word("if_needed")));
        return cell;
    }

    Inline unaided(const UnaidedTime& time) const {
        if (time.hours) return text_piece(word("hours"));
        if (time.minutes == 0) return text_piece(word("none"));
        return value("unaided", printer_.number(Decimal::whole(time.minutes), "min", Zeros::drop, UnitForm::brief));
    }

    Inlines unaided(const HomeInOutage& home) const {
        const auto when = [&](const char* state) { return text_piece(word(state) + std::string{kNoBreakSpace}); };
        return {when("awake"), unaided(home.awake), line_break(), when("asleep"), unaided(home.asleep)};
    }

    Inline leave_by(const HomeInOutage& home) const {
        if (!home.leave_by) return text_piece(word("now"), true);
        if (!question_.starting) return value("leave-by", elapsed(*home.leave_by, printer_), true);
        const Moment moment = after_minutes(*question_.starting, *home.leave_by);
        return value("leave-by", plain_parts(day_and_time(moment, printer_)), true);
    }

    Printer::Parts travel(long long minutes) const {
        if (minutes >= 60) return elapsed(minutes, printer_);
        return printer_.number(Decimal::whole(minutes), "min", Zeros::drop, UnitForm::brief);
    }

    Inlines leaving(const HomeInOutage& home) const {
        Inlines cell{leave_by(home), line_break(), text_piece(word("travel") + std::string{kNoBreakSpace})};
        cell.push_back(home.travel ? value("travel", travel(*home.travel)) : text_piece(word("not_known")));
        return cell;
    }

    Inlines calls(const HomeInOutage& home) const {
        if (home.calls.empty()) return {text_piece(word("no_number"))};
        Inlines cell;
        for (const HomeCall& call : home.calls) {
            if (!cell.empty()) cell.push_back(line_break());
            const bool named = question_.names && !call.name.empty();
            cell.push_back(value("phone", {{PrintedPart::Kind::number, call.phone}}, &call == &home.calls.front()));
            cell.push_back(text_piece(" " + (named ? call.name : word(name_of(call.role)))));
        }
        return cell;
    }

    std::span<const HomeInOutage> homes_;
    const OutageQuestion& question_;
    const WordBook& words_;
    Printer printer_;
};

}  // namespace

Document outage_document(std::span<const HomeInOutage> homes, const OutageQuestion& question,
                         const Stationery& stationery) {
    return CallList{homes, question, stationery}.document();
}

std::string outage_paper(std::span<const HomeInOutage> homes, const OutageQuestion& question,
                         const Stationery& stationery, Paper paper, Measurer& measurer,
                         std::vector<Finding>& findings) {
    const CallList list{homes, question, stationery};
    return single_sheet(list.document(), list.furniture(), paper, measurer, findings);
}

}  // namespace ventfolio
