#include "pdf/write_pdf.hpp"

#include <bitset>
#include <set>
#include <stdexcept>
#include <string_view>

#include "pdf/content.hpp"
#include "pdf/fonts.hpp"
#include "pdf/haru.hpp"
#include "pdf/metadata.hpp"
#include "pdf/pictures.hpp"
#include "pdf/structure_tree.hpp"
#include "pdf/subset.hpp"

namespace ventfolio {
namespace {

/// The letters that one face draws. Most are met thousands of times, so the ones already known are told apart cheaply.
class Letters {
  public:
    void add(std::u32string_view text) {
        for (const char32_t letter : text) {
            const bool counted = letter < known_.size();
            if (counted && known_[letter]) continue;
            if (counted) known_[letter] = true;
            sorted_.insert(letter);
        }
    }
    const std::set<char32_t>& sorted() const { return sorted_; }

  private:
    std::bitset<0x2000> known_;
    std::set<char32_t> sorted_;
};

struct UsedLetters {
    Letters regular;
    Letters bold;
};

void add_letters(UsedLetters& used, const PlacedPage& page) {
    for (const PlacedItem& item : page.items)
        if (item.kind == PlacedItem::Kind::text)
            (item.text.face == Face::regular ? used.regular : used.bold).add(item.text.text);
}

UsedLetters used_letters(const PdfRequest& request) {
    UsedLetters used;
    for (const PdfSheet& sheet : request.sheets) {
        for (const PlacedPage& page : sheet.placed->pages) add_letters(used, page);
        if (sheet.blank_back != nullptr) add_letters(used, *sheet.blank_back);
    }
    for (Letters* letters : {&used.regular, &used.bold})
        if (!letters->sorted().empty()) letters->add(U" ");  // stands between lines
    return used;
}

void require_sheets(const PdfRequest& request) {
    if (request.sheets.empty()) throw std::logic_error{"a document without a sheet"};
    for (const PdfSheet& sheet : request.sheets)
        if (sheet.placed == nullptr || sheet.placed->pages.empty()) throw std::logic_error{"a sheet without a page"};
}

/// The two faces in the file. One that no letter uses is not there.
struct Fonts {
    HPDF_Dict regular = nullptr;
    HPDF_Dict bold = nullptr;
};

Fonts embed_fonts(HaruDocument& document, const UsedLetters& used) {
    Fonts fonts;
    const auto embed = [&](Face face, const std::set<char32_t>& letters) -> HPDF_Dict {
        return letters.empty() ? nullptr : embed_font(document, subset_font(face, letters));
    };
    fonts.regular = embed(Face::regular, used.regular.sorted());
    fonts.bold = embed(Face::bold, used.bold.sorted());
    return fonts;
}

HPDF_Page add_page(HaruDocument& document, const PlacedPage& placed, const Fonts& fonts, EmbeddedPictures& pictures,
                   StructureTree& structure) {
    const HPDF_Page page = document.add_page(placed.width, placed.height);
    FaceNames names;
    if (fonts.regular != nullptr) names.regular = document.font_name_on(page, fonts.regular);
    if (fonts.bold != nullptr) names.bold = document.font_name_on(page, fonts.bold);
    PageContent content = page_content(placed, names, pictures.names_on(page, placed));
    document.set_content(page, content.operators);
    structure.add_page(page, std::move(content.marked));
    return page;
}

/// Numbers that start again with each sheet, as the papers themselves count (ISO 32000-1, 12.4.2).
void add_page_labels(HaruDocument& document, const PdfRequest& request) {
    const HPDF_Dict tree = document.add_dictionary(document.catalog(), "PageLabels");
    const HPDF_Array labels = document.add_array(tree, "Nums");
    std::size_t first = 0;
    for (const PdfSheet& sheet : request.sheets) {
        document.add_number(labels, static_cast<double>(first));
        const HPDF_Dict label = document.add_dictionary(labels);
        document.add_name(label, "S", "D");
        if (!sheet.page_label.empty()) document.add_text(label, "P", sheet.page_label);
        first += sheet.placed->pages.size() + (sheet.blank_back == nullptr ? 0 : 1);
    }
}

/// The paper must come out in its true size: type sizes, ruled lines and the wallet card depend on it.
void add_catalog_entries(HaruDocument& document, const PdfRequest& request) {
    const HPDF_Dict catalog = document.catalog();
    document.add_ascii(catalog, "Lang", request.language);
    document.add_name(catalog, "PageLayout", "SinglePage");
    document.add_name(catalog, "PageMode", request.sheets.size() > 1 ? "UseOutlines" : "UseNone");
    const HPDF_Dict preferences = document.add_dictionary(catalog, "ViewerPreferences");
    document.add_flag(preferences, "DisplayDocTitle", true);
    document.add_name(preferences, "PrintScaling", "None");
    document.add_text(document.information(), "Title", request.title);
    const HPDF_Dict about = document.new_stream(metadata(request.title, request.language));
    document.add_name(about, "Type", "Metadata");
    document.add_name(about, "Subtype", "XML");
    document.add(catalog, "Metadata", about);
    document.add_ascii(document.information(), "Producer", "ventfolio");
}

}  // namespace

std::string write_pdf(const PdfRequest& request) {
    require_sheets(request);
    HaruDocument document;
    const Fonts fonts = embed_fonts(document, used_letters(request));
    EmbeddedPictures pictures{document};
    StructureTree structure{document, request.language};
    for (const PdfSheet& sheet : request.sheets) {
        HPDF_Page first = nullptr;
        for (const PlacedPage& placed : sheet.placed->pages) {
            const HPDF_Page page = add_page(document, placed, fonts, pictures, structure);
            if (first == nullptr) first = page;
        }
        if (sheet.blank_back != nullptr) add_page(document, *sheet.blank_back, fonts, pictures, structure);
        structure.add_sheet(*sheet.placed);
        document.add_bookmark(sheet.placed->title, first);
    }
    structure.finish();
    add_page_labels(document, request);
    add_catalog_entries(document, request);
    return document.bytes();
}

}  // namespace ventfolio
