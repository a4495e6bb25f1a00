#include "packet/documents.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "markup/render.hpp"
#include "packet/identifiers.hpp"
#include "packet/worded_home.hpp"
#include "record/sheet_code.hpp"
#include "rules/judge.hpp"
#include "sheets/document_checks.hpp"
#include "sheets/own_code.hpp"
#include "sheets/two_languages.hpp"
#include "units/ascii.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

struct AudienceWord {
    std::string_view word;
    Audience audience;
};

constexpr std::array kAudiences{AudienceWord{"wall", wall},       AudienceWord{"folder", folder},
                                AudienceWord{"crew", crew},       AudienceWord{"wallet", wallet},
                                AudienceWord{"utility", utility}, AudienceWord{"fire", fire}};

/// A word as part of a sheet's name: "bed", "night-nurse", "andres". Empty if it has no letter of the Latin alphabet.
std::string key_of(std::string_view word) {
    std::string key;
    for (const char c : lower_ascii(without_accents(word))) {
        const bool kept = is_small_letter(c) || is_digit(c);
        if (kept)
            key += c;
        else if (!key.empty() && key.back() != '-')
            key += '-';
    }
    while (key.ends_with('-')) key.pop_back();
    return key;
}

/// The lists that sheets are made for, with the word that tells their items apart.
std::vector<std::string> item_keys(std::string_view list, const Household& home) {
    std::vector<std::string> keys;
    if (list == "prescriptions")
        for (const DerivedPrescription& one : home.prescriptions)
            keys.push_back(key_of(one.order->place.or_else(one.order->id.or_else(""))));
    if (list == "caregivers")
        for (const Caregiver& one : home.profile.caregivers)
            keys.push_back(key_of(one.first_name.or_else(one.name.or_else(""))));
    // Two people of one name: the second one is "ann-2".
    for (std::size_t at = 0; at < keys.size(); ++at) {
        if (keys[at].empty()) keys[at] = fmt::format("{}", at + 1);
        const auto same = std::count(keys.begin(), keys.begin() + static_cast<std::ptrdiff_t>(at), keys[at]);
        if (same > 0) keys[at] += fmt::format("-{}", same + 1);
    }
    return keys;
}

using MadeSheets = std::map<std::string, std::vector<Document>>;

std::vector<const Document*> in_order(const MadeSheets& made, const std::vector<std::string>& sheets) {
    std::vector<const Document*> documents;
    for (const std::string& sheet : sheets)
        if (const auto found = made.find(sheet); found != made.end())
            for (const Document& document : found->second) documents.push_back(&document);
    return documents;
}

class Maker {
  public:
    Maker(const Household& home, std::span<const Finding> of_profile, const Stationery& stationery,
          const FollowedPacket* followed, std::vector<Finding>& findings)
        : home_{home},
          stationery_{stationery},
          findings_{findings},
          worded_{home, of_profile, stationery, followed},
          not_yet_checked_{not_yet_checked(of_profile, home.profile)} {}

    void add(const std::string& sheet, std::vector<Document>& documents) {
        const WordedHome& worded = worded_.of(sheet);
        for (const Stationery::Part& part : stationery_.parts_of(sheet))
            if (applies(*part.from, worded.data, findings_)) add_part(sheet, part, worded, documents);
    }

    /// Before a sheet is made that lists something of the others.
    void know(Lists what, const std::string& sheet, const std::vector<const Document*>& made) {
        worded_.know(what, sheet, made, findings_);
    }

  private:
    /// One part of a sheet, in one language.
    struct SheetPart {
        const std::string& sheet;
        const Template& from;
        const WordedHome& worded;
    };

    void add_part(const std::string& sheet, const Stationery::Part& part, const WordedHome& worded,
                  std::vector<Document>& documents) {
        const SheetPart own{sheet, *part.from, worded};
        const std::optional<SheetPart> under = twin_of(own, part.leaf);
        const FrontMatterLine* each = own.from.front("for_each");
        if (!each) return add_made(part.leaf, own, nullptr, under, nullptr, documents);
        if (each->value != "prescriptions" && each->value != "caregivers")
            return findings_.push_back(unknown_list(own.from, *each));
        const TemplateData::Items& items = items_of(worded, each->value);
        const std::vector<std::string> keys = item_keys(each->value, home_);
        for (std::size_t at = 0; at < keys.size(); ++at)
            add_made(keys[at], own, &items[at], under, under ? &items_of(under->worded, each->value)[at] : nullptr,
                     documents);
    }

    static const TemplateData::Items& items_of(const WordedHome& worded, const std::string& list) {
        return *worded.data.object()->at(list).items();
    }

    /// The same part in the language that stands under it.
    std::optional<SheetPart> twin_of(const SheetPart& own, const std::string& leaf) {
        const Stationery* under = stationery_.under(own.sheet);
        if (under == nullptr) return std::nullopt;
        for (const Stationery::Part& part : under->own_parts_of(own.sheet))
            if (part.leaf == leaf) return SheetPart{own.sheet, *part.from, worded_.in(*under)};
        return std::nullopt;  // templates that are missing are told of before anything is made
    }

