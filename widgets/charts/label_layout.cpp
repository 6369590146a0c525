#include "widgets/charts/label_layout.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace widgets {
namespace {

constexpr double kFromMark = 8.0;  // [px]
constexpr int kSides = 4;

QRectF beside(const MarkLabel& label, int side, const QRectF& inside) {
    const double width = label.size.width(), height = label.size.height();
    QPointF at;
    switch (side) {
        case 0:
            at = {label.mark.x() - width / 2, label.mark.y() + kFromMark};
            break;
        case 1:
            at = {label.mark.x() - width / 2, label.mark.y() - kFromMark - height};
            break;
        case 2:
            at = {label.mark.x() + kFromMark, label.mark.y() - height / 2};
            break;
        default:
            at = {label.mark.x() - kFromMark - width, label.mark.y() - height / 2};
    }
    at.setX(std::clamp(at.x(), inside.left(), std::max(inside.left(), inside.right() - width)));
    at.setY(std::clamp(at.y(), inside.top(), std::max(inside.top(), inside.bottom() - height)));
    return {at, label.size};
}

/// How bad a set of places is.
double priceOf(const std::vector<MarkLabel>& labels, const std::vector<QRectF>& boxes,
               const std::vector<QPointF>& others, const std::vector<QRectF>& taken) {
    constexpr double kOverLabel = 1e6, kOrder = 1e5, kOverText = 1e4, kOverMark = 1e3, kOutside = 30.0;
    constexpr double kAround = 5.0;  // of a mark [px]
    double sum = 0.0;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const QRectF wide = boxes[i].adjusted(-kAround, -kAround, kAround, kAround);
        for (std::size_t j = 0; j < boxes.size(); ++j) {
            if (j == i) {
                continue;
            }
            sum += boxes[i].intersects(boxes[j]) ? kOverLabel : 0.0;
            sum += boxes[i].adjusted(-2, -2, 2, 2).contains(labels[j].mark) ? kOverMark : 0.0;
            const bool isBeside = boxes[i].right() < boxes[j].left() || boxes[j].right() < boxes[i].left();
            const bool isTurned = labels[i].mark.y() < labels[j].mark.y() - 1.0 &&
                                  boxes[i].center().y() > boxes[j].center().y();
            sum += !isBeside && isTurned ? kOrder : 0.0;
        }
        for (const QRectF& text : taken) {
            sum += boxes[i].intersects(text) ? kOverText : 0.0;
        }
        for (const QPointF& other : others) {
            sum += wide.contains(other) ? kOverMark : 0.0;
        }
        const double beyond = std::max(labels[i].top - boxes[i].top(), 0.0) +
                              std::max(boxes[i].bottom() - labels[i].bottom, 0.0);
        sum += beyond > 1.0 ? kOutside + beyond : 0.0;
    }
    return sum;
}

}  // namespace

std::vector<double> spreadApart(const std::vector<double>& wanted, double gap, double low, double high) {
    const std::size_t count = wanted.size();
    if (count == 0) {
        return {};
    }
    if (count > 1) {
        gap = std::min(gap, (high - low) / static_cast<double>(count - 1));
    }
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return wanted[a] < wanted[b]; });

    // With the gaps taken off, places must only not fall: pool neighbours that do (isotonic regression).
    struct Pool {
        double sum;
        std::size_t size;
        [[nodiscard]] double mean() const { return sum / static_cast<double>(size); }
    };
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < count; ++i) {
        pools.push_back({wanted[order[i]] - gap * static_cast<double>(i), 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            pools[pools.size() - 2].sum += pools.back().sum;
            pools[pools.size() - 2].size += pools.back().size;
            pools.pop_back();
        }
    }
    std::vector<double> places(count);
    const double last = high - gap * static_cast<double>(count - 1);
    std::size_t i = 0;
    for (const Pool& pool : pools) {
        for (std::size_t j = 0; j < pool.size; ++j, ++i) {
            places[order[i]] =
                std::clamp(pool.mean(), low, std::max(low, last)) + gap * static_cast<double>(i);
        }
    }
    return places;
}

std::vector<QRectF> placeBeside(const std::vector<MarkLabel>& labels, const std::vector<QPointF>& others,
                                const std::vector<QRectF>& taken, const QRectF& inside) {
    // All sides of all labels are tried: there are two or three of them.
    const auto ways =
        static_cast<int>(std::lround(std::pow(kSides, std::min<std::size_t>(labels.size(), 4))));
    std::vector<QRectF> best;
    double least = 1e18;
    for (int way = 0; way < ways; ++way) {
        std::vector<QRectF> boxes;
        double order = 0.0;
        for (int i = 0, rest = way; i < static_cast<int>(labels.size()); ++i, rest /= kSides) {
            boxes.push_back(beside(labels[static_cast<std::size_t>(i)], rest % kSides, inside));
            order += rest % kSides;
        }
        const double price = order + priceOf(labels, boxes, others, taken);
        if (price < least) {
            least = price;
            best = boxes;
        }
    }
    // What no side could keep apart, because the marks lie together, is moved apart in height.
    std::vector<double> middles;
    for (const QRectF& box : best) {
        middles.push_back(box.center().y());
    }
    bool isOver = false;
    for (std::size_t i = 0; i < best.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            isOver = isOver || best[i].intersects(best[j]);
        }
    }
    if (isOver) {
        const double height = labels.front().size.height();
        const auto apart =
            spreadApart(middles, height + 1.0, inside.top() + height / 2, inside.bottom() - height / 2);
        for (std::size_t i = 0; i < best.size(); ++i) {
            best[i].moveCenter({best[i].center().x(), apart[i]});
        }
    }
    return best;
}

}  // namespace widgets
