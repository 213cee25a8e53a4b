// Says that woods are looked at another way, to all that shows them and has no plan to follow.
#pragma once

#include <QObject>

namespace kerfwright {

class FigureNotice : public QObject {
    Q_OBJECT

public:
    static FigureNotice& instance();

Q_SIGNALS:
    /// `keptFigureStyle()` is another one.
    void changed();
};

}  // namespace kerfwright
