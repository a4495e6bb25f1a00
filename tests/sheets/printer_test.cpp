#include <doctest/doctest.h>
#include <fmt/format.h>

#include "packet/print_home_sheets.hpp"
#include "profile/prescription.hpp"
#include "profile/read_measure.hpp"
#include "sheets/printed_numbers.hpp"
#include "sheets/printer.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

std::string text_of(const Printer::Parts& parts) {
    PrintedValue value;
    value.parts = parts;
    return with_replaced(value.text(), kNoBreakSpace, "~");
}

Measure measured(const char* text) {
    for (const Dimension dimension :
         {Dimension::volume, Dimension::pressure, Dimension::flow, Dimension::duration, Dimension::length,
          Dimension::breath_rate, Dimension::fraction, Dimension::temperature}) {
        const auto read = parse_measure(text, units_of(dimension));
        if (const Measure* measure = std::get_if<Measure>(&read)) return *measure;
    }
    FAIL("no measure: " << text);
    return {Decimal::whole(0), unit::s.unit};
}

Printer american() { return {stationery().words, stationery().region}; }

}  // namespace

TEST_CASE("quantities print as the rules for error-free medical writing ask") {
    // `~` is a no-break space.
    struct Row {
        const char* written;
        UnitForm form;
        Zeros zeros;
        const char* printed;
        const char* source;
    };
    const Row rows[] = {
        {".5 L", UnitForm::full, Zeros::drop, "0.5~L", "pub: leading zero, ISMP error-prone notation list (as quoted)"},
        {"5.0 cmH2O", UnitForm::full, Zeros::drop, "5~cmH2O", "pub: no trailing zero, the same"},
        {"5.50 mL", UnitForm::full, Zeros::drop, "5.5~mL", "pub: the same"},
        {"0.0 L/min", UnitForm::full, Zeros::drop, "0~L/min", "pub: the same"},
        {"1200 mL", UnitForm::full, Zeros::drop, "1,200~mL", "pub: commas from 1,000 on, the same"},
        {"6.0 mm", UnitForm::full, Zeros::keep, "6.0~mm", "pub: a label's own size, Joint Commission list (as quoted)"},
        {"8.0 mm", UnitForm::full, Zeros::keep, "8.0~mm", "pub: the same"},
        {"14 breaths/min", UnitForm::full, Zeros::drop, "14~breaths per minute", "pub: per in words, ISMP list"},
        {"14 breaths/min", UnitForm::brief, Zeros::drop, "14~per minute", "der: narrow columns"},
        {"1 breaths/min", UnitForm::full, Zeros::drop, "1~breath per minute", "der: one is singular"},
        {"15 s", UnitForm::full, Zeros::drop, "15~seconds", "der"},
        {"1 s", UnitForm::full, Zeros::drop, "1~second", "der"},
        {"1.0 s", UnitForm::full, Zeros::drop, "1~second", "der: 1.0 is printed 1"},
        {"1.2 s", UnitForm::brief, Zeros::drop, "1.2~s", "der"},
        {"15 s", UnitForm::number_only, Zeros::drop, "15", "der: the unit stands in the head of the column"},
        {"2 L/min", UnitForm::spoken, Zeros::drop, "2~liters per minute", "der: the slash is no word for steps"},
        {"37 °C", UnitForm::full, Zeros::drop, "37~°C", "pub: space before the degree sign, SI brochure 5.4.3"},
        {"92 %", UnitForm::full, Zeros::drop, "92~%", "pub: space before the percent sign, SI brochure 5.4.7"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.written});
        CAPTURE(std::string{row.source});
        CHECK(text_of(american().measure(measured(row.written), row.zeros, row.form)) == std::string{row.printed});
    }
}

