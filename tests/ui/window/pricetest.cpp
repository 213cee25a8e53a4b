// What a board costs: the entries, the reckoning with its workings, and the papers.
#include "core/sheets/quotepage.h"
#include "core/timber/worth.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/pricepanel.h"
#include "ui/window/reckoninglist.h"
#include "ui/window/textfield.h"

#include <QAbstractButton>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTabBar>
#include <QTest>

namespace kerfwright {
namespace {

class PriceTest : public WindowTest {
protected:
    void open() {
        ASSERT_TRUE(planned());
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        QTest::keyClick(window.get(), static_cast<Qt::Key>(Qt::Key_1 + int{BenchTabs::Price}),
                        Qt::AltModifier);
        ASSERT_EQ(window->bench().currentIndex(), BenchTabs::Price);
        QCoreApplication::processEvents();
    }
    void priceWoods() {
        window->document().edit(QStringLiteral("prices"), entry::none, [](Project& project) {
            for (Wood& wood : project.woods) {
                wood.price = {150'000};
            }
            project.currency = "€";
        });
        ASSERT_TRUE(planned());
    }
    void priceAll() {
        priceWoods();
        open();
        type("price-bench-hour-entry", QStringLiteral("40"));
        type("price-glue-kilogram-entry", QStringLiteral("12,50"));
        type("price-finish-litre-entry", QStringLiteral("24"));
        QCoreApplication::processEvents();
    }
    PricePanel& panel() const { return *window->bench().price(); }
    ReckoningList& list() const { return *panel().reckoning(); }
    Quote reckoned() const {
        const Job& job = window->planner().last()->job;
        EXPECT_TRUE(QTest::qWaitFor(
            [this] { return window->sawyer().state() == Sawyer::State::Current; }, 60'000));
        const TimberCost timber =
            timberCost(window->sawyer().last()->plan, project().woods, project().notation);
        return quote(job, timber, project().pricing, project().notation, project().currency);
    }
    int rowOf(const char* key) const {
        for (int row = 0; row < list().count(); ++row) {
            if (list().line(row).key == key) {
                return row;
            }
        }
        ADD_FAILURE() << key;
        return 0;
    }
    QString text(const char* label) const { return find<QLabel>(label)->text(); }
    bool focused(const char* name) const {
        window->activateWindow();
        return QTest::qWaitForWindowActive(window.get()) && QTest::qWaitFor([&] {
                   return QApplication::focusWidget() ==
                          window->findChild<QWidget*>(QString::fromLatin1(name));
               });
    }
};

TEST_F(PriceTest, IsMadeWhenItIsFirstSeenAndSaysWhatIsMissing) {
    ASSERT_TRUE(planned());
    EXPECT_EQ(window->findChild<QWidget*>(QStringLiteral("reckoning")), nullptr);
    open();
    const Quote quote = reckoned();
    ASSERT_FALSE(quote.isComplete());
    ASSERT_EQ(quote.total, 0);
    EXPECT_EQ(text("quoteTotal"), QStringLiteral("Price not known yet"));
    EXPECT_TRUE(text("quoteMissing").endsWith(toQt(incompleteWords(quote))));
    EXPECT_TRUE(find("quoteMissing")->isVisible());
    EXPECT_TRUE(find("price-bench-hour-entry")->isVisible()) << "there is something to fill in";
    EXPECT_EQ(list().amount(rowOf("work")), QStringLiteral("not known"));
    EXPECT_FALSE(list().hasWorking(rowOf("work")));
}

TEST_F(PriceTest, EveryEntryIsTakenAndUndone) {
    open();
    for (const PriceSetting& setting : priceSettings()) {
        const QByteArray entry = QByteArray("price-") + setting.key;
        type((entry + "-entry").constData(), QStringLiteral("99999999999"));
        auto* field = find<TextField>(entry.constData());
        EXPECT_TRUE(field->isFaulty()) << setting.key;
        EXPECT_TRUE(field->faultText().contains(toQt(setting.name))) << setting.key;
        QTest::keyClick(field->line(), Qt::Key_Escape);
        EXPECT_FALSE(field->isFaulty()) << setting.key;
    }
    EXPECT_EQ(project().pricing, Pricing());
    type("price-tax-percent-entry", QStringLiteral("8,875 %"));
    EXPECT_EQ(project().pricing.tax, 8'875);
    type("price-bench-hour-entry", QStringLiteral("38.5"));
    EXPECT_EQ(project().pricing.benchHour, 3'850);
    // Emptied it is not known again, which is not 0.
    type("price-bench-hour-entry", QString());
    QTest::keyClick(find<QLineEdit>("price-bench-hour-entry"), Qt::Key_Backspace);
    EXPECT_EQ(project().pricing.benchHour, std::nullopt);
    type("price-bench-hour-entry", QStringLiteral("0"));
    EXPECT_EQ(project().pricing.benchHour, 0);
    type("price-customer-entry", QStringLiteral("The hut"));
    EXPECT_EQ(project().pricing.customer, "The hut");
    while (window->document().history().canUndo()) {
        window->document().history().undo();
    }
    EXPECT_EQ(project().pricing, Pricing());
}

TEST_F(PriceTest, ReckonsWhileItIsTyped) {
    priceAll();
    Quote quote = reckoned();
    ASSERT_TRUE(quote.isComplete()) << incompleteWords(quote);
    EXPECT_EQ(text("quoteTotal"), QStringLiteral("To pay ") + toQt(moneyWords(quote.total, "€")));
    EXPECT_FALSE(find("quoteMissing")->isVisible());
    type("price-boards-entry", QStringLiteral("3"));
    auto* rounding = find<QComboBox>("price-rounding");
    rounding->setFocus();
    QTest::keyClick(rounding, Qt::Key_End);
    EXPECT_EQ(project().pricing.rounding, FinalRounding::Ten);
    quote = reckoned();
    EXPECT_EQ(quote.total % 1000, 0);
    EXPECT_EQ(text("quoteTotal"), QStringLiteral("To pay ") + toQt(moneyWords(quote.total, "€")));
    EXPECT_EQ(text("quoteEach"), QStringLiteral("for 3 boards, ") + toQt(eachWords(quote, "€")));
    ASSERT_EQ(list().count(), static_cast<int>(quote.lines.size()));
    for (int row = 0; row < list().count(); ++row) {
        EXPECT_EQ(list().line(row), quote.lines[static_cast<std::size_t>(row)]);
        const QString spoken =
            list().model()->index(row, 0).data(Qt::AccessibleTextRole).toString();
        EXPECT_TRUE(spoken.contains(list().amount(row))) << spoken.toStdString();
        EXPECT_TRUE(spoken.contains(toQt(list().line(row).working))) << spoken.toStdString();
    }
    EXPECT_TRUE(text("quoteRule").contains(toQt(quote.basis))) << quote.basis;
}

TEST_F(PriceTest, AWorkingOpensByKeyAndByMouseAndLeadsToItsEntry) {
    priceAll();
    list().setFocus();
    const int glue = rowOf("glue");
    list().setCurrentIndex(list().model()->index(0, 0));
    for (int row = 0; row < glue; ++row) {
        QTest::keyClick(&list(), Qt::Key_Down);
    }
    ASSERT_EQ(list().currentIndex().row(), glue);
    const int folded = list().sizeHint().height();
    QTest::keyClick(&list(), Qt::Key_Return);
    EXPECT_TRUE(list().isOpen(glue));
    EXPECT_GT(list().sizeHint().height(), folded);
    EXPECT_TRUE(QTest::qWaitFor([&] { return list().height() == list().sizeHint().height(); }));
    // It stays open while something else is typed.
    type("price-sundries-entry", QStringLiteral("1.5"));
    EXPECT_TRUE(list().isOpen(glue));
    list().setFocus();
    QTest::keyClick(&list(), Qt::Key_Equal);
    EXPECT_FALSE(list().isOpen(glue));
    QTest::keyClick(&list(), Qt::Key_F2);
    EXPECT_TRUE(focused("price-glue-kilogram-entry"));

    const int work = rowOf("work");
    QTest::mouseClick(list().viewport(), Qt::LeftButton, Qt::NoModifier,
                      list().workingRect(work).center());
    ASSERT_TRUE(list().isOpen(work));
    QCoreApplication::processEvents();
    QTest::mouseClick(list().viewport(), Qt::LeftButton, Qt::NoModifier,
                      list().entryRect(work).center());
    EXPECT_TRUE(list().isOpen(work));
    EXPECT_TRUE(focused("price-bench-hour-entry"));
    // A sum has nothing to open.
    QTest::mouseClick(list().viewport(), Qt::LeftButton, Qt::NoModifier,
                      list().workingRect(rowOf("total")).center());
    EXPECT_FALSE(list().isOpen(rowOf("total")));
}

TEST_F(PriceTest, SavesWhatIsHandedOverAndTheReckoning) {
    priceAll();
    QSignalSpy told(&panel(), &PricePanel::told);
    answers.write = inFolder("hut");
    click("saveQuote");
    ASSERT_EQ(told.count(), 1);
    EXPECT_EQ(told[0][0].toString(), QStringLiteral("Saved 1 page to “hut.pdf”"));
    QFile handed(inFolder("hut.pdf"));
    ASSERT_TRUE(handed.open(QIODevice::ReadOnly));
    const QByteArray quote = handed.readAll();
    EXPECT_TRUE(quote.startsWith("%PDF"));
    click(find("quoteReader")->findChildren<QAbstractButton*>()[1]);
    answers.write = inFolder("reckoning.pdf");
    click("saveQuote");
    QFile reckoning(inFolder("reckoning.pdf"));
    ASSERT_TRUE(reckoning.open(QIODevice::ReadOnly));
    EXPECT_NE(reckoning.readAll(), quote);
    answers.write = inFolder("none/quote.pdf");
    click("saveQuote");
    ASSERT_EQ(answers.told.size(), 1);
    EXPECT_TRUE(answers.told[0].startsWith(QStringLiteral("Not saved: ")));
}

TEST_F(PriceTest, TakesTheTimberThatASourceKnows) {
    priceAll();
    std::optional<TimberCost> known;
    panel().setTimberSource([&known](const Planned&) { return known; });
    EXPECT_EQ(list().line(0).words.find("as sawn") != std::string::npos, true);
    TimberCost cost;
    cost.basis = "Whole planks.";
    cost.lines.push_back({"Cherry", "2 planks, bought", {}, 12'345, {}});
    known = cost;
    panel().refresh();
    EXPECT_EQ(list().line(0).words, "Cherry: 2 planks, bought");
    EXPECT_EQ(list().amount(0), QStringLiteral("123.45 €"));
    EXPECT_TRUE(text("quoteRule").contains(QStringLiteral("Whole planks.")));
}

TEST_F(PriceTest, SaysThatThePlanIsOutOfDate) {
    priceAll();
    EXPECT_TRUE(find<QAbstractButton>("saveQuote")->isEnabled());
    type("thicknessEntry", QStringLiteral("40"));
    EXPECT_FALSE(find<QAbstractButton>("saveQuote")->isEnabled());
    EXPECT_TRUE(list().isStale());
    ASSERT_TRUE(planned());
    EXPECT_TRUE(find<QAbstractButton>("saveQuote")->isEnabled());
    EXPECT_FALSE(list().isStale());
}

TEST_F(PriceTest, FitsASmallScreen) {
    priceAll();
    window->resize(1024, 700);
    QCoreApplication::processEvents();
    EXPECT_EQ(window->width(), 1024);
    QTabBar* bar = window->bench().tabBar();
    EXPECT_GE(bar->tabRect(BenchTabs::Price).left(), 0);
    EXPECT_LE(bar->tabRect(BenchTabs::Price).right(), bar->width());
    EXPECT_TRUE(QTest::qWaitFor([&] { return list().height() == list().sizeHint().height(); }));
    for (int row = 0; row < list().count(); ++row) {
        EXPECT_GE(list().visualRect(list().model()->index(row, 0)).height(), 20);
    }
}

TEST_F(PriceTest, APriceThatIsMissingLeadsToItsEntry) {
    open();
    int wood = -1;
    int glue = -1;
    for (int row = 0; row < list().count(); ++row) {
        wood = wood < 0 && !list().line(row).wood.empty() ? row : wood;
        glue = list().line(row).key == "glue" ? row : glue;
    }
    ASSERT_GE(wood, 0);
    ASSERT_GE(glue, 0);
    EXPECT_FALSE(list().entryRect(wood).isEmpty()) << "it is in sight without opening a working";
    list().setCurrentIndex(list().model()->index(glue, 0));
    QTest::keyClick(&list(), Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), find<QLineEdit>("price-glue-kilogram-entry"));
    QTest::mouseClick(list().viewport(), Qt::LeftButton, Qt::NoModifier,
                      list().visualRect(list().model()->index(wood, 0)).center());
    auto* entry = find<QLineEdit>("woodPriceEntry");
    EXPECT_TRUE(entry->hasFocus());
    entry->selectAll();
    QTest::keyClicks(entry, QStringLiteral("3200"));
    QTest::keyClick(entry, Qt::Key_Return);
    const std::string name = list().line(wood).wood;
    for (const Wood& one : project().woods) {
        EXPECT_EQ(one.price.minorPerCubicMetre, one.name == name ? 320'000 : 0);
    }
}

TEST_F(PriceTest, TheKeysStayOnTheLineWhileThePlanIsMadeAnew) {
    priceAll();
    list().setFocus();
    list().setCurrentIndex(list().model()->index(1, 0));
    window->document().edit(QStringLiteral("thicker"), entry::none,
                            [](Project& project) { project.board.thickness = Length::mm(41); });
    EXPECT_TRUE(list().isStale());
    EXPECT_TRUE(list().hasFocus());
    ASSERT_TRUE(planned());
    EXPECT_TRUE(list().hasFocus());
    EXPECT_EQ(list().currentIndex().row(), 1);
}

}  // namespace
}  // namespace kerfwright
