#include "record/checksums.hpp"

#include <doctest/doctest.h>

namespace ventfolio {

TEST_CASE("a list of checksums is what sha256sum writes, by name") {
    // Digests of "abc" and of nothing: FIPS 180-4 example values. Form: `sha256sum abc.txt nothing.txt`, GNU coreutils.
    const std::string abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    const std::string nothing = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
    const std::string text = abc + "  abc.txt\n" + nothing + "  nothing.txt\n";
    CHECK(checksum_list({checksum_of("nothing.txt", ""), checksum_of("abc.txt", "abc")}) == text);
    const auto read = read_checksum_list(text);
    REQUIRE(read);
    CHECK((*read == std::vector<Checksum>{{"abc.txt", abc}, {"nothing.txt", nothing}}));
}

TEST_CASE("a list that is cut off, changed or points elsewhere is none") {
    const std::string digest(64, 'a');
    const std::string rows[] = {
        "",
        "\n",
        digest + "  a.pdf",                             // no end of the line
        digest + " a.pdf\n",                            // one blank
        digest + "  \n",                                // no name
        digest.substr(1) + "  a.pdf\n",                 // 63 digits
        std::string(64, 'A') + "  a.pdf\n",             // capitals: sha256sum writes none
        digest + "  ../a.pdf\n",                        // another folder
        digest + "  a.pdf\n" + digest + "  a.pdf\n",    // twice
        digest + "  a.pdf\n\n" + digest + "  b.pdf\n",  // an empty line
        digest + "  a.pdf\n# by hand\n",
    };
    for (const std::string& row : rows) {
        CAPTURE(row);
        CHECK(!read_checksum_list(row));
    }
}

}  // namespace ventfolio
