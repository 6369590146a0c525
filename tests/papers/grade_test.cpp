#include "tests/papers/made_papers.h"
#include "widgets/papers/paper_parts.h"

#include <QRegularExpression>

namespace widgets {
namespace {

using test::headline;

/// Syllables of an English word by its groups of vowels, a mute e at the end not counted, one at least.
int syllables(const QString& word) {
    static const QRegularExpression groups(QStringLiteral("[aeiouy]+"));
    int count = 0;
    for (auto it = groups.globalMatch(word.toLower()); it.hasNext(); it.next()) {
        ++count;
    }
    static const QRegularExpression mute(QStringLiteral("[^aeiouyl]e$|[^aeiouytd]ed$"));
    count -= mute.match(word.toLower()).hasMatch() ? 1 : 0;
    return std::max(1, count);
}

struct Grade {
    double grade = 0.0;
    int words = 0, sentences = 0;
};

/// The grade of Flesch and Kincaid: Kincaid and others (1975), Derivation of New Readability Formulas, Naval
/// Technical Training Command, Research Branch Report 8-75: 0.39 words per sentence + 11.8 syllables per word
/// - 15.59.
Grade gradeOf(const QString& text) {
    Grade grade;
    int sum = 0;
    static const QRegularExpression ends(QStringLiteral("[.!?:]+(\\s|$)"));
    for (const QString& sentence : text.split(ends, Qt::SkipEmptyParts)) {
        static const QRegularExpression word(QStringLiteral("[A-Za-z\u2019'-]*[A-Za-z]"));
        int words = 0;
        for (auto it = word.globalMatch(sentence); it.hasNext();) {
            sum += syllables(it.next().captured());
            ++words;
        }
        grade.words += words;
        grade.sentences += words > 0 ? 1 : 0;
    }
    grade.grade = 0.39 * grade.words / grade.sentences + 11.8 * sum / grade.words - 15.59;
    return grade;
}

TEST(ReadingGrade, IsThatOfKnownTexts) {
    EXPECT_EQ(syllables(QStringLiteral("oxygen")), 3);
    EXPECT_EQ(syllables(QStringLiteral("lake")), 1);
    EXPECT_EQ(syllables(QStringLiteral("bubbles")), 2);
    EXPECT_EQ(syllables(QStringLiteral("table")), 2);
    EXPECT_EQ(syllables(QStringLiteral("lifted")), 2);
    EXPECT_EQ(syllables(QStringLiteral("dropped")), 1);
    // 6 words of one syllable each: 0.39 * 6 + 11.8 - 15.59.
    EXPECT_NEAR(gradeOf(QStringLiteral("The cat sat on the mat.")).grade, -1.45, 1e-9);
    EXPECT_GT(
        gradeOf(
            QStringLiteral(
                "Hypolimnetic destratification necessitates precautionary acclimatisation of ichthyofauna."))
            .grade,
        20.0);
}

TEST(ReadingGrade, OfTheOwnersSheetIsSevenAtMost) {
    QStringList sentences;
    for (const FilledLine& line : filledLines("OwnerSheet", ownerTemplate(), valuesOf(headline().run))) {
        if (line.say != Say::Fields && line.say != Say::Insert) {
            sentences << line.text;
        }
    }
    for (const QStringList& row : dawnTable(headline().run).rows) {
        sentences << row.back();
    }
    const QString text = sentences.join(QStringLiteral(". ")).remove(QStringLiteral("**"));
    const Grade grade = gradeOf(text);
    RecordProperty("grade", std::to_string(grade.grade));
    EXPECT_GT(grade.words, 200);
    EXPECT_LE(grade.grade, 7.0) << text.toStdString();
    for (const char* word : {"hypolimn", "anoxic", "guarantee", "detox", "beneficial", "eliminat"}) {
        EXPECT_FALSE(text.contains(QLatin1String(word), Qt::CaseInsensitive)) << word;
    }
}

}  // namespace
}  // namespace widgets
