// What the sizes of the border come to, each with its working.
#pragma once

#include "ui/document/planner.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QGridLayout;
QT_END_NAMESPACE

namespace kerfwright {

class FitList : public QWidget {
    Q_OBJECT

public:
    explicit FitList(QWidget* parent);
    /// The sizes of a plan; nothing where it is null.
    void show(const PlannedPtr& planned);

Q_SIGNALS:
    /// The maker asked for the entry that a term of a working comes from.
    void termAsked(TermKind kind);

private:
    QWidget* content_ = nullptr;
};

}  // namespace kerfwright
