#include "ui/document/recent.h"

#include <QFileInfo>
#include <QSettings>

namespace kerfwright {

namespace {

constexpr int kept = 8;

QString settingsKey() {
    return QStringLiteral("recentFiles");
}

}  // namespace

QStringList recentFiles() {
    QStringList there;
    const QStringList listed = QSettings().value(settingsKey()).toStringList();
    for (const QString& path : listed) {
        if (QFileInfo::exists(path)) {
            there.append(path);
        }
    }
    return there;
}

void addRecentFile(const QString& path) {
    QSettings settings;
    QStringList files = settings.value(settingsKey()).toStringList();
    const QString absolute = QFileInfo(path).absoluteFilePath();
    files.removeAll(absolute);
    files.prepend(absolute);
    settings.setValue(settingsKey(), files.mid(0, kept));
}

void clearRecentFiles() {
    QSettings().remove(settingsKey());
}

}  // namespace kerfwright
