#include "record/sha256.hpp"

#include <fmt/format.h>
#include <openssl/evp.h>
#include <memory>
#include <stdexcept>

namespace ventfolio {
namespace {

struct FreeDigest {
    void operator()(EVP_MD_CTX* context) const { EVP_MD_CTX_free(context); }
};

void require(bool done) {
    if (!done) throw std::runtime_error{"the cryptography library cannot compute a SHA-256"};
}

}  // namespace

Sha256 sha256(std::string_view bytes) {
    const std::unique_ptr<EVP_MD_CTX, FreeDigest> context{EVP_MD_CTX_new()};
    Sha256 digest{};
    unsigned length = 0;
    require(context != nullptr);
    require(EVP_DigestInit_ex(context.get(), EVP_sha256(), nullptr) == 1);
    require(EVP_DigestUpdate(context.get(), bytes.data(), bytes.size()) == 1);
    require(EVP_DigestFinal_ex(context.get(), digest.data(), &length) == 1 && length == digest.size());
    return digest;
}

std::string sha256_hex(std::string_view bytes) {
    std::string digits;
    for (const std::uint8_t byte : sha256(bytes)) digits += fmt::format("{:02x}", byte);
    return digits;
}

}  // namespace ventfolio
