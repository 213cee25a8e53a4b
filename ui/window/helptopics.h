// The topics of the help, and which of them a part of the window is about. A topic is a file of
// plain text, in the language that is spoken; in English where it was not written in that yet.
#pragma once

#include <QString>
#include <QStringList>

#include <vector>

QT_BEGIN_NAMESPACE
class QWidget;
QT_END_NAMESPACE

namespace kerfwright {

/// Keys of all topics, in the order in which they are listed.
QStringList helpTopicKeys();

struct HelpTopic {
    QString key;
    QString title;
    QString text;  ///< Markdown, without the title
};

class HelpBook {
public:
    /// Of the language with that code.
    explicit HelpBook(const QString& language);

    const std::vector<HelpTopic>& topics() const { return topics_; }
    /// -1: there is none.
    int indexOf(const QString& key) const;
    /// Topics that have all these words, or beginnings of them, those with the words in their title
    /// first. All topics where there are no words.
    std::vector<int> search(const QString& words) const;

private:
    std::vector<HelpTopic> topics_;
};

/// From now on the widget, and whatever is in it and has no topic of its own, is about `topic`.
void setHelpTopic(QWidget* widget, const char* topic);
/// Of the nearest one that has a topic, from the widget outwards.
QString helpTopicOf(const QWidget* widget);

}  // namespace kerfwright
