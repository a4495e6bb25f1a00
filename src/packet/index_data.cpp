#include "packet/index_data.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "record/sheet_code.hpp"

namespace ventfolio {
namespace {

/// From so many leaves on a sheet is one group of the index, not a row for each.
constexpr std::size_t kGroupFrom = 5;

TemplateData said(const char* name, std::string text, Audiences audiences = folder) {
    return calculated(name, audiences, plain_parts(std::move(text)));
}

TemplateData code_of(const Document& document) {
    PrintedValue value = calculated("sheet-code", folder, plain_parts(sheet_code(document)));
    value.quoted = true;  // letters and digits as they fall, such as 1E3
    return value;
}

/// A title may name a person or a place: it stands where all its values may.
TemplateData title_of(const Document& document, std::string_view without = {}) {
    Audiences audiences = 0xFF;
    for (const Inline& piece : document.title)
        if (piece.kind == Inline::Kind::value) audiences &= piece.value.audiences;
    std::string title = plain_text(document.title);
    if (title.starts_with(without)) title.erase(0, without.size());
    return said("sheet-title", std::move(title), audiences);
}

/// A place that fits on a line is not broken: what stands behind its box belongs to it.
TemplateData place(std::string words) {
    constexpr std::size_t kFitsOnLine = 34;
    const auto kind = words.size() <= kFitsOnLine ? PrintedPart::Kind::unit : PrintedPart::Kind::word;
    return calculated("copy-place", folder, {{kind, std::move(words)}});
}

/// What the titles of leaves have in common at their start, up to a blank: the group's own title says it.
std::string common_start(std::span<const Document* const> leaves) {
    const std::string last = plain_text(leaves.back()->title);
    const std::string before = plain_text(leaves[leaves.size() - 2]->title);
    const auto differ = std::ranges::mismatch(last, before);
    const std::string shared{last.begin(), differ.in1};
    const auto blank = shared.rfind(' ');
    return blank == std::string::npos ? std::string{} : shared.substr(0, blank + 1);
}

class Index {
  public:
    Index(const Household& home, const Printer& printer) : home_{home}, printer_{printer} {
        revision_ = home.profile.orders->revision.given() ? home.profile.orders->revision->text() : "";
        found_.resize(home.profile.copies.size());
    }

    void add_row(const Document& document) {
        TemplateData::Object row;
        row["title"] = title_of(document);
        row["code"] = code_of(document);
        row["revision"] = said("sheet-revision", revision_);
        row["places"] = places({document.name, document.sheet}, document, 1);
        rows_.emplace_back(std::move(row));
    }

    void add_group(std::span<const Document* const> leaves) {
        TemplateData::Items items;
        std::vector<std::string> names{leaves.front()->sheet};
        const std::string start = common_start(leaves);
        for (const Document* leaf : leaves) {
            TemplateData::Object item;
            item["title"] = title_of(*leaf, start);
            item["code"] = code_of(*leaf);
            items.emplace_back(std::move(item));
            names.push_back(leaf->name);
        }
        TemplateData::Object group;
        group["title"] = said("sheets", std::string{printer_.words().at("sheets." + leaves.front()->sheet)});
        group["revision"] = said("sheet-revision", revision_);
        group["count"] = said("sheets", fmt::format("{}", leaves.size()));
        group["places"] = places(names, *leaves.front(), leaves.size());
        group["leaves"] = std::move(items);
        groups_.emplace_back(std::move(group));
    }

    void finish(TemplateData::Object& data, const std::string& own_sheet) {
        TemplateData::Items own = recorded_places({own_sheet}, 1);
        ++papers_;  // the one at the front of the folder
        TemplateData::Items unknown;
        const auto& copies = home_.profile.copies;
        for (std::size_t at = 0; at < copies.size(); ++at) {
            if (found_[at]) continue;
            TemplateData::Object item;
            item["sheet"] = said("copy-sheet", copies[at].sheet.or_else(""));
            item["place"] = place(copies[at].place.or_else(""));
            unknown.emplace_back(std::move(item));
        }
        data["index"] = std::move(rows_);
        data["leaf_groups"] = std::move(groups_);
        data["own_places"] = std::move(own);
        data["own_revision"] = said("sheet-revision", revision_);
        data["papers"] = calculated("papers", folder, {{PrintedPart::Kind::number, fmt::format("{}", papers_)}});
        data["copies_without_sheet"] = std::move(unknown);
    }

  private:
    /// Where the profile says that copies of these are.
    TemplateData::Items recorded_places(const std::vector<std::string>& names, std::size_t sheets) {
        TemplateData::Items items;
        const auto& copies = home_.profile.copies;
        for (std::size_t at = 0; at < copies.size(); ++at) {
            const PaperCopy& copy = copies[at];
            if (!copy.sheet.given() || std::ranges::find(names, *copy.sheet) == names.end()) continue;
            found_[at] = true;
            const auto number = copy.number.given() ? static_cast<std::size_t>((*copy.number).in(unit::pieces)) : 1;
            std::string words = copy.place.or_else("");
            if (number > 1) words += fmt::format(" ({})", number);
            papers_ += number * sheets;
            TemplateData::Object item;
            item["place"] = place(std::move(words));
            item["in_folder"] = item["not_recorded"] = false;
            items.emplace_back(std::move(item));
        }
        return items;
    }

    /// The same, or where the paper belongs if no copy is recorded: into the folder, or to a place that nobody wrote
    /// down.
    TemplateData::Items places(const std::vector<std::string>& names, const Document& document, std::size_t sheets) {
        TemplateData::Items items = recorded_places(names, sheets);
        if (!items.empty()) return items;
        papers_ += sheets;
        const auto audience = document.front("audience");
        const bool elsewhere = audience == "wall" || audience == "wallet";
        TemplateData::Object item;
        item["place"] = TemplateData{};
        item["in_folder"] = !elsewhere;
        item["not_recorded"] = elsewhere;
        items.emplace_back(std::move(item));
        return items;
    }

    const Household& home_;
    const Printer& printer_;
    std::string revision_;
    TemplateData::Items rows_;
    TemplateData::Items groups_;
    std::size_t papers_ = 0;
    std::vector<bool> found_;
};

}  // namespace

void add_index_data(TemplateData::Object& data, const std::string& own_sheet,
                    std::span<const Document* const> documents, const Household& home, const Printer& printer) {
    Index index{home, printer};
    for (std::size_t first = 0; first < documents.size();) {
        std::size_t end = first + 1;
        while (end < documents.size() && documents[end]->sheet == documents[first]->sheet) ++end;
        const auto same = documents.subspan(first, end - first);
        if (same.size() >= kGroupFrom)
            index.add_group(same);
        else
            for (const Document* document : same) index.add_row(*document);
        first = end;
    }
    index.finish(data, own_sheet);
}

}  // namespace ventfolio
