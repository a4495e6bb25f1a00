#include "pdf/haru.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>

#include "pdf/compressed.hpp"
#include "pdf/pdf_error.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

struct Sentence {
    HPDF_STATUS code;
    std::string_view says;
};

constexpr std::array kSentences{
    Sentence{HPDF_FAILD_TO_ALLOC_MEM, "there is not enough memory"},
    Sentence{HPDF_ZLIB_ERROR, "the data could not be compressed"},
    Sentence{HPDF_PAGE_INVALID_SIZE, "a page is smaller than 3 pt or larger than 14400 pt"},
    Sentence{HPDF_ARRAY_COUNT_ERR, "a list is longer than a PDF file allows"},
    Sentence{HPDF_DICT_COUNT_ERR, "a dictionary is longer than a PDF file allows"},
    Sentence{HPDF_XREF_COUNT_ERR, "there are more objects than a PDF file allows"},
    Sentence{HPDF_BINARY_LENGTH_ERR, "a title is longer than a PDF file allows"},
    Sentence{HPDF_STRING_OUT_OF_RANGE, "a text is longer than a PDF file allows"},
    Sentence{HPDF_NAME_OUT_OF_RANGE, "a name is longer than a PDF file allows"},
    Sentence{HPDF_NAME_INVALID_VALUE, "a name is empty or not valid"},
    Sentence{HPDF_REAL_OUT_OF_RANGE, "a number is larger than a PDF file allows"},
    Sentence{HPDF_INVALID_DOCUMENT, "the document was not set up"},
    Sentence{HPDF_INVALID_OBJECT, "a part of the document could not be made"},
    Sentence{HPDF_INVALID_STREAM, "there is not enough memory for the bytes of the document"},
};

std::string_view sentence(HPDF_STATUS code) {
    const auto* found = std::ranges::find(kSentences, code, &Sentence::code);
    return found == kSentences.end() ? "the PDF library stopped" : found->says;
}

/// High byte first (RFC 2781), after a byte order mark.
std::basic_string<HPDF_BYTE> utf16(std::string_view utf8) {
    std::basic_string<HPDF_BYTE> bytes;
    const auto unit = [&bytes](char32_t value) {
        bytes += static_cast<HPDF_BYTE>(value >> 8U & 0xFFU);
        bytes += static_cast<HPDF_BYTE>(value & 0xFFU);
    };
    unit(0xFEFF);
    for (const char32_t letter : code_points(utf8)) {
        if (letter < 0x10000) {
            unit(letter);
            continue;
        }
        unit(0xD800 + ((letter - 0x10000) >> 10U));
        unit(0xDC00 + ((letter - 0x10000) & 0x3FFU));
    }
    return bytes;
}

}  // namespace

// Called from C frames, through which no exception may pass.
void HaruDocument::note(HPDF_STATUS code, HPDF_STATUS detail, void* first) noexcept {
    auto& fault = *static_cast<std::optional<Fault>*>(first);
    if (!fault) fault = Fault{code, detail};
}

void HaruDocument::ok(HPDF_STATUS status) {
    if (status == HPDF_OK && !fault_) return;
    if (!fault_) {
        // Some faults reach `note` only when the library is asked. A handle that is not there says less than they do.
        const HPDF_STATUS kept = document_ == nullptr ? HPDF_FAILD_TO_ALLOC_MEM : HPDF_GetError(document_);
        if (!fault_) fault_ = Fault{kept == HPDF_OK ? status : kept, 0};
    }
    throw PdfError{fmt::format("the PDF file cannot be written: {} (libharu 0x{:04X}, detail {})",
                               sentence(fault_->code), fault_->code, fault_->detail)};
}

HaruDocument::HaruDocument() : document_{HPDF_New(&HaruDocument::note, &fault_)} {
    have(document_);
    document_->pdf_version =
        HPDF_VER_16;  // for PrintScaling; the library's own call for that leaves out the title flag
}

HaruDocument::~HaruDocument() { HPDF_Free(document_); }

HPDF_Page HaruDocument::add_page(double width, double height) {
    const HPDF_Page page = have(HPDF_AddPage(document_));
    ok(HPDF_Page_SetWidth(page, static_cast<HPDF_REAL>(width)));
    ok(HPDF_Page_SetHeight(page, static_cast<HPDF_REAL>(height)));
    return page;
}

void HaruDocument::fill(HPDF_Dict stream, std::string_view bytes) {
    const std::string packed = compressed(bytes);
    ok(HPDF_Stream_Write(have(stream->stream), reinterpret_cast<const HPDF_BYTE*>(packed.data()),
                         static_cast<HPDF_UINT>(packed.size())));
    // The library must not compress it once more, and takes the entry out of a stream that it does not compress.
    stream->filter = HPDF_STREAM_FILTER_NONE;
    stream->write_fn = [](HPDF_Dict, HPDF_Stream to) { return HPDF_Stream_WriteStr(to, "/Filter /FlateDecode\n"); };
}

