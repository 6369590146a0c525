#include "engine/output/consultant.h"

#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

ConsultantReading read(const std::string& text) {
    const test::TemporaryFolder folder;
    ConsultantReading reading = readConsultant(folder.write("consultant.toml", text));
    for (Diagnostic& one : reading.diagnostics) {
        one.file = "f";
    }
    return reading;
}

Diagnostic firstFault(const std::string& text) {
    const ConsultantReading reading = read(text);
    EXPECT_FALSE(reading.consultant.has_value());
    return reading.diagnostics.empty() ? Diagnostic() : reading.diagnostics.front();
}

TEST(Consultant, ReadsAWholeProfile) {
    const auto reading = read(
        "business = \"Still Water\"\nname = \"A. B\u00f6hm\"\naddress = [\"1 Bank Road\", \"Weir\"]\nunits = "
        "\"us\"\n"
        "page = \"letter\"\ncurrency = \"USD\"\nexclusions = [\"permits\"]\nlogo = \"logo.png\"\n"
        "[[price]]\nitem = \"Visit\"\nunit = \"each\"\namount = 120\n[[price]]\nitem = \"Plan\"\n");
    ASSERT_TRUE(reading.consultant.has_value());
    const Consultant& who = *reading.consultant;
    EXPECT_EQ(who.business, "Still Water");
    EXPECT_EQ(who.address.size(), 2U);
    EXPECT_TRUE(who.usUnits);
    EXPECT_TRUE(who.letter);
    ASSERT_EQ(who.prices.size(), 2U);
    EXPECT_EQ(who.prices[0].amount, 120.0);
    EXPECT_EQ(who.prices[1].amount, std::nullopt);
    EXPECT_NE(who.logo.find("/logo.png"), std::string::npos);
}

TEST(Consultant, WhatIsNotGivenStaysBlank) {
    const auto reading = read("");
    ASSERT_TRUE(reading.consultant.has_value());
    EXPECT_EQ(*reading.consultant, Consultant());
}

TEST(Consultant, FaultsAreNamedWithTheirLine) {
    EXPECT_EQ(format(firstFault("\nbuisness = \"x\"\n")),
              "f:2: buisness: The key is not known; the nearest is \"business\".");
    EXPECT_EQ(format(firstFault("units = \"feet\"\n")),
              "f:1: units: Wanted is \"si\" or \"us\", not the text \"feet\".");
    const Diagnostic negative = firstFault("[[price]]\nitem = \"a\"\namount = -1\n");
    EXPECT_EQ(negative.line, 3);
    EXPECT_EQ(negative.key, "price.amount");
    EXPECT_EQ(firstFault("[[price]]\namount = 1\n").sentence, "A price needs its item.");
    const Diagnostic list = firstFault("price = [1]\n");
    EXPECT_EQ(list.key, "price");
    EXPECT_TRUE(list.sentence.starts_with("Wanted is tables [[price]]")) << list.sentence;
    EXPECT_EQ(firstFault("business = ").line, 1);
}

TEST(Consultant, WhatIsWrittenReadsBackEqual) {
    const test::TemporaryFolder folder;
    Consultant who;
    who.business = "Still \"Water\" & Sons\\\t#1";
    who.name = "A. B\u00f6hm";
    who.phone = "+00 1";
    who.email = "a@b.example";
    who.licence = "L 7";
    who.address = {"1 Bank Road", "Weir, = [x]"};
    who.logo = (folder.path() / "pictures/logo.png").string();
    who.usUnits = true;
    who.letter = true;
    who.currency = "\u20ac";
    who.prices = {{"Visit", "each", 120.1}, {"Plan", "", std::nullopt}, {"Phone", "", 0.0}};
    who.exclusions = {"permits", "power"};
    const std::string text = writeConsultant(who, folder.path());
    EXPECT_NE(text.find("logo = \"pictures/logo.png\""), std::string::npos) << text;
    const auto reading = readConsultant(folder.write("consultant.toml", text));
    ASSERT_TRUE(reading.consultant.has_value()) << format(reading.diagnostics.front());
    EXPECT_EQ(*reading.consultant, who);
    EXPECT_EQ(writeConsultant(*reading.consultant, folder.path()), text);

    who.logo = (folder.path().parent_path() / "elsewhere.png").string();
    const auto far = readConsultant(folder.write("consultant.toml", writeConsultant(who, folder.path())));
    ASSERT_TRUE(far.consultant.has_value());
    EXPECT_EQ(far.consultant->logo, who.logo);
}

TEST(Consultant, BlanksAreNotWritten) {
    EXPECT_EQ(writeConsultant({}, "/"), "units = \"si\"\npage = \"a4\"\n");
}

}  // namespace
}  // namespace engine
