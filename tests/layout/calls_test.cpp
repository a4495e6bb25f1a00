#include <doctest/doctest.h>

#include <algorithm>

#include "documents.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

TEST_CASE("a list of calls takes a number in bold where there is no value") {
    for (const char* look : {"", " .line"}) {
        const LaidOut out = laid_out(document_of(
            "## {.calls" + std::string{look} + "}\n\n- **Emergency** {{phone}}\n- **Nurse line** **555-0160**\n",
            {{"phone", value_of("contacts.emergency.phone", {{PrintedPart::Kind::number, "911"}})}}));
        CHECK(out.findings.empty());
        double value_size = 0;
        double bold_size = -1;
        for (const PlacedItem& item : out.sheet.pages.front().items) {
            if (item.kind != PlacedItem::Kind::text) continue;
            if (item.text.text == U"911") value_size = item.text.size;
            if (item.text.text == U"555-0160") bold_size = item.text.size;
        }
        CHECK(bold_size == value_size);
    }
}

TEST_CASE("when to call stands behind the name where a call is one line") {
    const LaidOut out =
        laid_out(document_of("## {.calls .line}\n\n- **Emergency** **911**\n- **Clinic** **555-0160** by day\n"));
    CHECK(out.findings.empty());
    CHECK(body_words(out.sheet) == std::vector<std::string>{"Emergency", "911", "Clinic", "by", "day", "555-0160"});
}

// A row of names that are one word a line would be as high as the longest of them; by hand, three lines are enough.
TEST_CASE("five calls in a line share the room so that no name gets taller than it must") {
    const LaidOut out = laid_out(
        document_of("## {.calls .line}\n\n- **Emergency** **911**\n- **Pellam Power Cooperative** **555-0144**\n"
                    "- **Brackenfell Home Respiratory** **555-0120**\n- **M. Osei-Lind (next door)** **555-0155**\n"
                    "- **Nurse line by day** **555-0161**\n",
                    {}, "orientation: landscape\n"));
    CHECK(out.findings.empty());
    CHECK(misplaced(out.sheet).empty());
    double top = 1e9;
    double bottom = 0;
    for (const PlacedItem& item : out.sheet.pages.front().items) {
        if (item.kind != PlacedItem::Kind::text || item.origin.role != "call") continue;
        top = std::min(top, item.text.origin.y - item.text.ascent);
        bottom = std::max(bottom, item.text.origin.y + item.text.descent);
    }
    CHECK(bottom - top < 3 * 11.2 + 1);
}
