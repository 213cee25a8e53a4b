// Where the window was and how it was arranged, from one start to the next, in the program's
// settings.
#pragma once

namespace kerfwright {

class MainWindow;

/// Keeps size, place, panels and the chosen tab of the bench. Meant for when the window closes and
/// is still there to be measured.
void keepPlace(MainWindow& window);

/// Puts a window that is not shown yet where the last one was, maximised if that was; on a screen
/// that is there, and no larger than it. A first start gets the usual size.
void restorePlace(MainWindow& window);

/// Opens the tab of the bench that was open last. After the first paint, since some are slow to
/// make.
void restoreTab(MainWindow& window);

}  // namespace kerfwright
