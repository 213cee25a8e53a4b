// A choice of a few, all of them in sight.
#pragma once

#include <QAbstractButton>
#include <QWidget>

QT_BEGIN_NAMESPACE
class QBoxLayout;
class QButtonGroup;
QT_END_NAMESPACE

namespace kerfwright {

class Segment : public QAbstractButton {
    Q_OBJECT

public:
    Segment(const QString& text, QWidget* parent);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
};

/// Side by side; one below the other where the words of a language leave no room for that.
class Segmented : public QWidget {
    Q_OBJECT

public:
    /// `name` is read out before each choice.
    Segmented(const QString& name, const QStringList& choices, QWidget* parent = nullptr);

    int current() const;
    /// -1: none of them.
    void setCurrent(int index);
    QAbstractButton* segment(int index) const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    /// By the maker, not by `setCurrent`.
    void chosen(int index);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QBoxLayout* row_;
    QButtonGroup* group_;
};

}  // namespace kerfwright
