// The export panel: previews of the pages, the paper, and where they go.
#pragma once

#include "ui/document/sawyer.h"
#include "ui/window/boardpicture.h"
#include "ui/window/paperout.h"

#include <QThreadPool>
#include <QWidget>

#include <functional>

QT_BEGIN_NAMESPACE
class QLabel;
class QMimeData;
class QPushButton;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;
class Segmented;
class SheetsPreview;

class SheetsPanel : public QWidget {
    Q_OBJECT

public:
    SheetsPanel(Document& document, Planner& planner, Sawyer& sawyer, Dialogs& dialogs,
                QWidget* parent = nullptr);
    /// What is being saved is saved first.
    ~SheetsPanel() override;

    void savePdf();
    void saveSvg();
    void savePicture();
    /// The same picture onto the clipboard, as pixels and as SVG.
    /// At once without figure, and with it once it is made.
    void copyPicture();
    void print();
    /// There is a plan for the board as it stands, and where there is timber, a layout.
    bool isReady() const;

Q_SIGNALS:
    /// "Saved 6 pages to …"
    void told(const QString& words);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void refresh();
    Paper paper() const;
    std::vector<Page> pages() const;
    /// Null where there is no layout of the board as it stands.
    const TimberPlan* timber() const;
    PaperWork work() const;
    BoardPicture picture() const;
    /// Where only the layout of the planks is missing, `again` is called once there is one.
    bool readyOrTold(const std::function<void()>& again);
    void report(const QString& fault, const QString& done);

    Document& document_;
    Planner& planner_;
    Sawyer& sawyer_;
    Dialogs& dialogs_;
    Segmented* paper_;
    std::vector<QPushButton*> buttons_;
    QLabel* stale_;
    SheetsPreview* preview_;
    PlannedPtr shown_;
    SawnPtr shownSawn_;
    std::function<void()> again_;
    ProjectPtr shownFor_;
    int shownPaper_ = -1;
    QThreadPool painter_;  ///< one picture after the other
    const QMimeData* copied_ = nullptr;
};

}  // namespace kerfwright
