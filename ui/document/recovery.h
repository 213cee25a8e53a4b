// Copies of unsaved work, kept apart from the maker's own files, and found again after a crash.
//
// Each window owns one copy: <id>.kerfwright, a sidecar <id>.json that says what it belongs to, and
// a lock <id>.lock that tells a crash from a second window that is still running.
#pragma once

#include "ui/document/document.h"

#include <QLockFile>
#include <QObject>
#include <QTimer>

#include <chrono>
#include <memory>
#include <vector>

namespace kerfwright {

/// Work that a window left behind.
struct LostWork {
    QString id;
    QString name;  ///< as the window called it
    QString path;  ///< of the file it belongs to; empty where it was never saved
    QByteArray hashAtOpen;
    Project project;
};

class Recovery : public QObject {
    Q_OBJECT

public:
    /// Copies go to `folder`, `delay` after the last change.
    Recovery(Document& document, const QString& folder, std::chrono::milliseconds delay,
             QObject* parent = nullptr);
    /// Leaves a copy only where `discard` or a save did not take it away.
    ~Recovery() override;

    /// AppDataLocation/recovery.
    static QString usualFolder();
    /// What earlier windows left in `folder`, oldest first. Copies that cannot be read or that
    /// equal the file they belong to are removed instead.
    static std::vector<LostWork> lostWork(const QString& folder);
    static void remove(const QString& folder, const QString& id);

    /// Writes the copy now where there is something unsaved.
    void writeNow();
    /// Removes this window's copy.
    void discard();
    QString id() const { return id_; }

private:
    void documentChanged();

    Document& document_;
    QString folder_;
    QString id_;
    QTimer delay_;
    std::unique_ptr<QLockFile> lock_;
    ProjectPtr written_;
};

}  // namespace kerfwright
