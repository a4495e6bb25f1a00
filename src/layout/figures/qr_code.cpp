#include "layout/figures/qr_code.hpp"

#include <qrencode.h>
#include <memory>
#include <vector>

#include "units/text.hpp"

namespace ventfolio {
namespace {

struct Deleter {
    void operator()(QRcode* code) const { QRcode_free(code); }
};
using Code = std::unique_ptr<QRcode, Deleter>;

bool is_black(const QRcode& code, int row, int column) {
    return (code.data[row * code.width + column] & 1U) != 0;  // the other bits tell data from patterns
}

void add_run(Path& path, Point corner, double width, double height) {
    using Kind = Path::Segment::Kind;
    const Point far{corner.x + width, corner.y + height};
    path.segments.push_back({Kind::move, corner, {}, {}});
    path.segments.push_back({Kind::line, {far.x, corner.y}, {}, {}});
    path.segments.push_back({Kind::line, far, {}, {}});
    path.segments.push_back({Kind::line, {corner.x, far.y}, {}, {}});
    path.segments.push_back({Kind::close, {}, {}, {}});
}

/// Black modules side by side are one rectangle: no seams for a printer to leave white.
Path modules_of(const QRcode& code, double module) {
    Path path;
    path.filled = true;
    for (int row = 0; row < code.width; ++row) {
        for (int column = 0; column < code.width; ++column) {
            if (!is_black(code, row, column)) continue;
            const int first = column;
            while (column + 1 < code.width && is_black(code, row, column + 1)) ++column;
            add_run(path, {(first + kQuietModules) * module, (row + kQuietModules) * module},
                    (column - first + 1) * module, module);
        }
    }
    return path;
}

}  // namespace

std::string code_text(const Block& list) {
    std::string text;
    for (const Block& item : list.children) {
        if (!text.empty()) text += '\n';
        text += with_replaced(plain_text(inlines_of(item)), kNoBreakSpace, " ");
    }
    return text;
}

std::optional<Frame> qr_code(const std::string& text, double side, LayoutContext& context) {
    if (text.empty() || text.size() > kCodeBytesMost) return std::nullopt;
    constexpr int kSmallestVersion = 0;  // that holds the text
    const std::vector<unsigned char> bytes(text.begin(), text.end());
    const Code code{QRcode_encodeData(static_cast<int>(bytes.size()), bytes.data(), kSmallestVersion, QR_ECLEVEL_M)};
    if (!code) return std::nullopt;
    Frame frame;
    frame.width = frame.height = side;
    frame.put_path(modules_of(*code, side / (code->width + 2 * kQuietModules)), {context.node, "figure", {}});
    return frame;
}

}  // namespace ventfolio
