#include "packet/print_home.hpp"

#include <algorithm>
#include <set>

#include "layout/blank_side.hpp"
#include "packet/documents.hpp"
#include "packet/manifest.hpp"
#include "packet/print_slip.hpp"
#include "pdf/write_pdf.hpp"
#include "profile/read_profile.hpp"
#include "record/sheet_code.hpp"
#include "rules/judge.hpp"

namespace ventfolio {
namespace {

bool refuses(const Finding& finding) { return finding.severity == Severity::refuse; }

/// Whether the findings stop any of these sheets. Only rules of the profile stop single sheets.
bool stops(const std::vector<Finding>& findings, const std::vector<std::string>& sheets) {
    const std::set<std::string> stopped = stopped_sheets(findings);
    return std::ranges::any_of(sheets, [&](const std::string& sheet) { return stopped.contains(sheet); });
}

/// The sheets that were asked for by name and that this home does not have.
std::vector<std::string> missing_of(const std::vector<std::string>& asked, const std::vector<Document>& documents) {
    std::vector<std::string> missing;
    for (const std::string& name : asked)
        if (std::ranges::find(documents, name, &Document::sheet) == documents.end()) missing.push_back(name);
    return missing;
}

struct LaidOutSheet {
    Document document;
    std::string code;
    PlacedSheet placed;
};

/// Whether all sheets go into one file.
bool is_packet(const PrintOrder& order) { return order.sheets.empty() && !order.separate; }

std::vector<SlipEntry> slip_entries(const std::vector<LaidOutSheet>& sheets) {
    std::vector<SlipEntry> entries;
    for (const LaidOutSheet& sheet : sheets) entries.push_back({&sheet.document, sheet.placed.pages.size()});
    return entries;
}

/// Of a sheet with an odd number of pages that another one follows in the file.
const PlacedPage* blank_back_of(const LaidOutSheet& sheet, const LaidOutSheet& last, const PlacedPage& blank) {
    return &sheet == &last || sheet.placed.pages.size() % 2 == 0 ? nullptr : &blank;
}

/// What all files of a home are made with.
struct Printing {
    const PrintOrder& order;
    const Stationery& stationery;
    PlacedPage blank;                 ///< back of a sheet with an odd number of pages
    std::optional<PlacedSheet> slip;  ///< first leaf of a whole packet
};

std::string pdf_of(const std::vector<const LaidOutSheet*>& sheets, const Printing& printing) {
    const Stationery& stationery = printing.stationery;
    PdfRequest request;
    request.language = stationery.words.language();
    if (printing.slip)
        request.sheets.push_back({&*printing.slip, printing.slip->title + " ",
                                  printing.slip->pages.size() % 2 == 0 ? nullptr : &printing.blank});
    for (const LaidOutSheet* sheet : sheets)
        request.sheets.push_back(
            {&sheet->placed, sheet->placed.title + " ", blank_back_of(*sheet, *sheets.back(), printing.blank)});
    const bool one_kind = std::ranges::all_of(
        sheets, [&](const LaidOutSheet* sheet) { return sheet->document.sheet == sheets.front()->document.sheet; });
    // A title that names a person stays on the paper.
    const bool personal = std::ranges::any_of(sheets.front()->document.title, [](const Inline& piece) {
        return piece.kind == Inline::Kind::value && (piece.value.audiences & wall) == 0;
    });
    request.title = sheets.size() == 1 && !personal ? sheets.front()->placed.title
                    : one_kind ? std::string{stationery.words.at("sheets." + sheets.front()->document.sheet)}
                               : std::string{stationery.words.at("packet_title")};
    return write_pdf(request);
}

void add_file(PrintedHome& home, const std::string& stem, const std::vector<const LaidOutSheet*>& sheets,
              const Printing& printing) {
    home.files.push_back({stem + ".pdf", pdf_of(sheets, printing)});
    if (!printing.order.dump_layout) return;
    std::string text;
    for (const LaidOutSheet* sheet : sheets) text += dump(sheet->placed);
    home.files.push_back({stem + ".layout.txt", std::move(text)});
}

std::vector<const LaidOutSheet*> all_of(const std::vector<LaidOutSheet>& sheets, std::string_view name = {}) {
    std::vector<const LaidOutSheet*> chosen;
    for (const LaidOutSheet& sheet : sheets)
        if (name.empty() || sheet.document.sheet == name) chosen.push_back(&sheet);
    return chosen;
}

void draw(PrintedHome& home, const std::vector<LaidOutSheet>& sheets, const std::vector<std::string>& names,
          const Printing& printing) {
    if (is_packet(printing.order))
        add_file(home, "packet", all_of(sheets), printing);
    else
        for (const std::string& name : names)
            if (const auto parts = all_of(sheets, name); !parts.empty()) add_file(home, name, parts, printing);
    for (const LaidOutSheet& sheet : sheets) {
        home.pages += sheet.placed.pages.size();
        home.sheet_names.push_back(sheet.document.name);
    }
}

std::string file_of(const LaidOutSheet& sheet, const PrintOrder& order) {
    return is_packet(order) ? "packet.pdf" : sheet.document.sheet + ".pdf";
}

void add_manifest(PrintedHome& home, const std::vector<LaidOutSheet>& sheets, const Household& household, Date on,
                  const PrintOrder& order) {
    Manifest manifest;
    manifest.record_number = home.record_number;
    manifest.revision = home.revision;
    manifest.printed_on = on.iso();
    const Orders& orders = *household.profile.orders;
    manifest.effective = orders.effective_at.given() ? orders.effective_at->iso() : "";
    for (const LaidOutSheet& sheet : sheets)
        manifest.sheets.push_back(
            {sheet.document.sheet, sheet.document.place, sheet.code, sheet.placed.pages.size(), file_of(sheet, order)});
    home.files.push_back({"packet.json", manifest_json(manifest)});
}

}  // namespace

CheckedHome check_home(const SourceText& source, Date on) {
    ReadResult read = read_profile(source);
    CheckedHome home;
    home.findings = std::move(read.findings);
    home.readable = std::ranges::none_of(home.findings, refuses);
    if (home.readable) {
        const std::vector<Finding> judged = judge(read.profile, source, on);
        home.findings.insert(home.findings.end(), judged.begin(), judged.end());
        sort_by_place(home.findings);
    }
    home.profile = std::move(read.profile);
    return home;
}

std::vector<Finding> check_sheets(const CheckedHome& home, Date on, const Stationery& stationery) {
    std::vector<Finding> findings;
    if (!home.readable) return findings;
    std::vector<std::string> names = stationery.in_order();
    std::erase_if(names, [&](const std::string& name) { return stops(home.findings, needed_for({name}, stationery)); });
    make_documents(Household{home.profile, on}, home.findings, stationery, names, findings);
    leave_one_of_each(findings);
    return findings;
}

PrintedHome print_home(const SourceText& source, Date on, const PrintOrder& order, const Stationery& stationery,
                       Measurer& measurer) {
    PrintedHome home;
    CheckedHome checked = check_home(source, on);
    home.findings = std::move(checked.findings);
    const std::vector<std::string> names = order.sheets.empty() ? stationery.in_order() : order.sheets;
    home.refused = !checked.readable || stops(home.findings, needed_for(names, stationery));
    if (home.refused) return home;

    Household household{checked.profile, on};
    household.outage_start = order.outage_start;
    home.record_number = *checked.profile.record_number;
    home.revision = checked.profile.orders->revision->text();
    const PageSetup setup{order.paper.value_or(stationery.region.paper == "a4" ? Paper::a4 : Paper::letter),
                          order.large_print ? 1.5 : 1.0};

    std::vector<Finding> of_sheets;
    std::vector<LaidOutSheet> sheets;
    std::vector<Document> documents = make_documents(household, home.findings, stationery, names, of_sheets);
    home.missing_sheets = missing_of(order.sheets, documents);
    for (Document& document : documents) {
        LaidOutSheet sheet;
        sheet.code = sheet_code(document);
        const Furniture furniture = furniture_for(document, household, stationery, sheet.code);
        sheet.placed = lay_out(document, furniture, setup, measurer, of_sheets);
        sheet.document = std::move(document);
        sheets.push_back(std::move(sheet));
    }
    leave_one_of_each(of_sheets);
    home.refused = std::ranges::any_of(of_sheets, refuses) || !home.missing_sheets.empty();
    home.findings.insert(home.findings.end(), of_sheets.begin(), of_sheets.end());
    if (home.refused) return home;
    Printing printing{order, stationery, blank_side(stationery.words.at("blank_side"), setup, measurer), {}};
    if (is_packet(order))
        printing.slip = print_slip(slip_entries(sheets), household, stationery, setup, measurer, home.findings);
    home.refused = std::ranges::any_of(home.findings, refuses);
    if (home.refused) return home;
    draw(home, sheets, names, printing);
    add_manifest(home, sheets, household, on, order);
    return home;
}

}  // namespace ventfolio
