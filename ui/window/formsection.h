// A headed part of the form, which can be folded away.
#pragma once

#include <QAbstractButton>
#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QVBoxLayout;
QT_END_NAMESPACE

namespace kerfwright {

class FormHead : public QAbstractButton {
    Q_OBJECT

public:
    FormHead(const QString& title, bool folds, QWidget* parent);
    QSize sizeHint() const override { return QSize(160, 28); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    bool folds_;
};

class FormSection : public QWidget {
    Q_OBJECT

public:
    FormSection(const QString& title, bool folds, QWidget* parent);

    FormHead* head() const { return head_; }
    void setOpen(bool open);
    bool isOpen() const;
    void add(QWidget* widget);
    /// Of the rows added from now on; 92 px to begin with.
    void setLabelWidth(int width) { labelWidth_ = width; }
    /// A row with a label that is the buddy of `field`; returns the label.
    QLabel* addRow(const QString& label, QWidget* field);
    QWidget* body() const { return body_; }

Q_SIGNALS:
    /// Just before it is opened for the first time: fill it now.
    void firstOpened();

private:
    FormHead* head_;
    QWidget* body_;
    QVBoxLayout* rows_;
    bool wasOpen_ = false;
    int labelWidth_ = 92;
};

}  // namespace kerfwright
