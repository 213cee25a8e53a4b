#include "ui/window/woodlist.h"

#include "core/wood/ownwood.h"
#include "ui/document/text.h"
#include "ui/window/boardpainter.h"
#include "ui/window/figurenotice.h"
#include "ui/window/focusring.h"
#include "ui/window/icons.h"
#include "ui/window/tones.h"
#include "ui/window/woodchip.h"
#include "ui/window/woodchooser.h"
#include "ui/window/woodform.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QStyle>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int buttonIcon = 16;

QToolButton* smallButton(const QString& icon, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setIcon(lineIcon(icon));
    button->setIconSize(QSize(buttonIcon, buttonIcon));
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::StrongFocus);
    button->setFixedSize(26, 26);
    return button;
}

/// The same project with a wood put in the place of `replacing`, or at the end where that is -1.
/// A letter that is already taken gives way to the second letter of the name.
Project withWood(Project project, const Wood& wood, int replacing) {
    Wood fitted = wood;
    for (std::size_t i = 0; i < project.woods.size(); ++i) {
        if (static_cast<int>(i) != replacing && project.woods[i].letter == fitted.letter &&
            fitted.name.size() > 1) {
            for (std::size_t at = 1; at < fitted.name.size(); ++at) {
                const char letter = fitted.name[at];
                if (letter >= 'a' && letter <= 'z') {
                    fitted.letter =
                        wood.letter.substr(0, 1) + static_cast<char>(letter - 'a' + 'A');
                    break;
                }
            }
        }
    }
    if (replacing < 0) {
        project.woods.push_back(fitted);
    } else {
        project.woods[static_cast<std::size_t>(replacing)] = fitted;
    }
    return project;
}

}  // namespace

WoodRow::WoodRow(QWidget* parent)
    : QAbstractButton(parent)
    , timber_(smallButton(QStringLiteral("timber"), this))
    , replace_(smallButton(QStringLiteral("replace"), this))
    , remove_(smallButton(QStringLiteral("remove"), this)) {
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 2, 0);
    row->setSpacing(0);
    row->addStretch(1);
    row->addWidget(timber_);
    row->addWidget(replace_);
    row->addWidget(remove_);
    connect(&FigureNotice::instance(), &FigureNotice::changed, this, qOverload<>(&QWidget::update));
}

void WoodRow::show(const Wood& wood, const QString& use, bool paints, bool removable) {
    const QString name = toQt(wood.name);
    setText(name);
    wood_ = wood;
    use_ = use;
    paints_ = paints;
    setAccessibleName(tr("%1, %2").arg(name, use));
    setAccessibleDescription(paints ? tr("paints") : QString());
    setToolTip(tr("Paint with %1").arg(inSentence(name)));
    timber_->setAccessibleName(tr("All about %1").arg(name));
    timber_->setToolTip(tr("Timber, price and properties of %1").arg(inSentence(name)));
    replace_->setAccessibleName(tr("Replace %1").arg(name));
    replace_->setToolTip(tr("Replace %1 by another wood").arg(inSentence(name)));
    remove_->setAccessibleName(tr("Remove %1").arg(name));
    remove_->setEnabled(removable);
    remove_->setToolTip(removable ? tr("Remove %1").arg(inSentence(name))
                                  : tr("In use: replace it, or paint over it first"));
    update();
}

