// Where a first start begins: the sample boards as pictures, and a new board in either unit.
#pragma once

#include "core/project/project.h"

#include <QAbstractButton>
#include <QScrollArea>

#include <vector>

QT_BEGIN_NAMESPACE
class QGridLayout;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class SampleCard : public QAbstractButton {
    Q_OBJECT

public:
    SampleCard(Project project, QWidget* parent);
    QSize sizeHint() const override { return QSize(208, 248); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Project project_;
    QString about_;
};

class Gallery : public QScrollArea {
    Q_OBJECT

public:
    explicit Gallery(QWidget* parent = nullptr);

Q_SIGNALS:
    void sampleChosen(const QString& resource);
    void newChosen(Unit unit);
    void openChosen();
    void closed();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void place();

    QGridLayout* grid_;
    std::vector<SampleCard*> cards_;
};

}  // namespace kerfwright
