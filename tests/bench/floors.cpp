#include "bench/floors.hpp"

#include <fmt/format.h>
#include <hpdf.h>
#include <zlib.h>

#include <fstream>
#include <iterator>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace ventfolio::bench {
namespace {

namespace fs = std::filesystem;

constexpr int kRuns = 9;
constexpr const char* kFace = "/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf";  // Debian: fonts-noto-core

/// A file of its own beside others, gone at the end.
class Beside {
  public:
    Beside(const fs::path& pdf, const char* ending) : path_{pdf.string() + ending} {}
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;
    ~Beside() {
        std::error_code ignored;
        fs::remove(path_, ignored);
    }
    std::string quoted() const { return "'" + path_ + "'"; }
    std::string contents() const {
        std::ifstream stream{path_, std::ios::binary};
        return {std::istreambuf_iterator<char>{stream}, {}};
    }

  private:
    std::string path_;
};

struct FreeDocument {
    void operator()(HPDF_Doc document) const { HPDF_Free(document); }
};

[[noreturn]] void fail(HPDF_STATUS error, HPDF_STATUS detail, void*) {
    throw std::runtime_error{fmt::format("libharu: {:x} {}", error, detail)};
}

void write_plainly(const std::vector<std::string>& pages) {
    const std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, FreeDocument> owner{HPDF_New(fail, nullptr)};
    HPDF_Doc document = owner.get();
    HPDF_SetCompressionMode(document, HPDF_COMP_ALL);
    HPDF_UseUTFEncodings(document);
    HPDF_Font font = HPDF_GetFont(document, HPDF_LoadTTFontFromFile(document, kFace, HPDF_TRUE), "UTF-8");
    for (const std::string& text : pages) {
        HPDF_Page page = HPDF_AddPage(document);
        HPDF_Page_BeginText(page);
        HPDF_Page_SetFontAndSize(page, font, 8);
        HPDF_Page_SetTextLeading(page, 10);
        HPDF_Page_MoveTextPos(page, 40, 800);
        std::istringstream lines{text};
        for (std::string line; std::getline(lines, line);) {
            HPDF_Page_ShowText(page, line.c_str());
            HPDF_Page_MoveToNextLine(page);
        }
        HPDF_Page_EndText(page);
    }
    HPDF_SaveToStream(document);
}

}  // namespace

Cost deflating(const fs::path& pdf) {
    const Beside plain{pdf, ".plain"};
    cost_of(
        fmt::format("qpdf --stream-data=uncompress --object-streams=disable '{}' {}", pdf.string(), plain.quoted()));
    const std::string bytes = plain.contents();
    std::vector<Bytef> out(compressBound(bytes.size()));
    return middle_of(kRuns, [&] {
        return cost_of([&] {
            uLongf size = out.size();
            compress(out.data(), &size, reinterpret_cast<const Bytef*>(bytes.data()), bytes.size());
        });
    });
}

Cost writing_plainly(const fs::path& pdf) {
    const Beside words{pdf, ".words"};
    cost_of(fmt::format("pdftotext -layout '{}' {}", pdf.string(), words.quoted()));
    std::vector<std::string> pages;
    std::istringstream stream{words.contents()};
    for (std::string page; std::getline(stream, page, '\f');) pages.push_back(page);
    return middle_of(kRuns, [&] { return cost_of([&] { write_plainly(pages); }); });
}

Cost setting_by_groff(const fs::path& pdf) {
    const Beside words{pdf, ".words"};
    const Beside set{pdf, ".groff"};
    cost_of(fmt::format("pdftotext '{}' {}", pdf.string(), words.quoted()));
    return middle_of(
        3, [&] { return cost_of(fmt::format("groff -k -Tpdf {} > {} 2> /dev/null", words.quoted(), set.quoted())); });
}

}  // namespace ventfolio::bench
