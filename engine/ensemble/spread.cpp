#include "engine/ensemble/spread.h"

#include "engine/base/error.h"

#include <boost/math/special_functions/erf.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace engine {
namespace {

constexpr double kScore95 = 1.6448536269514722;  // of the standard normal distribution's 95 % point

/// Widths of a prior's halves over the prior's value: of the logarithm, or plain where its low end is 0.
Spread relative(const Prior& prior, double share) {
    Spread spread = spreadOf(prior);
    const double scale = spread.isLog ? share : prior.value > 0.0 ? share / prior.value : 0.0;
    spread.below *= scale;
    spread.above *= scale;
    return spread;
}

}  // namespace

double normalScore(double u) {
    requireRange("share of the draws", u, std::numeric_limits<double>::min(), std::nextafter(1.0, 0.0), "");
    return -std::numbers::sqrt2 * boost::math::erfc_inv(2.0 * u);
}

double Spread::atScore(double score) const {
    const double off = (score < 0.0 ? below : above) * score;
    return std::clamp(isLog ? value * std::exp(off) : value + off, least, most);
}

double Spread::quantile(double u) const {
    return atScore(normalScore(u));
}

Spread spreadBetween(double value, double low, double high) {
    ensure(low <= value && value <= high, "a value lies between its 5 and 95 % points");
    Spread spread;
    spread.value = value;
    spread.isLog = low > 0.0;
    if (spread.isLog) {
        spread.below = std::log(value / low) / kScore95;
        spread.above = std::log(high / value) / kScore95;
    } else {
        spread.below = (value - low) / kScore95;
        spread.above = (high - value) / kScore95;
        spread.least = low == 0.0 ? 0.0 : spread.least;
    }
    return spread;
}

Spread spreadOf(const Prior& prior) {
    return spreadBetween(prior.value, prior.low, prior.high);
}

Spread spreadOf(const Quantity& quantity, const Prior& prior, const MeterError& meter) {
    if (quantity.low && quantity.high) {
        return spreadBetween(quantity.value, *quantity.low, *quantity.high);
    }
    Spread spread;
    if (quantity.confidence && *quantity.confidence != Confidence::Measured) {
        spread = relative(prior, *quantity.confidence == Confidence::Estimated ? 0.5 : 1.0);
        if (!spread.isLog) {
            spread.below *= quantity.value;
            spread.above *= quantity.value;
            spread.least = 0.0;
        }
    } else if (meter.factor > 1.0) {
        spread.isLog = true;
        spread.below = spread.above = std::log(meter.factor);
    } else {
        spread.below = spread.above = meter.amount;
        spread.least = 0.0;
    }
    spread.value = quantity.value;
    return spread;
}

bool isMeasured(const Quantity& quantity) {
    return quantity.confidence ? *quantity.confidence == Confidence::Measured : !quantity.low;
}

}  // namespace engine
