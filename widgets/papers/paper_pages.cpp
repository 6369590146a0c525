// Strips set on pages.
#include "widgets/papers/paper_flow.h"

#include <algorithm>

namespace widgets {
namespace {

/// Which strips stand on the page of the next one.
std::vector<char> keptWithNext(const std::vector<PaperStrip>& strips, double height) {
    constexpr double kLongest = 0.6;  // of a page: a section that is not worth more white than this
    std::vector<char> keeps;
    for (const PaperStrip& one : strips) {
        keeps.push_back(one.keepsNext ? 1 : 0);
    }
    for (std::size_t end = 1; end < strips.size(); ++end) {
        if (!strips[end].closes || strips[end].startsPage) {
            continue;
        }
        std::size_t from = end;
        double high = strips[end].height;
        while (from > 0 && strips[from].outline.isEmpty() && !strips[from].startsPage) {
            --from;
            high += strips[from].height + strips[from + 1].before;
        }
        if (high > kLongest * height) {
            from = end - 1;
        }
        std::fill(keeps.begin() + static_cast<std::ptrdiff_t>(from),
                  keeps.begin() + static_cast<std::ptrdiff_t>(end), 1);
    }
    return keeps;
}

}  // namespace

std::vector<PaperPage> paginated(const std::vector<PaperStrip>& strips, double height) {
    const std::vector<char> keeps = keptWithNext(strips, height);
    std::vector<PaperPage> pages(1);
    double y = 0.0;
    const auto headOf = [](const PaperStrip& strip, bool isFirst) {
        return isFirst && strip.head ? strip.head->height : 0.0;
    };
    const auto room = [&](std::size_t from, std::size_t to, bool isFirst) {
        double sum = headOf(strips[from], isFirst);
        for (std::size_t i = from; i < to; ++i) {
            sum += strips[i].height + (i == from && isFirst ? 0.0 : strips[i].before);
        }
        return sum;
    };
    for (std::size_t i = 0; i < strips.size();) {
        std::size_t end = i + 1;
        while (keeps[end - 1] != 0 && end < strips.size()) {
            ++end;
        }
        if (room(i, end, true) > height) {
            end = i + 1;  // what no page holds is parted
        }
        const bool isFirst = pages.back().empty();
        if (!isFirst && (strips[i].startsPage || y + room(i, end, false) > height)) {
            pages.emplace_back();
            y = 0.0;
        }
        for (; i < end; ++i) {
            const bool leads = pages.back().empty();
            if (leads && strips[i].head) {
                pages.back().push_back({0.0, strips[i].head.get()});
                y = strips[i].head->height;
            }
            y += leads ? 0.0 : strips[i].before;
            pages.back().push_back({y, &strips[i]});
            y += strips[i].height;
        }
    }
    return pages;
}

std::vector<PaperStrip> closedUp(std::vector<PaperStrip> strips, double height) {
    constexpr double kLittle = 0.3;
    // What closes a section would bring all of it along, and hide that the page holds little.
    std::vector<PaperStrip> loose = strips;
    for (PaperStrip& strip : loose) {
        strip.closes = false;
    }
    const PaperPage last = paginated(loose, height).back();
    const std::size_t pages = paginated(strips, height).size();
    if (pages < 2 || last.back().top + last.back().strip->height > kLittle * height) {
        return strips;
    }
    for (const double share : {0.85, 0.7, 0.55}) {
        std::vector<PaperStrip> closer = strips;
        for (PaperStrip& strip : closer) {
            strip.before *= share;
        }
        if (paginated(closer, height).size() < pages) {
            return closer;
        }
    }
    return strips;
}

}  // namespace widgets
