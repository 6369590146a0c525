#include "widgets/forms/ramp_kind.h"

#include <QCoreApplication>

namespace widgets {

QString kindText(engine::RampKind kind) {
    using engine::RampKind;
    const auto tr = [](const char* text) { return QCoreApplication::translate("RampKind", text); };
    switch (kind) {
        case RampKind::Continuous:
            return tr("Continuous at once");
        case RampKind::Doubling:
            return tr("Doubling daily");
        case RampKind::Linear:
            return tr("Linear");
        case RampKind::Capped:
            return tr("Capped dose");
        case RampKind::Table:
            return tr("Table of minutes");
    }
    return {};
}

}  // namespace widgets
