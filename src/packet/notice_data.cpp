#include "packet/notice_data.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "packet/paper_values.hpp"

namespace ventfolio {
namespace {

/// From so many leaves of a sheet on their codes are left to the index.
constexpr std::size_t kGroupFrom = 5;

TemplateData said(const char* name, std::string text) { return calculated(name, folder, plain_parts(std::move(text))); }

TemplateData counted(std::size_t number) {
    return calculated("papers", folder, {{PrintedPart::Kind::number, fmt::format("{}", number)}});
}

TemplateData code_or_none(const std::string& code) { return code.empty() ? TemplateData{} : code_value(code); }

TemplateData::Object swap_item(const PaperSwap& swap) {
    TemplateData::Object item;
    item["title"] = swap.title;
    item["old"] = code_or_none(swap.old_code);
    item["new"] = code_or_none(swap.new_code);
    item["at_its_foot"] = swap.arrives == PaperSwap::New::at_its_foot;
    item["this_paper"] = swap.arrives == PaperSwap::New::the_notice;
    item["none_arrives"] = swap.arrives == PaperSwap::New::none;
    item["file_it"] = swap.filed;
    return item;
}

TemplateData::Items stops(const PaperWalk& walk) {
    TemplateData::Items items;
    for (const PaperStop& stop : walk.stops) {
        TemplateData::Items swaps;
        for (const PaperSwap& swap : stop.swaps) swaps.emplace_back(swap_item(swap));
        TemplateData::Object item;
        const bool recorded = stop.place.kind == PaperPlace::Kind::recorded;
        item["place"] =
            recorded ? TemplateData{calculated("copy-place", folder, plain_parts(stop.place.words))} : TemplateData{};
        item["in_folder"] = stop.place.kind == PaperPlace::Kind::folder;
        item["not_recorded"] = stop.place.kind == PaperPlace::Kind::unknown;
        item["swaps"] = std::move(swaps);
        items.emplace_back(std::move(item));
    }
    return items;
}

TemplateData::Object title_item(const SheetChange& change) {
    TemplateData::Object item;
    item["title"] = title_value(*change.document);
    item["code"] = code_value(change.before->code);
    return item;
}

struct Staying {
    TemplateData::Items single;
    TemplateData::Items groups;
};

Staying staying(const PaperWalk& walk, const Printer& printer) {
    Staying all;
    for (auto first = walk.staying.begin(); first != walk.staying.end();) {
        const std::string& sheet = first->document->sheet;
        const auto end = std::find_if(first, walk.staying.end(),
                                      [&](const SheetChange& one) { return one.document->sheet != sheet; });
        const auto count = static_cast<std::size_t>(end - first);
        if (count >= kGroupFrom) {
            TemplateData::Object group;
            group["title"] = said("sheets", std::string{printer.words().at("sheets." + sheet)});
            group["count"] = counted(count);
            all.groups.emplace_back(std::move(group));
        } else {
            for (auto one = first; one != end; ++one) all.single.emplace_back(title_item(*one));
        }
        first = end;
    }
    return all;
}

}  // namespace

void add_notice_data(TemplateData::Object& data, const PaperWalk& walk, const FollowedPacket& followed,
                     const Printer& printer) {
    Staying stays = staying(walk, printer);
    TemplateData::Items letters;
    for (const SheetChange& change : walk.to_others) {
        TemplateData::Object item;
        item["title"] = title_value(*change.document);
        letters.emplace_back(std::move(item));
    }
    TemplateData::Object papers;
    papers["stops"] = stops(walk);
    papers["down"] = counted(walk.down);
    papers["up"] = counted(walk.up);
    papers["any_down"] = walk.down > 0;
    papers["any_up"] = walk.up > 0;
    papers["any_stays"] = !walk.staying.empty();
    papers["staying"] = std::move(stays.single);
    papers["staying_groups"] = std::move(stays.groups);
    papers["to_others"] = std::move(letters);
    papers["old_revision"] = said("sheet-revision", followed.record->revision);
    data["paperwork"] = std::move(papers);
}

}  // namespace ventfolio
