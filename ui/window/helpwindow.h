// The help: its topics at the left, with a field to search them, and one of them to read.
#pragma once

#include "ui/window/helptopics.h"

#include <QDialog>

QT_BEGIN_NAMESPACE
class QLabel;
class QLineEdit;
class QListWidget;
class QTextBrowser;
class QUrl;
QT_END_NAMESPACE

namespace kerfwright {

class HelpWindow : public QDialog {
    Q_OBJECT

public:
    explicit HelpWindow(QWidget* parent);

    void showTopic(const QString& key);
    QString topic() const { return topic_; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void search();
    void openRow(int row);
    void follow(const QUrl& link);
    void markWords();

    HelpBook book_;
    QLineEdit* words_;
    QListWidget* list_;
    QLabel* nothing_;
    QTextBrowser* text_;
    QString topic_;
};

/// Opens the help of the window that `at` is in, at what `at` is about.
void showHelp(QWidget& at);
/// Opens it at a topic.
void showHelp(QWidget& window, const QString& topic);
/// F1 in a dialog: a window that waits for it gets no keys of its own.
void addHelpKey(QWidget& dialog);

}  // namespace kerfwright
