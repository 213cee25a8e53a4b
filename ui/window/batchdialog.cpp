#include "ui/window/batchdialog.h"

#include "core/project/file.h"
#include "core/sheets/batchsheets.h"
#include "core/timber/rackcsv.h"
#include "core/timber/timberwords.h"
#include "ui/document/surround.h"
#include "ui/document/text.h"
#include "ui/paint/export.h"
#include "ui/window/boardpainter.h"
#include "ui/window/dialogs.h"
#include "ui/window/helpwindow.h"
#include "ui/window/icons.h"
#include "ui/window/segmented.h"
#include "ui/window/sheetspreview.h"
#include "ui/window/tones.h"
#include "ui/window/wrappedlabel.h"

#include <QDragEnterEvent>
#include <QFileInfo>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QListWidget>
#include <QMimeData>
#include <QPainter>
#include <QProgressBar>
#include <QPushButton>
#include <QUrl>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int pictureSide = 40;
constexpr int sideWidth = 372;

QIcon pictureOf(const Project& project, qreal ratio) {
    QPixmap picture(QSize(pictureSide, pictureSide) * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    const Surround surround = surroundOf(project);
    const BoardSize size = sizeOf(project.board, surround);
    const double w = size.width.toMm();
    const double h = size.height.toMm();
    const double scale = pictureSide / std::max(w, h);
    const QPointF corner((pictureSide - w * scale) / 2, (pictureSide - h * scale) / 2);
    paintBoard(painter, project.board, project.woods,
               BoardGeometry(project.board, surround, scale, corner, ratio));
    painter.end();
    return QIcon(picture);
}

QStringList projectsIn(const QMimeData& data) {
    QStringList paths;
    for (const QUrl& url : data.urls()) {
        if (url.isLocalFile() && url.path().endsWith(QStringLiteral(".kerfwright"))) {
            paths << url.toLocalFile();
        }
    }
    return paths;
}

}  // namespace

BatchDialog::BatchDialog(Document& document, Dialogs& dialogs, QWidget* parent)
    : QDialog(parent)
    , document_(document)
    , dialogs_(dialogs)
    , batcher_(this)
    , preview_(new SheetsPreview(this)) {
    setObjectName(QStringLiteral("batch"));
    addHelpKey(*this);
    setWindowTitle(tr("Several boards at once"));
    setAcceptDrops(true);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(side());
    row->addWidget(preview_, 1);
    preview_->setAccessibleName(tr("Sheets of all boards"));
    resize(QSize(1100, 720).boundedTo(parent->size()));
    connect(&batcher_, &Batcher::changed, this, &BatchDialog::refresh);
    connect(paper_, &Segmented::chosen, this, [this] {
        keepPaperChoice(paper());
        shown_.reset();
        refresh();
    });
}

BatchDialog::~BatchDialog() = default;

