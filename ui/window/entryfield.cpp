#include "ui/window/entryfield.h"

#include "ui/window/faultnote.h"
#include "ui/window/tones.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

bool isHistoryKey(const QKeyEvent& event) {
    return event.matches(QKeySequence::Undo) || event.matches(QKeySequence::Redo);
}

}  // namespace

EntryLine::EntryLine(QWidget* parent)
    : QLineEdit(parent) {
    setTextMargins(3, 0, 3, 0);
}

void EntryLine::setNote(const QString& note) {
    if (note != note_) {
        note_ = note;
        const int room = note.isEmpty() ? 0 : fontMetrics().horizontalAdvance(note) + 8;
        setTextMargins(3, 0, 3 + room, 0);
        update();
    }
}

void EntryLine::setFaulty(bool faulty) {
    faulty_ = faulty;
    update();
}

bool EntryLine::event(QEvent* event) {
    // A good text is already in the document, whose history knows more than that of the entry.
    if (event->type() == QEvent::ShortcutOverride && !faulty_ &&
        isHistoryKey(*static_cast<QKeyEvent*>(event))) {
        event->ignore();
        return false;
    }
    return QLineEdit::event(event);
}

void EntryLine::keyPressEvent(QKeyEvent* event) {
    if (!faulty_ && isHistoryKey(*event)) {
        event->ignore();
        return;
    }
    if (event->key() == Qt::Key_Escape) {
        // With nothing to take back, the key is for whoever the entry stands in.
        event->setAccepted(faulty_ || isModified());
        Q_EMIT escaped();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void EntryLine::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason) {
        Q_EMIT focusGone();
    }
}

void EntryLine::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    if (note_.isEmpty() && !faulty_) {
        return;
    }
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    if (!note_.isEmpty()) {
        painter.setPen(tones.quiet);
        painter.drawText(rect().adjusted(0, 0, -8, 0),
                         Qt::AlignRight | Qt::AlignAbsolute | Qt::AlignVCenter, note_);
    }
    if (faulty_) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(tones.danger, 1.5));
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.75, 0.75, -0.75, -0.75), 4, 4);
    }
}

EntryField::EntryField(const QString& name, QWidget* parent)
    : QWidget(parent)
    , name_(name)
    , line_(new EntryLine(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(line_);
    line_->setAccessibleName(name);
    setFocusProxy(line_);
    connect(line_, &QLineEdit::textEdited, this, &EntryField::edited);
    connect(line_, &QLineEdit::returnPressed, this, &EntryField::finish);
    connect(line_, &EntryLine::focusGone, this, &EntryField::finish);
    connect(line_, &EntryLine::escaped, this, &EntryField::restore);
}

EntryField::~EntryField() {
    // The line gives up the focus when it goes; by then there is no value left to write.
    line_->disconnect(this);
}

void EntryField::focusEntry() {
    line_->setFocus(Qt::OtherFocusReason);
    line_->selectAll();
}

QString EntryField::readingNote(const QString&) const {
    return QString();
}

void EntryField::edited(const QString& text) {
    if (!editing_) {
        remember();
        editing_ = true;
    }
    taking_ = true;
    const QString fault = take(text);
    if (!fault.isEmpty()) {
        // What was taken on the way here was only the beginning of this text.
        takeBack();
    }
    taking_ = false;
    showFault(fault);
    line_->setNote(fault.isEmpty() ? readingNote(text) : QString());
}

void EntryField::finish() {
    editing_ = false;
    if (!faulty_) {
        line_->setNote(QString());
        if (line_->text() != written()) {
            line_->setText(written());
        }
        line_->setModified(false);
        line_->setCursorPosition(0);  // where there is little room, the front matters more
    }
    Q_EMIT sessionEnded();
}

void EntryField::restore() {
    if (editing_) {
        taking_ = true;
        takeBack();
        taking_ = false;
        editing_ = false;
    }
    showFault(QString());
    line_->setNote(QString());
    line_->setText(written());
    line_->selectAll();
    Q_EMIT sessionEnded();
}

void EntryField::valueChanged(bool another) {
    if (taking_) {
        return;
    }
    if (another) {
        editing_ = false;
    }
    // Never rewrite what is being typed as long as it means the value in force.
    if (line_->hasFocus() && !faulty_ && textStandsForValue(line_->text())) {
        return;
    }
    if (faulty_ && line_->hasFocus() && line_->isModified()) {
        showFault(fault_);
        return;
    }
    showFault(QString());
    line_->setNote(QString());
    if (line_->text() != written()) {
        line_->setText(written());
        if (!line_->hasFocus()) {
            line_->setCursorPosition(0);
        }
    }
}

void EntryField::showFault(const QString& fault) {
    faulty_ = !fault.isEmpty();
    fault_ = fault;
    line_->setFaulty(faulty_);
    if (faulty_) {
        if (words_ == nullptr) {
            words_ = new FaultNote(this);
            layout()->addWidget(words_);
        }
        said_ = tr("▲ %1 Still %2.").arg(fault, kept());
        words_->say(this, said_);
        line_->setAccessibleDescription(said_);
    } else if (!said_.isEmpty()) {
        said_.clear();
        words_->unsay(this);
        line_->setAccessibleDescription(QString());
    }
}

}  // namespace kerfwright
