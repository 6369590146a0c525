#include "app/cli_new.h"

#include "app/cli_say.h"
#include "engine/base/durable.h"
#include "engine/base/text_file.h"
#include "engine/intake/first_questions.h"
#include "engine/intake/new_file.h"
#include "engine/intake/pasted_weather.h"
#include "engine/pond/key_list.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_units.h"

#include <chrono>
#include <filesystem>
#include <iostream>
#include <optional>
#include <unistd.h>

namespace app {
namespace {

engine::Date tomorrow() {
    const auto today = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    return engine::Date(today + std::chrono::days(1));
}

/// One run of the command.
class NewPond {
public:
    explicit NewPond(const CliOptions& options)
        : m_options(options.fresh), m_isAsking(options.fresh.ask || ::isatty(STDIN_FILENO) == 1) {
        m_answers.name = "A new pond";
        m_answers.firstDay = tomorrow();
    }

    /// Takes all answers; false if there is no use in going on, which was said.
    bool answer() {
        bool isWhole = takeForecast();
        if (m_isAsking && isWhole) {
            std::cout << "Enter alone takes what stands in [brackets]; a unit may stand behind any number.\n";
        }
        for (const engine::FirstQuestion& question : engine::firstQuestions()) {
            bool isSaid = false;
            for (const engine::FirstField& field : question.fields) {
                const auto given = m_options.answers.find(field.name);
                if (given != m_options.answers.end()) {
                    isWhole = takeOption(field, given->second) && isWhole;
                } else if (isSkipped(field)) {
                    continue;
                } else if (m_isAsking && isWhole) {
                    if (!isSaid) {
                        std::cout << '\n' << question.question << ' ' << question.help << '\n';
                        isSaid = true;
                    }
                    if (!ask(field)) {
                        return false;
                    }
                } else {
                    isWhole = leaveOpen(field) && isWhole;
                }
            }
        }
        return isWhole;
    }

    [[nodiscard]] const engine::FirstAnswers& answers() const { return m_answers; }
    [[nodiscard]] const std::string& taken() const { return m_taken; }

private:
    /// The ordinary day is not asked for where a forecast is there.
    [[nodiscard]] bool isSkipped(const engine::FirstField& field) const {
        const std::string_view name(field.name);
        return !m_answers.forecast.empty() &&
               (name == "low" || name == "high" || name == "sky" || name == "wind");
    }

    bool takeForecast() {
        if (m_options.forecast.empty()) {
            return true;
        }
        const engine::FileText file = engine::readWholeFile(m_options.forecast, engine::kPondFileLimit_bytes);
        if (!file.text) {
            complain(engine::shownPath(m_options.forecast) + " cannot be used: " + file.fault);
            return false;
        }
        const auto first = m_options.answers.find("first-day");
        if (first != m_options.answers.end()) {
            takeOption(engine::firstQuestions()[2].fields.front(), first->second);
        }
        const engine::PastedWeather pasted =
            engine::readPastedWeather(*file.text, m_answers.firstDay, m_options.units);
        for (const std::string& sentence : pasted.said) {
            std::cout << sentence << '\n';
        }
        if (!pasted.fault.empty()) {
            complain(engine::shownPath(m_options.forecast) + ": " + pasted.fault);
            return false;
        }
        m_answers.forecast = pasted.days;
        return true;
    }

    bool takeOption(const engine::FirstField& field, const std::string& text) {
        const std::string fault = engine::takeAnswer(m_answers, field, text, m_options.units);
        if (!fault.empty()) {
            complain("The option --" + std::string(field.name) + ": " + fault);
        }
        return fault.empty();
    }

    bool ask(const engine::FirstField& field) {
        while (true) {
            const std::string usual =
                field.mustBeTold ? "" : engine::answerText(m_answers, field, m_options.units);
            const std::string unit =
                field.key == nullptr
                    ? ""
                    : engine::unitIn(engine::findKey(field.key)->rule.unit, m_options.units).text;
            std::cout << "  " << field.label << (unit.empty() || !usual.empty() ? "" : ", " + unit);
            for (std::size_t i = 0; i < field.words.size(); ++i) {
                std::cout << (i == 0 ? " (" : ", ") << field.words[i];
            }
            std::cout << (field.words.empty() ? "" : ")") << (usual.empty() ? "" : " [" + usual + "]") << ": "
                      << std::flush;
            std::string line;
            if (!std::getline(std::cin, line)) {
                complain("The answers ended before the question on " + std::string(field.label) +
                         ". Nothing was written.");
                return false;
            }
            line.erase(0, line.find_first_not_of(" \t"));
            line.erase(line.find_last_not_of(" \t\r") + 1);
            if (line.empty() && !field.mustBeTold) {
                return true;
            }
            const std::string fault = line.empty()
                                          ? "This must be told; nothing usual would do."
                                          : engine::takeAnswer(m_answers, field, line, m_options.units);
            if (fault.empty()) {
                return true;
            }
            std::cout << "  " << fault << '\n';
        }
    }

    bool leaveOpen(const engine::FirstField& field) {
        if (field.mustBeTold) {
            complain("The option --" + std::string(field.name) +
                     " is missing, and there is no terminal to ask at (--ask asks all the same).");
            return false;
        }
        const std::string usual = engine::answerText(m_answers, field, m_options.units);
        if (!usual.empty()) {
            m_taken += (m_taken.empty() ? "" : ", ") + std::string(field.name) + " " + usual;
        }
        return true;
    }

    const NewOptions& m_options;
    bool m_isAsking;
    engine::FirstAnswers m_answers;
    std::string m_taken;  ///< What was not told
};

}  // namespace

int makeNewPond(const CliOptions& options) {
    const std::filesystem::path path = options.ponds.front();
    if (std::filesystem::exists(path)) {
        complain(engine::shownPath(path) + " is there already; give another name. Nothing was written.");
        return kBadInput;
    }
    NewPond made(options);
    if (!made.answer()) {
        return kBadInput;
    }
    engine::Pond pond = engine::pondFrom(made.answers());
    engine::TypedNumbers typed = made.answers().typed;
    engine::writeIn(options.fresh.units, pond, typed);
    engine::PondSource source;
    for (const engine::Diagnostic& fault : engine::checkPond(pond, source)) {
        complain(engine::format(fault));
        if (fault.severity == engine::Severity::Error) {
            complain("Nothing was written.");
            return kBadInput;
        }
    }
    if (const auto fault =
            engine::saveDurably(path, engine::commentedPond(pond, typed), engine::OldFile::Replaced)) {
        complain(*fault);
        return kBadInput;
    }
    return saidAll((made.taken().empty() ? "" : "Not told, so taken: " + made.taken() + ".\n") +
                   engine::shownPath(path) + " is written. Look at it, change what you know better, then:\n" +
                   "    dawnline-cli check " + options.ponds.front() + "\n    dawnline-cli compare " +
                   options.ponds.front() + " --out first\n");
}

}  // namespace app
