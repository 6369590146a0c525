// A bundle of papers in memory.
#include "engine/output/bundle.h"

#include "engine/output/bundle_layout.h"
#include "tests/fuzz/law.h"

#include <cstddef>
#include <cstdint>

using namespace engine;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const BundleLayout layout = layoutOf(bytes);
    const BundleFiles files = readBundleBytes(std::string(bytes), "\"bundle.zip\"");
    const BundleCheck check = verifyBundle(files);
    for (const std::string& fault : check.faults) {
        test::hold(!fault.empty() && onOneLine(fault) == fault, "a fault is one plain line");
    }
    if (check.faults.empty()) {
        test::hold(layout.faults.empty(), "a bundle without a fault has none in its bytes");
        test::hold(check.run.size() == 64 && check.names.size() + 1 == files.files.size(),
                   "all its files are named");
    }
    return 0;
}
