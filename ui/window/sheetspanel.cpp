#include "ui/window/sheetspanel.h"

#include "ui/document/text.h"
#include "ui/paint/export.h"
#include "ui/window/dialogs.h"
#include "ui/window/figurelayer.h"
#include "ui/window/icons.h"
#include "ui/window/paperout.h"
#include "ui/window/segmented.h"
#include "ui/window/sheetspreview.h"

#include <QClipboard>
#include <QDir>
#include <QFileInfo>
#include <QGridLayout>
#include <QGuiApplication>
#include <QLabel>
#include <QMimeData>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace kerfwright {

namespace {

QString savedWords(const QString& path) {
    return SheetsPanel::tr("Saved %1").arg(QFileInfo(path).fileName());
}

}  // namespace

SheetsPanel::SheetsPanel(Document& document, Planner& planner, Sawyer& sawyer, Dialogs& dialogs,
                         QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , planner_(planner)
    , sawyer_(sawyer)
    , dialogs_(dialogs)
    , paper_(new Segmented(tr("Paper"), {tr("A4"), tr("Letter")}, this))
    , stale_(new QLabel(this))
    , preview_(new SheetsPreview(this)) {
    painter_.setMaxThreadCount(1);
    paper_->setObjectName(QStringLiteral("paper"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 12, 0, 0);
    column->setSpacing(8);
    auto* grid = new QGridLayout;
    grid->setContentsMargins(12, 0, 12, 0);
    grid->setSpacing(8);
    grid->addWidget(paper_, 0, 0, 1, 2);
    const auto add = [&](const QString& text, const char* name, const QString& icon, int row,
                         int at, auto run) {
        auto* button = new QPushButton(text, this);
        button->setObjectName(QString::fromLatin1(name));
        button->setIcon(lineIcon(icon));
        button->setAutoDefault(false);
        grid->addWidget(button, row, at);
        buttons_.push_back(button);
        connect(button, &QPushButton::clicked, this, run);
    };
    add(tr("Save PDF…"), "savePdf", QStringLiteral("export"), 1, 0, [this] { savePdf(); });
    add(tr("Print…"), "print", QStringLiteral("print"), 1, 1, [this] { print(); });
    add(tr("Save SVG files…"), "saveSvg", QStringLiteral("export"), 2, 0, [this] { saveSvg(); });
    add(tr("Save picture…"), "savePicture", QStringLiteral("picture"), 2, 1,
        [this] { savePicture(); });
    column->addLayout(grid);
    stale_->setContentsMargins(14, 0, 14, 0);
    stale_->setWordWrap(true);
    stale_->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(stale_);
    column->addWidget(preview_, 1);
    paper_->setCurrent(paperChoice() == Paper::Letter ? 1 : 0);
    connect(paper_, &Segmented::chosen, this, [this] {
        keepPaperChoice(paper());
        refresh();
    });
    const auto refreshIfSeen = [this] {
        if (isVisible()) {
            refresh();
        }
    };
    connect(&planner, &Planner::changed, this, refreshIfSeen);
    connect(&sawyer, &Sawyer::changed, this, [this, refreshIfSeen] {
        if (isReady() && again_) {
            const auto again = std::exchange(again_, nullptr);
            again();
        }
        // What a search finds on the way changes no page.
        if (sawyer_.state() != Sawyer::State::Working || shownSawn_) {
            refreshIfSeen();
        }
    });
    connect(&document, &Document::projectChanged, this, refreshIfSeen);
}

void SheetsPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh();
}

Paper SheetsPanel::paper() const {
    return paper_->current() == 1 ? Paper::Letter : Paper::A4;
}

std::vector<Page> SheetsPanel::pages() const {
    // Titles are not part of the plan, so the project as it stands is what gets printed.
    return sheets(document_.project(), planner_.last()->job, paper(), timber());
}

bool SheetsPanel::isReady() const {
    return planner_.state() == Planner::State::Current && sawyer_.state() != Sawyer::State::Working;
}

const TimberPlan* SheetsPanel::timber() const {
    const SawnPtr sawn = sawyer_.last();
    return sawyer_.state() == Sawyer::State::Current && sawn ? &sawn->plan : nullptr;
}

void SheetsPanel::refresh() {
    if (!document_.project().timber.rack.planks.empty()) {
        sawyer_.wake();
    }
    const bool ready = isReady();
    for (QPushButton* button : buttons_) {
        // The picture needs no plan.
        button->setEnabled(ready || button->objectName() == QStringLiteral("savePicture"));
    }
    stale_->setVisible(!ready && planner_.last() != nullptr);
    stale_->setText(planner_.state() == Planner::State::Impossible
                        ? tr("These pages are of the last plan that could be made.")
                    : planner_.state() == Planner::State::Current
                        ? tr("The strips are being laid out on the planks …")
                        : tr("New pages are being made …"));
    const SawnPtr sawn = timber() != nullptr ? sawyer_.last() : nullptr;
    if (ready && (shown_ != planner_.last() || shownSawn_ != sawn ||
                  shownFor_ != document_.snapshot() || shownPaper_ != paper_->current())) {
        shown_ = planner_.last();
        shownSawn_ = sawn;
        shownFor_ = document_.snapshot();
        shownPaper_ = paper_->current();
        preview_->setPages(pages(), paper());
    } else if (!planner_.last()) {
        preview_->setPages({}, paper());
        shown_.reset();
    }
}

bool SheetsPanel::readyOrTold(const std::function<void()>& again) {
    if (!document_.project().timber.rack.planks.empty()) {
        sawyer_.wake();
    }
    again_ = nullptr;
    if (planner_.state() == Planner::State::Current && sawyer_.state() == Sawyer::State::Working) {
        again_ = again;
        Q_EMIT told(tr("The strips are being laid out on the planks first …"));
    } else if (!isReady()) {
        dialogs_.tell(this, tr("No plan to print"),
                      planner_.state() == Planner::State::Impossible
                          ? planner_.fault()
                          : tr("The plan is still being made. Try again in a moment."));
    }
    return isReady();
}

void SheetsPanel::report(const QString& fault, const QString& done) {
    if (fault.isEmpty()) {
        Q_EMIT told(done);
    } else {
        dialogs_.tell(this, tr("Not saved"), fault);
    }
}

SheetsPanel::~SheetsPanel() {
    painter_.waitForDone();
}

void SheetsPanel::savePdf() {
    if (!readyOrTold([this] { savePdf(); })) {
        return;
    }
    const QString words = kerfwright::savePdf(dialogs_, this, tr("Save the cut sheets"), work());
    if (!words.isEmpty()) {
        Q_EMIT told(words);
    }
}

void SheetsPanel::saveSvg() {
    if (!readyOrTold([this] { saveSvg(); })) {
        return;
    }
    const QString folder = dialogs_.folderToWrite(this, tr("A folder for the cut sheets"));
    if (folder.isEmpty()) {
        return;
    }
    QString fault;
    const std::vector<Page> all = pages();
    for (const Page& page : all) {
        const QString path = QDir(folder).filePath(fileNameOf(document_) + QStringLiteral("-") +
                                                   toQt(page.key) + QStringLiteral(".svg"));
        fault = writeFileAtomically(path, toSvg(page.drawing, toQt(page.title), paperTheme()));
        if (!fault.isEmpty()) {
            break;
        }
    }
    report(fault, savedWords(all.size(), QFileInfo(folder).fileName()));
}

void SheetsPanel::savePicture() {
    QString path = dialogs_.fileToWrite(this, tr("Save a picture of the board"),
                                        fileNameOf(document_) + QStringLiteral(".png"),
                                        tr("PNG (*.png);;SVG (*.svg)"));
    if (path.isEmpty()) {
        return;
    }
    const bool svg = path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive);
    if (!svg) {
        path = withEnding(path, QStringLiteral(".png"));
    }
    const BoardPicture made = picture();
    if (svg) {
        report(writeFileAtomically(path, made.svg(document_.displayName())), savedWords(path));
        return;
    }
    painter_.start([this, made, path] {
        const QString fault = writeFileAtomically(path, made.png());
        QMetaObject::invokeMethod(
            this, [this, fault, path] { report(fault, savedWords(path)); }, Qt::QueuedConnection);
    });
}

