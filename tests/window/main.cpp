#include "tests/temporary_folder.h"
#include "widgets/controls/wheel_guard.h"

#include <QApplication>

#include <gtest/gtest.h>

// Offscreen unless asked otherwise, with a state folder of its own and dialogs that a test can reach.
int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    testing::InitGoogleTest(&argc, argv);
    const engine::test::TemporaryFolder state;
    if (qEnvironmentVariableIsEmpty(
            "DAWNLINE_TEST_EDIT")) {  // a child of a test is told where to keep its state
        qputenv("XDG_STATE_HOME", state.path().c_str());
    }
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
    QApplication application(argc, argv);
    application.installEventFilter(new widgets::WheelGuard(&application));
    return RUN_ALL_TESTS();
}
