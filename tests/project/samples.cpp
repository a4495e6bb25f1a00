#include "project/samples.hpp"

#include <fmt/format.h>
#include <png.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numeric>
#include <sstream>
#include <stdexcept>

#include "project/files.hpp"
#include "project/shell.hpp"

namespace ventfolio::project {

namespace fs = std::filesystem;

Picture page_picture(const fs::path& pdf, std::size_t page, int dots_per_inch) {
    const Scratch scratch;
    output_of(scratch.folder(), fmt::format("pdftoppm -gray -r {} -f {} -l {} -singlefile {} page", dots_per_inch, page,
                                            page, quoted(pdf)));
    // Portable grey map, binary: "P5 width height 255", one blank, then a byte a pixel.
    std::istringstream stream{contents(scratch.path("page.pgm"))};
    std::string kind;
    Picture picture;
    int white = 0;
    stream >> kind >> picture.width >> picture.height >> white;
    stream.get();
    picture.pixels.resize(std::size_t{picture.width} * picture.height);
    stream.read(reinterpret_cast<char*>(picture.pixels.data()), static_cast<std::streamsize>(picture.pixels.size()));
    if (!stream || kind != "P5" || white != 255) throw std::runtime_error{"pdftoppm wrote no grey map"};
    return picture;
}

Picture side_by_side(const std::vector<Picture>& pages) {
    Picture all;
    for (const Picture& page : pages) {
        all.width += page.width;
        all.height = std::max(all.height, page.height);
    }
    all.pixels.assign(std::size_t{all.width} * all.height, 255);
    std::size_t left = 0;
    for (const Picture& page : pages) {
        for (std::size_t y = 0; y < page.height; ++y)
            std::copy_n(page.pixels.begin() + static_cast<std::ptrdiff_t>(y * page.width), page.width,
                        all.pixels.begin() + static_cast<std::ptrdiff_t>(y * all.width + left));
        left += page.width;
    }
    return all;
}

namespace {

png_image grey_image() {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    return image;
}

[[noreturn]] void refuse(const fs::path& file, const png_image& image) {
    throw std::runtime_error{file.string() + ": " + image.message};
}

}  // namespace

void write_png(const fs::path& file, const Picture& picture) {
    png_image image = grey_image();
    image.width = picture.width;
    image.height = picture.height;
    image.format = PNG_FORMAT_GRAY;
    if (png_image_write_to_file(&image, file.c_str(), 0, picture.pixels.data(), 0, nullptr) == 0) refuse(file, image);
}

Picture read_png(const fs::path& file) {
    png_image image = grey_image();
    if (png_image_begin_read_from_file(&image, file.c_str()) == 0) refuse(file, image);
    image.format = PNG_FORMAT_GRAY;
    Picture picture{image.width, image.height, std::vector<std::uint8_t>(PNG_IMAGE_SIZE(image))};
    if (png_image_finish_read(&image, nullptr, picture.pixels.data(), 0, nullptr) == 0) refuse(file, image);
    return picture;
}

namespace {

constexpr std::size_t kSquare = 4;

double mean_of_square(const Picture& picture, std::size_t left, std::size_t top) {
    double sum = 0;
    double count = 0;
    for (std::size_t y = top; y < std::min<std::size_t>(top + kSquare, picture.height); ++y)
        for (std::size_t x = left; x < std::min<std::size_t>(left + kSquare, picture.width); ++x, ++count)
            sum += picture.at(x, y);
    return sum / count;
}

}  // namespace

double largest_difference(const Picture& one, const Picture& other) {
    if (one.width != other.width || one.height != other.height) return 255;
    double largest = 0;
    for (std::size_t y = 0; y < one.height; y += kSquare)
        for (std::size_t x = 0; x < one.width; x += kSquare)
            largest = std::max(largest, std::abs(mean_of_square(one, x, y) - mean_of_square(other, x, y)));
    return largest;
}

Picture in_sixteen_greys(Picture picture) {
    constexpr int kStep = 17;  // 255 / 15
    for (std::uint8_t& pixel : picture.pixels) pixel = static_cast<std::uint8_t>((pixel + kStep / 2) / kStep * kStep);
    return picture;
}

namespace {

void run_program(const fs::path& program, const fs::path& project, const std::string& words) {
    const Ran ran = run_in(project, fmt::format("{} {} --quiet", quoted(program), words));
    if (ran.status != 0) throw std::runtime_error{fmt::format("{} failed:\n{}", words, ran.err)};
}

void print_packet(const fs::path& program, const fs::path& project, const SampleKind& kind, const fs::path& folder) {
    const std::string words =
        fmt::format("profiles/{}.yaml --on {} -o {}", kind.name, kind.on, quoted(folder / kind.name));
    if (kind.follows.empty()) return run_program(program, project, "print " + words);
    const auto before = std::ranges::find(kSampleHomes, kind.follows, &SampleKind::name);
    print_packet(program, project, *before, folder);
    run_program(program, project, fmt::format("update {} --from {}", words, quoted(folder / before->name)));
}

}  // namespace

SampleHome print_sample(const fs::path& program, const fs::path& project, const SampleKind& kind,
                        const fs::path& folder) {
    print_packet(program, project, kind, folder);
    const fs::path papers = folder / kind.name;
    SampleHome sample{std::string{kind.name}, papers / "packet.pdf", {}};
    const nlohmann::json manifest = nlohmann::json::parse(contents(papers / "packet.json"));
    const std::vector<std::string> texts = page_texts(sample.pdf);
    std::size_t page = 2;  // behind the leaf of the print slip
    for (const nlohmann::json& sheet : manifest.at("sheets")) {
        if (sheet.at("state") != "printed") continue;
        const auto name = sheet.at("name").get<std::string>();
        std::vector<Picture> pages(sheet.at("pages").get<std::size_t>());
        page += page % 2;  // a sheet begins on a front side
        for (Picture& picture : pages) {
            if (texts.at(page).find(sheet.at("code").get<std::string>()) == std::string::npos)
                throw std::runtime_error{"page " + std::to_string(page + 1) + " is not one of " + name};
            picture = page_picture(sample.pdf, ++page, kSampleDotsPerInch);
        }
        const auto place = sheet.value("place", std::string{});
        sample.sheets.push_back({place.empty() ? name : name + "-" + place, in_sixteen_greys(side_by_side(pages))});
    }
    return sample;
}

std::vector<std::string> page_texts(const fs::path& pdf) {
    const std::string all = output_of(pdf.parent_path(), "pdftotext -enc UTF-8 -layout " + quoted(pdf) + " -");
    std::vector<std::string> pages;
    std::istringstream stream{all};
    for (std::string page; std::getline(stream, page, '\f');) pages.push_back(page);
    return pages;
}

}  // namespace ventfolio::project
