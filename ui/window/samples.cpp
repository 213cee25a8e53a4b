#include "ui/window/samples.h"

#include "core/project/file.h"

#include <QDir>
#include <QFile>

namespace kerfwright {

QStringList samplePaths() {
    QStringList paths;
    const QDir dir(QStringLiteral(":/samples"));
    const QStringList names =
        dir.entryList({QStringLiteral("*.kerfwright")}, QDir::Files, QDir::Name);
    for (const QString& name : names) {
        paths << dir.filePath(name);
    }
    return paths;
}

Result<Project> readSample(const QString& resource) {
    QFile file(resource);
    if (!file.open(QIODevice::ReadOnly)) {
        return Fault{"Sample", "must be one that comes with the program", resource.toStdString()};
    }
    return fromBytes(file.readAll().toStdString());
}

}  // namespace kerfwright
