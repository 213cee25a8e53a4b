// The designs of a border as small pictures with their names, in the woods at hand.
#pragma once

#include "core/project/project.h"

#include <QAbstractButton>
#include <QWidget>

#include <optional>
#include <vector>

namespace kerfwright {

/// No design: no border.
using DesignChoice = std::optional<BorderDesign>;

class DesignButton : public QAbstractButton {
    Q_OBJECT

public:
    DesignButton(DesignChoice design, QWidget* parent);
    DesignChoice design() const { return design_; }
    /// The picture, in the woods of the project; `inForce` marks it as the one that is chosen.
    void show(const Project& project, bool inForce);
    QSize sizeHint() const override { return QSize(82, 82); }
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    DesignChoice design_;
    QColor light_, dark_, rail_, inlay_;
    bool endGrain_ = true;
    bool inForce_ = false;
};

class DesignPicker : public QWidget {
    Q_OBJECT

public:
    explicit DesignPicker(QWidget* parent);
    void refresh(const Project& project);

Q_SIGNALS:
    void chosen(DesignChoice design);

private:
    std::vector<DesignButton*> buttons_;
};

/// What the design is called: "Floating frame".
QString designName(DesignChoice design);
/// Why a design cannot go round this board, in a sentence; empty where it can.
QString designHindrance(DesignChoice design, const Board& board);

}  // namespace kerfwright
