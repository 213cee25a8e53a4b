#include "ui/window/boardfoot.h"

#include "ui/document/text.h"
#include "ui/window/boardview.h"
#include "ui/window/chipbar.h"
#include "ui/window/faultnote.h"
#include "ui/window/markbar.h"
#include "ui/window/regionactions.h"
#include "ui/window/regioneditor.h"
#include "ui/window/seasonbar.h"

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int chipRow = 56;
constexpr int gap = 4;
constexpr int comfortableHint = 230;

}  // namespace

BoardFoot::BoardFoot(Document& document, Planner& planner, BoardEditor& editor, BoardView& board,
                     QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , editor_(editor)
    , board_(board)
    , actions_(new RegionActions(board, editor, this))
    , chips_(new ChipBar(document, editor, this))
    , hint_(new FaultNote(this))
    , season_(new SeasonBar(document, planner, this))
    , marks_(new MarkBar(document, editor, *actions_, this)) {
    // It goes with the board, which is not mirrored either.
    setLayoutDirection(Qt::LeftToRight);
    hint_->setObjectName(QStringLiteral("boardHint"));
    marks_->setFaultNote(hint_);
    // A command by button is followed by more work on the board.
    const auto backToBoard = [this] { board_.setFocus(Qt::OtherFocusReason); };
    connect(chips_, &ChipBar::clicked, this, backToBoard);
    connect(&board, &BoardView::touched, season_, &SeasonBar::leaveSeason);
    connect(season_, &SeasonBar::pictured, &board_, &BoardView::setSeason);
    connect(&editor, &BoardEditor::markChanged, this, &BoardFoot::place);
    connect(&document, &Document::projectChanged, this, &BoardFoot::place);
    connect(&editor, &BoardEditor::woodChanged, this, &BoardFoot::place);
    connect(&board, &BoardView::toolChanged, this, &BoardFoot::place);
    connect(&board, &BoardView::gestureChanged, this, &BoardFoot::place);
    connect(&editor.region(), &RegionEditor::carriedChanged, this, &BoardFoot::place);
    // Said until the maker does something else.
    connect(&editor.region(), &RegionEditor::refused, hint_,
            [this](const QString& why) { hint_->say(this, why); });
    const auto goOn = [this] { hint_->unsay(this); };
    connect(&board, &BoardView::touched, this, goOn);
    connect(&board, &BoardView::toolChanged, this, goOn);
    connect(&editor, &BoardEditor::markChanged, this, goOn);
    connect(&editor.region(), &RegionEditor::carriedChanged, this, goOn);
    connect(&document, &Document::projectChanged, this, goOn);
    connect(&document, &Document::projectChanged, actions_, &RegionActions::refresh);
    place();
}

void BoardFoot::setLow(bool low) {
    if (low != low_) {
        low_ = low;
        season_->setLow(low);
        place();
    }
}

QString BoardFoot::hint() const {
    const Project& project = document_.project();
    const QString wood =
        inSentence(toQt(project.woods[static_cast<std::size_t>(editor_.wood())].name));
    if (const Carried* carried = editor_.region().carried()) {
        return carried->from
                   ? tr("Pointer or arrows move it · click or Enter lays it down and leaves %1 · "
                        "H, V mirror, T turns · Escape leaves")
                         .arg(wood)
                   : tr("Pointer or arrows move it · click or Enter lays it down, with Shift again "
                        "and again · H, V mirror, T turns · Escape leaves");
    }
    switch (board_.tool()) {
    case Tool::Paint:
        return tr("Click or drag paints with %1 · right button picks up a wood").arg(wood);
    case Tool::Line:
        return board_.isDrawing()
                   ? tr("Go to the other end · Space or Enter draws in %1, with Shift straight · "
                        "Escape leaves")
                         .arg(wood)
                   : tr("Drag draws a line in %1 · Shift keeps it straight · Space begins at the "
                        "marked piece")
                         .arg(wood);
    case Tool::Rectangle:
        return board_.isDrawing()
                   ? tr("Go to the other corner · Space or Enter draws in %1, with Shift the edge "
                        "only · Escape leaves")
                         .arg(wood)
                   : tr("Drag draws a rectangle in %1 · Shift draws its edge only · Space begins "
                        "at the marked piece")
                         .arg(wood);
    case Tool::Fill:
        return tr("Click fills with %1 · all of one wood that hangs together · Space fills from "
                  "the marked piece")
            .arg(wood);
    case Tool::Select:
        return tr("Click or drag marks pieces · drag what is marked to move it, with Ctrl a copy · "
                  "the rulers mark whole lines · Space paints what is marked");
    case Tool::Joints:
        return tr(
            "Drag a joint, with Shift in finer steps · it holds where sizes agree · Alt + arrows "
            "move the joints of a marked piece, N goes to where they agree");
    }
    return QString();
}

QString BoardFoot::shortened(const QString& words) const {
    // The most wanted stands first; what there is no room for is left to the tip.
    const QString between = QStringLiteral(" · ");
    QStringList parts = words.split(between);
    const auto fits = [this](const QString& text) {
        const QRect room(0, 0, hint_->width(), hint_->height());
        return hint_->fontMetrics().boundingRect(room, Qt::TextWordWrap, text).height() <=
               room.height();
    };
    while (parts.size() > 1 && !fits(parts.join(between))) {
        parts.removeLast();
    }
    QString text = parts.join(between);
    if (!fits(text)) {
        QStringList single = text.split(QLatin1Char(' '));
        while (single.size() > 1 && !fits(text)) {
            single.removeLast();
            text = single.join(QLatin1Char(' ')) + QStringLiteral(" …");
        }
    }
    return text;
}

void BoardFoot::resizeEvent(QResizeEvent*) {
    place();
}

void BoardFoot::place() {
    const int marksWidth = marks_->minimumSizeHint().width();
    const bool oneRow = low_ && chips_->leastWidth() + 16 + marksWidth <= width();
    const int below = std::max(marks_->height(), season_->heightIn(width()));
    // Words that wrap into a narrow column are hardly read: the chips draw together first, then
    // the words go below them.
    const bool own = !low_ && width() - 12 - chips_->leastWidth() < comfortableHint;
    const int hintRow = own ? 2 * hint_->fontMetrics().lineSpacing() + 4 : 0;
    const int upper = chipRow + hintRow + gap;
    setFixedHeight(oneRow ? chipRow : upper + below);
    if (oneRow) {
        const int chips = std::min(chips_->sizeHint().width(), width() - 16 - marksWidth);
        const int left = chips + 16;
        chips_->setGeometry(0, 0, chips, chipRow);
        marks_->setGeometry(left, 0, width() - left, marks_->height());
        hint_->setGeometry(left, marks_->height() + 2, width() - left,
                           chipRow - marks_->height() - 2);
        // There is no room for more than what is wrong with an entry.
        hint_->rest(QString());
    } else {
        const int room = own ? width() : width() - 12 - comfortableHint;
        const int chips =
            std::min(chips_->sizeHint().width(), std::max(chips_->leastWidth(), room));
        chips_->setGeometry(0, 0, std::min(chips, width()), chipRow);
        marks_->setGeometry(0, upper, width(), marks_->height());
        const int left = chips_->width() + 12;
        if (own) {
            hint_->setGeometry(0, chipRow + 2, width(), hintRow - 2);
        } else {
            hint_->setGeometry(left, 10, std::max(0, width() - left), chipRow - 10);
        }
        const QString words = hint();
        hint_->rest(shortened(words));
        hint_->setToolTip(words);
    }
    season_->setGeometry(marks_->x(), marks_->y(), marks_->width(),
                         oneRow ? marks_->height() : below);
    if (!editor_.mark().isNull()) {
        season_->leaveSeason();  // what is marked is marked on the board as it is built
    }
    season_->setVisible(editor_.mark().isNull());
}

}  // namespace kerfwright