QWidget* BatchDialog::side() {
    auto* side = new QWidget(this);
    side->setFixedWidth(sideWidth);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(16, 16, 16, 16);
    column->setSpacing(8);
    auto* about = new WrappedLabel(side);
    about->setText(tr("These boards are planned as one job: one rack, and every position of a "
                      "machine set once for all of them. Shop and rack are those of board 1, which "
                      "is the one that is open."));
    about->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(about);
    list_ = new QListWidget(side);
    list_->setObjectName(QStringLiteral("batchBoards"));
    list_->setAccessibleName(tr("Boards made together"));
    list_->setIconSize(QSize(pictureSide, pictureSide));
    list_->setSpacing(2);
    column->addWidget(list_, 1);
    const auto button = [this, side](const QString& text, const char* name, auto run) {
        auto* made = new QPushButton(text, side);
        made->setObjectName(QString::fromLatin1(name));
        made->setAutoDefault(false);
        connect(made, &QPushButton::clicked, this, run);
        return made;
    };
    add_ = button(tr("&Add boards…"), "batchAdd", [this] { addFiles(dialogs_.filesToOpen(this)); });
    more_ = button(tr("&One more of it"), "batchMore", [this] { addOneMore(); });
    remove_ = button(tr("&Take out"), "batchRemove", [this] { removeChosen(); });
    more_->setToolTip(tr("The chosen board is made once more"));
    // Three in a row would cut their words off in some languages.
    auto* change = new QGridLayout;
    change->setSpacing(8);
    change->addWidget(add_, 0, 0, 1, 2);
    change->addWidget(more_, 1, 0);
    change->addWidget(remove_, 1, 1);
    column->addLayout(change);
    words_ = new WrappedLabel(side);
    words_->setObjectName(QStringLiteral("batchWords"));
    warning_ = new WrappedLabel(side);
    warning_->setObjectName(QStringLiteral("batchWarning"));
    column->addSpacing(4);
    column->addWidget(words_);
    column->addWidget(warning_);
    progress_ = new QProgressBar(side);
    progress_->setRange(0, 100);
    progress_->setTextVisible(false);
    progress_->setMaximumHeight(6);
    progress_->setAccessibleName(tr("How far the layout is"));
    stop_ = button(tr("Stop here"), "batchStop", [this] { batcher_.stop(); });
    auto* work = new QHBoxLayout;
    work->addWidget(progress_, 1);
    work->addWidget(stop_);
    column->addLayout(work);
    paper_ = new Segmented(tr("Paper"), {tr("A4"), tr("Letter")}, side);
    paper_->setObjectName(QStringLiteral("batchPaper"));
    column->addWidget(paper_);
    savePdf_ = button(tr("Save PDF…"), "batchPdf", [this] {
        const QString words =
            kerfwright::savePdf(dialogs_, this, tr("Save the sheets of all boards"), this->work());
        if (!words.isEmpty()) {
            Q_EMIT told(words);
        }
    });
    print_ =
        button(tr("Print…"), "batchPrint", [this] { printPages(dialogs_, this, this->work()); });
    saveRack_ =
        button(tr("Save the rack as it is afterwards…"), "batchRack", [this] { saveRack(); });
    saveRack_->setToolTip(tr("A table (CSV) of the planks left over and the offcuts worth keeping, "
                             "for the next project"));
    savePdf_->setIcon(lineIcon(QStringLiteral("export")));
    print_->setIcon(lineIcon(QStringLiteral("print")));
    auto* out = new QGridLayout;
    out->setSpacing(8);
    out->addWidget(savePdf_, 0, 0);
    out->addWidget(print_, 0, 1);
    out->addWidget(saveRack_, 1, 0, 1, 2);
    column->addLayout(out);
    connect(list_, &QListWidget::currentRowChanged, this, &BatchDialog::refresh);
    list_->installEventFilter(this);
    return side;
}

void BatchDialog::begin() {
    if (boards_.empty()) {
        boards_.push_back(document_.project());
    } else {
        boards_.front() = document_.project();
    }
    paper_->setCurrent(paperChoice() == Paper::Letter ? 1 : 0);
    planAgain();
    open();
    list_->setFocus();
}

void BatchDialog::addFiles(const QStringList& paths) {
    std::vector<Project> found;
    for (const QString& path : paths) {
        Result<Project> project = readProject(fromQt(path));
        if (!project) {
            dialogs_.tell(this, tr("Not added"), toQt(project.fault().text()));
            return;
        }
        found.push_back(std::move(project).value());
    }
    if (boards_.size() + found.size() > mostBoards) {
        dialogs_.tell(this, tr("Not added"),
                      tr("At most %1 boards are planned together; these would be %2.")
                          .arg(mostBoards)
                          .arg(boards_.size() + found.size()));
        return;
    }
    if (!found.empty()) {
        boards_.insert(boards_.end(), found.begin(), found.end());
        planAgain();
        list_->setCurrentRow(list_->count() - 1);
    }
}

void BatchDialog::addOneMore() {
    const int row = list_->currentRow();
    if (row >= 0 && boards_.size() < mostBoards) {
        boards_.insert(boards_.begin() + row + 1, boards_[static_cast<std::size_t>(row)]);
        planAgain();
        list_->setCurrentRow(row + 1);
    }
}

void BatchDialog::removeChosen() {
    const int row = list_->currentRow();
    if (row > 0) {
        boards_.erase(boards_.begin() + row);
        planAgain();
        list_->setCurrentRow(std::min(row, list_->count() - 1));
    }
}

void BatchDialog::planAgain() {
    refreshList();
    batcher_.plan(boards_);
}

