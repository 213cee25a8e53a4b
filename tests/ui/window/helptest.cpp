// The help: every part of the window leads to a topic that is there, topics are found by words, and
// all of it goes by keys.
#include "tests/ui/window/windowfixture.h"
#include "ui/document/language.h"
#include "ui/window/batchdialog.h"
#include "ui/window/benchtabs.h"
#include "ui/window/formsection.h"
#include "ui/window/helptopics.h"
#include "ui/window/helpwindow.h"
#include "ui/window/plankeditor.h"
#include "ui/window/timberpanel.h"

#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QRegularExpression>
#include <QScrollBar>
#include <QStyle>
#include <QTabBar>
#include <QTest>
#include <QTextBrowser>

namespace kerfwright {
namespace {

class HelpTest : public WindowTest {
protected:
    HelpWindow* help() { return window->findChild<HelpWindow*>(); }
    QListWidget& topics() { return *help()->findChild<QListWidget*>(); }
    QLineEdit& words() { return *help()->findChild<QLineEdit*>(); }
    QString text() { return help()->findChild<QTextBrowser*>()->toPlainText(); }
    bool isOpen() {
        return QTest::qWaitFor([this] { return help() != nullptr && help()->isActiveWindow(); });
    }
    bool comesToTheFront(QWidget* dialog) {
        dialog->activateWindow();
        return QTest::qWaitFor([dialog] { return QApplication::activeWindow() == dialog; });
    }
    void backToTheBoard() {
        help()->close();
        window->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    /// What F1 opens at a widget that has the focus.
    QString topicAt(QWidget* widget) {
        widget->setFocus();
        EXPECT_TRUE(widget->hasFocus()) << widget->objectName().toStdString();
        QTest::keyClick(widget, Qt::Key_F1);
        EXPECT_TRUE(isOpen());
        const QString topic = help()->topic();
        backToTheBoard();
        return topic;
    }
};

TEST_F(HelpTest, TopicsAreShortTextsWithATitle) {
    const HelpBook book(QStringLiteral("en"));
    ASSERT_EQ(book.topics().size(), static_cast<std::size_t>(helpTopicKeys().size()));
    for (const HelpTopic& topic : book.topics()) {
        SCOPED_TRACE(topic.key.toStdString());
        EXPECT_GT(topic.title.size(), 3);
        const auto count = topic.text.split(QRegularExpression(QStringLiteral("\\s+"))).size();
        EXPECT_GE(count, 70);
        EXPECT_LE(count, 220);
    }
}

TEST_F(HelpTest, LinksLeadToTopicsThatAreThere) {
    const HelpBook book(QStringLiteral("en"));
    const QRegularExpression link(QStringLiteral("\\]\\(topic:([^)]*)\\)"));
    int count = 0;
    for (const HelpTopic& topic : book.topics()) {
        for (auto match = link.globalMatch(topic.text); match.hasNext(); ++count) {
            const QString key = match.next().captured(1);
            EXPECT_GE(book.indexOf(key), 0) << topic.key.toStdString() << ": " << key.toStdString();
        }
    }
    EXPECT_GT(count, 20);
}

TEST_F(HelpTest, ALanguageWithoutTopicsHasThoseInEnglish) {
    const HelpBook english(QStringLiteral("en"));
    const HelpBook other(QStringLiteral("xx"));
    for (std::size_t i = 0; i < english.topics().size(); ++i) {
        EXPECT_EQ(other.topics()[i].title, english.topics()[i].title);
    }
}

// Every widget that takes keys, on every tab, leads to a topic; and every panel to its own.
TEST_F(HelpTest, EveryPartOfTheWindowLeadsToATopic) {
    ASSERT_TRUE(planned());
    const HelpBook book(QStringLiteral("en"));
    for (FormSection* section : window->findChildren<FormSection*>()) {
        section->setOpen(true);
    }
    std::set<QString> met;
    for (int tab = 0; tab < window->bench().count(); ++tab) {
        window->bench().setCurrentIndex(tab);
        QCoreApplication::processEvents();
        for (QWidget* widget : window->findChildren<QWidget*>()) {
            if (widget->focusPolicy() == Qt::NoFocus || widget->window() != window.get()) {
                continue;
            }
            const QString topic = helpTopicOf(widget);
            met.insert(topic);
            EXPECT_GE(book.indexOf(topic), 0)
                << widget->metaObject()->className() << ' ' << widget->objectName().toStdString();
        }
    }
    for (const char* topic :
         {"drawing",  "patterns", "sizes", "woods",    "border",   "season", "shop",
          "glue",     "hours",    "steps", "cautions", "cut-list", "rack",   "cuts",
          "shopping", "boards",   "ways",  "sheets",   "price",    "film"}) {
        EXPECT_TRUE(met.contains(QString::fromLatin1(topic))) << topic;
    }
}

TEST_F(HelpTest, OpensOnWhatIsInFocus) {
    ASSERT_TRUE(planned());
    EXPECT_EQ(topicAt(&window->board()), QStringLiteral("drawing"));
    EXPECT_EQ(topicAt(find("thicknessEntry")), QStringLiteral("sizes"));
    EXPECT_EQ(topicAt(find("steps")), QStringLiteral("steps"));
    window->bench().setCurrentIndex(BenchTabs::Cautions);
    EXPECT_EQ(topicAt(find("cautions")), QStringLiteral("cautions"));
    EXPECT_EQ(topicAt(find("bench")->findChild<QTabBar*>()), QStringLiteral("cautions"));
    window->bench().setCurrentIndex(BenchTabs::CutListTab);
    EXPECT_EQ(topicAt(find("cutList")), QStringLiteral("cut-list"));
}

TEST_F(HelpTest, OpensFromADialogThatWaits) {
    window->showBatch();
    auto* batch = window->findChild<BatchDialog*>();
    ASSERT_NE(batch, nullptr);
    ASSERT_TRUE(comesToTheFront(batch));
    QTest::keyClick(batch, Qt::Key_F1);
    ASSERT_TRUE(isOpen());
    EXPECT_EQ(help()->topic(), QStringLiteral("batch"));
    help()->close();
    batch->close();
    window->bench().timber();
    window->bench().setCurrentIndex(BenchTabs::TimberTab);
    click("addPlank");
    auto* editor = window->findChild<PlankEditor*>();
    ASSERT_NE(editor, nullptr);
    ASSERT_TRUE(comesToTheFront(editor));
    QTest::keyClick(editor, Qt::Key_F1);
    auto* own = editor->findChild<HelpWindow*>();
    ASSERT_NE(own, nullptr);
    EXPECT_EQ(own->topic(), QStringLiteral("rack"));
    own->close();
    QTest::keyClick(editor, Qt::Key_Escape);
}

TEST_F(HelpTest, FindsTopicsByWordsAndGoesByKeys) {
    find<QAction>("actionHelp")->trigger();
    ASSERT_TRUE(isOpen());
    const int all = topics().count();
    EXPECT_EQ(all, helpTopicKeys().size());
    ASSERT_TRUE(words().hasFocus()) << "one can type at once";
    QTest::keyClicks(&words(), QStringLiteral("kerf blade"));
    ASSERT_GT(topics().count(), 0);
    EXPECT_LT(topics().count(), all);
    EXPECT_TRUE(text().contains(QStringLiteral("kerf")));
    EXPECT_FALSE(help()->findChild<QTextBrowser*>()->extraSelections().isEmpty());
    // Words of a title come before words of a text.
    QTest::keyClick(&words(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(&words(), QStringLiteral("price"));
    EXPECT_EQ(help()->topic(), QStringLiteral("price"));
    const QString first = help()->topic();
    QTest::keyClick(&words(), Qt::Key_Down);
    EXPECT_NE(help()->topic(), first) << "arrows go through what was found";
    QTest::keyClick(&words(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(&words(), QStringLiteral("zzz"));
    EXPECT_EQ(topics().count(), 0);
    EXPECT_TRUE(help()->findChild<QLabel*>(QStringLiteral("helpNothing"))->isVisible());
    QTest::keyClick(&words(), Qt::Key_Escape);
    EXPECT_TRUE(words().text().isEmpty());
    EXPECT_EQ(topics().count(), all);
    QTest::keyClick(&words(), Qt::Key_Escape);
    EXPECT_FALSE(help()->isVisible());
}

TEST_F(HelpTest, LongTitlesGoOnInASecondLine) {
    setLanguageChoice(QStringLiteral("de"));
    HelpWindow german(nullptr);
    setLanguageChoice(QString());
    auto* list = german.findChild<QListWidget*>();
    german.show();
    for (const int width : {560, 700, 860, 1300}) {
        german.resize(width, 620);
        ASSERT_TRUE(QTest::qWaitFor([&] { return german.width() == width; }));
        QApplication::sendPostedEvents();
        QApplication::processEvents();
        EXPECT_EQ(list->horizontalScrollBar()->maximum(), 0) << width;
        EXPECT_FALSE(list->horizontalScrollBar()->isVisible()) << width;
        for (int row = 0; row < list->count(); ++row) {
            const QRect place = list->visualItemRect(list->item(row));
            EXPECT_LE(place.right(), list->viewport()->width()) << width;
            const int margin =
                list->style()->pixelMetric(QStyle::PM_FocusFrameHMargin, nullptr, list) + 1;
            const QRect words = QFontMetrics(list->font())
                                    .boundingRect(QRect(0, 0, place.width() - 2 * margin, 400),
                                                  Qt::TextWordWrap, list->item(row)->text());
            EXPECT_GE(place.height(), words.height())
                << list->item(row)->text().toStdString() << " at " << width;
        }
    }
}

TEST_F(HelpTest, ALinkOpensItsTopicAlsoWhereItWasNotFound) {
    find<QAction>("actionHelp")->trigger();
    ASSERT_TRUE(isOpen());
    QTest::keyClicks(&words(), QStringLiteral("chips below"));
    EXPECT_EQ(help()->topic(), QStringLiteral("drawing"));
    auto* browser = help()->findChild<QTextBrowser*>();
    Q_EMIT browser->anchorClicked(QUrl(QStringLiteral("topic:safety")));
    EXPECT_EQ(help()->topic(), QStringLiteral("safety"));
    EXPECT_TRUE(text().contains(QStringLiteral("manual")));
}

}  // namespace
}  // namespace kerfwright
