#include "packet/drawn_sheets.hpp"

#include <algorithm>

#include "layout/blank_side.hpp"
#include "packet/print_slip.hpp"
#include "packet/sheet_furniture.hpp"
#include "pdf/write_pdf.hpp"
#include "record/sheet_code.hpp"

namespace ventfolio {
namespace {

std::vector<SlipEntry> slip_entries(const std::vector<DrawnSheet>& sheets) {
    std::vector<SlipEntry> entries;
    entries.reserve(sheets.size());
    for (const DrawnSheet& sheet : sheets) entries.push_back({&sheet.document, sheet.placed.pages.size()});
    return entries;
}

/// Of a sheet with an odd number of pages that another one follows in the file.
const PlacedPage* blank_back_of(const DrawnSheet& sheet, const DrawnSheet& last, const PlacedPage& blank) {
    return &sheet == &last || sheet.placed.pages.size() % 2 == 0 ? nullptr : &blank;
}

/// A title that names a person stays on the paper.
bool is_personal(const Inlines& title) {
    return std::ranges::any_of(title, [](const Inline& piece) {
        return piece.kind == Inline::Kind::value && (piece.value.audiences & wall) == 0;
    });
}

std::string file_title(const std::vector<const DrawnSheet*>& sheets, const WordBook& words) {
    const DrawnSheet& first = *sheets.front();
    if (sheets.size() == 1 && !is_personal(first.document.title)) return first.placed.title;
    const bool one_kind = std::ranges::all_of(
        sheets, [&](const DrawnSheet* sheet) { return sheet->document.sheet == first.document.sheet; });
    return std::string{words.at(one_kind ? "sheets." + first.document.sheet : "packet_title")};
}

/// A file of one sheet is in the language of that sheet; of a packet in that of the family.
const std::string& language_of(const std::vector<const DrawnSheet*>& sheets, const WordBook& words) {
    const std::string& first = sheets.front()->document.language;
    const bool one =
        std::ranges::all_of(sheets, [&](const DrawnSheet* sheet) { return sheet->document.language == first; });
    return one ? first : words.language();
}

std::string pdf_of(const std::vector<const DrawnSheet*>& sheets, const Printing& printing) {
    PdfRequest request;
    request.language = language_of(sheets, printing.stationery.words);
    if (printing.slip)
        request.sheets.push_back({&*printing.slip, printing.slip->title + " ",
                                  printing.slip->pages.size() % 2 == 0 ? nullptr : &printing.blank});
    for (const DrawnSheet* sheet : sheets)
        request.sheets.push_back(
            {&sheet->placed, sheet->placed.title + " ", blank_back_of(*sheet, *sheets.back(), printing.blank)});
    request.title = file_title(sheets, printing.stationery.words);
    return write_pdf(request);
}

}  // namespace

std::vector<DrawnSheet> draw_sheets(std::vector<Document> documents, const Household& household,
                                    const Stationery& stationery, const PageSetup& setup, Measurer& measurer,
                                    std::vector<Finding>& findings) {
    std::vector<DrawnSheet> sheets;
    for (Document& document : documents) {
        DrawnSheet sheet;
        sheet.code = sheet_code(document);
        const Furniture furniture = furniture_for(document, household, stationery, sheet.code);
        sheet.placed = lay_out(document, furniture, setup, measurer, findings);
        sheet.document = std::move(document);
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

Printing printing_for(const std::vector<DrawnSheet>& sheets, bool with_slip, const Household& household,
                      const Stationery& stationery, const PageSetup& setup, Measurer& measurer,
                      std::vector<Finding>& findings) {
    Printing printing{stationery, blank_side(stationery.words.at("blank_side"), setup, measurer), {}, false};
    if (with_slip) printing.slip = print_slip(slip_entries(sheets), household, stationery, setup, measurer, findings);
    return printing;
}

std::vector<FolderFile> drawn_files(const std::string& stem, const std::vector<const DrawnSheet*>& sheets,
                                    const Printing& printing) {
    std::vector<FolderFile> files{{stem + ".pdf", pdf_of(sheets, printing)}};
    if (!printing.dump_layout) return files;
    std::string text;
    for (const DrawnSheet* sheet : sheets) text += dump(sheet->placed);
    files.push_back({stem + ".layout.txt", std::move(text)});
    return files;
}

std::vector<const DrawnSheet*> all_of(const std::vector<DrawnSheet>& sheets, std::string_view name) {
    std::vector<const DrawnSheet*> chosen;
    for (const DrawnSheet& sheet : sheets)
        if (name.empty() || sheet.document.sheet == name) chosen.push_back(&sheet);
    return chosen;
}

}  // namespace ventfolio