void WoodRow::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (underMouse() || hasFocus()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(mixed(tones.surface, tones.text, 0.04));
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 5, 5);
    }
    if (hasFocus()) {
        paintFocusRing(painter, rect(), tones);
    }
    const auto placed = [this](const QRect& place) {
        return QStyle::visualRect(layoutDirection(), rect(), place);
    };
    const QRectF chip = placed(QRect(4, (height() - 26) / 2, 26, 26));
    painter.setPen(
        QPen(paints_ ? tones.accent : outlineOf(shownColour(wood_), tones), paints_ ? 2 : 1));
    paintWood(painter, chip.adjusted(1, 1, -1, -1), 4, wood_);
    const int right = placed(timber_->geometry()).left() - 6;
    painter.setPen(tones.quiet);
    const int useWidth = fontMetrics().horizontalAdvance(use_);
    painter.drawText(placed(QRect(0, 0, right, height())), Qt::AlignRight | Qt::AlignVCenter, use_);
    painter.setPen(tones.text);
    const int room = right - useWidth - 48;
    painter.drawText(placed(QRect(40, 0, room, height())), Qt::AlignLeft | Qt::AlignVCenter,
                     fontMetrics().elidedText(text(), Qt::ElideRight, room));
}

void WoodList::drawButtonsAhead() {
    drawAhead({QStringLiteral("timber"), QStringLiteral("replace"), QStringLiteral("add")},
              buttonIcon);
    drawAhead({QStringLiteral("remove")}, buttonIcon, QIcon::Disabled);  // the wood is in use
}

