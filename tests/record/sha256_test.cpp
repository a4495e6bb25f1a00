#include "record/sha256.hpp"

#include <doctest/doctest.h>

namespace ventfolio {

TEST_CASE("SHA-256 agrees with the published vectors") {
    struct Row {
        std::string bytes;
        const char* digest;
        const char* source;
    };
    const Row rows[] = {
        {"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", "FIPS 180-4 examples, one block"},
        {"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
         "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1", "FIPS 180-4 examples, two blocks"},
        {std::string(1'000'000, 'a'), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
         "FIPS 180-2, appendix B.3, a million times a"},
        {"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855", "NIST CAVP, message of length 0"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.source);
        CHECK(sha256_hex(row.bytes) == row.digest);
    }
}

}  // namespace ventfolio
