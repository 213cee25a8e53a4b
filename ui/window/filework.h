// Opening, saving and leaving: what the File menu does, with its questions.
#pragma once

#include "core/board/patterns.h"
#include "core/measure/notation.h"
#include "ui/document/document.h"
#include "ui/document/recovery.h"

#include <QObject>

QT_BEGIN_NAMESPACE
class QWidget;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;

class FileWork : public QObject {
    Q_OBJECT

public:
    FileWork(Document& document, Recovery& recovery, Dialogs& dialogs, QWidget* window);

    void startNew(Unit unit);
    /// A new board in a pattern, in the units of the board that is open.
    void startPattern(Pattern pattern);
    void open();
    /// A bad file is told of; what is open stays as it was.
    bool openPath(const QString& path);
    /// `path` is a file of ours by its name, and can be read. What is dropped onto the window is
    /// opened only then.
    static bool isProject(const QString& path);
    /// What follows an attempt to open `path`: a fault is told of, a file that was read is
    /// remembered.
    bool noteOpened(const QString& path, const QString& fault);
    /// Opens a copy of a sample, which has no file of its own yet.
    void openSample(const QString& resource);
    bool save();
    bool saveAs();
    /// Asks about unsaved work. False: stay.
    bool mayLeave();
    /// Offers what an earlier window left in `folder`. True where one was opened.
    bool offerLostWork(const QString& folder);

Q_SIGNALS:
    /// Something was opened or begun.
    void opened();
    void saved(const QString& name);
    void recentChanged();

private:
    bool saveTo(const QString& path);

    Document& document_;
    Recovery& recovery_;
    Dialogs& dialogs_;
    QWidget* window_;
};

}  // namespace kerfwright
