// What a proposal says of the pond without a run stands beside its answer.
#include "engine/wording/sentence.h"
#include "engine/wording/wording.h"
#include "tests/papers/made_papers.h"

namespace widgets {
namespace {

TEST(ProposalDiagnosis, HasNoRuleOfThumbBesideTheAnswer) {
    const PaperRun& run = test::headline().run;
    QString words;
    for (const PaperPiece& piece : proposal(run).pieces) {
        words += piece.text + QLatin1Char('\n');
    }
    int rules = 0, facts = 0;
    for (const engine::Sentence& sentence : engine::sentencesOf(run.comparison())) {
        if (sentence.part != engine::SentencePart::Triage) {
            continue;
        }
        const bool isRule = engine::isRuleOfThumb(sentence.key);
        (isRule ? rules : facts) += 1;
        EXPECT_EQ(words.contains(onPaper(run, sentence)), !isRule) << engine::english(sentence);
    }
    EXPECT_GE(rules, 2) << "the comparison alone says them";
    EXPECT_GE(facts, 2);
}

}  // namespace
}  // namespace widgets
