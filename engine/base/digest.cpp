#include "engine/base/digest.h"

#include "engine/base/error.h"

#include <array>
#include <openssl/evp.h>

namespace engine {

struct Sha256::State {
    State() : context(EVP_MD_CTX_new()) {}
    ~State() { EVP_MD_CTX_free(context); }
    State(const State&) = delete;
    State& operator=(const State&) = delete;
    EVP_MD_CTX* context;
};

Sha256::Sha256() : m_state(std::make_unique<State>()) {
    ensure(m_state->context != nullptr && EVP_DigestInit_ex(m_state->context, EVP_sha256(), nullptr) == 1,
           "SHA-256 is there");
}

Sha256::~Sha256() = default;

void Sha256::add(std::string_view part) {
    ensure(EVP_DigestUpdate(m_state->context, part.data(), part.size()) == 1, "SHA-256 takes any bytes");
}

std::string Sha256::take() {
    std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
    unsigned int size = 0;
    const int isDone = EVP_DigestFinal_ex(m_state->context, digest.data(), &size);
    ensure(isDone == 1 && size == 32, "SHA-256 gives 32 bytes");
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string text;
    for (unsigned int i = 0; i < size; ++i) {
        text += kDigits[digest[i] / 16U];
        text += kDigits[digest[i] % 16U];
    }
    return text;
}

std::string sha256(std::string_view bytes) {
    Sha256 sum;
    sum.add(bytes);
    return sum.take();
}

}  // namespace engine
