// A list of choices that the wheel turns only while it has the focus, so that scrolling the form
// changes nothing.
#pragma once

#include <QComboBox>

namespace kerfwright {

class QuietCombo : public QComboBox {
    Q_OBJECT

public:
    QuietCombo(const QString& name, QWidget* parent);

    /// Narrow where it must be: the list that opens is as wide as its words.
    QSize minimumSizeHint() const override;
    /// As high as an entry.
    QSize sizeHint() const override;

protected:
    bool event(QEvent* event) override;
};

}  // namespace kerfwright
