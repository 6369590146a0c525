#include "engine/output/bundle_layout.h"

#include "engine/base/text_file.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <set>
#define ZLIB_CONST  // its input is not written to
#include <zlib.h>

namespace engine {
namespace {

constexpr std::size_t kHeader = 30, kEntry = 46, kEnd = 22;
constexpr std::size_t kHeaderMark = 0x04034b50, kEntryMark = 0x02014b50, kEndMark = 0x06054b50;
constexpr std::size_t kStored = 0, kDeflated = 8, kNameIsUtf8 = 0x800;
constexpr std::size_t kUnix = 3, kPlainFile = std::size_t{0100644} << 16U;  // -rw-r--r--

/// A number of an archive, lowest byte first.
std::size_t numberAt(std::string_view bytes, std::size_t at, std::size_t width) {
    std::size_t number = 0;
    for (std::size_t i = width; i > 0; --i) {
        number = number << 8U | static_cast<unsigned char>(bytes[at + i - 1]);
    }
    return number;
}

/// True if a packed content ends with its last byte and is as long as is said.
bool endsWithItself(std::string_view packed, std::size_t size) {
    z_stream stream{};
    if (inflateInit2(&stream, -MAX_WBITS) != Z_OK) {  // without a header of its own
        return false;
    }
    stream.next_in = reinterpret_cast<const Bytef*>(packed.data());
    stream.avail_in = static_cast<uInt>(packed.size());
    std::array<Bytef, 1 << 16> out{};
    int state = Z_OK;
    while (state == Z_OK && stream.total_out <= size) {
        stream.next_out = out.data();
        stream.avail_out = static_cast<uInt>(out.size());
        state = inflate(&stream, Z_NO_FLUSH);
    }
    const bool isWhole = state == Z_STREAM_END && stream.avail_in == 0 && stream.total_out == size;
    inflateEnd(&stream);
    return isWhole;
}

/// Where the file of a name is unpacked to lies in the folder and is no surprise.
bool isPlainName(std::string_view name) {
    const bool leaves = name.starts_with('/') || name.starts_with("../") || name.ends_with("/..") ||
                        name == ".." || name.find("/../") != std::string_view::npos;
    return !name.empty() && !leaves && !name.ends_with('/') && name.find('\\') == std::string_view::npos &&
           onOneLine(name) == name;
}

/// One archive on its way through.
class Walk {
public:
    explicit Walk(std::string_view bytes) : m_bytes(bytes) {}

    BundleLayout go() {
        if (!findEnd()) {
            say(kHidden);
            return std::move(m_layout);
        }
        while (m_entry < m_end && m_layout.faults.empty()) {
            takeFile();
        }
        if (m_layout.faults.empty() && (m_file != m_directory || m_names.size() != m_count)) {
            say(kHidden);
        }
        return std::move(m_layout);
    }

private:
    static constexpr const char* kHidden = "The bundle holds bytes that belong to none of its files.";

    void say(std::string sentence) { m_layout.faults.push_back(std::move(sentence)); }

    /// The record that ends an archive of one part without a comment.
    bool findEnd() {
        if (m_bytes.size() < kEnd) {
            return false;
        }
        m_end = m_bytes.size() - kEnd;
        m_count = numberAt(m_bytes, m_end + 8, 2);
        m_directory = m_entry = numberAt(m_bytes, m_end + 16, 4);
        return numberAt(m_bytes, m_end, 4) == kEndMark && numberAt(m_bytes, m_end + 4, 4) == 0 &&
               numberAt(m_bytes, m_end + 10, 2) == m_count && numberAt(m_bytes, m_end + 20, 2) == 0 &&
               m_directory <= m_end && numberAt(m_bytes, m_end + 12, 4) == m_end - m_directory;
    }

    /// One entry of the directory and the file that must stand next.
    void takeFile() {
        if (m_entry + kEntry > m_end || m_file + kHeader > m_directory ||
            numberAt(m_bytes, m_entry, 4) != kEntryMark || numberAt(m_bytes, m_file, 4) != kHeaderMark) {
            return say(kHidden);
        }
        const std::size_t named = numberAt(m_bytes, m_file + 26, 2);
        const std::size_t packed = numberAt(m_bytes, m_file + 18, 4);
        const std::size_t size = numberAt(m_bytes, m_file + 22, 4);
        const bool isThere = m_entry + kEntry + named <= m_end && packed <= m_directory &&
                             m_file + kHeader + named + packed <= m_directory;
        // The directory repeats the header from the version that is needed to the length of extra fields.
        if (!isThere || numberAt(m_bytes, m_file + 28, 2) != 0 || numberAt(m_bytes, m_entry + 32, 2) != 0 ||
            m_bytes.substr(m_entry + 6, kHeader - 4) != m_bytes.substr(m_file + 4, kHeader - 4) ||
            m_bytes.substr(m_entry + kEntry, named) != m_bytes.substr(m_file + kHeader, named)) {
            return say(kHidden);
        }
        const std::string name(m_bytes.substr(m_file + kHeader, named));
        if (!isPlainlyDressed()) {
            say("The file " + shownText(name) + " of the bundle is not written as ours are.");
        }
        if (!isPlainName(name)) {
            say("The name " + shownText(name) + " in the bundle is none of ours.");
        } else if (!m_names.insert(name).second) {
            say("There are two files " + shownText(name) + " in the bundle.");
        }
        const std::string_view content = m_bytes.substr(m_file + kHeader + named, packed);
        const std::size_t method = numberAt(m_bytes, m_file + 8, 2);
        if (method == kStored ? packed != size : method != kDeflated || !endsWithItself(content, size)) {
            say("The file " + shownText(name) + " cannot be read whole from the bundle.");
        }
        takeTime();
        m_file += kHeader + named + packed;
        m_entry += kEntry + named;
    }

    /// What else a directory says of a file: always the same.
    [[nodiscard]] bool isPlainlyDressed() const {
        const std::size_t flags = numberAt(m_bytes, m_file + 6, 2);
        return numberAt(m_bytes, m_entry + 5, 1) == kUnix && (flags & ~kNameIsUtf8) == 0 &&
               numberAt(m_bytes, m_entry + 34, 4) == 0 &&  // part, inner attributes
               numberAt(m_bytes, m_entry + 38, 4) == kPlainFile &&
               numberAt(m_bytes, m_entry + 42, 4) == m_file;
    }

    void takeTime() {
        const auto time = static_cast<std::uint32_t>(numberAt(m_bytes, m_file + 10, 4));
        if (m_file == 0) {
            m_layout.time = time;
        } else if (m_layout.time != time) {
            m_layout.time.reset();
        }
    }

    std::string_view m_bytes;
    std::size_t m_end = 0, m_directory = 0, m_count = 0;
    std::size_t m_file = 0, m_entry = 0;  // where the next ones begin
    std::set<std::string> m_names;
    BundleLayout m_layout;
};

}  // namespace

BundleLayout layoutOf(std::string_view bytes) {
    return Walk(bytes).go();
}

}  // namespace engine
