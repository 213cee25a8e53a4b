// main() of the test programs that need Qt's windows or fonts: no display, one locale, and a
// warning that nobody expected fails the test in which it came.
#include "tests/ui/warnings.h"

#include <QApplication>
#include <QHashSeed>
#include <QLocale>
#include <QMutex>
#include <QMutexLocker>
#include <QSettings>
#include <QStandardPaths>
#include <QStringList>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace {

QMutex warningsLock;
QStringList warningsSoFar;
QtMessageHandler usualHandler = nullptr;

bool isHarmless(const QString& message) {
    // The offscreen platform says so of every window, and of raising and grabbing.
    return message.contains(u"This plugin does not support");
}

void noteWarning(QtMsgType type, const QMessageLogContext& context, const QString& message) {
    if (type != QtDebugMsg && type != QtInfoMsg && !isHarmless(message)) {
        const QMutexLocker lock(&warningsLock);
        warningsSoFar.append(message);
    }
    usualHandler(type, context, message);
}

class WarningsFail : public testing::EmptyTestEventListener {
    void OnTestStart(const testing::TestInfo&) override { kerfwright::takeWarnings(); }
    void OnTestEnd(const testing::TestInfo&) override {
        for (const QString& warning : kerfwright::takeWarnings()) {
            ADD_FAILURE() << "unexpected warning: " << warning.toStdString();
        }
    }
};

}  // namespace

QStringList kerfwright::takeWarnings() {
    const QMutexLocker lock(&warningsLock);
    return std::exchange(warningsSoFar, {});
}

int main(int argc, char** argv) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");  // a person can override it
    }
    QHashSeed::setDeterministicGlobalSeed();
    QLocale::setDefault(QLocale::c());
    QStandardPaths::setTestModeEnabled(true);
    QCoreApplication::setOrganizationName(QStringLiteral("Kerfwright tests"));
    QCoreApplication::setApplicationName(QStringLiteral("Kerfwright tests"));
    // Tests run side by side; each program has settings of its own.
    const QTemporaryDir settings;
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, settings.path());
    testing::InitGoogleTest(&argc, argv);
    usualHandler = qInstallMessageHandler(noteWarning);
    QApplication application(argc, argv);
    QApplication::setStyle(QStringLiteral("Fusion"));
    testing::UnitTest::GetInstance()->listeners().Append(new WarningsFail);
    return RUN_ALL_TESTS();
}
