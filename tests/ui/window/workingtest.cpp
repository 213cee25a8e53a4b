// Every number that a machine is set to shows its working, and every term that is an entry leads
// there.
#include "tests/ui/window/windowfixture.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/cutlist.h"
#include "ui/window/filework.h"
#include "ui/window/panels.h"
#include "ui/window/samples.h"
#include "ui/window/stepspanel.h"
#include "ui/window/totalsbar.h"
#include "ui/window/workingpopup.h"

#include <QAbstractButton>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QToolButton>

#include <algorithm>
#include <set>

namespace kerfwright {
namespace {

/// Every figure of a step, told apart from the words of the window.
struct FiguresOf {
    std::vector<Figure> all;

    void add(std::initializer_list<Figure> figures) {
        for (const Figure& figure : figures) {
            if (figure.value != Length()) {
                all.push_back(figure);
            }
        }
    }
    void operator()(const Mill& work) {
        for (const MillLine& line : work.lines) {
            add({line.roughThickness, line.roughWidth, line.roughLength, line.thickness, line.width,
                 line.length});
        }
    }
    void operator()(const Glue& work) { add({work.width, work.length, work.thickness}); }
    void operator()(const Take& work) { add({work.width, work.length, work.thickness}); }
    void operator()(const Flatten& work) { add({work.from, work.to}); }
    void operator()(const SquareEnd& work) { add({work.waste, work.kerf}); }
    void operator()(const Crosscut& work) { add({work.stop, work.kerf}); }
    void operator()(const BringToSize& work) { add({work.sizing.from, work.sizing.to}); }
    void operator()(const TrimField& work) { add({work.margin, work.width, work.height}); }
    void operator()(const CutChannel& work) { add({work.depth, work.width, work.fromFace}); }
    void operator()(const GlueIn& work) { add({work.proud}); }
    void operator()(const CutRails& work) {
        for (const Rail& rail : work.rails) {
            add({rail.longPoint});
        }
    }
    void operator()(const FitBorder& work) {
        add({work.width, work.boardWidth, work.boardHeight, work.gapX, work.gapY, work.pinDiameter,
             work.pinFromEdge});
        for (const Pin& pin : work.pins) {
            add({pin.at, pin.outward, pin.inward});
        }
        for (const Rail& rail : work.rails) {
            add({rail.longPoint});
        }
    }
    void operator()(const KeyCorners& work) { add({work.depth, work.thickness, work.fromFace}); }
};

class WorkingTest : public WindowTest {
protected:
    void open(const QString& sample) {
        for (const QString& path : samplePaths()) {
            if (path.contains(sample)) {
                window->files().openSample(path);
            }
        }
        ASSERT_TRUE(planned());
    }
    CardList* steps() const { return window->bench().steps()->list(); }
    const StepList& list() const { return window->planner().last()->job.steps; }
    QWidget* popup() const { return QApplication::activePopupWidget(); }
    void openByKey(int step) {
        steps()->setFocus();
        steps()->setCurrentIndex(steps()->model()->index(step, 0));
        QTest::keyClick(steps(), Qt::Key_Equal);
    }
    void openByMouse(int step) {
        steps()->scrollTo(steps()->model()->index(step, 0));
        QTest::mouseClick(steps()->viewport(), Qt::LeftButton, Qt::NoModifier,
                          steps()->workingRect(step).center());
    }
    std::multiset<QString> sums() const {
        std::multiset<QString> all;
        for (auto* label : popup()->findChildren<QLabel*>()) {
            if (label->text().startsWith(QStringLiteral("= "))) {
                all.insert(label->text().mid(2));
            }
        }
        return all;
    }

    /// What a term of that kind must lead to; the entry of a setting has its key.
    static QString entryFor(TermKind kind) {
        if (const SettingInfo* info = settingInfo(settingOf(kind))) {
            return QStringLiteral("setting-%1-entry").arg(QString::fromLatin1(info->key));
        }
        switch (kind) {
        case TermKind::PieceWidth:
        case TermKind::FieldSide:
        case TermKind::Stick:
            return QStringLiteral("cellWidthEntry");
        case TermKind::RowHeight:
        case TermKind::Slices:
            return QStringLiteral("cellHeightEntry");
        case TermKind::BoardThickness:
            return QStringLiteral("thicknessEntry");
        case TermKind::BorderWidth:
            return QStringLiteral("borderWidthEntry");
        default:
            return QString();
        }
    }

    /// Walks over all numbers of all steps.
    void walk() {
        std::set<TermKind> led;
        for (int step = 0; step < steps()->count(); ++step) {
            FiguresOf figures;
            std::visit(figures, list().steps[static_cast<std::size_t>(step)].work);
            std::multiset<QString> wanted;
            std::set<TermKind> kinds;
            for (const Figure& figure : figures.all) {
                EXPECT_EQ(figure.sumOfTerms(), figure.value);
                wanted.insert(toQt(format(figure.value, project().notation)));
                for (const Term& term : figure.terms) {
                    kinds.insert(term.kind);
                }
            }
            step % 2 == 0 ? openByKey(step) : openByMouse(step);
            ASSERT_NE(popup(), nullptr) << step;
            const std::multiset<QString> shown = sums();
            for (const QString& sum : wanted) {
                EXPECT_GE(shown.count(sum), wanted.count(sum)) << step << ": " << sum.toStdString();
            }
            popup()->close();
            for (const TermKind kind : kinds) {
                const QString source = termSource(kind);
                if (!source.isEmpty() && led.insert(kind).second) {
                    lead(step, source, kind);
                }
            }
        }
        EXPECT_GE(led.size(), 5U);
    }

