#include "packet/index_data.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "packet/paper_places.hpp"
#include "packet/paper_values.hpp"
#include "record/sheet_code.hpp"

namespace ventfolio {
namespace {

/// From so many leaves on a sheet is one group of the index, not a row for each.
constexpr std::size_t kGroupFrom = 5;

TemplateData said(const char* name, std::string text, Audiences audiences = folder) {
    return calculated(name, audiences, plain_parts(std::move(text)));
}

TemplateData code_of(const Document& document) { return code_value(sheet_code(document)); }

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
    Index(const Household& home, const Printer& printer, const FollowedPacket* followed,
          std::span<const Document* const> documents)
        : home_{home}, printer_{printer} {
        revision_ = home.profile.orders->revision.given() ? home.profile.orders->revision->text() : "";
        found_.resize(home.profile.copies.size());
        if (followed != nullptr) changes_ = sheet_changes(*followed, {documents.begin(), documents.end()});
    }

    void add_row(const Document& document) {
        TemplateData::Object row;
        row["title"] = title_value(document);
        row["code"] = code_of(document);
        add_state(row, document);
        row["places"] = places({document.name, document.sheet}, document, 1);
        rows_.emplace_back(std::move(row));
    }

    void add_group(std::span<const Document* const> leaves) {
        TemplateData::Items items;
        std::vector<std::string> names{leaves.front()->sheet};
        const std::string start = common_start(leaves);
        for (const Document* leaf : leaves) {
            TemplateData::Object item;
            item["title"] = title_value(*leaf, start);
            item["code"] = code_of(*leaf);
            add_state(item, *leaf);
            items.emplace_back(std::move(item));
            names.push_back(leaf->name);
        }
        TemplateData::Object group;
        group["title"] = said("sheets", std::string{printer_.words().at("sheets." + leaves.front()->sheet)});
        add_state(group, *leaves.front());
        group["leaves_differ"] = differ(leaves);
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
            item["place"] = place_value(copies[at].place.or_else(""));
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
    const SheetChange* kept(const Document& document) const {
        const auto found = std::ranges::find(changes_, document.name, &SheetChange::name);
        return found == changes_.end() || found->state != SheetChange::State::kept ? nullptr : &*found;
    }

    /// The revision that the paper was printed with, and whether this packet brings it.
    void add_state(TemplateData::Object& item, const Document& document) const {
        const SheetChange* stays = kept(document);
        item["revision"] = said("sheet-revision", stays != nullptr ? stays->before->revision : revision_);
        item["is_new"] = !changes_.empty() && stays == nullptr;
        item["is_kept"] = stays != nullptr;
    }

    bool differ(std::span<const Document* const> leaves) const {
        const auto revision_kept = [&](const Document* leaf) {
            const SheetChange* stays = kept(*leaf);
            return stays != nullptr ? stays->before->revision : std::string{};
        };
        return std::ranges::any_of(
            leaves, [&](const Document* leaf) { return revision_kept(leaf) != revision_kept(leaves.front()); });
    }

    /// Where the profile says that copies of these are.
    TemplateData::Items recorded_places(const std::vector<std::string>& names, std::size_t sheets) {
        TemplateData::Items items;
        for (const std::size_t at : recorded_copies(home_.profile, names)) {
            const PaperCopy& copy = home_.profile.copies[at];
            found_[at] = true;
            const std::size_t number = number_of_papers(copy);
            std::string words = copy.place.or_else("");
            if (number > 1) words += fmt::format(" ({})", number);
            papers_ += number * sheets;
            TemplateData::Object item;
            item["place"] = place_value(std::move(words));
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
        const PaperPlace usual = usual_place(document.front("audience").value_or(""));
        TemplateData::Object item;
        item["place"] = TemplateData{};
        item["in_folder"] = usual.kind == PaperPlace::Kind::folder;
        item["not_recorded"] = usual.kind == PaperPlace::Kind::unknown;
        items.emplace_back(std::move(item));
        return items;
    }

    const Household& home_;
    const Printer& printer_;
    std::string revision_;
    std::vector<SheetChange> changes_;  ///< since the packet before; none without one
    TemplateData::Items rows_;
    TemplateData::Items groups_;
    std::size_t papers_ = 0;
    std::vector<bool> found_;
};

}  // namespace

void add_index_data(TemplateData::Object& data, const std::string& own_sheet,
                    std::span<const Document* const> documents, const Household& home, const Printer& printer,
                    const FollowedPacket* followed) {
    Index index{home, printer, followed, documents};
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