TEST_CASE("other regions print their own signs for decimals and thousands") {
    struct Row {
        const char* written;
        NumberFormat numbers;
        const char* printed;
    };
    // SI brochure 5.4.4: the decimal sign is that of the language; groups of three with a thin space.
    const Row rows[] = {
        {"1200 mL", {",", "\u202F"}, "1\u202F200~mL"},
        {"1.1 s", {",", "\u202F"}, "1,1~seconds"},
    };
    for (const Row& row : rows) {
        Region region = stationery().region;
        region.numbers = row.numbers;
        const Printer printer{stationery().words, region};
        CHECK(text_of(printer.measure(measured(row.written), Zeros::drop, UnitForm::full)) == std::string{row.printed});
    }
}

TEST_CASE("a range is said in words, with its unit once") {
    const auto range = [](const char* from, const char* to, UnitForm form = UnitForm::full) {
        return text_of(american().range({measured(from), measured(to)}, Zeros::drop, form));
    };
    // "12-14" has been read as minus, "12/14" as a fraction: ISMP list (as quoted).
    CHECK(range("12 breaths/min", "14 breaths/min") == "12~to~14~breaths per minute");
    CHECK(range("440 mL", "520 mL") == "440~to~520~mL");
    CHECK(range("6.20 L/min", "8.0 L/min") == "6.2~to~8~L/min");
    CHECK(range("21 cmH2O", "21 cmH2O") == "21~cmH2O");
    CHECK(range("21 cmH2O", "21.0 cmH2O") == "21~cmH2O");
    CHECK(range("900 mL", "1.2 L") == "900~mL~to~1.2~L");
    CHECK(range("1 s", "2 s", UnitForm::number_only) == "1~to~2");
}

TEST_CASE("numbers, units and words are told apart, so that each can be set in its own weight") {
    const Printer::Parts parts =
        american().range({measured("12 breaths/min"), measured("14 breaths/min")}, Zeros::drop, UnitForm::brief);
    REQUIRE(parts.size() == 4);
    CHECK(parts[0] == PrintedPart{PrintedPart::Kind::number, "12"});
    CHECK(parts[1] == PrintedPart{PrintedPart::Kind::word, "\u00A0to\u00A0"});
    CHECK(parts[2] == PrintedPart{PrintedPart::Kind::number, "14"});
    CHECK(parts[3] == PrintedPart{PrintedPart::Kind::unit, "\u00A0per minute"});
}

TEST_CASE("dates and times are written out and never break at a line end") {
    const auto plain = [](std::string text) { return with_replaced(std::move(text), kNoBreakSpace, "~"); };
    const Printer printer = american();
    // A date in figures is read in two ways: ISMP list (as quoted).
    CHECK(plain(printer.date(*Date::parse("2026-01-09"))) == "9~January~2026");
    CHECK(plain(printer.date(*Date::parse("2026-01-09"), UnitForm::brief)) == "9~Jan~2026");
    for (int month = 1; month <= 12; ++month) {
        const Date day = *Date::of(2026, static_cast<unsigned>(month), 1);
        CHECK(printer.date(day).find('.') == std::string::npos);
        CHECK(printer.date(day).size() >= printer.date(day, UnitForm::brief).size());
    }
    struct Row {
        const char* written;
        const char* twelve;
        const char* twenty_four;
    };
    // Noon and midnight are words: 12 AM and 12 PM are read in both ways (NIST Special Publication 330, as quoted).
    const Row rows[] = {
        {"0:00", "midnight", "00:00"},  {"0:01", "12:01~AM", "00:01"}, {"8:00", "8~AM", "08:00"},
        {"11:59", "11:59~AM", "11:59"}, {"12:00", "noon", "12:00"},    {"12:30", "12:30~PM", "12:30"},
        {"13:00", "1~PM", "13:00"},     {"20:05", "8:05~PM", "20:05"}, {"23:59", "11:59~PM", "23:59"},
    };
    Region region = stationery().region;
    region.clock = Region::Clock::twenty_four_hours;
    const Printer long_days{stationery().words, region};
    for (const Row& row : rows) {
        CAPTURE(std::string{row.written});
        const std::vector<std::string> parts = split(row.written, ':');
        const ClockTime time{std::stoi(parts[0]) * 60 + std::stoi(parts[1])};
        CHECK(plain(printer.time(time)) == row.twelve);
        CHECK(plain(long_days.time(time)) == row.twenty_four);
    }
    region.date_order = Region::DateOrder::month_day_year;
    CHECK(plain(Printer{stationery().words, region}.date(*Date::parse("2026-01-09"))) == "January~9,~2026");
    // Spanish joins day, month and year by "de": Real Academia Española, Ortografía, 2010 (from memory). The day comes
    // first wherever the paper is read. No line ends inside it.
    for (const Region& place : {stationery().region, region}) {
        const Printer spanish{spanish_stationery().words, place};
        CHECK(plain(spanish.date(*Date::parse("2026-01-12"))) == "12~de~enero~de~2026");
        CHECK(plain(spanish.date(*Date::parse("2026-01-12"), UnitForm::brief)) == "12~ene~2026");
    }
}

