#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "every_one.hpp"
#include "packet/print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

struct Passage {
    std::string place;  ///< document and line of the template; of a row also its label
    std::string text;
    const Inlines* inlines;
    std::size_t column = 0;
    std::string before = {};  ///< what the cell left of it says
};

/// Words and values with a sign for each line to write on and each box to tick.
std::string said(const Inlines& inlines) {
    std::string text;
    for (const Inline& piece : inlines)
        text += piece.kind == Inline::Kind::write_in    ? "____"
                : piece.kind == Inline::Kind::check_box ? "[]"
                                                        : plain_text({piece});
    return text;
}

void add_passages(const std::string& sheet, const std::vector<Block>& blocks, std::vector<Passage>& all) {
    const auto add = [&](const Inlines& inlines, std::size_t line, const std::string& label, std::size_t column) {
        all.push_back({fmt::format("{}:{} {} [{}]", sheet, line, label, column), said(inlines), &inlines, column});
    };
    for (const Block& block : blocks) {
        add(block.inlines, block.line, "", 0);
        add(block.aside, block.line, "aside", 0);
        for (const TableRow& row : block.rows)
            for (std::size_t at = 0; at < row.cells.size(); ++at) {
                add(row.cells[at].inlines, row.line, plain_text(row.cells.front().inlines), at);
                if (at > 0) all.back().before = said(row.cells[at - 1].inlines);
            }
        add_passages(sheet, block.children, all);
    }
}

/// Everything that the sheets of a home say, passage by passage.
std::vector<Passage> passages(const SetHome& home) {
    std::vector<Passage> all;
    for (const SetSheet& sheet : home.sheets) add_passages(sheet.document.name, sheet.document.blocks, all);
    return all;
}

/// What a value that fell out of a sentence leaves behind; empty when nothing.
std::string gap_in(std::string_view text) {
    for (const char* trace : {"  ", " ,", " .", " ;", ", ,", ",,", ": .", "()", "( ", ", .", "..", ":,"})
        if (text.find(trace) != std::string_view::npos) return fmt::format("\"{}\"", trace);
    const std::string_view words = trimmed(text);
    if (words.starts_with(",") || words.starts_with(";")) return "begins with a comma";
    if (words.ends_with(",") || words.ends_with(" to") || words.ends_with(" at") || words.ends_with(" over"))
        return "ends in the middle";
    return {};
}

/// Paths without those of the third and later items of a list, which are printed as the first two are.
bool telling(const std::string& path) {
    return std::ranges::none_of(split(path, '.'), [](const std::string& step) {
        return step.find_first_not_of("0123456789") == std::string::npos && std::stoi(step) > 1;
    });
}

struct WholePaper {
    std::map<std::string, std::string> cells;                      ///< place of a passage to what it says
    std::map<std::string, std::set<std::string>> fields_of_sheet;  ///< fields whose values each document shows
};

WholePaper paper_of(const SetHome& home) {
    WholePaper whole_paper;
    for (const Passage& passage : passages(home)) {
        if (!passage.text.empty()) whole_paper.cells[passage.place] = passage.text;
        const std::string sheet = passage.place.substr(0, passage.place.find(':'));
        for (const Inline& piece : *passage.inlines)
            if (piece.kind == Inline::Kind::value) whole_paper.fields_of_sheet[sheet].insert(piece.value.field);
    }
    return whole_paper;
}

/// A home with a hole is refused at a place of its own file, or prints without a gap.
void check_without_gap(const SetHome& home, const WholePaper& whole_paper) {
    if (home.refused_by_profile()) {
        for (const Finding& finding : home.checked.findings) {
            REQUIRE(!finding.marks.empty());
            CHECK(finding.marks.front().place.known());
        }
        return;
    }
    // A template that stumbles over a home is a fault of the template, not of the home.
    CHECK_MESSAGE(!home.refused_by_sheets(), home.refusals());
    if (home.refused_by_sheets()) return;
    for (const Passage& passage : passages(home)) {
        CHECK_MESSAGE(gap_in(passage.text).empty(), passage.place << ": " << passage.text);
        const bool said_something = whole_paper.cells.contains(passage.place);
        const bool row = passage.column > 0;
        // Beside an answer that is not recorded there is nothing to accept.
        const bool told = passage.before.starts_with("NOT RECORDED");
        CHECK_MESSAGE((!row || !said_something || told || !passage.text.empty()), "blank: " << passage.place);
        for (const Inline& piece : *passage.inlines)
            if (piece.kind == Inline::Kind::value) CHECK_MESSAGE(!piece.value.text().empty(), piece.value.field);
    }
}

