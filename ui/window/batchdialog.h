// Several boards made together: which ones, how their strips lie on one rack, and one set of
// sheets. The open board is always the first; its shop and its rack serve all.
#pragma once

#include "ui/document/batcher.h"
#include "ui/document/document.h"
#include "ui/window/paperout.h"

#include <QDialog>

#include <memory>
#include <vector>

QT_BEGIN_NAMESPACE
class QLabel;
class QListWidget;
class QProgressBar;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;
class Segmented;
class SheetsPreview;

class BatchDialog : public QDialog {
    Q_OBJECT

public:
    BatchDialog(Document& document, Dialogs& dialogs, QWidget* parent);
    ~BatchDialog() override;

    /// Shows itself with the open board as it stands now; the others stay as they were.
    void begin();
    /// Reads the files and adds their boards. All or none: the first that cannot be read is told
    /// of.
    void addFiles(const QStringList& paths);
    const Batcher& batcher() const { return batcher_; }

Q_SIGNALS:
    void told(const QString& words);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    QWidget* side();
    void planAgain();
    void refresh();
    void refreshList();
    void addOneMore();
    void removeChosen();
    void saveRack();
    Paper paper() const;
    PaperWork work() const;

    Document& document_;
    Dialogs& dialogs_;
    Batcher batcher_;
    std::vector<Project> boards_;
    std::shared_ptr<const Batch> shown_;
    QListWidget* list_;
    QPushButton* add_;
    QPushButton* more_;
    QPushButton* remove_;
    QLabel* words_;
    QLabel* warning_;
    QProgressBar* progress_;
    QPushButton* stop_;
    Segmented* paper_;
    QPushButton* savePdf_;
    QPushButton* print_;
    QPushButton* saveRack_;
    SheetsPreview* preview_;
};

}  // namespace kerfwright
