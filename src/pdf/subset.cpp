#include "pdf/subset.hpp"

#include <fmt/format.h>
#include <harfbuzz/hb-ot.h>
#include <harfbuzz/hb-subset.h>
#include <harfbuzz/hb.h>
#include <initializer_list>
#include <memory>
#include <new>
#include <stdexcept>
#include <string_view>

#include "layout/fonts.hpp"
#include "pdf/pdf_error.hpp"

namespace ventfolio {
namespace {

struct Destroy {
    void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
    void operator()(hb_face_t* face) const { hb_face_destroy(face); }
    void operator()(hb_font_t* font) const { hb_font_destroy(font); }
    void operator()(hb_subset_input_t* input) const { hb_subset_input_destroy(input); }
    void operator()(hb_subset_plan_t* plan) const { hb_subset_plan_destroy(plan); }
};
template <class T>
using Owned = std::unique_ptr<T, Destroy>;

template <class T>
Owned<T> owned(T* object) {
    if (object == nullptr) throw std::bad_alloc{};
    return Owned<T>{object};
}

std::string_view view(hb_blob_t* blob) {
    unsigned length = 0;
    const char* data = hb_blob_get_data(blob, &length);
    return {data, length};
}

/// Kept are the tables that ISO 32000-1, 9.9 wants for an embedded TrueType font, and the character map for old
/// printers. Hints would double the bytes, and paper is too fine to need them.
Owned<hb_subset_input_t> order(const std::set<char32_t>& letters) {
    Owned<hb_subset_input_t> input = owned(hb_subset_input_create_or_fail());
    hb_set_t* wanted = hb_subset_input_unicode_set(input.get());
    for (const char32_t letter : letters) hb_set_add(wanted, letter);
    hb_set_t* dropped = hb_subset_input_set(input.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
    for (const hb_tag_t table : {HB_TAG('G', 'S', 'U', 'B'), HB_TAG('G', 'P', 'O', 'S'), HB_TAG('G', 'D', 'E', 'F'),
                                 HB_TAG('O', 'S', '/', '2'), HB_TAG('n', 'a', 'm', 'e'), HB_TAG('p', 'o', 's', 't'),
                                 HB_TAG('k', 'e', 'r', 'n')})
        hb_set_add(dropped, table);
    hb_subset_input_set_flags(input.get(), HB_SUBSET_FLAGS_NO_HINTING);
    return input;
}

void require_all(Face face, const std::set<char32_t>& letters) {
    const FontMetrics& metrics = FontMetrics::of(face);
    for (const char32_t letter : letters)
        if (!metrics.covers(letter))
            throw std::logic_error{fmt::format("the {} face has no glyph for U+{:04X}",
                                               face == Face::regular ? "regular" : "bold",
                                               static_cast<std::uint32_t>(letter))};
}

std::string post_script_name(hb_face_t* face) {
    std::array<char, 64> name{};  // the OpenType specification allows 63 letters
    unsigned size = name.size();
    hb_ot_name_get_utf8(face, HB_OT_NAME_ID_POSTSCRIPT_NAME, HB_LANGUAGE_INVALID, &size, name.data());
    if (size == 0) throw PdfError{"an embedded font has no name"};
    return name.data();
}

/// Six letters that stand for a face and a set of code points (ISO 32000-1, 9.6.4), by the hash FNV-1a.
std::string tag_of(std::string_view face_name, const std::set<char32_t>& letters) {
    std::uint64_t hash = 14695981039346656037U;
    const auto mix = [&hash](std::uint32_t byte) {
        hash ^= byte & 0xFFU;
        hash *= 1099511628211U;
    };
    for (const char letter : face_name) mix(static_cast<unsigned char>(letter));
    for (const char32_t letter : letters) {
        mix(letter);
        mix(letter >> 8U);
    }
    std::string tag;
    for (int at = 0; at < 6; ++at, hash /= 26) tag += static_cast<char>('A' + hash % 26);
    return tag;
}

/// Four signed numbers in the table "head", which HarfBuzz does not give out.
std::array<double, 4> bounding_box(hb_face_t* face) {
    const Owned<hb_blob_t> head = owned(hb_face_reference_table(face, HB_TAG('h', 'e', 'a', 'd')));
    const std::string_view bytes = view(head.get());
    constexpr std::size_t kFirst = 36;
    if (bytes.size() < kFirst + 8) throw PdfError{"an embedded font has no head"};
    std::array<double, 4> box{};
    for (std::size_t at = 0; at < box.size(); ++at) {
        const auto high = static_cast<unsigned char>(bytes[kFirst + 2 * at]);
        const auto low = static_cast<unsigned char>(bytes[kFirst + 2 * at + 1]);
        box[at] = static_cast<std::int16_t>(high << 8 | low);
    }
    return box;
}

/// Scales a font's own units to 1/1000 of the type size.
void describe(hb_face_t* face, hb_font_t* font, FontSubset& subset) {
    const double scale = 1000.0 / hb_face_get_upem(face);
    const auto metric = [&](hb_ot_metrics_tag_t tag) {
        hb_position_t position = 0;
        hb_ot_metrics_get_position_with_fallback(font, tag, &position);
        return position * scale;
    };
    subset.ascent = metric(HB_OT_METRICS_TAG_HORIZONTAL_ASCENDER);
    subset.descent = metric(HB_OT_METRICS_TAG_HORIZONTAL_DESCENDER);
    subset.cap_height = metric(HB_OT_METRICS_TAG_CAP_HEIGHT);
    subset.bounding_box = bounding_box(face);
    for (double& edge : subset.bounding_box) edge *= scale;

    constexpr hb_codepoint_t kDotlessI = 0x131;  // in a sans serif nothing but a stem
    hb_codepoint_t glyph = 0;
    hb_glyph_extents_t extents{};
    if (hb_font_get_nominal_glyph(font, kDotlessI, &glyph) && hb_font_get_glyph_extents(font, glyph, &extents))
        subset.stem = extents.width * scale;
}

void list_letters(hb_face_t* face, hb_font_t* font, hb_subset_plan_t* plan, const std::set<char32_t>& letters,
                  FontSubset& subset) {
    const double scale = 1000.0 / hb_face_get_upem(face);
    const hb_map_t* old_glyphs = hb_subset_plan_unicode_to_old_glyph_mapping(plan);
    const hb_map_t* new_glyphs = hb_subset_plan_old_to_new_glyph_mapping(plan);
    for (const char32_t letter : letters) {
        const hb_codepoint_t old_glyph = hb_map_get(old_glyphs, letter);
        const hb_codepoint_t new_glyph = hb_map_get(new_glyphs, old_glyph);
        if (old_glyph == HB_MAP_VALUE_INVALID || new_glyph == 0 || new_glyph > 0xFFFF)
            throw PdfError{"an embedded font cannot be cut down"};
        subset.letters.push_back({.code_point = letter,
                                  .glyph = static_cast<std::uint16_t>(new_glyph),
                                  .width = hb_font_get_glyph_h_advance(font, old_glyph) * scale});
    }
}

}  // namespace

FontSubset subset_font(Face face, const std::set<char32_t>& letters) {
    require_all(face, letters);
    const std::string_view bytes = font_bytes(face);
    const Owned<hb_blob_t> blob = owned(
        hb_blob_create(bytes.data(), static_cast<unsigned>(bytes.size()), HB_MEMORY_MODE_READONLY, nullptr, nullptr));
    const Owned<hb_face_t> whole = owned(hb_face_create(blob.get(), 0));
    const Owned<hb_font_t> font = owned(hb_font_create(whole.get()));
    const Owned<hb_subset_input_t> input = order(letters);
    const Owned<hb_subset_plan_t> plan = owned(hb_subset_plan_create_or_fail(whole.get(), input.get()));
    const Owned<hb_face_t> part = owned(hb_subset_plan_execute_or_fail(plan.get()));
    const Owned<hb_blob_t> file = owned(hb_face_reference_blob(part.get()));

    FontSubset subset;
    const std::string face_name = post_script_name(whole.get());
    subset.name = tag_of(face_name, letters) + "+" + face_name;
    subset.bytes = view(file.get());
    describe(whole.get(), font.get(), subset);
    list_letters(whole.get(), font.get(), plan.get(), letters, subset);
    return subset;
}

}  // namespace ventfolio