/// Every sheet that showed a field says that it is not recorded and whom to ask; how many sheets did.
std::size_t check_told(const SetHome& home, const WholePaper& whole_paper, const std::string& field) {
    std::size_t shown = 0;
    for (const SetSheet& sheet : home.sheets) {
        const auto fields = whole_paper.fields_of_sheet.find(sheet.document.name);
        if (fields == whole_paper.fields_of_sheet.end() || !fields->second.contains(field)) continue;
        std::vector<Passage> all;
        add_passages(sheet.document.name, sheet.document.blocks, all);
        std::size_t told = 0;
        for (const Passage& passage : all) {
            for (const Inline& piece : *passage.inlines) {
                if (piece.value.field != field) continue;
                ++told;
                CHECK(piece.value.not_recorded);
                CHECK(piece.value.text().starts_with("NOT RECORDED - ASK the "));
            }
        }
        CHECK_MESSAGE(told > 0, sheet.document.name << " leaves it out in silence");
        CHECK(words_of(sheet.placed).find("NOT RECORDED") != std::string::npos);
        ++shown;
    }
    return shown;
}

/// Given fields whose absence must be told: by path, with how badly they are wanted.
std::map<std::string, Grade> given_fields(const Profile& profile) {
    std::map<std::string, Grade> grades;
    for (const FieldAt& at : fields_of(profile))
        if (at.field->given() && at.reachable && telling(at.path)) grades[at.path] = at.info.grade;
    return grades;
}

/// Whether no home and no item of a list had this field before; each one is, where every one is tried.
bool is_new(const std::string& path, std::set<std::string>& known) {
    return known.insert(declared_path(path)).second || tries_every_one();
}

}  // namespace

TEST_CASE("the demo homes have no gap to begin with") {
    for (const char* name : kHomes) {
        const SetHome& home = set_demo_home(name);
        CAPTURE(std::string{name});
        REQUIRE(!home.refused_by_profile());
        const WholePaper whole_paper = paper_of(home);
        CHECK(whole_paper.cells.size() > 150);
        check_without_gap(home, whole_paper);
        for (const auto& [place, text] : whole_paper.cells) CHECK_MESSAGE(!text.starts_with("NOT RECORDED"), place);
    }
}

TEST_CASE("a home with any one thing taken out is refused with its place, or prints without a blank and tells of it") {
    std::size_t shown = 0;
    std::set<std::string> known;
    for (const char* name : kHomes) {
        const std::string text = demo_home(name);
        const SetHome& whole = set_demo_home(name);
        const WholePaper whole_paper = paper_of(whole);
        const auto grades = given_fields(whole.checked.profile);
        CAPTURE(std::string{name});
        for (const std::string& path : paths_of(text)) {
            if (!telling(path) || !is_new(path, known)) continue;
            CAPTURE(path);
            const SetHome home = set_home_like(whole, {"home.yaml", edited(text, "remove: " + path)});
            check_without_gap(home, whole_paper);
            const auto grade = grades.find(path);
            if (home.refused_by_profile() || home.refused_by_sheets() || grade == grades.end()) continue;
            if (grade->second == Grade::expected) shown += check_told(home, whole_paper, path);
        }
    }
    CHECK(shown > 50);
}

TEST_CASE("what is unknown prints NOT RECORDED and whom to ask, on every sheet that showed it") {
    std::size_t shown = 0;
    std::set<std::string> known;
    for (const char* name : kHomes) {
        const std::string text = demo_home(name);
        const SetHome& whole = set_demo_home(name);
        const WholePaper whole_paper = paper_of(whole);
        CAPTURE(std::string{name});
        for (const auto& [path, grade] : given_fields(whole.checked.profile)) {
            if (!is_new(path, known)) continue;
            CAPTURE(path);
            const SetHome home = set_home_like(whole, {"home.yaml", edited(text, path + ": unknown")});
            check_without_gap(home, whole_paper);
            if (home.refused_by_profile() || home.refused_by_sheets()) continue;
            CHECK(grade != Grade::essential);
            shown += check_told(home, whole_paper, path);
        }
    }
    CHECK(shown > 100);
}