    void lead(int step, const QString& source, TermKind kind) {
        // Wherever the entry is hidden: its section is folded, and so may be the whole panel.
        for (auto* head : window->findChildren<QAbstractButton*>()) {
            if (head->objectName().endsWith(QStringLiteral("Head")) && head->isCheckable() &&
                head->isChecked()) {
                head->click();
            }
        }
        window->panels().setOpen(Panels::Wish, false);
        openByKey(step);
        ASSERT_NE(popup(), nullptr);
        auto* link =
            popup()->findChild<QToolButton*>(QStringLiteral("term-%1").arg(static_cast<int>(kind)));
        ASSERT_NE(link, nullptr) << source.toStdString();
        EXPECT_EQ(link->text(), source + QStringLiteral(" ›"));
        EXPECT_EQ(link->focusPolicy() & Qt::TabFocus, Qt::TabFocus);
        link->setFocus();
        QTest::keyClick(link, Qt::Key_Space);
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        const QString entry = entryFor(kind);
        EXPECT_TRUE(QTest::qWaitFor([&] {
            QWidget* focus = QApplication::focusWidget();
            return focus != nullptr && find("wish")->isAncestorOf(focus) && focus->isVisible() &&
                   (entry.isEmpty() || focus->objectName() == entry);
        })) << source.toStdString()
            << " wants " << entry.toStdString() << " and got "
            << (QApplication::focusWidget()
                    ? QApplication::focusWidget()->objectName().toStdString()
                    : "nothing");
    }
};

TEST_F(WorkingTest, OfAnEndGrainBoardInAFrame) {
    open(QStringLiteral("hut-chess"));
    walk();
}

TEST_F(WorkingTest, OfABlockGluedFromBlocks) {
    open(QStringLiteral("basket-weave-block"));
    walk();
}

TEST_F(WorkingTest, OfALongGrainBoardWithPinnedEnds) {
    open(QStringLiteral("long-grain-chequer"));
    window->document().edit(QStringLiteral("ends"), entry::none, [](Project& changed) {
        changed.board.border.design = BorderDesign::BreadboardEnds;
        changed.board.border.width = Length::mm(50);
    });
    ASSERT_TRUE(planned());
    walk();
}

TEST_F(WorkingTest, OfEveryLineOfTheCutList) {
    open(QStringLiteral("hut-draughts"));
    window->bench().setCurrentIndex(BenchTabs::CutListTab);
    auto* cuts = find<CutList>("cutList");
    ASSERT_GT(cuts->count(), 0);
    for (int row = 0; row < cuts->count(); ++row) {
        cuts->scrollTo(cuts->model()->index(row, 0));
        if (row % 2 == 0) {
            QTest::mouseClick(cuts->viewport(), Qt::LeftButton, Qt::NoModifier,
                              cuts->workingRect(row).center());
        } else {
            cuts->setFocus();
            cuts->setCurrentIndex(cuts->model()->index(row, 0));
            QTest::keyClick(cuts, Qt::Key_Equal);
        }
        ASSERT_NE(popup(), nullptr) << row;
        EXPECT_EQ(sums().size(), 6U);
        popup()->close();
    }
    QTest::keyClick(cuts, Qt::Key_Return);
    for (auto* link : popup()->findChildren<QToolButton*>()) {
        if (link->text().startsWith(QStringLiteral("Milling"))) {
            QTest::mouseClick(link, Qt::LeftButton);
            break;
        }
    }
    window->activateWindow();
    EXPECT_TRUE(QTest::qWaitFor([this] {
        return QApplication::focusWidget() ==
               window->findChild<QLineEdit*>(QStringLiteral("setting-milling-entry"));
    }));
}

TEST_F(WorkingTest, OfTheFinishedSize) {
    open(QStringLiteral("hut-draughts"));
    auto* totals = find<TotalsBar>("totals");
    totals->repaint();
    QTest::mouseClick(totals, Qt::LeftButton, Qt::NoModifier, totals->workingRect().center());
    ASSERT_NE(popup(), nullptr);
    EXPECT_EQ(sums(), (std::multiset<QString>{QStringLiteral("550 mm"), QStringLiteral("550 mm"),
                                              QStringLiteral("40 mm")}));
    popup()->close();
    totals->setFocus(Qt::TabFocusReason);
    QTest::keyClick(totals, Qt::Key_Equal);
    ASSERT_NE(popup(), nullptr);
    for (auto* link : popup()->findChildren<QToolButton*>()) {
        if (link->text().startsWith(QStringLiteral("Thickness"))) {
            QTest::mouseClick(link, Qt::LeftButton);
            break;
        }
    }
    window->activateWindow();
    EXPECT_TRUE(QTest::qWaitFor([this] {
        return QApplication::focusWidget() ==
               window->findChild<QLineEdit*>(QStringLiteral("thicknessEntry"));
    }));
}

}  // namespace
}  // namespace kerfwright
