// The way into the window.
#pragma once

#include <QString>
#include <QWidget>

#include <chrono>
#include <memory>
#include <thread>

QT_BEGIN_NAMESPACE
class QApplication;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;

struct WindowOptions {
    std::chrono::milliseconds planDelay{40};        ///< from the last edit to planning
    std::chrono::milliseconds recoveryDelay{3000};  ///< from the last edit to a recovery copy
    QString recoveryFolder;                         ///< empty: the usual one
    bool gallery = false;                           ///< begin with the sample boards
    Dialogs* dialogs = nullptr;                     ///< null: real ones. Must outlive the window.
};

/// The main window, not yet shown, with `file` open where it is not empty and can be read.
std::unique_ptr<QWidget> makeMainWindow(const QString& file, const WindowOptions& options = {});

/// Begins to find the system's fonts, the slowest part of a start. Meant to be the first thing that
/// a program with a window does: it needs no application object.
std::thread findFonts();

/// Shows the main window and runs until it is closed. A first start without a file begins with the
/// sample boards. Takes what `findFonts` began. Returns the exit code.
int runWindow(QApplication& application, const QString& file, std::thread fonts);

}  // namespace kerfwright
