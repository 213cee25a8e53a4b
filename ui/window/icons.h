// Line icons drawn for this program, in the colour of the text around them.
#pragma once

#include <QIcon>
#include <QString>

namespace kerfwright {

/// `name` is a file of resources/icons without its ending. The icon follows the palette.
QIcon lineIcon(const QString& name);
/// The program's own icon, in its own colours.
QIcon applicationIcon();

}  // namespace kerfwright
