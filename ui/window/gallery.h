// Where a first start begins: the sample boards and the patterns as pictures, and a new board in
// either unit.
#pragma once

#include "core/board/patterns.h"
#include "core/project/project.h"
#include "ui/paint/figure.h"
#include "ui/window/boardgeometry.h"

#include <QAbstractButton>
#include <QImage>
#include <QScrollArea>
#include <QThreadPool>

#include <functional>
#include <memory>
#include <vector>

QT_BEGIN_NAMESPACE
class QGridLayout;
class QPushButton;
class QVBoxLayout;
QT_END_NAMESPACE

namespace kerfwright {

class BoardCard : public QAbstractButton {
    Q_OBJECT

public:
    /// `about`: a line below the name.
    BoardCard(Project project, const QString& name, const QString& about, QWidget* parent);
    QSize sizeHint() const override { return QSize(208, 262); }
    /// Was painted without the figure that is to be seen.
    bool wantsPicture() const { return wantsPicture_; }
    /// What makes the picture that is wanted, on any thread.
    std::function<QImage()> maker() const;
    /// For the wish of that time; until it is there, woods are plain.
    void setPicture(const QImage& picture, const FigureStyle& style, double ratio);

Q_SIGNALS:
    void pictureWanted();
    /// An arrow key: to the next card that way.
    void stepped(int right, int down);

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    BoardGeometry place() const;

    std::shared_ptr<const Project> project_;
    Surround surround_;
    QString about_;
    QImage picture_;
    FigureStyle pictureStyle_;
    bool wantsPicture_ = false;
};

class Gallery : public QScrollArea {
    Q_OBJECT

public:
    /// Patterns are laid out in `unit`.
    explicit Gallery(Unit unit, QWidget* parent = nullptr);
    ~Gallery() override;
    /// Whether there is an open board to go back to, or only the one that a start begins with.
    void setBack(bool opened);

Q_SIGNALS:
    void sampleChosen(const QString& resource);
    void patternChosen(Pattern pattern);
    void newChosen(Unit unit);
    void openChosen();
    void closed();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    /// Cards under one heading. The tab key visits one of them; the arrows go on from there.
    struct Group {
        QGridLayout* grid;
        std::vector<BoardCard*> cards;
    };

    Group& addGroup(const QString& title, QVBoxLayout* column);
    BoardCard* addCard(Group& group, Project project, const QString& name, const QString& about);
    void place();
    int columns() const;
    void step(const BoardCard* from, int right, int down);
    void goTo(Group& group, BoardCard* card);

    void makePictures();

    std::vector<Group> groups_;
    QThreadPool pool_;  ///< one picture after the other, of the cards in sight
    bool isMaking_ = false;
    QPushButton* back_ = nullptr;
};

}  // namespace kerfwright
