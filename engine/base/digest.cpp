#include "engine/base/digest.h"

#include "engine/base/error.h"

#include <array>
#include <openssl/evp.h>

namespace engine {

std::string sha256(std::string_view bytes) {
    std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
    unsigned int size = 0;
    const int isDone = EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr);
    ensure(isDone == 1 && size == 32, "SHA-256 gives 32 bytes");
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string text;
    for (unsigned int i = 0; i < size; ++i) {
        text += kDigits[digest[i] / 16U];
        text += kDigits[digest[i] % 16U];
    }
    return text;
}

}  // namespace engine
