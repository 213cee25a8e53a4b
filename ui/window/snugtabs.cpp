#include "ui/window/snugtabs.h"

#include <QStyle>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int leastSides = 8;  // of a tab, both together

}  // namespace

/// Of all tabs, with the sides that the style gives them.
int SnugTabs::usualWidth() const {
    int sum = 0;
    for (int i = 0; i < count(); ++i) {
        sum += QTabBar::tabSizeHint(i).width();
    }
    return sum;
}

int SnugTabs::comfortableWidth() const {
    return usualWidth();
}

int SnugTabs::leastWidth() const {
    const int sides = style()->pixelMetric(QStyle::PM_TabBarTabHSpace, nullptr, this);
    return usualWidth() - count() * std::max(0, sides - leastSides);
}

QSize SnugTabs::tabSizeHint(int index) const {
    const QSize usual = QTabBar::tabSizeHint(index);
    const int over = usualWidth() - width();
    if (over <= 0) {
        return usual;
    }
    // Shared out to the pixel, so that what just fits does fit.
    const int sides = style()->pixelMetric(QStyle::PM_TabBarTabHSpace, nullptr, this);
    const int share = over * (index + 1) / count() - over * index / count();
    return usual - QSize(std::min(share, std::max(0, sides - leastSides)), 0);
}

}  // namespace kerfwright
