#include "layout/fonts.hpp"

#include <harfbuzz/hb-ot.h>
#include <harfbuzz/hb.h>
#include <array>
#include <span>
#include <stdexcept>

#include "units/embedded_file.hpp"

namespace ventfolio {

std::span<const EmbeddedFile> embedded_fonts();

namespace {

struct BlobDeleter {
    void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
};
struct BufferDeleter {
    void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};

// The PDF library draws one glyph for one code point, so shaping may move letters but not join or split them.
constexpr std::array kFeatures{
    hb_feature_t{HB_TAG('k', 'e', 'r', 'n'), 1, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
    hb_feature_t{HB_TAG('l', 'i', 'g', 'a'), 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
    hb_feature_t{HB_TAG('c', 'l', 'i', 'g'), 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
    hb_feature_t{HB_TAG('c', 'a', 'l', 't'), 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
    hb_feature_t{HB_TAG('r', 'l', 'i', 'g'), 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
    hb_feature_t{HB_TAG('l', 'o', 'c', 'l'), 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
    hb_feature_t{HB_TAG('c', 'c', 'm', 'p'), 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
};

}  // namespace

std::string_view font_bytes(Face face) { return embedded_fonts()[face == Face::regular ? 0 : 1].contents; }

void FontMetrics::Deleter::operator()(hb_face_t* face) const { hb_face_destroy(face); }
void FontMetrics::Deleter::operator()(hb_font_t* font) const { hb_font_destroy(font); }

const FontMetrics& FontMetrics::of(Face face) {
    static const FontMetrics regular{Face::regular};
    static const FontMetrics bold{Face::bold};
    return face == Face::regular ? regular : bold;
}

FontMetrics::FontMetrics(Face face) {
    const std::string_view bytes = font_bytes(face);
    const std::unique_ptr<hb_blob_t, BlobDeleter> blob{
        hb_blob_create(bytes.data(), static_cast<unsigned>(bytes.size()), HB_MEMORY_MODE_READONLY, nullptr, nullptr)};
    face_.reset(hb_face_create(blob.get(), 0));
    font_.reset(hb_font_create(face_.get()));
    if (hb_face_get_glyph_count(face_.get()) == 0) throw std::runtime_error{"an embedded font cannot be read"};
    units_per_em_ = hb_face_get_upem(face_.get());
    hb_font_make_immutable(font_.get());
    hb_position_t capitals = 0;
    hb_ot_metrics_get_position_with_fallback(font_.get(), HB_OT_METRICS_TAG_CAP_HEIGHT, &capitals);
    cap_height_ = 1000.0 * capitals / units_per_em_;
}

bool FontMetrics::covers(char32_t code_point) const {
    hb_codepoint_t glyph = 0;
    return code_point <= 0xFFFF && hb_font_get_nominal_glyph(font_.get(), code_point, &glyph) && glyph != 0;
}

FontMetrics::Advance FontMetrics::advance(std::u32string_view text) const {
    const std::unique_ptr<hb_buffer_t, BufferDeleter> buffer{hb_buffer_create()};
    hb_buffer_add_utf32(buffer.get(), reinterpret_cast<const std::uint32_t*>(text.data()),
                        static_cast<int>(text.size()), 0, static_cast<int>(text.size()));
    hb_buffer_guess_segment_properties(buffer.get());
    hb_shape(font_.get(), buffer.get(), kFeatures.data(), static_cast<unsigned>(kFeatures.size()));
    unsigned count = 0;
    const hb_glyph_position_t* positions = hb_buffer_get_glyph_positions(buffer.get(), &count);
    const std::span<const hb_glyph_position_t> shaped{positions, count};
    const bool one_for_one = count == text.size();

    Advance advance;
    bool kerned = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        hb_codepoint_t glyph = 0;
        hb_font_get_nominal_glyph(font_.get(), text[at], &glyph);
        const double plain = 1000.0 * hb_font_get_glyph_h_advance(font_.get(), glyph) / units_per_em_;
        const double moved = one_for_one ? 1000.0 * shaped[at].x_advance / units_per_em_ : plain;
        advance.width += moved;
        advance.kerns.push_back(moved - plain);
        kerned = kerned || moved != plain;
    }
    if (!kerned) advance.kerns.clear();
    return advance;
}

}  // namespace ventfolio
