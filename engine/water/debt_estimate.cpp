#include "engine/water/debt_estimate.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/water/constants_debt.h"
#include "engine/water/sediment.h"
#include "engine/water/toxic.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kScore95 = 1.6448536269514722;  // of the standard normal distribution's 95 % point

constexpr double kMinutesPerDay = kDay / kMinute;

/// 1 sigma of a logarithm from 5 and 95 % points.
double sigmaOf(double low, double high) {
    return std::log(high / low) / (2.0 * kScore95);
}

DebtRoute route(DebtRouteKind kind, double value, double sigma) {
    const double held = std::max(value, kLeastDebt.value);
    return {kind, held, held * std::exp(-kScore95 * sigma), held * std::exp(kScore95 * sigma), sigma};
}

/// Of fast plus medium debt what is spent after some minutes, at rates for 20 degC in a bottle of this
/// warmth.
double spent(double minutes, double warmth, double fastShare, double fastRate, double mediumRate) {
    const double days = warmth * minutes / kMinutesPerDay;
    return fastShare * -std::expm1(-fastRate * days) + (1.0 - fastShare) * -std::expm1(-mediumRate * days);
}

/// 1 sigma of the logarithm of a number with its spread; without one that of a prior, or nothing.
double spreadOf(const Quantity& given, double otherwise) {
    return given.low && *given.low > 0.0 ? sigmaOf(*given.low, *given.high) : otherwise;
}

/// @param temperature  Of the bottom water [degC].
DebtRoute ofDays(const Bottom& bottom, double temperature, double thickness) {
    const Prior& usual = classPriors(pondClass(bottom)).sedimentDemand_gPerM2Day;
    const MaybeQuantity& given = bottom.sedimentDemand_gPerM2Day;
    SedimentParameters<double> sediment;
    sediment.demand = fromPerDay(given ? given->value : usual.value);
    const double returned = sigmaOf(kRegenerationShare.low, kRegenerationShare.high);
    const double demand = given ? spreadOf(*given, 0.0) : sigmaOf(usual.low, usual.high);
    const Quantity& days = *bottom.stratified_days;
    return route(DebtRouteKind::DaysStratified,
                 debtFromDays(returnedDebt_gPerM2Day(sediment, temperature), days, thickness),
                 std::hypot(returned, demand, spreadOf(days, 0.0)));
}

DebtRoute ofClass(const Bottom& bottom) {
    const Prior& prior = classPriors(pondClass(bottom)).oxygenDebt;
    const double sigma =
        prior.low > 0.0 ? sigmaOf(prior.low, prior.high) : std::log(prior.high / prior.value) / kScore95;
    return {DebtRouteKind::AgeAndSmell, prior.value, prior.low, prior.high, sigma};
}

std::optional<DebtRoute> ofSubstances(const Water& water) {
    const SubstanceDebt debt = substanceDebt(water);
    double part = 0.0, below = 0.0, above = 0.0;
    const auto add = [&](bool isMeasured, const Constant& prior) {
        if (isMeasured) {
            part += prior.value;
            below = std::hypot(below, prior.value - prior.low);
            above = std::hypot(above, prior.high - prior.value);
        }
    };
    add(water.totalSulfide.has_value(), kSulfidePart);
    add(water.ferrousIron.has_value(), kIronPart);
    add(water.methane.has_value(), kMethanePart);
    if (part <= 0.0) {
        return std::nullopt;
    }
    const double parts = sigmaOf(part - below, std::min(part + above, 1.0));
    return route(DebtRouteKind::Substances, debt.fastAndMedium() / part,
                 std::hypot(parts, kKitError.value, kPlaceError.value));
}

double covariance(const DebtRoute& a, const DebtRoute& b) {
    const auto are = [&](DebtRouteKind one, DebtRouteKind other) {
        return (a.kind == one && b.kind == other) || (a.kind == other && b.kind == one);
    };
    if (a.kind == b.kind) {
        return a.sigma * a.sigma;
    }
    if (are(DebtRouteKind::DaysStratified, DebtRouteKind::AgeAndSmell)) {
        return kSharedLakes.value * a.sigma * b.sigma;
    }
    return are(DebtRouteKind::BottleTest, DebtRouteKind::Substances) ? kPlaceError.value * kPlaceError.value
                                                                     : 0.0;
}

/// Weights of the generalised least squares mean, which sum to 1, and its variance.
struct Weights {
    Eigen::VectorXd weights;
    double variance = 0.0;
    Eigen::MatrixXd inverse;
};

Weights weightsOf(const std::vector<DebtRoute>& routes) {
    const auto size = static_cast<Eigen::Index>(routes.size());
    Eigen::MatrixXd matrix(size, size);
    for (Eigen::Index i = 0; i < size; ++i) {
        for (Eigen::Index j = 0; j < size; ++j) {
            matrix(i, j) =
                covariance(routes[static_cast<std::size_t>(i)], routes[static_cast<std::size_t>(j)]);
        }
    }
    const Eigen::LLT<Eigen::MatrixXd> factor(matrix);
    ensure(factor.info() == Eigen::Success, "ways to the debt have errors of their own");
    Weights out;
    out.inverse = factor.solve(Eigen::MatrixXd::Identity(size, size));
    out.weights = out.inverse.rowwise().sum();
    out.variance = 1.0 / out.weights.sum();
    out.weights *= out.variance;
    return out;
}

}  // namespace

