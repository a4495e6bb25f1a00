#include "print_home_sheets.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "packet/documents.hpp"
#include "packet/sheet_furniture.hpp"
#include "packet/stationery_shelf.hpp"
#include "record/sheet_code.hpp"
#include "rules/edited_home.hpp"
#include "rules/judge.hpp"
#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

bool refuses(const Finding& finding) { return finding.severity == Severity::refuse; }

Measurer& measurer() {
    static Measurer one;
    return one;
}

/// The drawing that the same words and furniture gave before.
const PlacedSheet* known_drawing(const SetHome* like, const Document& document, const Furniture& furniture) {
    if (!like || like->refused_by_sheets()) return nullptr;
    for (const SetSheet& sheet : like->sheets)
        if (sheet.document == document && sheet.furniture == furniture) return &sheet.placed;
    return nullptr;
}

SetHome set(const SourceText& profile, const PageSetup& setup, const SetHome* like, const Stationery& own) {
    SetHome home;
    home.checked = check_home(profile, demo_day(), &stationery().region);
    if (home.refused_by_profile()) return home;
    const Household household{home.checked.profile, demo_day()};
    for (Document& document : make_documents(household, home.checked.findings, own, own.in_order(), home.of_sheets)) {
        Furniture furniture = furniture_for(document, household, own, sheet_code(document));
        const PlacedSheet* known = known_drawing(like, document, furniture);
        PlacedSheet placed = known ? *known : lay_out(document, furniture, setup, measurer(), home.of_sheets);
        home.sheets.push_back({std::move(document), std::move(furniture), std::move(placed)});
    }
    return home;
}

}  // namespace

Date demo_day() { return *Date::parse("2026-02-03"); }

const Stationery& stationery() {
    static std::vector<Finding> faults;
    static const Stationery one = built_in_stationery("en", "us", faults);
    REQUIRE_MESSAGE(faults.empty(), summary(faults));
    return one;
}

const Stationery& spanish_stationery() {
    static std::vector<Finding> faults;
    static const Stationery one = built_in_stationery("es", "us", faults);
    REQUIRE_MESSAGE(faults.empty(), summary(faults));
    return one;
}

const Stationery& stationery_in_both() {
    static const StationeryShelf shelf{built_in_files()};
    const ShelvedStationery& both = shelf.at("en+es", {"us"});
    REQUIRE_MESSAGE(both.faults.empty(), summary(both.faults));
    return both.stationery;
}

SourceText demo_profile(std::string_view home) { return {std::string{home} + ".yaml", demo_home(home)}; }

SourceText edited_profile(std::string_view home, std::string_view edits) {
    return {std::string{home} + ".yaml", edited(demo_home(home), edits)};
}

bool SetHome::refused_by_profile() const { return !checked.readable || std::ranges::any_of(checked.findings, refuses); }

bool SetHome::refused_by_sheets() const { return std::ranges::any_of(of_sheets, refuses); }

std::string SetHome::refusals() const {
    std::vector<Finding> all;
    std::ranges::copy_if(checked.findings, std::back_inserter(all), refuses);
    std::ranges::copy_if(of_sheets, std::back_inserter(all), refuses);
    return summary(all);
}

SetHome set_home(const SourceText& profile, const PageSetup& setup) {
    return set(profile, setup, nullptr, stationery());
}

SetHome set_home_like(const SetHome& like, const SourceText& profile) { return set(profile, {}, &like, stationery()); }

namespace {

const SetHome& set_once(std::map<std::string, SetHome, std::less<>>& homes, std::string_view home,
                        const Stationery& stationery, const PageSetup& setup = {}) {
    const auto known = homes.find(home);
    if (known != homes.end()) return known->second;
    return homes.emplace(home, set(demo_profile(home), setup, nullptr, stationery)).first->second;
}

}  // namespace

const SetHome& set_demo_home(std::string_view home) {
    static std::map<std::string, SetHome, std::less<>> homes;
    return set_once(homes, home, stationery());
}

const SetHome& set_spanish_home(std::string_view home) {
    static std::map<std::string, SetHome, std::less<>> homes;
    return set_once(homes, home, spanish_stationery());
}

