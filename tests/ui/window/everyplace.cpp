#include "tests/ui/window/everyplace.h"

#include "core/timber/rack.h"
#include "ui/window/benchtabs.h"
#include "ui/window/buildfilm.h"
#include "ui/window/filmmaker.h"
#include "ui/window/rackpage.h"
#include "ui/window/stagerow.h"
#include "ui/window/theme.h"
#include "ui/window/timberpanel.h"
#include "ui/window/totalsbar.h"

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QTest>
#include <QTimer>

namespace kerfwright {

EveryPlace::EveryPlace() {
    setThemeChoice(ThemeChoice::Light);
    applyTheme(*qApp);
}

QAction* EveryPlace::action(const char* name) const {
    auto* found = window->findChild<QAction*>(QString::fromLatin1(name));
    EXPECT_NE(found, nullptr) << name;
    return found;
}

QWidget* EveryPlace::opened() {
    QWidget* popup = QApplication::activePopupWidget();
    if (popup == nullptr) {
        popup = QApplication::activeModalWidget();
    }
    return popup != nullptr ? popup : QApplication::activeWindow();
}

void EveryPlace::openSections() {
    for (const char* head : {"titlesHead", "allowancesHead", "machinesHead", "placeHead",
                             "glueHead", "unitsHead", "ratesHead"}) {
        auto* button = find<QAbstractButton>(head);
        if (!button->isChecked()) {
            button->click();
        }
    }
}

void EveryPlace::fillRack() {
    window->document().edit(QStringLiteral("planks"), entry::none, [](Project& changed) {
        for (int i = 0; i < 4; ++i) {
            for (std::size_t wood = 0; wood < 2; ++wood) {
                Plank plank;
                plank.wood = changed.woods[wood].key;
                plank.label = "P" + std::to_string(changed.timber.rack.planks.size() + 1);
                plank.thickness = Length::mm(60);
                plank.width = Length::mm(150);
                plank.length = Length::mm(1500);
                changed.timber.rack.planks.push_back(plank);
            }
        }
    });
}

void EveryPlace::visitWindow(const Visit& visit) {
    const auto see = [&](const QString& part) {
        QCoreApplication::processEvents();
        visit(part, *window);
    };
    ASSERT_TRUE(planned());
    BuildFilm& film = window->film();
    film.setMoving(false);
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return film.hasBegun() && film.maker()->isCurrent() && film.row()->count() > 0; }));
    see(QStringLiteral("at a start"));
    BenchTabs& bench = window->bench();
    bench.setCurrentIndex(BenchTabs::TimberTab);
    see(QStringLiteral("empty rack"));
    fillRack();
    ASSERT_TRUE(planned());
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->sawyer().state() == Sawyer::State::Current; }, 60'000));
    for (const TimberPanel::Page page :
         {TimberPanel::RackOf, TimberPanel::Cuts, TimberPanel::Buy, TimberPanel::Boards}) {
        bench.timber()->showPage(page);
        see(QStringLiteral("timber, page %1").arg(page));
    }
    openSections();
    for (QAbstractButton* design : find("borderKind")->findChildren<QAbstractButton*>()) {
        if (design->isEnabled()) {
            design->click();
            see(QStringLiteral("border ") + design->text());
        }
    }
    ASSERT_TRUE(planned());
    window->editor().setMark(QRect(0, 0, 2, 1));
    for (int tab = 0; tab < bench.count(); ++tab) {
        bench.setCurrentIndex(tab);
        for (auto* head : bench.currentWidget()->findChildren<QAbstractButton*>()) {
            // What folds at the bench.
            if (head->inherits("kerfwright::FormHead") && head->isCheckable()) {
                head->setChecked(true);
            }
        }
        see(bench.tabText(tab));
    }
    window->editor().setMark(QRect());
    film.play();
    see(QStringLiteral("a stage"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    window->showGallery();
    see(QStringLiteral("gallery"));
    window->hideGallery();
    action("actionTour")->trigger();
    see(QStringLiteral("tour"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
}

void EveryPlace::visitDialogs(const Visit& visit) {
    ASSERT_TRUE(planned());
    const auto see = [&](const QString& part) {
        QCoreApplication::processEvents();
        QWidget* top = nullptr;
        ASSERT_TRUE(QTest::qWaitFor([&] {
            top = opened();
            return top != nullptr && top != window.get();
        })) << part.toStdString();
        ASSERT_TRUE(QTest::qWaitForWindowActive(top));
        visit(part, *top);
        top->close();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QCoreApplication::processEvents();
    };
    for (const char* name :
         {"actionKeys", "actionAbout", "actionReadBoard", "actionHelp", "actionBatch"}) {
        action(name)->trigger();
        see(QString::fromLatin1(name));
    }
    find<TotalsBar>("totals")->setFocus();
    QTest::keyClick(find("totals"), Qt::Key_Return);
    see(QStringLiteral("working"));
    if (auto* more = find<QAbstractButton>("totalsMore"); more->isVisible()) {
        more->click();
        see(QStringLiteral("more totals"));
    }
    for (QAbstractButton* button : find("wood1")->findChildren<QAbstractButton*>()) {
        if (button->isEnabled()) {
            button->click();
            see(button->accessibleName());
        }
    }
    window->bench().setCurrentIndex(BenchTabs::TimberTab);
    window->bench().timber()->rack()->addPlank();
    see(QStringLiteral("plank"));
}

void EveryPlace::visitQuestions(const Visit& visit) {
    WindowDialogs real;
    const QString name = QStringLiteral("Board");
    const auto ask = [&](const QString& part, const std::function<void()>& run) {
        bool seen = false;
        // The question keeps its own loop until it is answered.
        QTimer::singleShot(0, window.get(), [&] {
            QWidget* top = opened();
            if (top != nullptr && QTest::qWaitForWindowActive(top)) {
                seen = true;
                visit(part, *top);
                QTest::keyClick(top, Qt::Key_Escape);
            }
        });
        run();
        EXPECT_TRUE(seen) << part.toStdString();
    };
    ask(QStringLiteral("unsaved"),
        [&] { EXPECT_EQ(real.askUnsaved(window.get(), name), Dialogs::Unsaved::Cancel); });
    ask(QStringLiteral("changed on disk"),
        [&] { EXPECT_FALSE(real.askOverwriteChanged(window.get(), name)); });
    ask(QStringLiteral("lost work"),
        [&] { EXPECT_EQ(real.askLostWork(window.get(), name), Dialogs::Lost::Later); });
    ask(QStringLiteral("message"), [&] { real.tell(window.get(), name, name); });
}

void EveryPlace::visitAll(const Visit& visit) {
    visitWindow(visit);
    visitDialogs(visit);
    visitQuestions(visit);
}

}  // namespace kerfwright
