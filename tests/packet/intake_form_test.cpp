#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "packet/intake_form.hpp"
#include "print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

void show_blank_profile(Visitor& visitor) {
    Profile blank;
    blank.describe(visitor);
}

struct FormRow {
    std::string question;
    std::string answer;
    std::size_t boxes = 0;
    std::size_t lines = 0;
    std::size_t part = 0;
};

std::vector<FormRow> rows_of(const Document& form) {
    std::vector<FormRow> rows;
    std::size_t part = 0;
    for (const Block& block : form.blocks) {
        if (block.kind == Block::Kind::heading) ++part;
        for (const TableRow& row : block.rows) {
            FormRow one;
            one.question = plain_text(row.cells[0].inlines);
            one.answer = plain_blanks(plain_text(row.cells[1].inlines));
            one.part = part;
            for (const Inline& piece : row.cells[1].inlines) {
                if (piece.kind == Inline::Kind::check_box) ++one.boxes;
                if (piece.kind == Inline::Kind::write_in) ++one.lines;
            }
            if (!row.cells[1].inlines.empty()) rows.push_back(std::move(one));
        }
    }
    return rows;
}

}  // namespace

TEST_CASE("the blank form asks for every field that a profile can hold, each with room to write or boxes to tick") {
    const std::vector<FormRow> rows = rows_of(intake_document(show_blank_profile, stationery()));
    const std::vector<DeclaredField> fields = declared_fields_of<Profile>();
    CHECK(rows.size() == fields.size());
    for (const DeclaredField& field : fields) {
        CAPTURE(field.path);
        const std::string help = with_replaced(sentence_start(std::string{field.info.help}), "_", " ");
        const auto asked = [&](const FormRow& row) {
            if (row.question != help) return false;
            if (!field.choices.empty()) return row.boxes >= field.choices.size();
            return field.kind == ValueKind::flag ? row.boxes >= 2 : row.lines >= 1;
        };
        CHECK(std::ranges::any_of(rows, asked));
    }
}

TEST_CASE("the form says the unit beside the line, and asks first for what nothing is printed without") {
    struct Row {
        const char* question;
        const char* answer;
        std::size_t part;
    };
    const Row rows[] = {
        {"Full name as on official papers", "", 1},
        {"Hours on the ventilator in 24 hours", "hours", 1},
        {"Body weight", "kg, g or pounds", 2},
        {"Alarm when the pressure is above", "cmH2O, hPa or mbar", 2},
    };
    const std::vector<FormRow> all = rows_of(intake_document(show_blank_profile, stationery()));
    for (const Row& row : rows) {
        CAPTURE(std::string{row.question});
        const auto found = std::ranges::find(all, row.question, &FormRow::question);
        REQUIRE(found != all.end());
        CHECK(found->part == row.part);
        CHECK(found->answer.find(row.answer) != std::string::npos);
    }
    CHECK(std::ranges::is_sorted(all, {}, &FormRow::part));
}

TEST_CASE("the form fits on both papers, and is the same each time") {
    Measurer measurer;
    for (const Paper paper : kPapers) {
        std::vector<Finding> findings;
        const std::string form = intake_form(show_blank_profile, stationery(), paper, measurer, findings);
        CHECK(findings.empty());
        CHECK(form.starts_with("%PDF-"));
        CHECK(form == intake_form(show_blank_profile, stationery(), paper, measurer, findings));
    }
}
