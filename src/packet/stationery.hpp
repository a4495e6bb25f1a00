#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "markup/template.hpp"
#include "sheets/checks/phrases.hpp"
#include "sheets/plain_words.hpp"
#include "sheets/word_book.hpp"

namespace ventfolio {

/// What all homes share: the templates of one language, its words, and the ways of a region. Read once per process and
/// then only looked at.
struct Stationery {
    /// By sheet name, "bedside-card", or by sheet and leaf, "alarm-response/high-pressure": a template in a folder of
    /// its sheet's name is one of its leaves.
    std::map<std::string, Template, std::less<>> sheets;
    WordBook words;
    PhraseBook phrases;
    PlainWords plain;
    Region region;
    std::string region_name;          ///< "us"
    std::string digest;               ///< SHA-256 over all these files: another one means that words may have changed
    std::vector<SourceText> sources;  ///< of templates and word files, so that messages can quote them

    /// The language of the region, in which the sheets for strangers are (`for: strangers` in their front matter): the
    /// crew and the power company read it, whatever the family reads. Null where that is this language, too.
    const Stationery* for_strangers = nullptr;
    /// The language that stands under this one on each sheet (`--lang en+es`); null where one language is printed.
    const Stationery* second = nullptr;
    /// Files of sheets that the first language has and this one lacks, without their folder: "bedside-card.md".
    std::vector<std::string> missing;

    /// With which stationery a sheet is made: this one, or that for strangers.
    const Stationery& of(std::string_view sheet) const;

    /// What stands under a sheet's own words: the language of the two in which it is not made. Null for a sheet that is
    /// printed in one language (`two_languages: no` in its front matter).
    const Stationery* under(std::string_view sheet) const;
    /// "en", or "en+es".
    std::string languages() const;

    /// Sheet names in the order of the folder.
    std::vector<std::string> in_order() const;

    /// A template of a sheet; `leaf` is empty for the one that has the sheet's own name.
    struct Part {
        std::string leaf;
        const Template* from;
    };
    /// The templates of a sheet in the order in which they are read. Empty where there is no such sheet.
    std::vector<Part> parts_of(std::string_view sheet) const;
    /// Those in this very language, also of a sheet for strangers.
    std::vector<Part> own_parts_of(std::string_view sheet) const;
};

/// Templates and word files by their path: "en/bedside-card.md", "regions/us.yaml".
using TemplateFiles = std::map<std::string, std::string>;

/// What a clinic has in the place of built-in files.
struct OwnFiles {
    std::map<std::string, std::string> names;    ///< of files by their path, as messages show them
    TemplateFiles words;                         ///< by path; they lie over the words that are read from there
    std::shared_ptr<const Pictures> pictures{};  ///< that templates may name; null: none
};

/// The files that the program holds.
TemplateFiles built_in_files();

/// Reads the stationery of one language and region. Faults of the files are appended to `findings`; with any of them
/// nothing may be printed.
///
/// Throws std::invalid_argument where the files of the language or the region are missing.
Stationery read_stationery(const TemplateFiles& files, std::string_view language, std::string_view region,
                           std::vector<Finding>& findings, const OwnFiles& own = {});

/// The built-in stationery. Faults of its files are appended to `findings`.
///
/// Throws std::invalid_argument for a language or region that the program does not have; the message lists those it
/// has.
Stationery built_in_stationery(std::string_view language, std::string_view region, std::vector<Finding>& findings);

}  // namespace ventfolio
