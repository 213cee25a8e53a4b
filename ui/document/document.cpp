#include "ui/document/document.h"

#include "core/project/file.h"
#include "ui/document/habits.h"
#include "ui/document/text.h"

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <QUndoCommand>

#include <filesystem>

namespace kerfwright {

namespace {

constexpr int undoLimit = 200;

std::filesystem::path filePath(const QString& path) {
    return std::filesystem::path(path.toStdU16String());
}

}  // namespace

/// The one command of the program: the whole project before and after.
class SnapshotCommand : public QUndoCommand {
public:
    SnapshotCommand(Document& document, const QString& text, int entry, int session,
                    ProjectPtr before, ProjectPtr after)
        : QUndoCommand(text)
        , document_(document)
        , entry_(entry)
        , session_(session)
        , before_(std::move(before))
        , after_(std::move(after)) {}

    int id() const override { return entry_; }
    void undo() override { document_.set(before_); }
    void redo() override { document_.set(after_); }

    bool mergeWith(const QUndoCommand* next) override {
        const auto* other = static_cast<const SnapshotCommand*>(next);
        if (other->session_ != session_) {
            return false;
        }
        after_ = other->after_;
        setObsolete(*after_ == *before_);
        return true;
    }

private:
    Document& document_;
    int entry_;
    int session_;
    ProjectPtr before_;
    ProjectPtr after_;
};

Document::Document(QObject* parent)
    : Document(QString(), parent) {}

Document::Document(const QString& file, QObject* parent)
    : QObject(parent) {
    if (!file.isEmpty()) {
        openFault_ = open(file);
    }
    if (!project_) {
        project_ = std::make_shared<const Project>(newProject(usualUnit()));
    }
    history_.setUndoLimit(undoLimit);
    connect(&history_, &QUndoStack::cleanChanged, this, &Document::stateChanged);
}

std::optional<Fault> Document::edit(const QString& what, int entry,
                                    const std::function<void(Project&)>& change) {
    auto changed = std::make_shared<Project>(*project_);
    change(*changed);
    if (changed->board.field != project_->board.field || changed->recipe != project_->recipe) {
        settleRecipe(*changed);
    }
    if (*changed == *project_) {
        return std::nullopt;
    }
    const std::vector<Fault> wrong = faults(*changed);
    if (!wrong.empty()) {
        return wrong.front();
    }
    history_.push(new SnapshotCommand(*this, what, entry, session_, project_, std::move(changed)));
    return std::nullopt;
}

void Document::set(const ProjectPtr& project) {
    project_ = project;
    Q_EMIT projectChanged();
    Q_EMIT stateChanged();
}

void Document::replace(Project project, const QString& path, const QByteArray& hash, bool unsaved) {
    project_ = std::make_shared<const Project>(std::move(project));
    path_ = path;
    hash_ = hash;
    unsaved_ = unsaved;
    ++session_;
    history_.clear();
    Q_EMIT replaced();
    Q_EMIT projectChanged();
    Q_EMIT stateChanged();
}

void Document::start(Project project, bool unsaved) {
    replace(std::move(project), QString(), QByteArray(), unsaved);
}

void Document::openRecovered(Project project, const QString& path, const QByteArray& hashAtOpen) {
    replace(std::move(project), path, hashAtOpen, true);
}

QString Document::open(const QString& path) {
    Result<Project> read = readProject(filePath(path));
    if (!read.ok()) {
        return toQt(read.fault().text());
    }
    const QString absolute = QFileInfo(path).absoluteFilePath();
    replace(std::move(read).value(), absolute, hashOfFile(absolute), false);
    return QString();
}

QString Document::save(const QString& path) {
    const QString absolute = QFileInfo(path).absoluteFilePath();
    const Result<std::size_t> written = writeProject(*project_, filePath(absolute));
    if (!written.ok()) {
        return toQt(written.fault().text());
    }
    path_ = absolute;
    hash_ = hashOfFile(absolute);
    unsaved_ = false;
    ++session_;
    history_.setClean();
    Q_EMIT stateChanged();
    return QString();
}

QString Document::displayName() const {
    if (!path_.isEmpty()) {
        return QFileInfo(path_).fileName();
    }
    return project_->titles.name.empty() ? tr("Untitled") : toQt(project_->titles.name);
}

bool Document::changedOnDisk() const {
    return !path_.isEmpty() && !hash_.isEmpty() && QFile::exists(path_) &&
           hashOfFile(path_) != hash_;
}

QByteArray Document::hashOfFile(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return QByteArray();
    }
    QCryptographicHash hash(QCryptographicHash::Sha256);
    hash.addData(&file);
    return hash.result().toHex();
}

}  // namespace kerfwright
