#pragma once

#include <hpdf.h>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

namespace ventfolio {

/// The one owner of a document of the PDF library. Every status and every handle that the library returns passes
/// through `ok` or `have`; the first fault ends the document, since the library skips what comes after one and would
/// still save a file with parts missing.
///
/// Objects that the library makes belong to the document. A dictionary, array or string that was made but not yet added
/// to another is owned by nobody, so add it at once.
class HaruDocument {
  public:
    HaruDocument();
    ~HaruDocument();
    HaruDocument(const HaruDocument&) = delete;
    HaruDocument& operator=(const HaruDocument&) = delete;

    /// Throws PdfError with a sentence about the first fault, if there was one.
    void ok(HPDF_STATUS status);
    template <class Handle>
    Handle have(Handle handle) {
        ok(handle == nullptr ? HPDF_INVALID_OBJECT : HPDF_OK);
        return handle;
    }

    HPDF_Page add_page(double width, double height);
    void set_content(HPDF_Page page, std::string_view operators);
    /// The name by which operators on this page select the font.
    std::string font_name_on(HPDF_Page page, HPDF_Dict font);
    /// The name by which operators on this page draw the picture.
    std::string picture_name_on(HPDF_Page page, HPDF_Dict picture);
    /// A bookmark of the first level that shows a whole page.
    void add_bookmark(std::string_view title, HPDF_Page page);

    /// A dictionary with a number of its own in the file, to which others may point.
    HPDF_Dict new_indirect_dictionary();
    /// Bytes with a number of their own in the file, compressed.
    HPDF_Dict new_stream(std::string_view bytes);
    HPDF_Dict add_dictionary(HPDF_Dict to, const char* key);
    HPDF_Array add_array(HPDF_Dict to, const char* key);
    HPDF_Array add_array(HPDF_Array to);
    HPDF_Dict add_dictionary(HPDF_Array to);
    void add(HPDF_Dict to, const char* key, HPDF_Dict indirect) { ok(HPDF_Dict_Add(to, key, indirect)); }
    void add(HPDF_Array to, HPDF_Dict indirect) { ok(HPDF_Array_Add(to, indirect)); }
    void add_name(HPDF_Dict to, const char* key, const std::string& name);
    void add_number(HPDF_Dict to, const char* key, double value);
    void add_number(HPDF_Array to, double value);
    void add_flag(HPDF_Dict to, const char* key, bool value);
    void add_ascii(HPDF_Dict to, const char* key, const std::string& text);
    /// A text for people: UTF-16 with a byte order mark (ISO 32000-1, 7.9.2.2).
    void add_text(HPDF_Dict to, const char* key, std::string_view utf8);

    HPDF_Dict catalog() const { return document_->catalog; }
    HPDF_Dict information() { return have(document_->info); }
    /// The finished file. Nothing may be added afterwards.
    std::string bytes();

  private:
    /// Compresses by libdeflate, which takes a third of the time of the library's own zlib.
    void fill(HPDF_Dict stream, std::string_view bytes);

    struct Fault {
        HPDF_STATUS code = HPDF_OK;
        HPDF_STATUS detail = 0;
    };
    static void note(HPDF_STATUS code, HPDF_STATUS detail, void* first) noexcept;

    std::optional<Fault> fault_;
    HPDF_Doc document_ = nullptr;
};

}  // namespace ventfolio
