#include "ui/window/regionbar.h"

#include "ui/window/icons.h"
#include "ui/window/regionactions.h"

#include <QMenu>
#include <QToolButton>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int side = 28;  // pixels of a button
constexpr int iconSide = 18;

QToolButton* button(QWidget* parent) {
    auto* made = new QToolButton(parent);
    made->setIconSize(QSize(iconSide, iconSide));
    made->setFocusPolicy(Qt::StrongFocus);
    made->setAutoRaise(true);
    made->resize(side, side);
    return made;
}

}  // namespace

RegionBar::RegionBar(const RegionActions& actions, QWidget* parent)
    : QWidget(parent)
    , more_(nullptr) {
    setAccessibleName(tr("Marked region"));
    for (QAction* action : actions.pictured()) {
        QToolButton* made = button(this);
        made->setDefaultAction(action);
        made->setAccessibleName(action->text().remove(QLatin1Char('&')));
        // "actionTurn" is the command, "turn" its button.
        QString name = action->objectName().mid(6);
        name[0] = name[0].toLower();
        made->setObjectName(name);
        buttons_.push_back(made);
    }
    more_ = button(this);
    more_->setObjectName(QStringLiteral("regionMenu"));
    more_->setIcon(lineIcon(QStringLiteral("more")));
    more_->setToolTip(tr("All that can be done with what is marked"));
    more_->setAccessibleName(more_->toolTip());
    auto* menu = new QMenu(more_);
    actions.fill(*menu);
    // Not the button's own menu, whose sign would stand beside the picture.
    connect(more_, &QToolButton::clicked, menu,
            [this, menu] { menu->popup(more_->mapToGlobal(more_->rect().bottomLeft())); });
}

int RegionBar::leastWidth() {
    return side;
}

QSize RegionBar::sizeHint() const {
    return QSize((static_cast<int>(buttons_.size()) + 1) * side, side);
}

void RegionBar::resizeEvent(QResizeEvent*) {
    const int room = std::max(0, width() / side - 1);
    int x = width() - side;
    more_->move(x, (height() - side) / 2);
    const int shown = std::min(room, static_cast<int>(buttons_.size()));
    x -= shown * side;
    for (int i = 0; i < static_cast<int>(buttons_.size()); ++i) {
        QToolButton* one = buttons_[static_cast<std::size_t>(i)];
        one->setVisible(i < shown);
        one->move(x + i * side, (height() - side) / 2);
    }
}

}  // namespace kerfwright