TEST_CASE("hours and minutes leave out what is nothing") {
    const auto said = [](long long minutes) { return text_of(american().hours_and_minutes(minutes)); };
    CHECK(said(0) == "0~minutes");
    CHECK(said(1) == "1~minute");
    CHECK(said(59) == "59~minutes");
    CHECK(said(60) == "1~hour");
    CHECK(said(61) == "1~hour 1~minute");
    CHECK(said(735) == "12~hours 15~minutes");
}

TEST_CASE("the five states of a field print differently") {
    const Printer printer = american();
    const FieldInfo info{.key = "high_pressure", .on = wall | folder, .ask = "prescriber"};
    Field<Pressure> field;
    const auto printed = [&] { return printer.print(field, info, "alarms.high_pressure"); };
    CHECK(printed().text() == "NOT RECORDED - ASK the prescriber");
    CHECK(printed().not_recorded);
    field.state = FieldState::unknown;
    CHECK(printed().text() == "NOT RECORDED - ASK the prescriber");
    field.state = FieldState::off;
    CHECK(printed().text() == "OFF");
    field.state = FieldState::none;
    CHECK(printed().text() == "none");
    field.give(measured("0 cmH2O"), {});
    CHECK(plain_blanks(printed().text()) == "0 cmH2O");
    CHECK(!printed().not_recorded);
    CHECK(printed().field == "alarms.high_pressure");
    CHECK(printed().audiences == (wall | folder));
}

TEST_CASE("a setting is printed in the unit of the device and never converted") {
    const Printer printer = american();
    for (const char* written : {"16 cmH2O", "16 hPa", "16 mbar", "0.5 L", "500 mL", "1100 ms", "1.1 s"}) {
        const Measure measure = measured(written);
        const std::string text = text_of(printer.measure(measure, Zeros::drop, UnitForm::full));
        CAPTURE(text);
        const std::string number = printed(measure.number, stationery().region.numbers);
        CHECK(text.starts_with(number + "~"));
        CHECK(text.substr(number.size() + 1) ==
              std::string{stationery().words.at("units." + std::string{measure.unit.symbol})});
    }
}

TEST_CASE("numbers in a text of the program are written as the region does") {
    // SI Brochure, 9th edition, 5.4.4 (from memory): the decimal sign is a point or a comma, thousands stand apart by a
    // blank. `~` is a no-break space.
    const NumberFormat comma{",", std::string{kNoBreakSpace}};
    const std::pair<const char*, const char*> rows[] = {
        {"(2,000 psi - 500 psi) x 0.28", "(2~000 psi - 500 psi) x 0,28"},
        {"3.086 s; 1.2 s / 4.286 s = 28 %.", "3,086 s; 1,2 s / 4,286 s = 28 %."},
        {"12, 14 and 16", "12, 14 and 16"},
        {"prescriptions.0.rate", "prescriptions.0.rate"},
        {"version 1.2.3", "version 1.2.3"},
    };
    for (const auto& [text, expected] : rows) {
        CHECK(with_replaced(with_printed_numbers(text, comma), kNoBreakSpace, "~") == expected);
        CHECK(with_printed_numbers(text, {}) == text);
    }
}
