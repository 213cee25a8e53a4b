// A window in which everything has been opened once, part by part.
#pragma once

#include "tests/ui/window/windowfixture.h"

#include <functional>

namespace kerfwright {

class EveryPlace : public WindowTest {
protected:
    /// In the program's own style and light colours.
    EveryPlace();

    /// Is shown a part of the program, and the window, dialog or popup that it stands in.
    using Visit = std::function<void(const QString& part, QWidget& top)>;

    /// The main window: all sections of the form with every border design, all tabs and pages of
    /// the bench, a marked region, a stage of the build, the gallery.
    void visitWindow(const Visit& visit);
    /// Dialogs and popups, each open.
    void visitDialogs(const Visit& visit);
    /// The questions that end in a message box.
    void visitQuestions(const Visit& visit);
    void visitAll(const Visit& visit);

    void openSections();
    void fillRack();
    QAction* action(const char* name) const;
    /// The dialog or popup that is open.
    static QWidget* opened();
};

}  // namespace kerfwright