    void add_made(const std::string& place, const SheetPart& own, const TemplateData* item,
                  const std::optional<SheetPart>& under, const TemplateData* item_under,
                  std::vector<Document>& documents) {
        std::optional<Document> document = made(place, own, item);
        if (!document) return;
        if (under) {
            const std::optional<Document> second = made(place, *under, item_under);
            if (!second) return;
            document = in_two_languages(*document, *second, findings_);
            if (!document) return;
        }
        fill_in_own_code(*document, sheet_code(*document));
        documents.push_back(std::move(*document));
    }

    /// A template with a fault gives no document: half of one must never be set.
    std::optional<Document> made(const std::string& place, const SheetPart& part, const TemplateData* item) {
        Rendered rendered = render(part.from, part.worded.data, item);
        findings_.insert(findings_.end(), rendered.findings.begin(), rendered.findings.end());
        if (!rendered.findings.empty()) return std::nullopt;
        Document document;
        document.sheet = part.sheet;
        document.place = place;
        document.name = place.empty() ? part.sheet : part.sheet + "/" + place;
        document.language = part.worded.stationery->words.language();
        document.template_file = part.from.name();
        document.front_matter = std::move(rendered.front_matter);
        document.title = std::move(rendered.title);
        document.blocks = std::move(rendered.blocks);
        const auto audience = audience_from(document.front("audience").value_or(""));
        if (!audience) {
            findings_.push_back(without_audience(document));
            return std::nullopt;
        }
        document.identifiers = identifiers_for(*audience, home_, part.worded.printer);
        document.not_yet_checked = not_yet_checked_;
        const std::size_t known = findings_.size();
        check_document(document, *audience, home_, part.worded.stationery->phrases, findings_);
        point_at_reading_limit(part.from, std::span{findings_}.subspan(known));
        return document;
    }

    /// A text that is beyond the limit of its own sheet is told with the line that sets the limit.
    static void point_at_reading_limit(const Template& from, std::span<Finding> fresh) {
        const FrontMatterLine* limit = from.front("reading");
        if (limit == nullptr) return;
        for (Finding& finding : fresh) {
            if (finding.rule != "family-text-hard-to-read") continue;
            Mark mark;
            mark.file = from.name();
            mark.place = limit->place;
            mark.label = "the limit of this sheet";
            finding.marks.push_back(std::move(mark));
        }
    }

    static Finding unknown_list(const Template& from, const FrontMatterLine& each) {
        Finding finding;
        finding.rule = "template-name-unknown";
        finding.message = fmt::format(
            "A sheet is made for each of the prescriptions or of the caregivers, not of \"{}\".", each.value);
        Mark mark;
        mark.file = from.name();
        mark.place = each.place;
        finding.marks.push_back(std::move(mark));
        return finding;
    }

    static Finding without_audience(const Document& document) {
        Finding finding;
        finding.rule = "template-without-audience";
        finding.message = fmt::format("The sheet {} does not say for which audience it is.", document.sheet);
        Mark mark;
        mark.file = document.template_file;
        mark.place = {1, 1, 0, 0};
        finding.marks.push_back(std::move(mark));
        return finding;
    }

    const Household& home_;
    const Stationery& stationery_;
    std::vector<Finding>& findings_;
    WordedHomes worded_;
    bool not_yet_checked_;
};

}  // namespace

std::optional<Audience> audience_from(std::string_view word) {
    const auto found = std::ranges::find(kAudiences, word, &AudienceWord::word);
    if (found == kAudiences.end()) return std::nullopt;
    return found->audience;
}

std::vector<std::string> needed_for(const std::vector<std::string>& sheets, const Stationery& stationery) {
    const bool any = std::ranges::any_of(
        sheets, [&](const std::string& sheet) { return lists_of(sheet, stationery) != Lists::nothing; });
    return any ? stationery.in_order() : sheets;
}

std::vector<Document> make_documents(const Household& home, std::span<const Finding> of_profile,
                                     const Stationery& stationery, const std::vector<std::string>& sheets,
                                     std::vector<Finding>& findings, const FollowedPacket* followed) {
    Maker maker{home, of_profile, stationery, followed, findings};
    const std::vector<std::string> needed = needed_for(sheets, stationery);
    MadeSheets made;
    for (const Lists stage : {Lists::nothing, Lists::findings, Lists::changes, Lists::codes}) {
        for (const std::string& sheet : needed) {
            if (lists_of(sheet, stationery) != stage) continue;
            maker.know(stage, sheet, in_order(made, needed));
            maker.add(sheet, made[sheet]);
        }
    }
    std::vector<Document> documents;
    for (const std::string& sheet : sheets) std::ranges::move(made[sheet], std::back_inserter(documents));
    return documents;
}

void leave_one_of_each(std::vector<Finding>& findings) {
    std::set<std::string> known;
    std::erase_if(findings, [&](const Finding& finding) {
        std::string key = finding.rule + "\n" + finding.message;
        for (const Mark& mark : finding.marks) key += "\n" + mark.file + ":" + std::to_string(mark.place.line);
        return !known.insert(std::move(key)).second;
    });
}

}  // namespace ventfolio
