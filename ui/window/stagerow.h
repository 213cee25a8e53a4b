// The build in small pictures, one a stage, below the board.
#pragma once

#include "ui/window/filmmaker.h"
#include "ui/window/keylist.h"

#include <QAbstractListModel>
#include <QImage>

#include <map>
#include <set>

namespace kerfwright {

class StageModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    int rowCount(const QModelIndex& parent = QModelIndex()) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    void setFilm(const FilmPtr& film);
    const FilmPtr& film() const { return film_; }
    const FilmStage& stage(int row) const {
        return film_->film.stages[static_cast<std::size_t>(row)];
    }

private:
    FilmPtr film_;
};

class StageRow : public KeyList {
    Q_OBJECT

public:
    static constexpr int tallHeight = 84;
    static constexpr int slimHeight = 36;

    explicit StageRow(QWidget* parent = nullptr);
    ~StageRow() override;

    void setFilm(const FilmPtr& film, bool current);
    int count() const { return model_->rowCount(); }
    const StageModel& stages() const { return *model_; }
    /// The stage that is shown large; the last one is the board itself.
    int chosen() const { return currentIndex().row(); }
    /// `seen`: scrolled to where it can be seen.
    void choose(int stage, bool seen = true);
    /// Of a card, so that all stages fit where they can; else as small as it gets.
    QSize cardSize() const;
    /// The stage of the chosen step has a quiet bar; -1: none.
    void setMarked(int stage);
    int marked() const { return marked_; }
    /// Names without pictures, for low windows.
    void setSlim(bool slim);
    bool isSlim() const { return slim_; }
    void setLetters(bool on);
    bool isStale() const { return stale_; }
    /// Null until it was drawn, which is asked for by this.
    QImage picture(int stage);
    bool hasAllPictures();

    QSize sizeHint() const override { return QSize(400, slim_ ? slimHeight : tallHeight); }
    QSize minimumSizeHint() const override { return QSize(120, sizeHint().height()); }

    void doItemsLayout() override;

Q_SIGNALS:
    /// By mouse or key.
    void picked(int stage);
    void left();

protected:
    bool event(QEvent* event) override;
    void updateGeometries() override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    struct Picture {
        QImage image;
        quint64 generation = 0;  ///< of the film, the colours and the scale it was drawn for
    };

    void redraw();
    void forget();
    int widthOfAll(int card) const;
    bool allFit() const;
    QRect arrow(bool forward) const;

    StageModel* model_;
    QThreadPool pool_;
    std::map<std::string, Picture> pictures_;  ///< by key of the stage
    std::set<std::string> asked_;
    quint64 generation_ = 1;
    int laidOut_ = 0;  ///< width of the cards that were laid out last
    bool quiet_ = false;
    bool slim_ = false;
    bool letters_ = false;
    bool stale_ = false;
    int marked_ = -1;
};

}  // namespace kerfwright
