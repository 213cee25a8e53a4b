// Who works by keys or by ear meets no wall: WCAG 2.1, level AA, checked in every part of the
// program.
#include "tests/ui/window/everyplace.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/focusring.h"
#include "ui/window/stepspanel.h"
#include "ui/window/tones.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QAccessible>
#include <QApplication>
#include <QButtonGroup>
#include <QComboBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QTabBar>
#include <QTest>
#include <QTextBrowser>

#include <map>
#include <set>

namespace kerfwright {
namespace {

std::string about(const QString& part, const QWidget& widget) {
    return QStringLiteral("%1: %2 “%3” in %4")
        .arg(part, QString::fromLatin1(widget.metaObject()->className()), widget.objectName(),
             widget.parentWidget() != nullptr
                 ? QString::fromLatin1(widget.parentWidget()->metaObject()->className())
                 : QString())
        .toStdString();
}

QString nameOf(QWidget* widget) {
    QAccessibleInterface* reader = QAccessible::queryAccessibleInterface(widget);
    return reader == nullptr ? QString() : reader->text(QAccessible::Name);
}

/// Scroll areas and parts of other widgets take the focus for their owner.
bool isOwn(const QWidget& widget) {
    return widget.focusProxy() == nullptr && qobject_cast<const QMenu*>(&widget) == nullptr;
}

std::vector<QWidget*> seenIn(QWidget& top) {
    std::vector<QWidget*> all{&top};
    for (QWidget* widget : top.findChildren<QWidget*>()) {
        if (widget->isVisible() && widget->window() == &top) {
            all.push_back(widget);
        }
    }
    return all;
}

/// Presses Tab; where the focus is then, in this window.
QWidget* tabIn(QWidget& top) {
    QWidget* at = QApplication::focusWidget();
    QTest::keyClick(at != nullptr && at->window() == &top ? at : &top, Qt::Key_Tab);
    at = QApplication::focusWidget();
    return at != nullptr && at->window() == &top ? at : nullptr;
}

class AccessTest : public EveryPlace {};

/// WCAG 2.1, 4.1.2 Name, Role, Value.
TEST_F(AccessTest, EveryControlHasANameInEveryPart) {
    int controls = 0;
    visitAll([&](const QString& part, QWidget& top) {
        if (top.isWindow() && &top != window.get()) {
            EXPECT_FALSE(nameOf(&top).isEmpty()) << about(part, top);
        }
        for (QWidget* widget : seenIn(top)) {
            const bool button = qobject_cast<QAbstractButton*>(widget) != nullptr;
            if (&top == widget || !isOwn(*widget) ||
                (!button && widget->focusPolicy() == Qt::NoFocus)) {
                continue;
            }
            ++controls;
            EXPECT_FALSE(nameOf(widget).trimmed().isEmpty()) << about(part, *widget);
        }
    });
    EXPECT_GT(controls, 2000);
}

/// The same for what is no widget: lines of lists, tabs, cells.
TEST_F(AccessTest, EveryLineAndTabHasAName) {
    const std::set<QAccessible::Role> named{QAccessible::ListItem, QAccessible::PageTab,
                                            QAccessible::Button,   QAccessible::CheckBox,
                                            QAccessible::MenuItem, QAccessible::EditableText,
                                            QAccessible::ComboBox, QAccessible::Slider};
    int lines = 0;
    visitAll([&](const QString& part, QWidget& top) {
        const std::function<void(QAccessibleInterface*, int)> walk = [&](QAccessibleInterface* one,
                                                                         int depth) {
            // Without a screen reader, lists keep readers of lines that are gone.
            if (one == nullptr || depth > 40 || !one->isValid() || one->state().invisible) {
                return;
            }
            if (named.count(one->role()) > 0) {
                ++lines;
                EXPECT_FALSE(one->text(QAccessible::Name).isEmpty())
                    << part.toStdString() << ": role " << one->role() << " in "
                    << one->parent()->text(QAccessible::Name).toStdString();
            }
            for (int i = 0; i < one->childCount(); ++i) {
                walk(one->child(i), depth + 1);
            }
        };
        walk(QAccessible::queryAccessibleInterface(&top), 0);
        for (auto* view : top.findChildren<QAbstractItemView*>()) {
            const QAbstractItemModel* model = view->isVisible() ? view->model() : nullptr;
            for (int row = 0; model != nullptr && row < model->rowCount(); ++row) {
                const QModelIndex line = model->index(row, 0);
                EXPECT_FALSE(line.data(Qt::AccessibleTextRole).toString().isEmpty() &&
                             line.data(Qt::DisplayRole).toString().isEmpty())
                    << about(part, *view) << ", line " << row;
            }
        }
    });
    EXPECT_GT(lines, 2000);
}

/// What takes the focus by Tab, or by arrows from a neighbour that does.
bool isReached(const QWidget& widget, const std::set<QWidget*>& visited) {
    if (visited.count(const_cast<QWidget*>(&widget)) > 0) {
        return true;
    }
    // One stop for a group, in which the arrows go on.
    const QWidget* group = widget.parentWidget();
    return qobject_cast<const QAbstractButton*>(&widget) != nullptr && group != nullptr &&
           std::any_of(visited.begin(), visited.end(), [&](const QWidget* other) {
               return other->parentWidget() == group && other->metaObject() == widget.metaObject();
           });
}

/// WCAG 2.1, 2.1.1 Keyboard and 2.1.2 No Keyboard Trap: Tab goes round and comes to everything.
TEST_F(AccessTest, TabReachesEveryControlAndLeavesItAgain) {
    visitAll([&](const QString& part, QWidget& top) {
        std::set<QWidget*> visited;
        // Twice, since the board marks a piece when the keys come to it, which opens more.
        for (int round = 0; round < 2; ++round) {
            QWidget* first = tabIn(top);
            std::set<QWidget*> once;
            QWidget* at = first;
            while (at != nullptr && once.insert(at).second) {
                QWidget* before = at;
                at = tabIn(top);
                // From link to link of a text, of which there are few.
                for (int links = 0;
                     at == before && qobject_cast<QTextBrowser*>(at) != nullptr && links < 50;
                     ++links) {
                    at = tabIn(top);
                }
            }
            ASSERT_NE(at, nullptr) << part.toStdString();
            EXPECT_EQ(at, first) << "no way back from " << about(part, *at);
            visited.merge(once);
        }
        for (QWidget* widget : seenIn(top)) {
            const bool control = qobject_cast<QAbstractButton*>(widget) != nullptr ||
                                 qobject_cast<QLineEdit*>(widget) != nullptr ||
                                 qobject_cast<QComboBox*>(widget) != nullptr ||
                                 (qobject_cast<QAbstractItemView*>(widget) != nullptr &&
                                  qobject_cast<QHeaderView*>(widget) == nullptr);
            if (!control || !widget->isEnabled() || !isOwn(*widget)) {
                continue;
            }
            auto* button = qobject_cast<QAbstractButton*>(widget);
            const bool heading = button != nullptr && button->focusPolicy() == Qt::NoFocus &&
                                 widget->inherits("kerfwright::FormHead");
            // Its tabs go by arrows, and each has a key of its own.
            const bool scrollsTabs = qobject_cast<QTabBar*>(widget->parentWidget()) != nullptr;
            if (!heading && !scrollsTabs) {
                EXPECT_TRUE(isReached(*widget, visited)) << about(part, *widget);
            }
        }
    });
}

/// Pixels of which two pictures differ so much that both colours are told apart (WCAG 2.1, 1.4.11).
int changed(const QImage& before, const QImage& after) {
    int count = 0;
    for (int y = 0; y < before.height(); ++y) {
        for (int x = 0; x < before.width(); ++x) {
            const QRgb a = before.pixel(x, y);
            const QRgb b = after.pixel(x, y);
            if (a != b && contrast(QColor(a), QColor(b)) >= 3) {
                ++count;
            }
        }
    }
    return count;
}

/// WCAG 2.1, 2.4.7 Focus Visible, and 1.4.11 for how much it differs: as much as a line of two
/// pixels along the shorter side, as 2.4.13 of WCAG 2.2 measures it.
TEST_F(AccessTest, TheFocusIsSeenWhereverItIs) {
    std::map<QString, std::string> unseen;
    int looked = 0;
    const auto look = [&](const QString& part, QWidget& top) {
        std::set<QWidget*> visited;
        for (QWidget* at = tabIn(top); at != nullptr && visited.insert(at).second;
             at = QApplication::focusWidget()) {
            const QImage with = at->grab().toImage();
            const QSize size = at->size();
            QTest::keyClick(at, Qt::Key_Tab);
            const QImage without = at->grab().toImage();
            if (QApplication::focusWidget() == at || at->size() != size) {
                continue;  // alone, or opened by the focus
            }
            ++looked;
            const int side = std::min({at->width(), at->height(), 40});
            const int count = changed(with, without);
            if (count < 2 * side) {
                unseen[QString::fromLatin1(at->metaObject()->className()) + at->objectName()] =
                    about(part, *at) + ": " + std::to_string(count) + " pixels";
            }
        }
    };
    visitAll(look);
    for (const auto& [kind, words] : unseen) {
        ADD_FAILURE() << words;
    }
    EXPECT_GT(looked, 500);
}

/// After a click one knows where the keys are; the first key that is pressed shows it again.
TEST_F(AccessTest, TheFocusIsQuietAfterAClickAndSeenWithTheNextKey) {
    ASSERT_TRUE(planned());
    QWidget* list = window->bench().steps()->list();
    const auto shown = [list] {
        QCoreApplication::processEvents();
        return list->grab().toImage();
    };
    window->board().setFocus();
    QTest::mouseClick(window->bench().steps()->list()->viewport(), Qt::LeftButton, Qt::NoModifier,
                      QPoint(60, 20));
    ASSERT_TRUE(list->hasFocus());
    const QImage quiet = shown();
    QTest::keyClick(list, Qt::Key_Shift);
    EXPECT_EQ(changed(quiet, shown()), 0) << "no key by itself";
    // To the step that is chosen already.
    QTest::keyClick(list, Qt::Key_Home);
    EXPECT_GT(changed(quiet, shown()), 200);
    EXPECT_TRUE(focusIsByKeys());
    QTest::mouseClick(&window->board(), Qt::LeftButton, Qt::NoModifier, cellCentre(0, 0));
    EXPECT_FALSE(focusIsByKeys());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    EXPECT_TRUE(focusIsByKeys());
}

/// WCAG 2.1, 2.1.1: nothing is in two menus under one key, and every entry has words.
TEST_F(AccessTest, MenusAreNamedAndTheirKeysAreTheirOwn) {
    std::map<QKeySequence, QString> window_, board;
    int entries = 0;
    for (QMenu* menu : window->findChildren<QMenu*>()) {
        if (menu->title().isEmpty() || menu->parentWidget() == nullptr) {
            continue;
        }
        QMetaObject::invokeMethod(menu, "aboutToShow");
        std::set<QChar> letters;
        for (QAction* one : menu->actions()) {
            if (one->isSeparator()) {
                continue;
            }
            ++entries;
            EXPECT_FALSE(one->text().isEmpty()) << menu->title().toStdString();
            for (const QKeySequence& keys : one->shortcuts()) {
                auto& taken = one->shortcutContext() == Qt::WidgetShortcut ? board : window_;
                const auto [at, isNew] = taken.emplace(keys, one->text());
                EXPECT_TRUE(isNew || at->second == one->text())
                    << keys.toString().toStdString() << ": " << one->text().toStdString() << " and "
                    << at->second.toStdString();
            }
        }
    }
    for (const auto& [keys, text] : board) {
        EXPECT_EQ(window_.count(keys), 0U)
            << text.toStdString() << " is hidden by " << window_[keys].toStdString();
    }
    EXPECT_GT(entries, 70);
}

/// WCAG 2.1, 1.4.1 Use of Color: what is chosen differs in lightness or shape, not in hue alone.
TEST_F(AccessTest, WhatIsChosenIsSeenWithoutColour) {
    ASSERT_TRUE(planned());
    openSections();
    click(find("borderKind")->findChildren<QAbstractButton*>()[1]);
    QCoreApplication::processEvents();
    int looked = 0;
    for (auto* button : window->findChildren<QAbstractButton*>()) {
        if (!button->isVisible() || !button->isCheckable() || button->hasFocus() ||
            button->isChecked()) {
            continue;
        }
        const QSignalBlocker still(button);
        const QImage off = button->grab().toImage();
        QButtonGroup* group = button->group();
        QAbstractButton* chosen = group != nullptr ? group->checkedButton() : nullptr;
        button->setChecked(true);
        const QImage on = button->grab().toImage();
        if (chosen != nullptr) {
            chosen->setChecked(true);
        } else {
            button->setChecked(false);
        }
        ++looked;
        EXPECT_GE(changed(off, on), 12)
            << button->metaObject()->className() << ' ' << button->accessibleName().toStdString();
    }
    EXPECT_GT(looked, 8);
}

}  // namespace
}  // namespace kerfwright
