// The words of a fault beside the entries that they are about.
#pragma once

#include "ui/window/wrappedlabel.h"

#include <utility>
#include <vector>

namespace kerfwright {

/// Serves one entry or several; the one that said something last is heard. Where nothing is wrong
/// it shows what it was set to rest on, and where that is empty it is hidden.
class FaultNote : public WrappedLabel {
    Q_OBJECT

public:
    explicit FaultNote(QWidget* parent);

    void rest(const QString& text);
    /// Keeps room for so many lines, so that nothing below moves when something is said.
    void keepLines(int lines);

    void say(const QObject* entry, const QString& words);
    void unsay(const QObject* entry);
    bool isSaying() const { return !said_.empty(); }

    QSize minimumSizeHint() const override;
    QSize sizeHint() const override;
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void refresh();
    int keptHeight() const;

    int lines_ = 0;
    QString rest_;
    std::vector<std::pair<const QObject*, QString>> said_;
};

}  // namespace kerfwright
