// The open project and its history. An edit copies the project, changes the copy, and puts one
// snapshot on the undo stack when the copy differs; views are handed whole immutable projects.
#pragma once

#include "core/measure/result.h"
#include "core/project/project.h"

#include <QByteArray>
#include <QObject>
#include <QString>
#include <QUndoStack>

#include <functional>
#include <memory>
#include <optional>

namespace kerfwright {

using ProjectPtr = std::shared_ptr<const Project>;

/// Which entry an edit belongs to. Edits of one entry merge into one undo step until the session
/// ends; edits with `none` never merge.
namespace entry {
inline constexpr int none = -1;
inline constexpr int name = 1;
inline constexpr int maker = 2;
inline constexpr int date = 3;
inline constexpr int note = 4;
inline constexpr int cellWidth = 5;
inline constexpr int cellHeight = 6;
inline constexpr int across = 7;
inline constexpr int down = 8;
inline constexpr int thickness = 9;
inline constexpr int borderWidth = 10;
inline constexpr int spareSlices = 11;
inline constexpr int paint = 12;
inline constexpr int joint = 13;
inline constexpr int pattern = 14;
inline constexpr int setting = 100;  ///< plus the number of the `Setting`
inline constexpr int column = 200;   ///< plus its index
inline constexpr int row = 300;      ///< plus its index
inline constexpr int climate = 400;  ///< plus which of the moistures or of the air
inline constexpr int glue = 500;     ///< plus which of the settings
inline constexpr int foot = 600;
inline constexpr int currency = 601;
inline constexpr int borderGap = 602;
inline constexpr int inlayWidth = 603;
inline constexpr int splineThickness = 604;
inline constexpr int rate = 700;    ///< plus which of the settings
inline constexpr int recipe = 800;  ///< plus which of its numbers
inline constexpr int price = 900;   ///< plus which of the settings; texts after them
inline constexpr int wood = 1000;   ///< plus `woodEntries` times its index, plus which of them
inline constexpr int woodEntries = 32;
}  // namespace entry

class Document : public QObject {
    Q_OBJECT

public:
    /// Begins with a new board.
    explicit Document(QObject* parent = nullptr);
    /// Begins with a file, so that nothing is made twice at the start. Where it cannot be read,
    /// `openFault()` says why and the board is a new one.
    explicit Document(const QString& file, QObject* parent = nullptr);
    QString openFault() const { return openFault_; }

    const Project& project() const { return *project_; }
    ProjectPtr snapshot() const { return project_; }
    QUndoStack& history() { return history_; }

    /// Changes a copy of the project and keeps it; its recipe follows the field or is dropped. The
    /// fault is the first thing that would not hold
    /// afterwards; the project is then as it was. `what` names the step for undo: "change
    /// thickness".
    std::optional<Fault> edit(const QString& what, int entry,
                              const std::function<void(Project&)>& change);
    /// The next edit is an undo step of its own, even of the same entry.
    void endSession() { ++session_; }

    /// Starts over with a project that has no file. `unsaved` marks work that exists nowhere else.
    void start(Project project, bool unsaved = false);
    /// Empty where it went well, else what is wrong in words; the open project is then untouched.
    QString open(const QString& path);
    QString save(const QString& path);
    /// As `open`, with the content of a recovery copy: it belongs to `path` (may be empty), was
    /// made from a file with `hashAtOpen`, and counts as unsaved.
    void openRecovered(Project project, const QString& path, const QByteArray& hashAtOpen);

    QString path() const { return path_; }
    /// File name without folder, or the project's name, or "Untitled".
    QString displayName() const;
    bool isModified() const { return unsaved_ || !history_.isClean(); }
    /// Whether the file at `path()` is no longer what was read or written last.
    bool changedOnDisk() const;
    QByteArray hashAtOpen() const { return hash_; }

    /// Of the bytes of a file; empty where it cannot be read.
    static QByteArray hashOfFile(const QString& path);

Q_SIGNALS:
    void projectChanged();
    /// The path, the name or whether there is something to save.
    void stateChanged();
    /// A whole other project is open.
    void replaced();

private:
    friend class SnapshotCommand;
    void set(const ProjectPtr& project);
    void replace(Project project, const QString& path, const QByteArray& hash, bool unsaved);

    ProjectPtr project_;
    QUndoStack history_;
    QString path_;
    QByteArray hash_;
    QString openFault_;
    bool unsaved_ = false;
    int session_ = 0;
};

}  // namespace kerfwright
