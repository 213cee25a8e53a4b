#include "ui/window/filework.h"

#include "core/project/file.h"
#include "core/project/patternproject.h"
#include "ui/document/recent.h"
#include "ui/document/text.h"
#include "ui/window/dialogs.h"
#include "ui/window/samples.h"

#include <QFileInfo>
#include <QWidget>

namespace kerfwright {

namespace {

QString ending() {
    return QStringLiteral(".kerfwright");
}

/// A fault of a file as a sentence: "File: breaks off …" reads "The file breaks off …".
QString inWords(QString fault) {
    const QString entry = QStringLiteral("File: ");
    if (fault.startsWith(entry)) {
        fault.replace(0, entry.size(), FileWork::tr("The file "));
    }
    return fault;
}

}  // namespace

FileWork::FileWork(Document& document, Recovery& recovery, Dialogs& dialogs, QWidget* window)
    : QObject(window)
    , document_(document)
    , recovery_(recovery)
    , dialogs_(dialogs)
    , window_(window) {}

void FileWork::startNew(Unit unit) {
    if (mayLeave()) {
        document_.start(newProject(unit));
        Q_EMIT opened();
    }
}

void FileWork::startPattern(Pattern pattern) {
    Result<Project> begun = newProject(document_.project().notation.unit, pattern);
    if (!begun.ok()) {
        dialogs_.tell(window_, tr("The pattern has no room"), toQt(begun.fault().text()));
    } else if (mayLeave()) {
        document_.start(std::move(begun).value());
        Q_EMIT opened();
    }
}

void FileWork::open() {
    const QString path = dialogs_.fileToOpen(window_);
    if (!path.isEmpty() && mayLeave()) {
        openPath(path);
    }
}

bool FileWork::openPath(const QString& path) {
    return noteOpened(path, document_.open(path));
}

bool FileWork::isProject(const QString& path) {
    const QFileInfo file(path);
    return file.fileName().endsWith(ending(), Qt::CaseInsensitive) && file.isFile() &&
           file.isReadable();
}

bool FileWork::noteOpened(const QString& path, const QString& fault) {
    if (!fault.isEmpty()) {
        const QString name = tr("“%1” was not opened").arg(QFileInfo(path).fileName());
        dialogs_.tell(
            window_, name,
            tr("%1. The board that is open is untouched.\n\n%2").arg(name, inWords(fault)));
        return false;
    }
    addRecentFile(path);
    Q_EMIT recentChanged();
    Q_EMIT opened();
    return true;
}

void FileWork::openSample(const QString& resource) {
    if (!mayLeave()) {
        return;
    }
    Result<Project> sample = readSample(resource);
    if (!sample.ok()) {
        dialogs_.tell(window_, tr("The sample could not be opened"), toQt(sample.fault().text()));
        return;
    }
    document_.start(std::move(sample).value());
    Q_EMIT opened();
}

bool FileWork::save() {
    if (document_.path().isEmpty()) {
        return saveAs();
    }
    if (document_.changedOnDisk() &&
        !dialogs_.askOverwriteChanged(window_, document_.displayName())) {
        return false;
    }
    return saveTo(document_.path());
}

bool FileWork::saveAs() {
    QString suggested = document_.displayName();
    if (!suggested.endsWith(ending())) {
        suggested.replace(QLatin1Char('/'), QLatin1Char('-'));
        suggested += ending();
    }
    QString path = dialogs_.fileToWrite(window_, tr("Save the project"), suggested,
                                        tr("Kerfwright projects (*.kerfwright)"));
    if (path.isEmpty()) {
        return false;
    }
    if (QFileInfo(path).suffix().isEmpty()) {
        path += ending();
    }
    // Its sheets are to say more than that it has no name.
    if (document_.project().titles.name.empty()) {
        const std::string name = fromQt(QFileInfo(path).completeBaseName());
        document_.edit(tr("name the board after its file"), entry::none,
                       [&name](Project& project) { project.titles.name = name; });
    }
    return saveTo(path);
}

bool FileWork::saveTo(const QString& path) {
    const QString fault = document_.save(path);
    if (!fault.isEmpty()) {
        dialogs_.tell(
            window_, tr("Not saved"),
            tr("%1\nYour work is still open. Try another place with Save as.").arg(fault));
        return false;
    }
    addRecentFile(path);
    Q_EMIT recentChanged();
    Q_EMIT saved(QFileInfo(path).fileName());
    return true;
}

bool FileWork::mayLeave() {
    if (!document_.isModified()) {
        return true;
    }
    switch (dialogs_.askUnsaved(window_, document_.displayName())) {
    case Dialogs::Unsaved::Save:
        return save();
    case Dialogs::Unsaved::Discard:
        recovery_.discard();
        return true;
    case Dialogs::Unsaved::Cancel:
        break;
    }
    return false;
}

bool FileWork::offerLostWork(const QString& folder) {
    for (LostWork& lost : Recovery::lostWork(folder)) {
        switch (dialogs_.askLostWork(window_, lost.name)) {
        case Dialogs::Lost::Open:
            document_.openRecovered(std::move(lost.project), lost.path, lost.hashAtOpen);
            // The old copy goes only once this window has one of its own.
            recovery_.writeNow();
            Recovery::remove(folder, lost.id);
            Q_EMIT opened();
            return true;
        case Dialogs::Lost::Discard:
            Recovery::remove(folder, lost.id);
            break;
        case Dialogs::Lost::Later:
            break;
        }
    }
    return false;
}

}  // namespace kerfwright