void HaruDocument::set_content(HPDF_Page page, std::string_view operators) {
    fill(have(have(static_cast<HPDF_PageAttr>(page->attr))->contents), operators);
}

std::string HaruDocument::font_name_on(HPDF_Page page, HPDF_Dict font) {
    return have(HPDF_Page_GetLocalFontName(page, font));
}

std::string HaruDocument::picture_name_on(HPDF_Page page, HPDF_Dict picture) {
    return have(HPDF_Page_GetXObjectName(page, picture));
}

void HaruDocument::add_bookmark(std::string_view title, HPDF_Page page) {
    const HPDF_Outline bookmark = have(HPDF_CreateOutline(document_, nullptr, "", nullptr));
    add_text(bookmark, "Title", title);
    const HPDF_Destination target = have(HPDF_Page_CreateDestination(page));
    ok(HPDF_Destination_SetFit(target));
    ok(HPDF_Outline_SetDestination(bookmark, target));
}

HPDF_Dict HaruDocument::new_indirect_dictionary() {
    const HPDF_Dict dictionary = have(HPDF_Dict_New(document_->mmgr));
    ok(HPDF_Xref_Add(document_->xref, dictionary));
    return dictionary;
}

HPDF_Dict HaruDocument::new_stream(std::string_view bytes) {
    const HPDF_Dict stream = have(HPDF_DictStream_New(document_->mmgr, document_->xref));
    fill(stream, bytes);
    return stream;
}

HPDF_Dict HaruDocument::add_dictionary(HPDF_Dict to, const char* key) {
    const HPDF_Dict dictionary = have(HPDF_Dict_New(document_->mmgr));
    ok(HPDF_Dict_Add(to, key, dictionary));
    return dictionary;
}

HPDF_Dict HaruDocument::add_dictionary(HPDF_Array to) {
    const HPDF_Dict dictionary = have(HPDF_Dict_New(document_->mmgr));
    ok(HPDF_Array_Add(to, dictionary));
    return dictionary;
}

HPDF_Array HaruDocument::add_array(HPDF_Dict to, const char* key) {
    const HPDF_Array array = have(HPDF_Array_New(document_->mmgr));
    ok(HPDF_Dict_Add(to, key, array));
    return array;
}

HPDF_Array HaruDocument::add_array(HPDF_Array to) {
    const HPDF_Array array = have(HPDF_Array_New(document_->mmgr));
    ok(HPDF_Array_Add(to, array));
    return array;
}

void HaruDocument::add_name(HPDF_Dict to, const char* key, const std::string& name) {
    ok(HPDF_Dict_AddName(to, key, name.c_str()));
}

void HaruDocument::add_number(HPDF_Dict to, const char* key, double value) {
    if (value == std::trunc(value)) return ok(HPDF_Dict_AddNumber(to, key, static_cast<HPDF_INT32>(value)));
    ok(HPDF_Dict_AddReal(to, key, static_cast<HPDF_REAL>(value)));
}

void HaruDocument::add_number(HPDF_Array to, double value) {
    if (value == std::trunc(value)) return ok(HPDF_Array_AddNumber(to, static_cast<HPDF_INT32>(value)));
    ok(HPDF_Array_AddReal(to, static_cast<HPDF_REAL>(value)));
}

void HaruDocument::add_flag(HPDF_Dict to, const char* key, bool value) {
    ok(HPDF_Dict_AddBoolean(to, key, value ? HPDF_TRUE : HPDF_FALSE));
}

void HaruDocument::add_ascii(HPDF_Dict to, const char* key, const std::string& text) {
    ok(HPDF_Dict_Add(to, key, have(HPDF_String_New(document_->mmgr, text.c_str(), nullptr))));
}

void HaruDocument::add_text(HPDF_Dict to, const char* key, std::string_view utf8) {
    std::basic_string<HPDF_BYTE> bytes = utf16(utf8);
    const auto length = static_cast<HPDF_UINT>(bytes.size());
    ok(HPDF_Dict_Add(to, key, have(HPDF_Binary_New(document_->mmgr, bytes.data(), length))));
}

std::string HaruDocument::bytes() {
    ok(HPDF_SaveToStream(document_));
    const HPDF_Stream saved = have(document_->stream);
    std::string bytes;
    bytes.reserve(HPDF_GetStreamSize(document_));
    const HPDF_UINT blocks = HPDF_MemStream_GetBufCount(saved);
    for (HPDF_UINT at = 0; at < blocks; ++at) {
        HPDF_UINT length = 0;
        const HPDF_BYTE* block = have(HPDF_MemStream_GetBufPtr(saved, at, &length));
        bytes.append(reinterpret_cast<const char*>(block), length);
    }
    ok(HPDF_GetError(document_));
    return bytes;
}

}  // namespace ventfolio