WoodList::WoodList(Document& document, BoardEditor& editor, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , editor_(editor)
    , column_(new QVBoxLayout(this))
    , add_(new QToolButton(this)) {
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(2);
    add_->setObjectName(QStringLiteral("addWood"));
    add_->setText(tr("Add a wood…"));
    add_->setAccessibleName(tr("Add a wood"));
    add_->setIcon(lineIcon(QStringLiteral("add")));
    add_->setIconSize(QSize(buttonIcon, buttonIcon));
    add_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    add_->setAutoRaise(true);
    add_->setFocusPolicy(Qt::StrongFocus);
    column_->addWidget(add_, 0, Qt::AlignLeft);
    connect(add_, &QToolButton::clicked, this, [this] { openChooser(add_, -1); });
    connect(&document, &Document::projectChanged, this, &WoodList::refresh);
    connect(&editor, &BoardEditor::woodChanged, this, &WoodList::refresh);
    refresh();
}

void WoodList::refresh() {
    const Project& project = document_.project();
    const std::size_t count = project.woods.size();
    while (rows_.size() > count) {
        delete rows_.back();
        rows_.pop_back();
    }
    QWidget* before = rows_.empty() ? nullptr : rows_.back()->removeButton();
    while (rows_.size() < count) {
        const int wood = static_cast<int>(rows_.size());
        auto* row = new WoodRow(this);
        row->setObjectName(QStringLiteral("wood%1").arg(wood + 1));
        column_->insertWidget(wood, row);
        connect(row, &QAbstractButton::clicked, this, [this, wood] { editor_.setWood(wood); });
        connect(row->timberButton(), &QToolButton::clicked, this,
                [this, wood] { openTimber(wood); });
        connect(row->replaceButton(), &QToolButton::clicked, this,
                [this, row, wood] { openChooser(row->replaceButton(), wood); });
        connect(row->removeButton(), &QToolButton::clicked, this, [this, wood] { remove(wood); });
        if (before != nullptr) {
            setTabOrder(before, row);
        }
        setTabOrder(row, row->timberButton());
        setTabOrder(row->timberButton(), row->replaceButton());
        setTabOrder(row->replaceButton(), row->removeButton());
        setTabOrder(row->removeButton(), add_);
        before = row->removeButton();
        rows_.push_back(row);
    }
    const std::vector<WoodUse> uses = woodUse(project.board.field, static_cast<int>(count));
    for (std::size_t i = 0; i < count; ++i) {
        const bool border = project.board.border.width > Length() &&
                            project.board.border.wood == static_cast<int>(i);
        QString use = uses[i].pieces > 0 ? QString::number(uses[i].pieces) : QString();
        if (border) {
            use = use.isEmpty() ? tr("border") : tr("%1 + border").arg(use);
        }
        const bool free = uses[i].pieces == 0 && !border && count > 1;
        rows_[i]->show(project.woods[i], use.isEmpty() ? tr("unused") : use,
                       editor_.wood() == static_cast<int>(i), free);
    }
    add_->setEnabled(count < static_cast<std::size_t>(ProjectLimits::woods));
}

void WoodList::openChooser(QWidget* button, int replacing) {
    auto* chooser = new WoodChooser(document_.project().woods, this);
    connect(chooser, &WoodChooser::previewed, this, [this, replacing](const Wood* wood) {
        if (wood == nullptr || replacing < 0) {
            Q_EMIT previewed(nullptr);
        } else {
            Q_EMIT previewed(std::make_shared<const Project>(
                withWood(document_.project(), takenOver(*wood), replacing)));
        }
    });
    connect(chooser, &WoodChooser::chosen, this, [this, replacing](const Wood& wood) {
        const QString name = inSentence(toQt(wood.name));
        document_.edit(
            replacing < 0 ? tr("add %1").arg(name) : tr("change to %1").arg(name), entry::none,
            [&](Project& project) { project = withWood(std::move(project), wood, replacing); });
        if (replacing < 0) {
            editor_.setWood(static_cast<int>(document_.project().woods.size()) - 1);
        }
    });
    connect(chooser, &WoodChooser::ownAsked, this, [this, replacing] { addOwn(replacing); });
    chooser->openBeside(button);
}

void WoodList::addOwn(int replacing) {
    const Wood own = ownWood(document_.project().woods);
    const auto fault =
        document_.edit(tr("add a wood of your own"), entry::none, [&](Project& project) {
            project = withWood(std::move(project), own, replacing);
        });
    if (fault) {
        return;
    }
    const int wood =
        replacing < 0 ? static_cast<int>(document_.project().woods.size()) - 1 : replacing;
    editor_.setWood(wood);
    openTimber(wood)->focusName();
}

WoodForm* WoodList::openTimber(int wood) {
    auto* form = new WoodForm(document_, wood, this);
    form->openBeside(rows_[static_cast<std::size_t>(wood)]->timberButton());
    return form;
}

void WoodList::showTimber() {
    const std::vector<WoodUse> uses =
        woodUse(document_.project().board.field, static_cast<int>(rows_.size()));
    const auto used =
        std::find_if(uses.begin(), uses.end(), [](const WoodUse& use) { return use.pieces > 0; });
    openTimber(used == uses.end() ? 0 : static_cast<int>(used - uses.begin()));
}

void WoodList::showPrice(const QString& wood) {
    const std::vector<Wood>& woods = document_.project().woods;
    const auto named = std::find_if(woods.begin(), woods.end(),
                                    [&](const Wood& one) { return toQt(one.name) == wood; });
    if (named != woods.end()) {
        openTimber(static_cast<int>(named - woods.begin()))->focusPrice();
    }
}

void WoodList::remove(int wood) {
    const QString name =
        inSentence(toQt(document_.project().woods[static_cast<std::size_t>(wood)].name));
    document_.edit(tr("remove %1").arg(name), entry::none, [wood](Project& project) {
        project.woods.erase(project.woods.begin() + wood);
        const auto moveUp = [wood](int& index) {
            if (index > wood) {
                --index;
            }
        };
        for (Piece& piece : project.board.field.pieces) {
            moveUp(piece.wood);
        }
        if (project.recipe) {
            // A field of few squares may use fewer woods than its recipe has.
            if (std::count(project.recipe->woods.begin(), project.recipe->woods.end(), wood) > 0) {
                project.recipe.reset();
            } else {
                std::for_each(project.recipe->woods.begin(), project.recipe->woods.end(), moveUp);
            }
        }
        Border& border = project.board.border;
        for (int* own : {&border.wood, &border.inlayWood, &border.splineWood}) {
            if (*own == wood) {
                *own = 0;
            }
            moveUp(*own);
        }
    });
}

}  // namespace kerfwright
