#include "app/cli.h"
#include "ui/document/language.h"
#include "ui/window/window.h"

#include <QApplication>
#include <QGuiApplication>
#include <QHashSeed>

#include <iostream>
#include <thread>
#include <utility>

using namespace kerfwright;

namespace {

// Qt ends the process with an abort where it finds no display; these words help more.
bool hasDisplay() {
    return !qEnvironmentVariableIsEmpty("DISPLAY") ||
           !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") ||
           !qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM");
}

// Where no session set a folder for run-time files, Qt says so on the error stream. No command
// needs one.
void quietAboutRuntimeFolder(QtMsgType type, const QMessageLogContext& context,
                             const QString& message) {
    if (message.startsWith(u"QStandardPaths: XDG_RUNTIME_DIR not set")) {
        return;
    }
    std::cerr << qFormatLogMessage(type, context, message).toStdString() << std::endl;
}

void nameApplication() {
    QCoreApplication::setApplicationName(QStringLiteral("Kerfwright"));
    QCoreApplication::setOrganizationName(QStringLiteral("Kerfwright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(KERFWRIGHT_VERSION));
    QGuiApplication::setDesktopFileName(QStringLiteral("kerfwright"));
}

}  // namespace

int main(int argc, char** argv) {
    // Otherwise the order of objects in a PDF differs from run to run.
    QHashSeed::setDeterministicGlobalSeed();

    nameApplication();
    speakLanguage(languageToSpeak());
    std::vector<std::string> arguments(argv + 1, argv + argc);
    // Qt takes this for itself: the window as for a language that runs from right to left.
    std::erase(arguments, "-reverse");
    const Understood understood = understand(arguments, std::cout, std::cerr);
    if (!understood.request) {
        return understood.code;
    }
    const Request& request = *understood.request;
    if (request.command == Command::Window) {
        if (!mayOpenWindow(request, hasDisplay(), std::cerr)) {
            return Problem;
        }
        std::thread fonts = findFonts();
        QApplication app(argc, argv);
        translateApplication(app);
        return runWindow(app, QString::fromLocal8Bit(request.file), std::move(fonts));
    }
    if (request.paints()) {
        // Fonts and painters want a platform, but no display.
        qputenv("QT_QPA_PLATFORM", "offscreen");
        qInstallMessageHandler(quietAboutRuntimeFolder);
        QGuiApplication app(argc, argv);
        translateApplication(app);
        return carryOut(request, std::cout, std::cerr);
    }
    return carryOut(request, std::cout, std::cerr);
}
