#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "layout/drawing.hpp"
#include "pdf/haru.hpp"

namespace ventfolio {

/// The tree of what the sheets say (ISO 32000-1, 14.7), in the standard types of 14.8.4. A screen reader reads it in
/// place of the pages. Elements that nothing on a page belongs to are left out; empty cells stay, so that rows keep
/// their columns.
class StructureTree {
  public:
    /// `language` is that of the file: only what is in another one says so.
    StructureTree(HaruDocument& document, std::string language);

    /// A page in print order, with the element that each marked stretch of it belongs to.
    void add_page(HPDF_Page page, std::vector<std::size_t> marked);
    /// The elements of a sheet, after its pages.
    void add_sheet(const PlacedSheet& sheet);
    /// Nothing may be added afterwards.
    void finish();

  private:
    struct Page {
        HPDF_Page handle = nullptr;
        std::vector<std::size_t> marked;
        std::size_t number = 0;
    };
    /// The stretches of one element, as page of the sheet and number on it.
    struct Stretch {
        const Page* page = nullptr;
        std::size_t number = 0;
    };

    /// An area of a page in the file's coordinates, [left, bottom, right, top], in whole points.
    using Edges = std::array<double, 4>;

    std::vector<std::vector<Stretch>> stretches_of(const PlacedSheet& sheet) const;
    HPDF_Dict add_element(const StructureElement& element, HPDF_Dict parent, HPDF_Array siblings);
    void add_attributes(const StructureElement& element, HPDF_Dict own, const std::optional<Edges>& drawn);
    void add_stretches(const std::vector<Stretch>& stretches, HPDF_Dict element, HPDF_Array children);
    void add_parents(const std::vector<HPDF_Dict>& elements);

    HaruDocument& document_;
    std::string language_;
    HPDF_Dict root_;
    HPDF_Dict whole_;          ///< the element Document
    HPDF_Array sheets_;        ///< its children
    HPDF_Array parents_;       ///< by page: the elements of its stretches
    std::vector<Page> pages_;  ///< of the sheet that is being added
    std::size_t page_count_ = 0;
};

}  // namespace ventfolio
