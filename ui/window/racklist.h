// The planks of the rack, each drawn in its wood at one scale. One view paints them all, so that
// thousands of planks cost no widgets.
#pragma once

#include "core/sheets/plankview.h"
#include "ui/document/document.h"
#include "ui/window/keylist.h"

#include <QAbstractListModel>

#include <set>
#include <string>

namespace kerfwright {

class RackModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    int rowCount(const QModelIndex& parent = QModelIndex()) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    void setProject(const ProjectPtr& project);
    const ProjectPtr& project() const { return project_; }
    const Plank& plank(int row) const {
        return project_->timber.rack.planks[static_cast<std::size_t>(row)];
    }

private:
    ProjectPtr project_;
};

class RackList : public KeyList {
    Q_OBJECT

public:
    explicit RackList(QWidget* parent = nullptr);

    /// Keeps the choice where its plank has the same label.
    void setProject(const ProjectPtr& project);
    int count() const { return model_->rowCount(); }
    /// Rows that are chosen, in order.
    std::vector<int> chosenRows() const;
    void choose(int row);

    /// Planks with a quiet bar at their side, by label.
    void setMarked(const std::set<std::string>& labels);
    bool isMarked(int row) const { return marked_.contains(model_->plank(row).label); }

Q_SIGNALS:
    /// A plank was clicked or walked to by keys.
    void plankChosen(const QString& label);
    void editAsked(int row);
    void removeAsked();
    void duplicateAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void tellChosen();

    RackModel* model_;
    std::set<std::string> marked_;
};

}  // namespace kerfwright
