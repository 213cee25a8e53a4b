#include "ui/window/keyfinder.h"

#include "ui/document/text.h"

#include <QAction>
#include <QCoreApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

enum Column { What, Keys, Where };

QString plain(QString text) {
    text.remove(QLatin1Char('&'));
    return text;
}

QString keysOf(const QAction& action) {
    QStringList all;
    for (const QKeySequence& keys : action.shortcuts()) {
        all << keys.toString(QKeySequence::NativeText);
    }
    return all.join(KeyFinder::tr(" or "));
}

}  // namespace

KeyFinder::KeyFinder(const std::vector<QMenu*>& menus,
                     const std::vector<std::array<QString, 2>>& byHand, QWidget* parent)
    : QDialog(parent)
    , search_(new QLineEdit(this))
    , list_(new QTreeWidget(this))
    , found_(new QLabel(this)) {
    setObjectName(QStringLiteral("keyFinder"));
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Commands and keys"));
    search_->setObjectName(QStringLiteral("keySearch"));
    search_->setPlaceholderText(tr("Find a command or a key"));
    search_->setAccessibleName(search_->placeholderText());
    search_->setClearButtonEnabled(true);
    search_->setTextMargins(4, 0, 4, 0);
    search_->installEventFilter(this);
    list_->setObjectName(QStringLiteral("keyList"));
    list_->setAccessibleName(windowTitle());
    list_->setAccessibleDescription(tr("Return carries the command out"));
    list_->setHeaderLabels({tr("What it does"), tr("Keys"), tr("Where")});
    list_->setRootIsDecorated(false);
    list_->setWordWrap(true);
    list_->setTabKeyNavigation(false);
    list_->header()->setStretchLastSection(false);
    for (QMenu* menu : menus) {
        addMenu(*menu, plain(menu->title()));
    }
    for (const auto& [keys, what] : byHand) {
        add(what, keys, tr("By hand"), nullptr);
    }
    list_->header()->setSectionResizeMode(What, QHeaderView::Stretch);
    list_->header()->setSectionResizeMode(Keys, QHeaderView::ResizeToContents);
    list_->header()->setSectionResizeMode(Where, QHeaderView::ResizeToContents);
    // Lines that wrap are as high as their column is narrow, which they are not told.
    connect(
        list_->header(), &QHeaderView::sectionResized, list_, [this] { list_->doItemsLayout(); },
        Qt::QueuedConnection);
    auto* close = new QPushButton(tr("Close"), this);
    close->setAutoDefault(false);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 20, 16);
    column->setSpacing(10);
    column->addWidget(search_);
    column->addWidget(list_, 1);
    auto* row = new QHBoxLayout;
    row->addWidget(found_, 1);
    row->addWidget(close);
    column->addLayout(row);
    connect(search_, &QLineEdit::textChanged, this, &KeyFinder::filter);
    connect(list_, &QTreeWidget::itemActivated, this, &KeyFinder::run);
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    resize(std::min(820, parent->width()), 560);
    filter(QString());
    search_->setFocus();
}

void KeyFinder::add(const QString& what, const QString& keys, const QString& where,
                    QAction* action) {
    auto* line = new QTreeWidgetItem(list_, {what, keys, where});
    line->setToolTip(What, what);
    // One line is one sentence to who hears it.
    line->setData(What, Qt::AccessibleTextRole,
                  keys.isEmpty() ? tr("%1, %2, no key").arg(what, where)
                                 : tr("%1, %2, %3").arg(what, where, keys));
    actions_.emplace_back(action);
}

void KeyFinder::addMenu(QMenu& menu, const QString& where) {
    for (QAction* action : menu.actions()) {
        if (QMenu* inner = action->menu()) {
            addMenu(*inner, tr("%1, %2").arg(where, plain(inner->title())));
        } else if (!action->isSeparator()) {
            add(plain(action->text()), keysOf(*action), where, action);
        }
    }
}

void KeyFinder::filter(const QString& text) {
    // Words in any order: "row insert" finds "Insert rows above".
    const QStringList words = text.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    QTreeWidgetItem* first = nullptr;
    int count = 0;
    for (int i = 0; i < list_->topLevelItemCount(); ++i) {
        QTreeWidgetItem* line = list_->topLevelItem(i);
        const QString all = line->text(What) + QLatin1Char(' ') + line->text(Keys) +
                            QLatin1Char(' ') + line->text(Where);
        const bool fits = std::all_of(words.begin(), words.end(), [&](const QString& word) {
            return all.contains(word, Qt::CaseInsensitive);
        });
        line->setHidden(!fits);
        count += fits ? 1 : 0;
        if (fits && first == nullptr) {
            first = line;
        }
    }
    list_->setCurrentItem(first);
    found_->setText(count == 0 ? tr("Nothing found")
                               : counted(count, tr("%1 found"), tr("%1 found")));
}

void KeyFinder::run() {
    const int line = list_->indexOfTopLevelItem(list_->currentItem());
    QAction* action = line < 0 ? nullptr : actions_[static_cast<std::size_t>(line)].data();
    if (action != nullptr && action->isEnabled()) {
        accept();
        // Once this window is gone, so that what opens stands in the main window.
        QMetaObject::invokeMethod(action, &QAction::trigger, Qt::QueuedConnection);
    }
}

bool KeyFinder::eventFilter(QObject* watched, QEvent* event) {
    if (watched == search_ && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        switch (key->key()) {
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_PageUp:
        case Qt::Key_PageDown:
            QCoreApplication::sendEvent(list_, event);
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            run();
            return true;
        default:
            break;
        }
    }
    return QDialog::eventFilter(watched, event);
}

}  // namespace kerfwright
