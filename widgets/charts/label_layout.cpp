#include "widgets/charts/label_layout.h"

#include <algorithm>
#include <numeric>

namespace widgets {

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

}  // namespace widgets