double debtFromDays(double returned_gPerM2Day, double days, double thickness) {
    return returned_gPerM2Day * days / thickness;
}

BottleDebt bottleDebt(const BottleTest& test, const BottleReading& reading) {
    BottleDebt out;
    const double parts = test.surfaceParts ? test.surfaceParts->value : kSurfaceParts.value;
    const double meter = test.meterError ? test.meterError->value : kMeterError.value;
    const double left = *test.surfaceOxygen - (reading.controlLoss ? reading.controlLoss->value : 0.0);
    out.minutes = *reading.minutes;
    out.isVoid = *reading.oxygen < kLeastReading.value;
    out.taken = parts * left + *test.bottomOxygen - (parts + 1.0) * *reading.oxygen;
    out.error = std::hypot(meter * std::sqrt(parts * parts + 1.0 + (parts + 1.0) * (parts + 1.0)),
                           kPouringError.value * parts * (left - *reading.oxygen));
    const double warmth = test.temperature ? std::pow(kDebtTheta.value, *test.temperature - 20.0) : 1.0;
    out.share =
        spent(out.minutes, warmth, kFastShare.value, kFastRate_perDay.value, kMediumRate_perDay.value);
    const double least =
        spent(out.minutes, warmth, kFastShare.low, kFastRate_perDay.low, kMediumRate_perDay.low);
    const double most =
        spent(out.minutes, warmth, kFastShare.high, kFastRate_perDay.high, kMediumRate_perDay.high);
    // A plain error as one of the logarithm: it is the larger, the less was taken.
    const double read = std::log1p(out.error / std::max(out.taken, kLeastDebt.value));
    out.route = route(DebtRouteKind::BottleTest, std::max(out.taken, kLeastDebt.value) / out.share,
                      std::hypot(read, sigmaOf(least, most), kPlaceError.value));
    return out;
}

std::optional<BottleDebt> bestBottleDebt(const BottleTest& test) {
    std::optional<BottleDebt> best;
    for (const BottleReading& reading : test.readings) {
        const BottleDebt debt = bottleDebt(test, reading);
        const bool isBetter =
            !best || (best->isVoid && !debt.isVoid) ||
            (best->isVoid == debt.isVoid &&
             (debt.isVoid ? debt.taken > best->taken : debt.route.sigma < best->route.sigma));
        best = isBetter ? debt : best;
    }
    return best;
}

SubstanceDebt substanceDebt(const Water& water) {
    const auto of = [](const MaybeQuantity& amount, double oxygen) {
        return amount ? oxygen * amount->value : 0.0;
    };
    return {of(water.totalSulfide, kOxygenPerSulfur), of(water.ferrousIron, kOxygenPerIron),
            of(water.methane, kOxygenPerMethane), of(water.totalAmmonia, kOxygenPerAmmoniaNitrogen)};
}

DebtEstimate combinedDebt(std::vector<DebtRoute> routes) {
    ensure(!routes.empty(), "there is a way to the debt");
    DebtEstimate out;
    out.routes = routes;
    if (routes.size() == 1) {
        out.value = routes.front().value;
        out.low = routes.front().low;
        out.high = routes.front().high;
        return out;
    }
    Weights found = weightsOf(routes);
    while (found.weights.minCoeff() < 0.0) {
        Eigen::Index least = 0;
        found.weights.minCoeff(&least);
        routes.erase(routes.begin() + least);
        found = weightsOf(routes);
    }
    Eigen::VectorXd logs(static_cast<Eigen::Index>(routes.size()));
    for (std::size_t i = 0; i < routes.size(); ++i) {
        logs(static_cast<Eigen::Index>(i)) = std::log(routes[i].value);
    }
    const double mean = found.weights.dot(logs);
    if (routes.size() > 1) {
        const Eigen::VectorXd off = logs.array() - mean;
        const double chiSquared = off.dot(found.inverse * off);
        out.disagreement = std::max(std::sqrt(chiSquared / static_cast<double>(routes.size() - 1)), 1.0);
    }
    const double half = kScore95 * out.disagreement * std::sqrt(found.variance);
    out.value = std::exp(mean);
    out.low = std::exp(mean - half);
    out.high = std::exp(mean + half);
    return out;
}

std::optional<DebtEstimate> estimateDebt(const Pond& pond, const Profile& profile, const BottomWater& bottom,
                                         const Basin& basin) {
    if (!bottom.exists() || bottom.isOxic) {
        return std::nullopt;
    }
    std::vector<DebtRoute> routes{ofClass(pond.bottom)};
    if (pond.bottom.stratified_days) {
        routes.push_back(
            ofDays(pond.bottom, profile.temperature.back(), bottom.volume / basin.area(bottom.depth)));
    }
    if (pond.bottleTest) {
        const std::optional<BottleDebt> bottle = bestBottleDebt(*pond.bottleTest);
        if (bottle && !bottle->isVoid) {
            routes.push_back(bottle->route);
        }
    }
    if (const std::optional<DebtRoute> substances = ofSubstances(pond.water)) {
        routes.push_back(*substances);
    }
    return combinedDebt(std::move(routes));
}

}  // namespace engine