const SetHome& set_home_in_both(std::string_view home) {
    static std::map<std::string, SetHome, std::less<>> homes;
    return set_once(homes, home, stationery_in_both());
}

const SetHome& set_home_in_both_large(std::string_view home) {
    static std::map<std::string, SetHome, std::less<>> homes;
    return set_once(homes, home, stationery_in_both(), {Paper::letter, kLargePrint});
}

std::string file_named(const PrintedHome& home, std::string_view name) {
    const auto found = std::ranges::find(home.drawings, name, &FolderFile::name);
    REQUIRE_MESSAGE(found != home.drawings.end(), std::string{name});
    return found->bytes;
}

PrintedHome printed_home(const SourceText& profile, const PrintOrder& order) {
    return print_home(profile, demo_day(), order, stationery(), measurer());
}

bool Area::within(const Area& other, double tolerance) const {
    return left >= other.left - tolerance && right <= other.right + tolerance && top >= other.top - tolerance &&
           bottom <= other.bottom + tolerance;
}

bool Area::overlaps(const Area& other, double tolerance) const {
    return std::min(right, other.right) - std::max(left, other.left) > tolerance &&
           std::min(bottom, other.bottom) - std::max(top, other.top) > tolerance;
}

Area area_of(const PlacedItem& item) {
    switch (item.kind) {
        case PlacedItem::Kind::text: {
            const TextRun& run = item.text;
            return {run.origin.x, run.origin.y - run.ascent, run.origin.x + run.width, run.origin.y + run.descent};
        }
        case PlacedItem::Kind::box: {
            const double half = item.box.stroke / 2;
            return {item.box.corner.x - half, item.box.corner.y - half, item.box.corner.x + item.box.width + half,
                    item.box.corner.y + item.box.height + half};
        }
        case PlacedItem::Kind::rule:
            return {std::min(item.rule.from.x, item.rule.to.x), std::min(item.rule.from.y, item.rule.to.y),
                    std::max(item.rule.from.x, item.rule.to.x), std::max(item.rule.from.y, item.rule.to.y)};
        case PlacedItem::Kind::picture: {
            const PlacedPicture& picture = item.picture;
            return {picture.corner.x, picture.corner.y, picture.corner.x + picture.width,
                    picture.corner.y + picture.height};
        }
        case PlacedItem::Kind::path:
            break;
    }
    Area area{1e9, 1e9, -1e9, -1e9};
    for (const Path::Segment& segment : item.path.segments) {
        if (segment.kind == Path::Segment::Kind::close) continue;
        const bool curve = segment.kind == Path::Segment::Kind::curve;
        // A curve stays inside the hull of its points.
        for (const Point& point : {segment.a, curve ? segment.b : segment.a, curve ? segment.c : segment.a}) {
            area.left = std::min(area.left, point.x);
            area.right = std::max(area.right, point.x);
            area.top = std::min(area.top, point.y);
            area.bottom = std::max(area.bottom, point.y);
        }
    }
    return area;
}

Area live_area(const PlacedPage& page) {
    return {page.margin_left, page.margin_top, page.width - page.margin_right, page.height - page.margin_bottom};
}

bool is_text(const PlacedItem& item) { return item.kind == PlacedItem::Kind::text; }

std::string words_of(const PlacedItem& item) {
    std::string words;
    for (const char32_t letter : item.text.text) words += utf8(letter);
    return words;
}

std::string words_of(const PlacedPage& page) {
    std::string words;
    for (const PlacedItem& item : page.items)
        if (is_text(item)) words += plain_blanks(words_of(item)) + " ";
    return words;
}

std::string words_of(const PlacedSheet& sheet) {
    std::string words;
    for (const PlacedPage& page : sheet.pages) words += words_of(page);
    return words;
}

std::string words_of_blocks(const std::vector<Block>& blocks) {
    std::string words;
    for (const Block& block : blocks) {
        words += plain_blanks(plain_text(block.inlines)) + "\n";
        words += words_of_blocks(block.children);
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) words += plain_blanks(plain_text(cell.inlines)) + "\n";
    }
    return words;
}

std::string plain_blanks(std::string text) { return with_replaced(std::move(text), kNoBreakSpace, " "); }

}  // namespace ventfolio::testing
