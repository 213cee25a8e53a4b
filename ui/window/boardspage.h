// From timber to board: the largest board that the rack allows, and which samples can be made.
#pragma once

#include "ui/document/boardfinder.h"
#include "ui/document/document.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QProgressBar;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class CardList;
class Segmented;

class BoardsPage : public QWidget {
    Q_OBJECT

public:
    explicit BoardsPage(Document& document, QWidget* parent = nullptr);

    BoardFinder& finder() { return finder_; }
    CardList* list() const { return list_; }

Q_SIGNALS:
    void told(const QString& words);
    /// A sample by its resource path; the rack is to come along.
    void sampleAsked(const QString& sample);

private:
    void refresh();
    void useLargest();
    void judge();
    QString largestWords() const;
    QString useWords() const;

    Document& document_;
    BoardFinder finder_;
    Segmented* growth_;
    QPushButton* look_;
    QPushButton* use_;
    QPushButton* samples_;
    QLabel* words_;
    QLabel* samplesWords_;
    QProgressBar* progress_;
    QPushButton* stop_;
    CardList* list_;
    ProjectPtr project_;  ///< what was found is for
    bool judging_ = false;
    std::size_t shown_ = 0;
};

}  // namespace kerfwright
