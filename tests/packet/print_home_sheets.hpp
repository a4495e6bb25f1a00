#pragma once

#include <array>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/print_home.hpp"
#include "sheets/document.hpp"

/// The sheets of a home as document trees and as placed drawings, for tests that look at what `print` would draw.
namespace ventfolio::testing {

inline constexpr std::array kHomes{"adult-tracheostomy", "child-tracheostomy", "adult-mask"};
/// These, and three that stretch the papers: long names, two hoses on a toddler, a machine with the wall alone.
inline constexpr std::array kAllHomes{"adult-tracheostomy", "child-tracheostomy", "adult-mask",
                                      "adult-long-names",   "toddler-dual-limb",  "adult-mains-only"};
inline constexpr std::array kPapers{Paper::letter, Paper::a4};
inline constexpr double kNormalPrint = 1;
inline constexpr double kLargePrint = 1.5;

/// The day for which the demo homes are written.
Date demo_day();
const Stationery& stationery();
/// All sheets in Spanish, those for strangers too.
const Stationery& spanish_stationery();
/// English with Spanish under it.
const Stationery& stationery_in_both();
SourceText demo_profile(std::string_view home);
/// A demo home with edits, one a line: see rules/edited_home.hpp.
SourceText edited_profile(std::string_view home, std::string_view edits);

struct SetSheet {
    Document document;
    Furniture furniture;
    PlacedSheet placed;
};

/// A home up to its drawing, by the same steps that print_home takes.
struct SetHome {
    CheckedHome checked;
    std::vector<Finding> of_sheets;  ///< of templates, finished sheets and layout
    std::vector<SetSheet> sheets;    ///< none if the profile is refused

    bool refused_by_profile() const;
    bool refused_by_sheets() const;
    /// "rule: message" of all findings that refuse.
    std::string refusals() const;
};
SetHome set_home(const SourceText& profile, const PageSetup& setup = {});
/// On the usual page. A sheet whose words and furniture are those of `like` is not laid out again: the same drawing
/// would come of it.
SetHome set_home_like(const SetHome& like, const SourceText& profile);
/// A demo home on the usual page, laid out once for all tests of a program.
const SetHome& set_demo_home(std::string_view home);
/// The same with every sheet in Spanish.
const SetHome& set_spanish_home(std::string_view home);
const SetHome& set_home_in_both(std::string_view home);
const SetHome& set_home_in_both_large(std::string_view home);

/// The file of this name among those that print_home made.
std::string file_named(const PrintedHome& home, std::string_view name);
PrintedHome printed_home(const SourceText& profile, const PrintOrder& order = {});

/// Where something stands on its page.
struct Area {
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;

    bool within(const Area& other, double tolerance) const;
    bool overlaps(const Area& other, double tolerance) const;
};
/// What a text, box or rule covers, strokes included.
Area area_of(const PlacedItem& item);
Area live_area(const PlacedPage& page);
bool is_text(const PlacedItem& item);
std::string words_of(const PlacedItem& item);
/// All words of a page with blanks between the items, no-break spaces as blanks.
std::string words_of(const PlacedPage& page);
std::string words_of(const PlacedSheet& sheet);
/// All words of blocks of a document, a line for each block and cell, no-break spaces as blanks.
std::string words_of_blocks(const std::vector<Block>& blocks);
/// A text with each no-break space turned into a blank.
std::string plain_blanks(std::string text);

}  // namespace ventfolio::testing
