#include "ui/window/helpwindow.h"

#include "ui/document/language.h"

#include <QAction>
#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QTextBrowser>
#include <QTextDocument>
#include <QUrl>
#include <QVBoxLayout>

namespace kerfwright {

HelpWindow::HelpWindow(QWidget* parent)
    : QDialog(parent)
    , book_(languageToSpeak())
    , words_(new QLineEdit(this))
    , list_(new QListWidget(this))
    , nothing_(new QLabel(this))
    , text_(new QTextBrowser(this)) {
    setObjectName(QStringLiteral("help"));
    setWindowTitle(tr("Help"));
    resize(860, 620);
    words_->setObjectName(QStringLiteral("helpSearch"));
    words_->setPlaceholderText(tr("Search the help"));
    words_->setAccessibleName(tr("Search the help"));
    words_->setClearButtonEnabled(true);
    words_->setTextMargins(4, 0, 4, 0);
    words_->installEventFilter(this);
    list_->setObjectName(QStringLiteral("helpTopics"));
    list_->setAccessibleName(tr("Topics"));
    list_->setSpacing(3);
    // Titles in other languages are long: they go on in a second line.
    list_->setWordWrap(true);
    list_->setResizeMode(QListView::Adjust);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    nothing_->setObjectName(QStringLiteral("helpNothing"));
    nothing_->setWordWrap(true);
    nothing_->setForegroundRole(QPalette::PlaceholderText);
    nothing_->setText(tr("No topic has all these words. Try fewer, or only the beginning of one."));
    nothing_->hide();
    text_->setObjectName(QStringLiteral("helpText"));
    text_->setAccessibleName(tr("Topic"));
    text_->setOpenLinks(false);
    text_->document()->setDocumentMargin(20);
    auto* left = new QVBoxLayout;
    left->setSpacing(8);
    left->addWidget(words_);
    left->addWidget(nothing_);
    left->addWidget(list_, 1);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(12, 12, 12, 12);
    row->setSpacing(12);
    row->addLayout(left, 1);
    row->addWidget(text_, 2);
    connect(words_, &QLineEdit::textChanged, this, &HelpWindow::search);
    connect(list_, &QListWidget::currentRowChanged, this, &HelpWindow::openRow);
    connect(text_, &QTextBrowser::anchorClicked, this, &HelpWindow::follow);
    search();
}

void HelpWindow::search() {
    const QString before = topic_;
    {
        const QSignalBlocker quiet(list_);
        list_->clear();
        for (const int index : book_.search(words_->text())) {
            const HelpTopic& topic = book_.topics()[static_cast<std::size_t>(index)];
            auto* item = new QListWidgetItem(topic.title, list_);
            item->setData(Qt::UserRole, topic.key);
            if (topic.key == before) {
                list_->setCurrentItem(item);
            }
        }
    }
    const bool any = list_->count() > 0;
    nothing_->setVisible(!any);
    list_->setVisible(any);
    // While words are typed, the best topic is open.
    if (any && !words_->text().trimmed().isEmpty()) {
        list_->setCurrentRow(0);
    }
    markWords();
}

void HelpWindow::openRow(int row) {
    const QListWidgetItem* item = list_->item(row);
    if (item == nullptr) {
        return;
    }
    const int index = book_.indexOf(item->data(Qt::UserRole).toString());
    const HelpTopic& topic = book_.topics()[static_cast<std::size_t>(index)];
    topic_ = topic.key;
    text_->setMarkdown(QStringLiteral("# %1\n\n%2").arg(topic.title, topic.text));
    markWords();
}

/// What was searched for is marked where it is read.
void HelpWindow::markWords() {
    QList<QTextEdit::ExtraSelection> marks;
    for (const QString& word :
         words_->text().simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        QTextCursor found(text_->document());
        while (!(found = text_->document()->find(word, found)).isNull()) {
            QTextEdit::ExtraSelection mark;
            mark.cursor = found;
            mark.format.setFontUnderline(true);
            mark.format.setBackground(palette().highlight());
            mark.format.setForeground(palette().highlightedText());
            marks << mark;
        }
    }
    text_->setExtraSelections(marks);
}

void HelpWindow::follow(const QUrl& link) {
    if (link.scheme() == QLatin1String("topic")) {
        showTopic(link.path());
    }
}

void HelpWindow::showTopic(const QString& key) {
    const auto find = [&] {
        for (int row = 0; row < list_->count(); ++row) {
            if (list_->item(row)->data(Qt::UserRole).toString() == key) {
                list_->setCurrentRow(row);
                return true;
            }
        }
        return false;
    };
    if (!find()) {
        words_->clear();  // it may not be among those that were found
        find();
    }
}

bool HelpWindow::eventFilter(QObject* watched, QEvent* event) {
    if (watched == words_ && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        switch (key->key()) {
        case Qt::Key_Down:
        case Qt::Key_Up:
        case Qt::Key_PageDown:
        case Qt::Key_PageUp:
            QCoreApplication::sendEvent(list_, key);
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            text_->setFocus();
            return true;
        case Qt::Key_Escape:
            if (!words_->text().isEmpty()) {
                words_->clear();
                return true;
            }
            break;
        default:
            break;
        }
    }
    return QDialog::eventFilter(watched, event);
}

void showHelp(QWidget& at) {
    showHelp(*at.window(), helpTopicOf(&at));
}

void showHelp(QWidget& window, const QString& topic) {
    if (auto* open = qobject_cast<HelpWindow*>(&window)) {
        open->showTopic(topic);
        return;
    }
    auto* help = window.findChild<HelpWindow*>(QString(), Qt::FindDirectChildrenOnly);
    if (help == nullptr) {
        help = new HelpWindow(&window);
    }
    help->showTopic(topic);
    help->show();
    help->raise();
    help->activateWindow();
    help->findChild<QLineEdit*>()->setFocus();
}

void addHelpKey(QWidget& dialog) {
    auto* action = new QAction(&dialog);
    action->setShortcut(Qt::Key_F1);
    dialog.addAction(action);
    QObject::connect(action, &QAction::triggered, &dialog, [&dialog] {
        QWidget* focus = QApplication::focusWidget();
        showHelp(focus != nullptr && focus->window() == &dialog ? *focus : dialog);
    });
}

}  // namespace kerfwright
