// The main tasks, each at a place where it can be looked at. Where KERFWRIGHT_PICTURES names a
// folder, what is seen there is kept: resources/screenshots/take makes the pictures of the README
// so.
#include "tests/source.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/document/language.h"
#include "ui/window/benchtabs.h"
#include "ui/window/buildfilm.h"
#include "ui/window/cardlist.h"
#include "ui/window/filmmaker.h"
#include "ui/window/stepspanel.h"
#include "ui/window/theme.h"
#include "ui/window/timberpanel.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QStyle>
#include <QTest>

namespace kerfwright {
namespace {

QString sampleFile(const char* name) {
    return QString::fromStdString((sourceFolder() / "samples" / name).string() + ".kerfwright");
}

class PicturesTest : public WindowTest {
protected:
    PicturesTest() {
        const bool dark = qEnvironmentVariable("KERFWRIGHT_PICTURES_THEME") == u"dark";
        setThemeChoice(dark ? ThemeChoice::Dark : ThemeChoice::Light);
        applyTheme(*qApp);
        if (const QString code = qEnvironmentVariable("KERFWRIGHT_PICTURES_LANGUAGE");
            !code.isEmpty()) {
            speakLanguage(code);
            translateApplication(*qApp);
            window = makeWindow();
        }
    }
    ~PicturesTest() override {
        window.reset();
        speakLanguage(QStringLiteral("en"));
        setThemeChoice(ThemeChoice::System);
        qApp->setStyle(QStringLiteral("Fusion"));
        qApp->setPalette(qApp->style()->standardPalette());
    }

    void open(const char* sample) {
        window = makeWindow(sampleFile(sample));
        window->resize(1440, 900);
        window->move(0, 0);
        ASSERT_TRUE(planned());
    }
    void show(BenchTabs::Tab tab) {
        window->bench().setCurrentIndex(tab);
        const bool sawn = tab == BenchTabs::TimberTab || tab == BenchTabs::Price;
        ASSERT_TRUE(
            !sawn ||
            QTest::qWaitFor([this] { return window->sawyer().state() == Sawyer::State::Current; },
                            60'000));
    }
    /// Textures, films and sheets come from beside the window; what was seen twice has settled.
    void keep(const char* task) {
        const QString place = qEnvironmentVariable("KERFWRIGHT_PICTURES");
        if (place.isEmpty()) {
            return;
        }
        QImage last;
        QElapsedTimer since;
        since.start();
        ASSERT_TRUE(QTest::qWaitFor(
            [&] {
                if (since.elapsed() < 700) {
                    return false;
                }
                since.restart();
                const QImage now = window->grab().toImage();
                return now == std::exchange(last, now);
            },
            60'000))
            << task;
        const QString file = QStringLiteral("%1/%2-%3-%4.png")
                                 .arg(place, QString::fromLatin1(task),
                                      qEnvironmentVariable("KERFWRIGHT_PICTURES_THEME"),
                                      QString::number(window->devicePixelRatio()));
        EXPECT_TRUE(last.save(file)) << file.toStdString();
    }
};

TEST_F(PicturesTest, DrawAndRead) {
    open("hut-draughts");
    show(BenchTabs::Steps);
    EXPECT_GT(window->bench().steps()->list()->count(), 5);
    keep("draw");
}

TEST_F(PicturesTest, FollowAPanel) {
    open("brick-bond-block");
    show(BenchTabs::Steps);
    window->bench().steps()->list()->choose(3);
    EXPECT_EQ(window->bench().steps()->list()->chosenCard(), 3);
    keep("steps");
}

TEST_F(PicturesTest, Cautions) {
    open("nested-squares-board");
    show(BenchTabs::Cautions);
    EXPECT_GT(window->bench().cautions()->count(), 1);
    keep("cautions");
}

TEST_F(PicturesTest, Ways) {
    open("basket-weave-block");
    show(BenchTabs::Ways);
    auto* ways = find<CardList>("ways");
    ASSERT_TRUE(QTest::qWaitFor([ways] { return ways->count() > 1; }, 60'000));
    keep("ways");
}

TEST_F(PicturesTest, Build) {
    open("hut-draughts");
    show(BenchTabs::Steps);
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->film().hasBegun() && window->film().maker()->isCurrent(); },
        60'000));
    window->film().setMoving(false);
    QTest::keyClick(window.get(), Qt::Key_F9);
    for (int i = 0; i < 3; ++i) {
        click("stageOn");
    }
    keep("build");
}

TEST_F(PicturesTest, Timber) {
    open("hut-draughts");
    window->document().edit(QStringLiteral("rack"), entry::none, [](Project& project) {
        const auto plank = [&project](const char* label, const char* wood, int width, int length) {
            project.timber.rack.planks.push_back(
                {label, wood, Length::mm(60), Length::mm(width), Length::mm(length)});
        };
        plank("P1", "hard-maple", 180, 1'900);
        plank("P2", "cherry", 140, 1'500);
        plank("P3", "cherry", 120, 1'100);
        plank("P4", "wenge", 130, 1'300);
        project.timber.rack.planks[0].defects = {
            {Length::mm(520), Length::mm(40), Length::mm(70), Length::mm(45)}};
        project.timber.rack.planks[1].defects = {
            {Length::mm(1'000), Length::mm(80), Length::mm(120), Length::mm(30)}};
    });
    ASSERT_TRUE(planned());
    show(BenchTabs::TimberTab);
    window->bench().timber()->showPage(TimberPanel::Cuts);
    EXPECT_FALSE(window->sawyer().last()->plan.layout.planks.empty());
    keep("timber");
}

TEST_F(PicturesTest, Sheets) {
    open("mortar-brick-block");
    show(BenchTabs::Sheets);
    keep("sheets");
}

TEST_F(PicturesTest, Price) {
    open("hut-draughts");
    window->document().edit(QStringLiteral("prices"), entry::none, [](Project& project) {
        project.currency = "€";
        for (Wood& wood : project.woods) {
            wood.price = {320'000};
        }
        project.pricing.benchHour = 4'200;
        project.pricing.glueKilogram = 1'250;
        project.pricing.finishLitre = 2'600;
    });
    ASSERT_TRUE(planned());
    show(BenchTabs::Price);
    EXPECT_TRUE(find("quoteTotal")->isVisible());
    keep("price");
}

}  // namespace
}  // namespace kerfwright