BoardPicture SheetsPanel::picture() const {
    return BoardPicture(document_.snapshot(), isReady() ? planner_.last() : nullptr,
                        keptFigureStyle());
}

void SheetsPanel::copyPicture() {
    const BoardPicture made = picture();
    const auto copy = [this, svg = made.svg(document_.displayName())](const QImage& image,
                                                                      bool pixelsFirst) {
        // Programs take what they know; the better one comes first: the drawing, or what shows
        // figure.
        auto* data = new QMimeData;
        if (pixelsFirst) {
            data->setImageData(image);
        }
        data->setData(QStringLiteral("image/svg+xml"), svg);
        if (!pixelsFirst) {
            data->setImageData(image);
        }
        QGuiApplication::clipboard()->setMimeData(data);
        copied_ = data;
    };
    copy(made.plain(), false);
    Q_EMIT told(tr("The board is on the clipboard, as a picture"));
    if (!made.isFigured()) {
        return;
    }
    painter_.start([this, made, copy, plain = copied_] {
        QMetaObject::invokeMethod(
            this,
            [this, image = made.image(), copy, plain] {
                // Whatever was copied in the meantime stays.
                if (copied_ == plain && QGuiApplication::clipboard()->mimeData() == plain) {
                    copy(image, true);
                }
            },
            Qt::QueuedConnection);
    });
}

void SheetsPanel::print() {
    if (!readyOrTold([this] { print(); })) {
        return;
    }
    printPages(dialogs_, this, work());
}

PaperWork SheetsPanel::work() const {
    return {document_.displayName(), fileNameOf(document_), paper(), [this] { return pages(); }};
}

}  // namespace kerfwright
