#include "pdf/structure_tree.hpp"

#include <fmt/format.h>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string_view>

#include "pdf/drawn_area.hpp"

namespace ventfolio {
namespace {

using Kind = StructureElement::Kind;

/// The standard types of ISO 32000-1, 14.8.4.
std::string type_of(const StructureElement& element) {
    switch (element.kind) {
        case Kind::sheet:
            return "Sect";
        case Kind::heading:
            return fmt::format("H{}", element.level);
        case Kind::paragraph:
            return "P";
        case Kind::list:
            return "L";
        case Kind::item:
            return "LI";
        case Kind::label:
            return "Lbl";
        case Kind::body:
            return "LBody";
        case Kind::table:
            return "Table";
        case Kind::row:
            return "TR";
        case Kind::column_head:
        case Kind::row_head:
            return "TH";
        case Kind::cell:
            return "TD";
        case Kind::note:
            return "Div";  // Note is for footnotes (ISO 14289-1, 7.9)
        case Kind::figure:
            return "Figure";
        case Kind::span:
            return "Span";
    }
    throw std::logic_error{"an element without a type"};
}

bool is_cell(Kind kind) { return kind == Kind::cell || kind == Kind::row_head || kind == Kind::column_head; }

/// Which elements hold something, by themselves or below them. Parents come before their children.
template <class Stretches>
std::vector<bool> in_use(const std::vector<StructureElement>& elements, const Stretches& stretches) {
    std::vector<bool> used(elements.size());
    for (std::size_t at = elements.size(); at-- > 0;) {
        used[at] = used[at] || !stretches[at].empty();
        if (used[at]) used[elements[at].parent] = true;
    }
    for (std::size_t at = 0; at < elements.size(); ++at)
        if (is_cell(elements[at].kind)) used[at] = used[elements[at].parent];
    return used;
}

/// Where the figures of a sheet stand, each on the first page that it is on: [left, bottom, right, top].
std::map<std::size_t, std::array<double, 4>> figure_edges(const PlacedSheet& sheet) {
    std::map<std::size_t, std::array<double, 4>> all;
    for (const PlacedPage& page : sheet.pages) {
        std::map<std::size_t, DrawnArea> areas;
        for (const PlacedItem& item : page.items) {
            const std::size_t element = item.origin.element;
            if (element >= sheet.structure.size() || sheet.structure[element].kind != Kind::figure) continue;
            areas[element].take_in(drawn_area(item));
        }
        for (const auto& [element, area] : areas)
            all.try_emplace(element, std::array{std::floor(area.left), std::floor(page.height - area.bottom),
                                                std::ceil(area.right), std::ceil(page.height - area.top)});
    }
    return all;
}

}  // namespace

StructureTree::StructureTree(HaruDocument& document, std::string language)
    : document_{document},
      language_{std::move(language)},
      root_{document.new_indirect_dictionary()},
      whole_{document.new_indirect_dictionary()},
      sheets_{nullptr},
      parents_{nullptr} {
    document_.add_name(root_, "Type", "StructTreeRoot");
    document_.add(document_.catalog(), "StructTreeRoot", root_);
    document_.add(root_, "K", whole_);
    parents_ = document_.add_array(document_.add_dictionary(root_, "ParentTree"), "Nums");
    document_.add_name(whole_, "Type", "StructElem");
    document_.add_name(whole_, "S", "Document");
    document_.add(whole_, "P", root_);
    sheets_ = document_.add_array(whole_, "K");
    document_.add_flag(document_.add_dictionary(document_.catalog(), "MarkInfo"), "Marked", true);
}

void StructureTree::add_page(HPDF_Page page, std::vector<std::size_t> marked) {
    document_.add_number(page, "StructParents", static_cast<double>(page_count_));
    document_.add_name(page, "Tabs", "S");
    pages_.push_back({page, std::move(marked), page_count_});
    ++page_count_;
}

std::vector<std::vector<StructureTree::Stretch>> StructureTree::stretches_of(const PlacedSheet& sheet) const {
    std::vector<std::vector<Stretch>> stretches(sheet.structure.size());
    for (const Page& page : pages_)
        for (std::size_t number = 0; number < page.marked.size(); ++number) {
            if (page.marked[number] >= stretches.size())
                throw std::logic_error{"an item of an element that is not there"};
            stretches[page.marked[number]].push_back({&page, number});
        }
    return stretches;
}

HPDF_Dict StructureTree::add_element(const StructureElement& element, HPDF_Dict parent, HPDF_Array siblings) {
    const HPDF_Dict own = document_.new_indirect_dictionary();
    document_.add_name(own, "S", type_of(element));
    document_.add(own, "P", parent);
    if (element.kind == Kind::figure) document_.add_text(own, "Alt", element.instead);
    if (element.kind != Kind::figure && !element.instead.empty())
        document_.add_text(own, "ActualText", element.instead);
    document_.add(siblings, own);
    return own;
}

/// Attributes of ISO 32000-1, 14.8.5: which cells a head is for, what the labels of a list are, where a figure stands.
void StructureTree::add_attributes(const StructureElement& element, HPDF_Dict own, const std::optional<Edges>& drawn) {
    const auto add = [&](const char* owner) {
        const HPDF_Dict attributes = document_.add_dictionary(own, "A");
        document_.add_name(attributes, "O", owner);
        return attributes;
    };
    if (element.kind == Kind::column_head || element.kind == Kind::row_head)
        document_.add_name(add("Table"), "Scope", element.kind == Kind::row_head ? "Row" : "Column");
    if (element.kind == Kind::list && element.numbered) document_.add_name(add("List"), "ListNumbering", "Decimal");
    if (element.kind == Kind::figure && drawn) {
        const HPDF_Array box = document_.add_array(add("Layout"), "BBox");
        for (const double edge : *drawn) document_.add_number(box, edge);
    }
}

/// Numbers alone, where all are on one page; else each with its page.
void StructureTree::add_stretches(const std::vector<Stretch>& stretches, HPDF_Dict element, HPDF_Array children) {
    if (stretches.empty()) return;
    const Page* page = stretches.front().page;
    document_.add(element, "Pg", page->handle);
    for (const Stretch& stretch : stretches) {
        if (stretch.page == page) {
            document_.add_number(children, static_cast<double>(stretch.number));
            continue;
        }
        const HPDF_Dict reference = document_.add_dictionary(children);
        document_.add_name(reference, "Type", "MCR");
        document_.add(reference, "Pg", stretch.page->handle);
        document_.add_number(reference, "MCID", static_cast<double>(stretch.number));
    }
}

void StructureTree::add_parents(const std::vector<HPDF_Dict>& elements) {
    for (const Page& page : pages_) {
        document_.add_number(parents_, static_cast<double>(page.number));
        const HPDF_Array of_page = document_.add_array(parents_);
        for (const std::size_t element : page.marked) document_.add(of_page, elements[element]);
    }
}

void StructureTree::add_sheet(const PlacedSheet& sheet) {
    const auto stretches = stretches_of(sheet);
    const std::vector<bool> used = in_use(sheet.structure, stretches);
    std::vector<HPDF_Dict> elements(sheet.structure.size());
    std::vector<HPDF_Array> children(sheet.structure.size());
    const auto drawn = figure_edges(sheet);
    std::vector<std::string_view> languages(sheet.structure.size());
    for (std::size_t at = 0; at < sheet.structure.size(); ++at) {
        if (!used[at]) continue;
        const StructureElement& element = sheet.structure[at];
        const bool top = at == 0;
        elements[at] =
            add_element(element, top ? whole_ : elements[element.parent], top ? sheets_ : children[element.parent]);
        const std::string_view around = top ? std::string_view{language_} : languages[element.parent];
        languages[at] = element.language.empty() ? around : std::string_view{element.language};
        if (languages[at] != around) document_.add_ascii(elements[at], "Lang", element.language);
        const auto edges = drawn.find(at);
        add_attributes(element, elements[at], edges == drawn.end() ? std::nullopt : std::optional{edges->second});
        children[at] = document_.add_array(elements[at], "K");
        add_stretches(stretches[at], elements[at], children[at]);
    }
    add_parents(elements);
    pages_.clear();
}

void StructureTree::finish() {
    if (!pages_.empty()) throw std::logic_error{"pages without the sheet that they belong to"};
    document_.add_number(root_, "ParentTreeNextKey", static_cast<double>(page_count_));
}

}  // namespace ventfolio
