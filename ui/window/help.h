// The two small windows of the Help menu.
#pragma once

#include <QtGlobal>

QT_BEGIN_NAMESPACE
class QWidget;
QT_END_NAMESPACE

namespace kerfwright {

void showKeys(QWidget* parent);
void showAbout(QWidget* parent);

}  // namespace kerfwright
