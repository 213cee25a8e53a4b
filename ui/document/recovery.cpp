#include "ui/document/recovery.h"

#include "core/project/file.h"
#include "ui/document/text.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>
#include <QStandardPaths>
#include <QUuid>

#include <filesystem>

namespace kerfwright {

namespace {

QString copyPath(const QString& folder, const QString& id) {
    return folder + QStringLiteral("/") + id + QStringLiteral(".kerfwright");
}
QString sidecarPath(const QString& folder, const QString& id) {
    return folder + QStringLiteral("/") + id + QStringLiteral(".json");
}
QString lockPath(const QString& folder, const QString& id) {
    return folder + QStringLiteral("/") + id + QStringLiteral(".lock");
}

bool writeBytes(const QString& path, const QByteArray& bytes) {
    QSaveFile file(path);
    return file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit();
}

}  // namespace

Recovery::Recovery(Document& document, const QString& folder, std::chrono::milliseconds delay,
                   QObject* parent)
    : QObject(parent)
    , document_(document)
    , folder_(folder)
    , id_(QUuid::createUuid().toString(QUuid::WithoutBraces)) {
    delay_.setSingleShot(true);
    delay_.setTimerType(Qt::VeryCoarseTimer);
    delay_.setInterval(delay);
    connect(&delay_, &QTimer::timeout, this, &Recovery::writeNow);
    connect(&document, &Document::stateChanged, this, &Recovery::documentChanged);
    documentChanged();
}

Recovery::~Recovery() = default;

QString Recovery::usualFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) +
           QStringLiteral("/recovery");
}

void Recovery::documentChanged() {
    if (!document_.isModified()) {
        discard();
    } else if (written_ != document_.snapshot()) {
        delay_.start();
    }
}

void Recovery::writeNow() {
    delay_.stop();
    if (!document_.isModified() || written_ == document_.snapshot()) {
        return;
    }
    if (!lock_) {
        QDir().mkpath(folder_);
        lock_ = std::make_unique<QLockFile>(lockPath(folder_, id_));
        lock_->setStaleLockTime(0);
        if (!lock_->tryLock(0)) {
            lock_.reset();
            return;
        }
    }
    const QJsonObject about{
        {QStringLiteral("name"), document_.displayName()},
        {QStringLiteral("path"), document_.path()},
        {QStringLiteral("hashAtOpen"), QString::fromLatin1(document_.hashAtOpen())},
    };
    const std::string bytes = toBytes(document_.project());
    // The sidecar goes first: a copy without one would be taken for work that was never saved.
    if (writeBytes(sidecarPath(folder_, id_), QJsonDocument(about).toJson()) &&
        writeBytes(copyPath(folder_, id_), QByteArray::fromStdString(bytes))) {
        written_ = document_.snapshot();
    }
}

void Recovery::discard() {
    delay_.stop();
    written_.reset();
    if (lock_) {
        remove(folder_, id_);
        lock_.reset();
    }
}

void Recovery::remove(const QString& folder, const QString& id) {
    QFile::remove(copyPath(folder, id));
    QFile::remove(sidecarPath(folder, id));
}

std::vector<LostWork> Recovery::lostWork(const QString& folder) {
    std::vector<LostWork> found;
    const QDir dir(folder);
    const QFileInfoList copies = dir.entryInfoList({QStringLiteral("*.kerfwright")}, QDir::Files,
                                                   QDir::Time | QDir::Reversed);
    for (const QFileInfo& copy : copies) {
        const QString id = copy.completeBaseName();
        QLockFile lock(lockPath(folder, id));
        lock.setStaleLockTime(0);
        if (!lock.tryLock(0)) {
            continue;  // its window is still open
        }
        Result<Project> read =
            readProject(std::filesystem::path(copy.absoluteFilePath().toStdU16String()));
        QFile sidecar(sidecarPath(folder, id));
        QJsonObject about;
        if (sidecar.open(QIODevice::ReadOnly)) {
            about = QJsonDocument::fromJson(sidecar.readAll()).object();
        }
        const QString path = about.value(QStringLiteral("path")).toString();
        if (!read.ok() || (!path.isEmpty() && Document::hashOfFile(path) ==
                                                  Document::hashOfFile(copy.absoluteFilePath()))) {
            remove(folder, id);
            continue;
        }
        found.push_back({id, about.value(QStringLiteral("name")).toString(), path,
                         about.value(QStringLiteral("hashAtOpen")).toString().toLatin1(),
                         std::move(read).value()});
    }
    return found;
}

}  // namespace kerfwright
