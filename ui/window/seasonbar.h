// A slider over the year, from dry to damp and back: shows the board breathing, and by how much.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/seasonpicture.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QSlider;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class SeasonBar : public QWidget {
    Q_OBJECT

public:
    SeasonBar(Document& document, Planner& planner, QWidget* parent = nullptr);

    /// Back to the moisture that the board is built at.
    void showAsBuilt();
    /// The same, where it is not there already.
    void leaveSeason();

Q_SIGNALS:
    /// To be shown instead of the document's board; null: as it is built.
    void pictured(const std::shared_ptr<const SeasonPicture>& picture);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void planChanged();
    void moved();
    void tell(const QString& when, const QString& how);

    Document& document_;
    Planner& planner_;
    QToolButton* built_;
    QSlider* year_;
    QLabel* when_;
    QLabel* how_;
    bool asBuilt_ = true;
};

}  // namespace kerfwright
