// The charts in the bundle: every view, what to measure among them, though no window has asked for it.
#include "engine/ensemble/measure.h"
#include "engine/output/bundle.h"
#include "tests/papers/made_papers.h"
#include "widgets/charts/picture.h"

#include <algorithm>

namespace widgets {
namespace {

using test::headline;

TEST(BundleCharts, EveryViewIsThereAsPictureDrawingAndNumbers) {
    const engine::BundleFiles read = engine::readBundle(headline().path("bundle.zip").toStdString());
    for (const ViewKind& kind : viewKinds()) {
        for (const char* ending : {".png", ".svg", ".csv"}) {
            EXPECT_TRUE(read.files.contains(std::string("charts/") + kind.id + ending)) << kind.id << ending;
        }
    }
}

TEST(BundleCharts, WhatToMeasureIsThatOfTheRampOfThePapers) {
    const engine::BundleFiles read = engine::readBundle(headline().path("bundle.zip").toStdString());
    const engine::FrozenRun& run = *headline().run.frozen;
    engine::MeasureOptions options;
    options.ramp = run.stamp.ramp;
    options.seed = run.stamp.seed;
    options.members = std::max(run.stamp.members, engine::kLeastMembersToMeasure);
    const engine::MeasureResult measured = engine::measure(run.comparison.model.pond, options);
    ASSERT_FALSE(measured.inputs.empty());
    EXPECT_EQ(read.text("charts/measure.csv").value_or(""), engine::measureFiles(measured).front().text);
    const QString drawing = QString::fromStdString(read.text("charts/measure.svg").value_or(""));
    EXPECT_TRUE(drawing.contains(QString::fromStdString(run.stamp.ramp)));
    EXPECT_FALSE(drawing.contains(QStringLiteral("Working out")));
}

}  // namespace
}  // namespace widgets
