// Tabs that draw together where a panel is narrow, before any of them is out of sight.
#pragma once

#include <QTabBar>

namespace kerfwright {

class SnugTabs : public QTabBar {
    Q_OBJECT

public:
    using QTabBar::QTabBar;

    /// In which all tabs stand at their ease.
    int comfortableWidth() const;
    /// In which all tabs are just in sight.
    int leastWidth() const;

protected:
    QSize tabSizeHint(int index) const override;
    QSize minimumTabSizeHint(int index) const override { return tabSizeHint(index); }

private:
    int usualWidth() const;
};

}  // namespace kerfwright
