#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "layout/drawing.hpp"

struct hb_face_t;
struct hb_font_t;

namespace ventfolio {

/// The bytes of an embedded TrueType face, as shipped. They live as long as the program.
std::string_view font_bytes(Face face);

/// What measuring needs to know of one face. Loaded once per process; read-only and safe to share between threads.
class FontMetrics {
  public:
    static const FontMetrics& of(Face face);

    /// Whether the face has a glyph for this code point. A text with a code point that has none must not be drawn.
    bool covers(char32_t code_point) const;
    /// The width of a text and the kerning after each of its letters, in 1/1000 of the type size.
    struct Advance {
        double width = 0;
        std::vector<double> kerns;
    };
    Advance advance(std::u32string_view text) const;
    double cap_height() const { return cap_height_; }  ///< in 1/1000 of the type size

  private:
    struct Deleter {
        void operator()(hb_face_t* face) const;
        void operator()(hb_font_t* font) const;
    };
    explicit FontMetrics(Face face);

    std::unique_ptr<hb_face_t, Deleter> face_;
    std::unique_ptr<hb_font_t, Deleter> font_;
    double units_per_em_ = 1000;
    double cap_height_ = 0;
};

}  // namespace ventfolio
