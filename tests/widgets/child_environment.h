#pragma once

#include <QProcessEnvironment>

namespace widgets::test {

/// The environment for a process of the same tests: without what CTest says of shards and reports, by which a
/// child that is asked for one test would find it in another shard, and write over its parent's report.
inline QProcessEnvironment childEnvironment() {
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* name : {"GTEST_TOTAL_SHARDS", "GTEST_SHARD_INDEX", "GTEST_OUTPUT"}) {
        environment.remove(QString::fromLatin1(name));
    }
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    return environment;
}

}  // namespace widgets::test
