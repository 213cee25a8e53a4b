// A slider over the year, from dry to damp and back: shows the board breathing, and by how much.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/seasonpicture.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QGridLayout;
class QSlider;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

class SeasonLine;

class SeasonBar : public QWidget {
    Q_OBJECT

public:
    SeasonBar(Document& document, Planner& planner, QWidget* parent = nullptr);

    /// Back to the moisture that the board is built at.
    void showAsBuilt();
    /// The same, where it is not there already.
    void leaveSeason();
    /// What it takes in a column of that width: where the words have no room beside the slider,
    /// they stand below it.
    int heightIn(int width) const;
    /// In a low window all stands in one row, whatever is left out.
    void setLow(bool low);

Q_SIGNALS:
    /// To be shown instead of the document's board; null: as it is built.
    void pictured(const std::shared_ptr<const SeasonPicture>& picture);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void planChanged();
    void moved();
    void tell(const QString& when, const QString& how);
    bool isStacked(int width) const;
    void place();

    Document& document_;
    Planner& planner_;
    QToolButton* built_;
    QSlider* year_;
    QGridLayout* grid_;
    SeasonLine* when_;
    SeasonLine* how_;
    bool asBuilt_ = true;
    bool low_ = false;
};

}  // namespace kerfwright
