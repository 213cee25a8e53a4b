// The window in another language.
#include "ui/document/language.h"

#include "core/words/catalogue.h"
#include "core/words/say.h"
#include "tests/core/words/points.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/stepspanel.h"

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QGroupBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QRegularExpression>
#include <QTabBar>
#include <QTest>

namespace kerfwright {
namespace {

class LanguageTest : public WindowTest {
protected:
    void openInGerman() {
        speakLanguage(QStringLiteral("de"));
        ASSERT_NE(spoken(), nullptr);
        static const bool once = (translateApplication(*qApp), true);
        ASSERT_TRUE(once);
        window = makeWindow();
        ASSERT_TRUE(planned());
    }
    ~LanguageTest() override {
        window.reset();
        speak(nullptr);
    }

    /// Everything that the window shows as a text of its own, each with where it was found.
    QList<std::pair<QString, QString>> shown() const {
        QList<std::pair<QString, QString>> all;
        const auto add = [&all](const QString& where, const QString& text) {
            if (!text.trimmed().isEmpty()) {
                all.emplace_back(where, text);
            }
        };
        for (QWidget* widget : window->findChildren<QWidget*>()) {
            const QString where = QString::fromLatin1(widget->metaObject()->className()) +
                                  QStringLiteral(" ") + widget->objectName();
            add(where, widget->toolTip());
            add(where, widget->accessibleName());
            add(where, widget->accessibleDescription());
            if (auto* button = qobject_cast<QAbstractButton*>(widget)) {
                add(where, button->text());
            } else if (auto* label = qobject_cast<QLabel*>(widget)) {
                add(where, label->text());
            } else if (auto* line = qobject_cast<QLineEdit*>(widget)) {
                add(where, line->placeholderText());
            } else if (auto* bar = qobject_cast<QTabBar*>(widget)) {
                for (int tab = 0; tab < bar->count(); ++tab) {
                    add(where, bar->tabText(tab));
                    add(where, bar->tabToolTip(tab));
                }
            } else if (auto* list = qobject_cast<CardList*>(widget)) {
                for (int row = 0; row < list->count(); ++row) {
                    const Card& card = list->card(row);
                    add(where, card.title);
                    for (const QString& line : card.lines) {
                        add(where, line);
                    }
                    add(where, card.bigLabel);
                    add(where, card.warning);
                    add(where, card.remedy);
                }
            }
        }
        for (QAction* action : window->findChildren<QAction*>()) {
            add(QStringLiteral("action ") + action->objectName(), action->text());
            add(QStringLiteral("action ") + action->objectName(), action->toolTip());
        }
        return all;
    }
};

TEST_F(LanguageTest, GermanComesWithTheProgram) {
    openInGerman();
    EXPECT_EQ(window->bench().tabText(BenchTabs::Steps), QStringLiteral("Schritte"));
    EXPECT_EQ(toQt(say("Kerf")), QStringLiteral("Schnittfuge"));
    EXPECT_GT(window->bench().steps()->list()->count(), 3);
}

TEST_F(LanguageTest, NothingOnScreenIsLeftInEnglish) {
    openInGerman();
    for (int tab = 0; tab < window->bench().count(); ++tab) {
        window->bench().setCurrentIndex(tab);
        QCoreApplication::processEvents();
    }
    QStringList english;
    for (const auto& [where, text] : shown()) {
        const std::string_view own = spoken()->find({}, fromQt(text));
        if (!own.empty() && own != fromQt(text)) {
            english << where + QStringLiteral(": ") + text;
        }
    }
    EXPECT_TRUE(english.isEmpty()) << english.join(u'\n').toStdString();
}

TEST_F(LanguageTest, NumbersOnScreenHaveADecimalComma) {
    openInGerman();
    for (int tab = 0; tab < window->bench().count(); ++tab) {
        window->bench().setCurrentIndex(tab);
        QCoreApplication::processEvents();
    }
    QList<std::pair<QString, QString>> all = shown();
    for (const QLineEdit* line : window->findChildren<QLineEdit*>()) {
        all.emplace_back(line->objectName(), line->text());
    }
    bool comma = false;
    QStringList pointed;
    for (const auto& [where, text] : all) {
        comma = comma || text.contains(QRegularExpression(QStringLiteral("\\d,\\d")));
        if (!pointedNumbers(fromQt(text)).empty()) {
            pointed << where + QStringLiteral(": ") + text;
        }
    }
    EXPECT_TRUE(comma);
    EXPECT_TRUE(pointed.isEmpty()) << pointed.join(u'\n').toStdString();
}

TEST_F(LanguageTest, TheWindowKeepsItsPlacesWithLongerWords) {
    openInGerman();
    window->resize(1024, 700);
    QCoreApplication::processEvents();
    EXPECT_EQ(window->width(), 1024) << "longer words push the window out of a small screen";
}

TEST_F(LanguageTest, ACodeWithoutWordsIsSpokenInEnglish) {
    speakLanguage(QStringLiteral("xx"));
    EXPECT_EQ(spoken(), nullptr);
    EXPECT_EQ(say("Kerf"), "Kerf");
    EXPECT_EQ(languages().front().code, QStringLiteral("en"));
}

TEST_F(LanguageTest, AChoiceIsKept) {
    setLanguageChoice(QStringLiteral("de"));
    EXPECT_EQ(languageToSpeak(), QStringLiteral("de"));
    setLanguageChoice(QStringLiteral("xx"));
    EXPECT_NE(languageToSpeak(), QStringLiteral("xx")) << "a language that is not there";
    setLanguageChoice(QString());
    EXPECT_EQ(languageChoice(), QString());
}

}  // namespace
}  // namespace kerfwright
