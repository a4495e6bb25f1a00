// usage: make_samples PROGRAM PROJECT-FOLDER
//
// Prints the demo homes into PROJECT-FOLDER/samples: one PDF a home, one picture a sheet. What a home had there before
// is removed, so that no sheet stays that is no longer made.

#include <fmt/format.h>

#include <exception>

#include "project/files.hpp"
#include "project/samples.hpp"

namespace {

void make(const std::filesystem::path& program, const std::filesystem::path& project) {
    namespace fs = std::filesystem;
    using namespace ventfolio::project;
    for (const SampleKind& home : kSampleHomes) {
        const Scratch scratch;
        const SampleHome sample = print_sample(program, project, home, scratch.folder());
        const fs::path folder = project / "samples" / home.name;
        fs::remove_all(folder);
        save(folder / "packet.pdf", contents(sample.pdf));
        for (const SampleSheet& sheet : sample.sheets) write_png(folder / (sheet.name + ".png"), sheet.picture);
        fmt::print("samples/{}: packet.pdf, {} pictures\n", home.name, sample.sheets.size());
    }
}

}  // namespace

int main(int count, char** words) {
    if (count != 3) {
        fmt::print(stderr, "usage: make_samples PROGRAM PROJECT-FOLDER\n");
        return 2;
    }
    try {
        make(words[1], words[2]);
    } catch (const std::exception& fault) {
        fmt::print(stderr, "make_samples: {}\n", fault.what());
        return 1;
    }
    return 0;
}
