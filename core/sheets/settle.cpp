#include "core/sheets/settle.h"

#include <algorithm>
#include <iterator>

namespace kerfwright {
namespace {

/// Shares of a page. What is below `thin` is worth moving lines for; only what is below `spared`
/// can be hoped to find room on the page before it.
constexpr double thin = 0.25;
constexpr double spared = 0.5;

double leastFilled(const std::vector<Draft>& drafts) {
    double least = 1;
    for (const Draft& draft : drafts) {
        if (draft.goesOn) {
            least = std::min(least, filled(draft));
        }
    }
    return least;
}

}  // namespace

void settle(std::vector<Draft>& drafts, const Matter& matter,
            const std::function<void(std::vector<Draft>&, const Matter&)>& set) {
    const auto setWith = [&](const Fit& fit) {
        Matter closer = matter;
        closer.fit = fit;
        std::vector<Draft> tried;
        set(tried, closer);
        return tried;
    };
    std::vector<Draft> best = setWith({});
    Fit fit;
    for (const Fit& closer :
         {Fit{.briefSafety = true}, Fit{.close = true}, Fit{.briefSafety = true, .close = true}}) {
        if (leastFilled(best) >= spared) {
            break;
        }
        std::vector<Draft> tried = setWith(closer);
        if (tried.size() < best.size()) {
            best = std::move(tried);
            fit = closer;
        }
    }
    constexpr double step = 8;
    constexpr double most = 140;
    for (fit.held = step; leastFilled(best) < thin && fit.held <= most; fit.held += step) {
        std::vector<Draft> tried = setWith(fit);
        if (tried.size() > best.size()) {
            break;
        }
        if (leastFilled(tried) > leastFilled(best)) {
            best = std::move(tried);
        }
    }
    std::move(best.begin(), best.end(), std::back_inserter(drafts));
}

}  // namespace kerfwright
