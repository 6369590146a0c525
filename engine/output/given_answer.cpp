#include "engine/output/given_answer.h"

#include "engine/base/error.h"
#include "engine/output/advice_io.h"
#include "engine/pond/csv.h"

namespace engine {
namespace {

std::map<std::string, std::string> fieldsOf(std::string_view csv) {
    std::map<std::string, std::string> fields;
    for (CsvRows rows(csv); rows.next();) {
        if (rows.cells().size() == 2) {
            fields.emplace(rows.cells()[0], rows.cells()[1]);
        }
    }
    return fields;
}

}  // namespace

GivenAnswer givenAnswer(const FrozenRun& run) {
    std::optional<RunStatement> made = readStatement(statementOf(run.files, run.stamp));
    ensure(made.has_value(), "a statement of a run reads back");
    return {std::move(*made), fieldsOf(adviceCsv(run.advice, nameOf(run)))};
}

std::optional<GivenAnswer> givenAnswer(const BundleFiles& bundle) {
    const auto statement = bundle.text(kFrozenStatement), advice = bundle.text("advice.csv");
    if (!statement || !advice) {
        return std::nullopt;
    }
    std::optional<RunStatement> made = readStatement(*statement);
    return made ? std::optional(GivenAnswer{std::move(*made), fieldsOf(*advice)}) : std::nullopt;
}

}  // namespace engine
