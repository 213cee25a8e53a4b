// Line icons drawn for this program, in the colour of the text around them.
#pragma once

#include <QIcon>
#include <QString>
#include <QStringList>

namespace kerfwright {

/// `name` is a file of resources/icons without its ending. The icon follows the palette.
QIcon lineIcon(const QString& name);
/// The program's own icon, in its own colours.
QIcon applicationIcon();
/// Draws icons of `size` before they are asked for.
void drawAhead(const QStringList& icons, int size, QIcon::Mode mode = QIcon::Normal,
               QIcon::State state = QIcon::Off);

}  // namespace kerfwright