void BatchDialog::refreshList() {
    const int row = list_->currentRow();
    list_->clear();
    for (std::size_t i = 0; i < boards_.size(); ++i) {
        const Project& board = boards_[i];
        const QString name =
            board.titles.name.empty() ? tr("Board without a name") : toQt(board.titles.name);
        const BoardSize size = sizeOf(board.board, surroundOf(board));
        auto* item = new QListWidgetItem(pictureOf(board, devicePixelRatioF()),
                                         tr("%1  %2\n%3 × %4")
                                             .arg(QString::number(i + 1), name,
                                                  toQt(formatBare(size.width, board.notation)),
                                                  toQt(format(size.height, board.notation))),
                                         list_);
        item->setData(Qt::AccessibleTextRole, tr("Board %1: %2").arg(i + 1).arg(name));
    }
    list_->setCurrentRow(std::clamp(row, 0, list_->count() - 1));
}

void BatchDialog::refresh() {
    const auto batch = batcher_.last();
    const bool working = batcher_.isWorking();
    const bool several = boards_.size() > 1;
    const int row = list_->currentRow();
    add_->setEnabled(boards_.size() < mostBoards);
    more_->setEnabled(row >= 0 && boards_.size() < mostBoards);
    remove_->setEnabled(row > 0);
    progress_->setVisible(working);
    stop_->setVisible(working);
    progress_->setValue(static_cast<int>(batcher_.progress() * 100));
    for (QPushButton* out : {savePdf_, print_, saveRack_}) {
        out->setEnabled(batch != nullptr && several);
    }
    const bool hasRack = !boards_.empty() && !boards_.front().timber.rack.planks.empty();
    saveRack_->setEnabled(batch != nullptr && hasRack);
    QStringList warnings;
    if (batch && hasRack) {
        const std::string missing = shortageInBrief(batch->timber, batch->woods, Shopping::Slip);
        if (!missing.empty()) {
            warnings << toQt(missing);
        }
    } else if (!batcher_.fault().isEmpty()) {
        warnings << batcher_.fault();
    }
    words_->setText(!several  ? tr("Add the boards that you want to make along with this one.")
                    : working ? tr("The boards are being planned …")
                    : !batch  ? QString()
                    : hasRack ? toQt(layoutWords(batch->timber))
                              : tr("The rack of board 1 is empty, so all timber is on the shopping "
                                   "slip."));
    warning_->setText(warnings.join(QLatin1Char('\n')));
    warning_->setVisible(!warnings.isEmpty());
    QPalette tinted = palette();
    tinted.setColor(QPalette::WindowText, tonesOf(palette()).caution);
    warning_->setPalette(tinted);
    preview_->setEmptyText(
        !several ? tr("Their sheets appear here once there are two boards or more. “Add boards” "
                      "takes others from their files, “One more of it” makes the chosen one twice.")
        : working ? tr("The boards are being planned …")
                  : tr("The sheets appear here once all boards can be planned; what is in the way "
                       "stands at the left."));
    if (batch != shown_) {
        shown_ = batch;
        preview_->setPages(batch && several ? batchSheets(*batch, paper()) : std::vector<Page>(),
                           paper());
    }
}

Paper BatchDialog::paper() const {
    return paper_->current() == 1 ? Paper::Letter : Paper::A4;
}

PaperWork BatchDialog::work() const {
    const QString title = tr("%1 boards").arg(boards_.size());
    return {title, title, paper(), [this] { return batchSheets(*batcher_.last(), paper()); }};
}

void BatchDialog::saveRack() {
    const QString path =
        withEnding(dialogs_.fileToWrite(this, tr("Save the rack as it is afterwards"),
                                        tr("rack.csv"), tr("Rack (*.csv)")),
                   QStringLiteral(".csv"));
    if (path.isEmpty()) {
        return;
    }
    const std::string table =
        rackToCsv(rackAfter(batcher_.last()->timber), document_.project().notation.unit);
    const QString fault = writeFileAtomically(path, QByteArray::fromStdString(table));
    if (fault.isEmpty()) {
        Q_EMIT told(tr("Saved %1").arg(QFileInfo(path).fileName()));
    } else {
        dialogs_.tell(this, tr("Not saved"), fault);
    }
}

bool BatchDialog::eventFilter(QObject* watched, QEvent* event) {
    if (watched == list_ && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
        removeChosen();
        return true;
    }
    return QDialog::eventFilter(watched, event);
}

void BatchDialog::dragEnterEvent(QDragEnterEvent* event) {
    if (!projectsIn(*event->mimeData()).isEmpty()) {
        event->setDropAction(Qt::CopyAction);
        event->accept();
    }
}

void BatchDialog::dropEvent(QDropEvent* event) {
    addFiles(projectsIn(*event->mimeData()));
}

}  // namespace kerfwright
