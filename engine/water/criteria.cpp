#include "engine/water/criteria.h"

namespace engine {

OxygenCriteria epa1986(WaterKind water, LifeStage stage) {
    OxygenCriteria criteria;
    const bool warm = water == WaterKind::Warm;
    if (stage == LifeStage::Early) {
        criteria.mean7Days = warm ? 6.0 : 9.5;
        criteria.minimum = warm ? 5.0 : 8.0;
    } else {
        criteria.mean30Days = warm ? 5.5 : 6.5;
        criteria.meanMinimum7Days = warm ? 4.0 : 5.0;
        criteria.minimum = warm ? 3.0 : 4.0;
    }
    return criteria;
}

}  // namespace engine
