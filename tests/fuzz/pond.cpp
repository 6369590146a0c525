// A pond file with the files that it names: what is read can be written, read again and written to the same
// bytes, and its log has the head that is printed of it. The parts of an input are parted by zero bytes: the
// pond, the weather, the readings, the typical year.
#include "engine/follow_up/log_chain.h"
#include "engine/pond/pond_io.h"
#include "tests/fuzz/law.h"

#include <cstddef>
#include <cstdint>

using namespace engine;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    std::string_view all(reinterpret_cast<const char*>(data), size);
    const auto next = [&all] {
        const std::size_t end = all.find('\0');
        const std::string_view part = all.substr(0, end);
        all = end == std::string_view::npos ? std::string_view() : all.substr(end + 1);
        return part;
    };
    const std::string_view text = next(), weather = next(), readings = next(), climate = next();
    const CompanionSource companions = [&](const std::string& named) -> FileText {
        const std::string_view file = named.ends_with(".epw")                ? climate
                                      : named.find('w') != std::string::npos ? weather
                                                                             : readings;
        return file.empty() ? FileText{std::nullopt, "There is no such file."}
                            : FileText{std::string(file), ""};
    };
    const PondReading reading = readPondText(text, "pond.toml", companions);
    test::holdSaid(reading.diagnostics, {reinterpret_cast<const char*>(data), size});
    test::hold(reading.pond.has_value() != hasErrors(reading.diagnostics), "there is a pond or an error");
    if (!reading.pond) {
        return 0;
    }
    // That does once more what follows, so that a part of the inputs is enough.
    test::hold(size % 16 != 0 || !savingFault(*reading.pond), "what is opened can be saved");
    const std::string written = writePond(*reading.pond);
    test::hold(written.size() <= kPondFileLimit_bytes, "and is not too long to be opened");
    const PondReading again = readPondText(written, "pond.toml", companions);
    test::hold(again.pond && *again.pond == *reading.pond, "what is written reads back as the same pond");
    test::hold(writePond(*again.pond) == written, "and is written to the same bytes");
    const LogHead head = logHead(*reading.pond);
    test::hold(parseLogHead(shown(head)) == head, "a printed head reads back");
    test::hold(matchHead(*again.pond, head) == HeadMatch::Same, "the log has its own head");
    return 0;
}
