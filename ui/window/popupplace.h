// Where a pop-up goes that belongs to a button.
#pragma once

#include <QWidget>

namespace kerfwright {

/// Below the button, or above where there is no room, and always wholly on the screen.
void placeBeside(QWidget& popup, const QWidget& button);

}  // namespace kerfwright
