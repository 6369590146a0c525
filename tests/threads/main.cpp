#include <QCoreApplication>

#include <gtest/gtest.h>

// An event loop and no window: what draws brings threads of its own, which no sanitizer watches.
int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    const QCoreApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
