// Makes the film of the plan at hand, on a thread of its own and only while somebody looks.
#pragma once

#include "core/sheets/film.h"
#include "ui/document/planner.h"

#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include <memory>

namespace kerfwright {

/// A film with the plan that it is of.
struct MadeFilm {
    PlannedPtr planned;
    Film film;
};
using FilmPtr = std::shared_ptr<const MadeFilm>;

class FilmMaker : public QObject {
    Q_OBJECT

public:
    explicit FilmMaker(Planner& planner, QObject* parent = nullptr);
    ~FilmMaker() override;

    /// Whether anything shows the film.
    void setWanted(bool wanted);
    /// The last one; null where there was no plan since the document was opened.
    FilmPtr film() const { return film_; }
    /// It is of the board as it stands.
    bool isCurrent() const;

Q_SIGNALS:
    void changed();

private:
    void planChanged();
    void run();

    Planner& planner_;
    QTimer delay_;  ///< typing comes first
    QThreadPool pool_;
    FilmPtr film_;
    bool wanted_ = false;
    bool running_ = false;
};

}  // namespace kerfwright
