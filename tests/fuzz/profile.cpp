// A consultant's profile and the ledger of starts: what is read can be written and read again. The first byte
// says which.
#include "engine/output/consultant.h"
#include "engine/output/start_ledger.h"
#include "tests/fuzz/law.h"

#include <cstddef>
#include <cstdint>

using namespace engine;

namespace {

void readProfile(std::string_view text) {
    const ConsultantReading reading = readConsultantText(text, "/profiles/consultant.toml");
    test::holdSaid(reading.diagnostics, text);
    test::hold(reading.consultant.has_value() != hasErrors(reading.diagnostics),
               "there is a profile or an error");
    if (reading.consultant) {
        const ConsultantReading again = readConsultantText(writeConsultant(*reading.consultant, "/profiles"),
                                                           "/profiles/consultant.toml");
        test::hold(again.consultant.has_value(), "a profile that is written can be read");
        Consultant one = *reading.consultant, other = *again.consultant;
        one.logo.clear();  // a path may be written in more than one way
        other.logo.clear();
        test::hold(one == other, "and is the same");
    }
}

void readLedger(std::string_view text) {
    const StartLedgerReading reading = readStartLedgerText(text, "starts.csv");
    test::holdSaid(reading.diagnostics, text);
    if (reading.ledger) {
        const std::string written = startLedgerCsv(*reading.ledger);
        const StartLedgerReading again = readStartLedgerText(written, "starts.csv");
        test::hold(again.ledger.has_value(), "a ledger that is written can be read");
        test::hold(startLedgerCsv(*again.ledger) == written, "and is the same");
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > 0) {
        const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
        data[0] % 2 == 0 ? readProfile(text) : readLedger(text);
    }
    return 0;
}
