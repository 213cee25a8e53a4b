// An entry that takes effect while it is typed. What was typed is read at once; how it was read is
// shown inside the entry, and where it cannot be taken the last good value stays in force beside
// the reason, in words.
#pragma once

#include <QLineEdit>
#include <QWidget>

namespace kerfwright {

class FaultNote;

/// The line edit of an entry: undo and redo go to the document while the text is good, and a quiet
/// note stands at its right end.
class EntryLine : public QLineEdit {
    Q_OBJECT

public:
    explicit EntryLine(QWidget* parent);
    void setNote(const QString& note);
    QString note() const { return note_; }
    void setFaulty(bool faulty);

Q_SIGNALS:
    void escaped();
    void focusGone();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    QString note_;
    bool faulty_ = false;
};

class EntryField : public QWidget {
    Q_OBJECT

public:
    /// `name` is what the entry is called in its faults and by screen readers.
    EntryField(const QString& name, QWidget* parent);
    ~EntryField() override;

    EntryLine* line() const { return line_; }
    QString name() const { return name_; }
    bool isFaulty() const { return faulty_; }
    /// The words beside the entry; empty where it is good.
    QString faultText() const { return faulty_ ? said_ : QString(); }
    void focusEntry();
    /// Where the words of a fault go, instead of under the entry: where they have more room, or
    /// where room is kept for them. May serve several entries.
    void setFaultNote(FaultNote* note) { words_ = note; }
    /// Null where it is made only once there is something to say.
    FaultNote* faultNote() const { return words_; }

Q_SIGNALS:
    /// Enter was pressed or the entry was left: the next edit is another undo step.
    void sessionEnded();

protected:
    /// Reads the text and puts it in force. Returns the fault in words, empty where it was taken.
    virtual QString take(const QString& text) = 0;
    /// Remembers the value in force: the entry begins to be edited.
    virtual void remember() = 0;
    /// Puts the remembered value in force again.
    virtual void takeBack() = 0;
    /// How the value in force is written.
    virtual QString written() const = 0;
    /// Shown inside the entry while it is typed in; empty where the text says it already.
    virtual QString readingNote(const QString& text) const;
    /// The value in force, for the words beside a fault.
    virtual QString kept() const { return written(); }

    /// Call after the value in force was said from outside; `another` where it is not the one
    /// that was in force before.
    void valueChanged(bool another);
    /// Whether the text in the entry already stands for the value in force.
    virtual bool textStandsForValue(const QString& text) const = 0;

private:
    void edited(const QString& text);
    void finish();
    void restore();
    void showFault(const QString& fault);

    QString name_;
    EntryLine* line_;
    FaultNote* words_ = nullptr;
    QString fault_;  ///< as `take` told it
    QString said_;   ///< as the note says it
    bool faulty_ = false;
    bool editing_ = false;  ///< a value is remembered
    bool taking_ = false;   ///< what changes now comes from this entry
};

}  // namespace kerfwright
