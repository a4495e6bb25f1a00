#include "packet/template_folder.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <system_error>

#include "packet/png_picture.hpp"

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kLargestText = 256 * 1024;
constexpr std::size_t kLargestPicture = 1024 * 1024;
constexpr int kDeepest = 4;  // en/alarm-response/high-pressure.md has three steps

struct FileCloser {
    void operator()(std::FILE* file) const { std::fclose(file); }
};

/// The bytes of a file; of one that is larger than `most`, one more than that.
std::string bytes_of(const fs::path& path, std::size_t most) {
    std::error_code error;
    if (!fs::is_regular_file(path, error)) throw FolderError{path, "is no file"};
    const std::unique_ptr<std::FILE, FileCloser> file{std::fopen(path.c_str(), "rb")};
    if (!file) throw FolderError{path, std::string{"cannot be read: "} + std::strerror(errno)};
    std::string bytes(most + 1, '\0');
    bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file.get()));
    if (std::ferror(file.get())) throw FolderError{path, std::string{"cannot be read: "} + std::strerror(errno)};
    return bytes;
}

std::string text_of(const fs::path& path) {
    std::string text = bytes_of(path, kLargestText);
    if (text.size() > kLargestText) throw FolderError{path, "is larger than 256 KiB"};
    return text;
}

PictureFile picture_of(const fs::path& path, std::string name) {
    const std::string bytes = bytes_of(path, kLargestPicture);
    if (bytes.size() > kLargestPicture) return {std::move(name), nullptr, "is larger than 1 MiB"};
    return png_picture(bytes, std::move(name));
}

/// What a link leads to. A template from elsewhere would be somebody else's.
fs::path resolved(const fs::path& path, const fs::path& folder) {
    std::error_code error;
    fs::path real = fs::canonical(path, error);
    if (error) throw FolderError{path, "cannot be read: " + error.message()};
    const auto [end, unused] = std::mismatch(folder.begin(), folder.end(), real.begin(), real.end());
    if (end != folder.end()) throw FolderError{path, "leads out of the folder of templates; copy the file into it"};
    return real;
}

bool is_template(const fs::path& name) {
    constexpr std::array<std::string_view, 3> kYaml{"words.yaml", "phrases.yaml", "plain.yaml"};
    if (name.extension() == ".md") return true;
    const bool region = name.parent_path() == "regions" && name.extension() == ".yaml";
    return region || std::ranges::find(kYaml, name.filename().string()) != kYaml.end();
}

class FolderReader {
  public:
    explicit FolderReader(const fs::path& folder) : root_{canonical_of(folder)} { overlay_.folder = folder; }

    TemplateOverlay read() {
        walk(root_, {}, 1);
        return std::move(overlay_);
    }

  private:
    static fs::path canonical_of(const fs::path& folder) {
        std::error_code error;
        fs::path real = fs::canonical(folder, error);
        if (!error && !fs::is_directory(real, error)) throw FolderError{folder, "is no folder of templates"};
        if (error) throw FolderError{folder, "cannot be read: " + error.message()};
        return real;
    }

    void walk(const fs::path& folder, const fs::path& name, int depth) {
        if (depth > kDeepest) throw FolderError{folder, "is too deep for a folder of templates"};
        std::error_code error;
        for (const fs::directory_entry& entry : fs::directory_iterator{folder, error}) {
            const std::string step = entry.path().filename().string();
            if (step.starts_with('.')) continue;
            take(entry.path(), name / step, depth);
        }
        if (error) throw FolderError{folder, "cannot be read: " + error.message()};
    }

    void take(const fs::path& path, const fs::path& name, int depth) {
        const fs::path real = resolved(path, root_);
        if (fs::is_directory(real)) return walk(real, name, depth + 1);
        if (name.extension() == ".png") {
            overlay_.pictures.emplace(name.generic_string(), picture_of(real, (overlay_.folder / name).string()));
            return;
        }
        if (depth == 1) return;  // beside the folders of languages
        if (!is_template(name))
            throw FolderError{path,
                              "is no template; those are .md, words.yaml, phrases.yaml, plain.yaml and "
                              "regions/NAME.yaml, and pictures are .png"};
        overlay_.files.emplace(name.generic_string(), text_of(real));
    }

    fs::path root_;
    TemplateOverlay overlay_;
};

}  // namespace

TemplateOverlay read_template_folder(const fs::path& folder) { return FolderReader{folder}.read(); }

}  // namespace ventfolio
