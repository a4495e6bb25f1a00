#include "letter_reader.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

constexpr double kPointsAnInch = 72;
constexpr std::size_t kWhiteAround = 20;  // dots; letters at the edge of a picture are read badly

/// What a reader with the language of the papers must have installed.
void require_tesseract(const trial::Scratch& scratch) {
    const trial::Ran languages = scratch.run(fmt::format("'{}' --list-langs", VENTFOLIO_TESSERACT));
    REQUIRE_MESSAGE((languages.status == 0 && languages.out.find("\neng\n") != std::string::npos),
                    "tesseract cannot read English: install the Debian packages tesseract-ocr and tesseract-ocr-eng");
}

}  // namespace

LetterReader::Dots LetterReader::dots_of(const Area& area, std::size_t page) const {
    const trial::DrawnPage& picture = pages_.at(page);
    const double across = copy_.dots_across * copy_.scale / kPointsAnInch;
    const double down = copy_.dots_down * copy_.scale / kPointsAnInch;
    const auto dot = [](double value, std::size_t most) {
        return std::min(static_cast<std::size_t>(std::max(0.0, std::round(value))), most);
    };
    const std::size_t left = dot(area.left * across, picture.width());
    const std::size_t top = dot(area.top * down, picture.height());
    return {left, top, dot(area.right * across, picture.width()) - left,
            dot(area.bottom * down, picture.height()) - top};
}

/// The box with white around it, black on white, in the format that tesseract takes without further libraries.
std::string LetterReader::grey_map(const TextBox& box, int closer) const {
    const Dots dots = dots_of(box.area, box.page);
    const auto times = static_cast<std::size_t>(closer);
    const std::size_t width = (dots.width + 2 * kWhiteAround) * times;
    const std::size_t height = (dots.height + 2 * kWhiteAround) * times;
    std::string file = fmt::format("P5\n{} {}\n255\n", width, height);
    file.reserve(file.size() + width * height);
    for (std::size_t y = 0; y < height; ++y) {
        for (std::size_t x = 0; x < width; ++x) {
            const std::size_t from_left = x / times - kWhiteAround;  // wraps round where there is white
            const std::size_t from_top = y / times - kWhiteAround;
            int grey = 255;
            if (from_left < dots.width && from_top < dots.height) {
                grey = pages_.at(box.page).at(dots.left + from_left, dots.top + from_top);
                if (box.white) grey = 255 - grey;
            }
            file += static_cast<char>(grey);
        }
    }
    return file;
}

void LetterReader::read(const std::vector<std::size_t>& boxes, int closer, bool figures) {
    if (boxes.empty()) return;
    const trial::Scratch scratch;
    require_tesseract(scratch);
    std::string list;  // one call for all: starting costs more than reading
    for (const std::size_t box : boxes)
        list += scratch.save(fmt::format("{}.pgm", box), grey_map(boxes_.at(box), closer)).string() + "\n";
    scratch.save("list", list);
    constexpr int kOneLine = 7;
    const trial::Ran ran =
        scratch.run(fmt::format("OMP_THREAD_LIMIT=1 '{}' list read --psm {} --dpi {}{}", VENTFOLIO_TESSERACT, kOneLine,
                                200 * closer, figures ? " -c tessedit_char_whitelist=0123456789.,-" : ""));
    REQUIRE_MESSAGE(ran.status == 0, ran.err);
    const std::vector<std::string> pages = split(scratch.run("cat read.txt").out, '\f');
    REQUIRE(pages.size() >= boxes.size());
    for (std::size_t at = 0; at < boxes.size(); ++at) looks_.at(boxes[at]).emplace_back(trimmed(pages[at]));
}

void LetterReader::look_at(const std::vector<std::size_t>& boxes, int closer) {
    std::vector<std::size_t> figures;
    std::vector<std::size_t> words;
    for (const std::size_t box : boxes) (boxes_.at(box).figure ? figures : words).push_back(box);
    read(figures, closer, true);
    read(words, closer, false);
}

bool LetterReader::points_are_seen(std::size_t number, const std::vector<trial::DrawnPage>& pages) const {
    const TextBox& box = boxes_.at(number);
    const auto share = [&](const Area& area) {
        const Dots dots = dots_of(area, box.page);
        const double all = static_cast<double>(dots.width * dots.height);
        const double dark = pages.at(box.page).ink(dots.left, dots.top, dots.width, dots.height) / all;
        return box.white ? 1 - dark : dark;
    };
    return std::ranges::all_of(box.points, [&](const TextBox::DecimalPoint& point) {
        return share(point.dot) > 0.25 && share(point.above) < 0.05;
    });
}

}  // namespace ventfolio::testing
