// The export panel: previews of the pages, the paper, and where they go.
#pragma once

#include "core/sheets/sheets.h"
#include "ui/document/planner.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;
class Segmented;
class SheetsPreview;

class SheetsPanel : public QWidget {
    Q_OBJECT

public:
    SheetsPanel(Document& document, Planner& planner, Dialogs& dialogs, QWidget* parent = nullptr);

    void savePdf();
    void saveSvg();
    void savePicture();
    /// The same picture onto the clipboard, as pixels and as SVG.
    void copyPicture();
    void print();
    /// There is a plan for the board as it stands.
    bool isReady() const { return planner_.state() == Planner::State::Current; }

Q_SIGNALS:
    /// "Saved 6 pages to …"
    void told(const QString& words);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void refresh();
    Paper paper() const;
    std::vector<Page> pages() const;
    Drawing picture() const;
    QString baseName() const;
    bool readyOrTold();
    void report(const QString& fault, const QString& done);

    Document& document_;
    Planner& planner_;
    Dialogs& dialogs_;
    Segmented* paper_;
    std::vector<QPushButton*> buttons_;
    QLabel* stale_;
    SheetsPreview* preview_;
    PlannedPtr shown_;
    ProjectPtr shownFor_;
    int shownPaper_ = -1;
};

}  // namespace kerfwright
