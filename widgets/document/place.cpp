#include "widgets/document/place.h"

#include <QCoreApplication>

namespace widgets {

QString placeText(Place place) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("Place", text); };
    switch (place) {
        case Place::Pond:
            return tr("Pond");
        case Place::Nights:
            return tr("Nights");
        case Place::Why:
            return tr("Why");
        case Place::Plan:
            return tr("Plan");
        case Place::After:
            break;
    }
    return tr("After the start");
}

}  // namespace widgets
