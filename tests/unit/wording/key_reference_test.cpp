#include "engine/wording/key_reference.h"

#include "engine/pond/pond_io.h"
#include "engine/pond/toml_node.h"

#include <gtest/gtest.h>

#include <set>

namespace engine {
namespace {

TEST(KeyReference, NoKeyIsWithoutItsText) {
    for (const KeyFact& fact : pondKeys()) {
        SCOPED_TRACE(fact.path);
        const KeyText& text = keyText(fact.path);
        EXPECT_TRUE(text.meaning.ends_with('.'));
        EXPECT_GT(text.meaning.size(), 7U);
        EXPECT_TRUE(fact.isRequired || text.absent.ends_with('.')) << "what happens without it?";
        EXPECT_EQ(text.example.empty(), fact.isTable());
    }
}

TEST(KeyReference, NoTextIsWithoutItsKey) {
    std::size_t count = 0;
    for (const auto& part : {keyTextsOfPond(), keyTextsOfAir(), keyTextsOfRamps()}) {
        for (const KeyText& text : part) {
            EXPECT_NE(findKey(text.path), nullptr) << text.path;
            ++count;
        }
    }
    EXPECT_EQ(count, pondKeys().size());
    EXPECT_GT(count, 180U);
}

/// Each example is read in its place without a word about its own key.
TEST(KeyReference, ExamplesAreReadWithoutFault) {
    for (const KeyFact& fact : pondKeys()) {
        if (fact.isTable()) {
            continue;
        }
        const KeyFact* table = fact.table().empty() ? nullptr : findKey(fact.table());
        std::string text = fact.path == "format" ? "" : "format = 1\n";
        text += table == nullptr ? "" : exampleOf(*table) + "\n";
        text += exampleOf(fact) + "\n";
        ASSERT_TRUE(parseToml(text).root.has_value()) << text;
        for (const Diagnostic& fault : readPondText(text, "example.toml").diagnostics) {
            const bool isAboutTheValue = fault.sentence.starts_with("This is ") ||
                                         fault.sentence.starts_with("The value ") ||
                                         fault.sentence.starts_with("There is no such key");
            EXPECT_FALSE(plainPath(fault.key) == fact.path && isAboutTheValue) << text << format(fault);
        }
    }
}

TEST(KeyReference, SaysUnitsRangeAndDefault) {
    const auto area = explain("basin.area_m2");
    ASSERT_TRUE(area.text);
    EXPECT_NE(area.text->find("ac"), std::string::npos);
    EXPECT_NE(area.text->find("km2), 10 to"), std::string::npos);
    const auto shelter = explain("wind_shelter");
    ASSERT_TRUE(shelter.text);
    EXPECT_NE(shelter.text->find("Usual: 0.6, in nine of ten ponds 0.35 to 0.9"), std::string::npos);
    EXPECT_NE(shelter.text->find("common practice, no source"), std::string::npos);
}

TEST(KeyReference, FindsKeysByNameTableAndPath) {
    EXPECT_NE(explain("[[fish]]").text.value_or("").find("stock_kg_per_ha"), std::string::npos);
    EXPECT_NE(explain("ramp[2].first_min").text.value_or("").find("ramp.first_min"), std::string::npos);
    const std::string depths = explain("depth_m").text.value_or("");
    EXPECT_NE(depths.find("aerator.depth_m"), std::string::npos);
    EXPECT_NE(depths.find("readings.depth_m"), std::string::npos);
}

TEST(KeyReference, SuggestsTheNearest) {
    EXPECT_NE(explain("secci_m").fault.find("water.secchi_m"), std::string::npos);
    EXPECT_NE(explain("longitude").fault.find("place.longitude_deg"), std::string::npos);
    EXPECT_NE(explain("xyzzyxyzzy").fault.find("lists them all"), std::string::npos);
}

TEST(KeyReference, LinesFitATerminal) {
    const std::string all = keyReference() + keyOverview();
    std::size_t at = 0;
    while (at < all.size()) {
        const std::size_t end = all.find('\n', at);
        const std::string line = all.substr(at, end - at);
        EXPECT_TRUE(line.size() <= 80 || line.starts_with("    Example: ")) << line;
        at = end + 1;
    }
}

}  // namespace
}  // namespace engine
